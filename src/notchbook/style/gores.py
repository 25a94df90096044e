"""Divide a skirt piece into gores and flare their seams from a chosen height.

The seams between gores divide the waist and the hem in the same shares, and so the hip between them. Below
the height at which the flare begins every new seam edge is swung out; it keeps its length and meets the hem
square, so that both sides of a seam stay alike.
"""

from dataclasses import replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import Edge, Pattern, Piece, part_name, piece_name, require, require_one, spoken
from notchbook.pattern.names import last_word, split_side, with_side
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PlaceParameters,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style import cut_style_line
from notchbook.style.fullness.gore_names import INNER, GoreNames
from notchbook.style.lines.parameters import LineParameters

MOST_GORES = 8
"""More gores than this in one piece are strips. Own judgment."""

_TURN = 0.4
"""Share of the flared length over which the seam edge turns from its old direction. Own judgment."""


class GoresParameters(StepParameters):
    """The ``waist`` and ``hem`` of the piece with their ends at the center, how many gores, their flare."""

    waist: EdgeName
    """The upper edge, one edge without darts: close or move these first."""
    waist_center: PointName
    """Its end at the center."""
    hem: EdgeName
    """The hem."""
    hem_center: PointName
    """Its end at the center."""
    number: Annotated[int, Field(ge=2, le=MOST_GORES)] = 3
    """Into how many gores the piece is divided."""
    flare: AmountText = "4 cm"
    """How much is added at the hem to each edge of every new seam."""
    flare_height: AmountText = "30 cm"
    """How high above the hem the flare begins."""


def run(pattern: Pattern, context: StepContext, parameters: GoresParameters) -> Change:
    """Cut the gores off from the side, then flare every seam between them."""
    piece = _piece(pattern, parameters)
    change = Change(pattern)
    inner = ""
    for gore in range(parameters.number, 1, -1):
        cut = cut_style_line.run(change.pattern, context, _cut(parameters, gore, inner))
        change = replace(cut, splits={**change.splits, **cut.splits})
        inner += f"/{INNER}"
    names = GoreNames(context.slug, last_word(piece.name), parameters.number)
    after = names.in_pattern(change.pattern)
    gores = [
        piece_name(context.slug, f"{names.word}_gore_{gore}") for gore in range(1, parameters.number + 1)
    ]
    flare = context.mm(parameters.flare)
    height = context.positive(parameters.flare_height, "flare_height")
    splits = names.splits(change.splits)
    hem = require_one(pattern, parameters.hem)
    hems = frozenset(splits.get(hem, (hem,)))
    flared = [
        _titled(_flared(after.pieces[name], hems, (flare, height)), f"{piece.title} gore {number}")
        for number, name in enumerate(gores, start=1)
    ]
    return Change(after.with_pieces(*flared), splits=splits)


def _piece(pattern: Pattern, parameters: GoresParameters) -> Piece:
    waist, hem = require(pattern, parameters.waist), require(pattern, parameters.hem)
    if len(waist) != 1 or len(hem) != 1:
        raise StepRefused("gores-darts", edge=spoken(parameters.waist if len(waist) > 1 else parameters.hem))
    if pattern.carriers[waist[0]] != pattern.carriers[hem[0]]:
        raise StepRefused("slash-between-pieces", first=spoken(waist[0]), second=spoken(hem[0]))
    return pattern.piece_of(waist[0])


def _cut(parameters: GoresParameters, gore: int, inner: str) -> cut_style_line.StyleLineParameters:
    """The cut that leaves ``gore - 1`` gores at the center."""
    share = (gore - 1) / gore
    places = [
        PlaceParameters(edge=_inner(edge, inner), from_point=point, fraction=share)
        for edge, point in (
            (parameters.waist, parameters.waist_center),
            (parameters.hem, parameters.hem_center),
        )
    ]
    line = LineParameters(start=places[0], end=places[1], shape="straight")
    return cut_style_line.StyleLineParameters(
        lines=(line,), first_role=INNER, second_role=f"gore_{gore}", first_title="", second_title=""
    )


def _inner(edge: str, inner: str) -> str:
    """What is left of an edge at the center, its side at the end."""
    base, side = split_side(edge)
    return with_side(f"{base}{inner}", side)


def _titled(piece: Piece, title: str) -> Piece:
    return replace(piece, title=title)


def _flared(piece: Piece, hems: frozenset[str], flare: tuple[float, float]) -> Piece:
    """The gore with its new seam edges swung out at the hem, and the hem drawn to them."""
    if flare[0] == 0.0:
        return piece
    new = {part_name(piece.name, word) for word in ("near_seam", "far_seam")}
    outline = list(piece.outline)
    hem = next(index for index, edge in enumerate(outline) if edge.name in hems)
    before, after = (hem - 1) % len(outline), (hem + 1) % len(outline)
    if outline[before].name in new:
        outline[before] = _swung(outline[before], flare, outward=-1.0)
    if outline[after].name in new:
        outline[after] = _swung(outline[after].reversed(), flare, outward=1.0).reversed()
    outline[hem] = _hem(outline[hem], outline[before], outline[after], new)
    return replace(piece, outline=tuple(outline))


def _swung(edge: Edge, flare: tuple[float, float], outward: float) -> Edge:
    """A seam edge that runs down to the hem, its lower part turned out by the flare and as long as before."""
    out, height = flare
    if height >= edge.length:
        raise StepRefused("gores-flare-high", edge=spoken(edge.name), height=height, length=edge.length)
    kept, lower = edge.path.split_at(edge.length - height)
    along = lower.tangent_at(0.0)
    aside = along.perpendicular() * outward
    turn = _bent(lower, height, (along, aside), out)
    return replace(edge, path=kept.joined(turn))


def _bent(lower: Path, height: float, ways: tuple[Point, Point], out: float) -> Path:
    """A curve into a straight line, ``height`` long in all, that ends ``out`` beside where the edge ended."""
    along, aside = ways
    bend = height * _TURN
    down = height
    for _ in range(50):
        goal = lower.start + along * down + aside * out
        corner = lower.start + along * (bend / 2.0)
        straight = (goal - corner).unit()
        begins = corner + straight * (bend / 2.0)
        curve = Path.of(curve_between(lower.start, along.direction(), begins, straight.direction())).joined(
            Path.line(begins, goal)
        )
        missing = height - curve.length
        if abs(missing) < 1e-9:
            break
        down += missing
    return curve


def _hem(hem: Edge, before: Edge, after: Edge, new: set[str]) -> Edge:
    """One fair hem, square to the seam edges that were swung out."""
    start, end = before.path.end, after.path.start
    leaving, arriving = hem.path.tangent_at(0.0), hem.path.tangent_at(hem.length)
    if before.name in new:
        leaving = before.path.tangent_at(before.length).perpendicular()
    if after.name in new:
        arriving = -after.path.tangent_at(0.0).perpendicular()
    path = Path.of(curve_between(start, leaving.direction(), end, arriving.direction()))
    return replace(hem, path=path)


STEP = StepDefinition(
    operation="gores",
    version=1,
    kind="style",
    title="Gores",
    sentence="{number} gores, flared by {flare} from {flare_height} above {hem}",
    parameters=GoresParameters,
    run=run,
)
