"""A godet: a sector of a circle set into the lower end of a seam.

It is derived: made anew after the last shaping step, as long as the seam edges that it is sewn to. Its grain
runs down its middle.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.geometry.offset_join import arc_segments
from notchbook.pattern import (
    Allowance,
    CutAs,
    Edge,
    EdgeUse,
    Finding,
    Measured,
    Notch,
    NotchKind,
    Pattern,
    Piece,
    Place,
    Seam,
    Severity,
    Side,
    child_name,
    locate,
    part_name,
    piece_name,
    spoken,
    worded,
)
from notchbook.pattern.names import last_word, split_side, with_side
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style._seam_above import only_above
from notchbook.style.fullness.figures import GODET_SPREAD
from notchbook.units import TOLERANCES

_BALANCE = 0.45
"""Share down each seam at which its notches stand, off the middle. Common practice, no source."""


class GodetSide(StepParameters):
    """One edge of the seam, and its end at the hem."""

    edge: EdgeName
    """The edge that opens at its lower end."""
    hem_end: PointName
    """Its end at the hem."""


class GodetParameters(StepParameters):
    """The two edges of the seam (one, where left and right of it are sewn to each other), how high the godet
    reaches, and how wide it spreads."""

    sides: Annotated[tuple[GodetSide, ...], Field(min_length=1, max_length=2)]
    """The edges of the seam; a seam at the center has one."""
    height: AmountText = "25 cm"
    """How high above the hem it is set in."""
    angle: Annotated[float, Field(gt=0.0, le=180.0)] = GODET_SPREAD.value
    """Degrees of the sector: 45 is usual, 90 a quarter circle."""
    hem_length: AmountText | None = None
    """Instead of the angle: how long its hem is."""


@dataclass(frozen=True, slots=True)
class _Opened:
    """A seam ``edge`` that was divided: its part above and below with the point between; ``owner`` is the
    piece's word, ``notch`` the name of the notch at the top."""

    edge: str
    above: str
    below: str
    top: str
    length: float
    owner: str
    notch: str


def run(pattern: Pattern, context: StepContext, parameters: GodetParameters) -> Change:
    """Open the seam below and set the godet in."""
    height = context.positive(parameters.height, "height")
    after, splits = pattern, dict[str, tuple[str, ...]]()
    opened: list[_Opened] = []
    pieces = [pattern.carriers[_edge_at_hem(pattern, side)] for side in parameters.sides]
    for side in parameters.sides:
        is_only = len(set(pieces)) == len(pieces)
        piece, found, children = _opened(after, context.slug, side, height, is_only=is_only)
        seams = [
            only_above(after, seam, (found.edge, side.hem_end), (found.above, found.top))
            for seam in after.seams.values()
        ]
        after = after.with_pieces(piece).with_seams(*seams)
        splits[found.edge] = children
        opened.append(found)
    _require_alike(opened)
    godet = _godet(pattern, context, parameters, opened)
    after = after.with_pieces(godet).with_seams(*_seams(context.slug, godet, opened))
    after = after.with_notches(*_notches(context.slug, godet, opened))
    after = after.with_allowances({part_name(godet.name, "hem"): Allowance("hem_circle")})
    return Change(after, splits=splits, notes=(_note(godet, opened[0].length),))


def _opened(
    pattern: Pattern, slug: str, side: GodetSide, height: float, *, is_only: bool
) -> tuple[Piece, _Opened, tuple[str, ...]]:
    """The piece with the edge divided at the top of the godet, and the parts in the edge's direction.

    ``is_only``: the piece has no other edge of the seam, so that what is new needs no word of the edge.
    """
    found = locate(pattern, Place(side.edge, side.hem_end, height))
    edge, piece = found.edge, pattern.pieces[found.piece]
    if side.hem_end not in (edge.start, edge.end):
        raise StepRefused("vent-too-high", edge=spoken(side.edge), height=height)
    if not TOLERANCES.closure < found.distance < edge.length - TOLERANCES.closure:
        raise StepRefused("cut-at-end", edge=spoken(edge.name), distance=found.distance, length=edge.length)
    owner = piece_name(slug, last_word(piece.name))
    top, notch = (_called(owner, word, edge.name, is_only=is_only) for word in ("godet_top", "godet_notch"))
    first, second = edge.path.split_at(found.distance)
    names = (child_name(edge.name, "seam"), child_name(edge.name, "godet"))
    runs_down = edge.end == side.hem_end
    if not runs_down:
        names = names[::-1]
    parts = (
        Edge(names[0], first, edge.start, top, edge.kind),
        Edge(names[1], second, top, edge.end, edge.kind),
    )
    index = piece.edge_index(edge.name)
    outline = (*piece.outline[:index], *parts, *piece.outline[index + 1 :])
    above, below = parts if runs_down else parts[::-1]
    divided = _Opened(edge.name, above.name, below.name, top, below.length, owner, notch)
    return replace(piece, outline=outline), divided, names


def _called(owner: str, word: str, edge: str, *, is_only: bool) -> str:
    """The name of what is new on an edge; with the words of the edge where the piece has both of a seam."""
    if is_only:
        return part_name(owner, word)
    base, side = split_side(edge)
    words = base.split("/", 1)[1].replace("/", "_")
    return with_side(part_name(owner, f"{words}_{word}"), side)


def _require_alike(opened: list[_Opened]) -> None:
    lengths = [one.length for one in opened]
    if max(lengths) - min(lengths) > TOLERANCES.seam_walk:
        raise StepRefused("godet-sides-differ", first=lengths[0], second=lengths[-1])


def _godet(
    pattern: Pattern, context: StepContext, parameters: GodetParameters, opened: list[_Opened]
) -> Piece:
    """The sector: its top at 0, 0, its middle straight down."""
    radius = sum(one.length for one in opened) / len(opened)
    angle = parameters.angle
    if parameters.hem_length is not None:
        angle = math.degrees(context.positive(parameters.hem_length, "hem_length") / radius)
    if angle > 180.0:
        raise StepRefused("godet-too-wide", angle=angle, most=math.pi * radius)
    name = piece_name(context.slug, "godet")
    top = Point(0.0, 0.0)
    left, right = (Point(0.0, -radius).rotated(sign * angle / 2.0) for sign in (-1.0, 1.0))
    hem = Path(tuple(arc_segments(top, left, angle)))
    points = [part_name(name, word) for word in ("top", "hem_first", "hem_second")]
    outline = (
        Edge(part_name(name, "first_seam"), Path.line(top, left), points[0], points[1]),
        Edge(part_name(name, "hem"), hem.with_end(right), points[1], points[2], "hem"),
        Edge(part_name(name, "second_seam"), Path.line(right, top), points[2], points[0]),
    )
    return Piece(name, "Godet", outline, cut=_cut_as(pattern, parameters), rule=context.slug)


def _cut_as(pattern: Pattern, parameters: GodetParameters) -> CutAs:
    """One for each of the wearer's sides, but a single one in a seam between left and right."""
    owners = {pattern.piece_of(_edge_at_hem(pattern, side)).cut for side in parameters.sides}
    return "single" if len(parameters.sides) == 1 or owners == {"single"} else "pair"


def _edge_at_hem(pattern: Pattern, side: GodetSide) -> str:
    """The living edge at the hem end of a side."""
    return locate(pattern, Place(side.edge, side.hem_end, 0.0)).edge.name


def _seams(slug: str, godet: Piece, opened: list[_Opened]) -> Iterator[Seam]:
    """Either side of the godet with its edge; where there is one edge, with its left and its right."""
    sides: tuple[Side, ...] = ("both", "both") if len(opened) == 2 else ("right", "left")
    for word, one, side in zip(("first_seam", "second_seam"), (opened[0], opened[-1]), sides, strict=True):
        yield Seam(
            part_name(slug, word),
            (EdgeUse(one.below, one.top, side),),
            (EdgeUse(part_name(godet.name, word), part_name(godet.name, "top")),),
            allowance_class="side",
        )


def _notches(slug: str, godet: Piece, opened: list[_Opened]) -> Iterator[Notch]:
    """The top of the godet, and a pair down each of its seams: single on the first, double on the second."""
    for one in opened:
        yield Notch(one.notch, Place(one.below, one.top, 0.0), purpose="top of godet")
    if len(opened) < 2:
        return
    top = part_name(godet.name, "top")
    kinds: tuple[NotchKind, ...] = ("single", "double")
    for word, one, kind in zip(("first", "second"), opened, kinds, strict=True):
        label, seam = f"{word}_notch", part_name(slug, f"{word}_seam")
        own = Place(part_name(godet.name, f"{word}_seam"), top, _BALANCE, "fraction")
        mate = Place(one.below, one.top, _BALANCE, "fraction")
        yield Notch(part_name(godet.name, label), own, kind, seam, "balance")
        yield Notch(part_name(one.owner, label), mate, kind, seam, "balance")


def _note(godet: Piece, length: float) -> Finding:
    hem = godet.edge(part_name(godet.name, "hem")).length
    return worded(
        STEP.operation,
        "godet-set-in",
        Severity.NOTE,
        Measured(hem, length),
        piece=godet.name,
        where=part_name(godet.name, "hem"),
        height=length,
        hem=hem,
    )


STEP = StepDefinition(
    operation="godet",
    version=1,
    kind="style",
    phase="derived",
    title="Godet",
    sentence="{height} high, {angle} degrees, in {sides}",
    parameters=GodetParameters,
    run=run,
)
