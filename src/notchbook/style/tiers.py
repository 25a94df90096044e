"""Tiers: strips hung from an edge one below the other, each gathered to the one above it.

They are derived: made anew after the last shaping step, so that they follow the edge that they hang from.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeKind,
    EdgeUse,
    Finding,
    Intake,
    Measured,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    Severity,
    directed,
    part_name,
    piece_name,
    require,
    sewn_length,
    spoken,
    worded,
)
from notchbook.pattern.names import last_word
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.fullness.figures import TIERS

MOST_TIERS = 8
"""Lengths multiply: beyond this no cloth is long enough. Own judgment."""

_HALF = 0.5
"""Share of a tier at which its notch stands, so that gathers are spread evenly on both sides of it."""


class TieredEdge(StepParameters):
    """One edge that tiers hang from, and its end at the center of the body."""

    edge: EdgeName
    """The edge that the first tier is sewn to, such as the hem of a yoke."""
    center: PointName
    """Its end at the center of the body."""


class TiersParameters(StepParameters):
    """The edges that tiers hang from, front and back, and how many tiers, how high and how full."""

    edges: Annotated[tuple[TieredEdge, ...], Field(min_length=1, max_length=2)]
    """The edges, one for each piece; two of them are sewn together at the side."""
    number: Annotated[int, Field(ge=1, le=MOST_TIERS)] = 3
    """How many tiers."""
    height: AmountText = "20 cm"
    """How high each tier is."""
    ratio: Annotated[float, Field(ge=1.0, le=4.0)] = TIERS.value
    """How much longer each tier is than what it hangs from: usually one and a half times to twice."""


@dataclass(frozen=True, slots=True)
class _Hung:
    """What one tier hangs from: its edge and the end at the center, the piece above, its length, mm."""

    edge: str
    center: str
    owner: str
    length: float


def run(pattern: Pattern, context: StepContext, parameters: TiersParameters) -> Change:
    """Hang the tiers from every edge."""
    height = context.positive(parameters.height, "height")
    after = pattern
    for tiered in parameters.edges:
        directed(pattern, tiered.edge, tiered.center)  # the center must be an end of the edge
        piece = _piece_of(pattern, tiered)
        after = _freed(after, piece, tiered)
        hung = _Hung(
            tiered.edge,
            tiered.center,
            piece_name(context.slug, last_word(piece.name)),
            sewn_length(pattern, tiered.edge),
        )
        for number in range(1, parameters.number + 1):
            tier = _tier(context.slug, piece, tiered, number, (hung.length * parameters.ratio, height))
            if number == parameters.number:
                tier = _with_hem(tier)
                after = after.with_allowances({part_name(tier.name, "lower"): Allowance("hem")})
            after = _sewn_on(after, context.slug, hung, tier, number)
            lower = part_name(tier.name, "lower")
            hung = _Hung(lower, part_name(tier.name, "lower_center"), tier.name, tier.edge(lower).length)
    after = after.with_seams(*_side_seams(context.slug, pattern, parameters))
    return Change(after, notes=tuple(_notes(pattern, parameters)))


def _piece_of(pattern: Pattern, tiered: TieredEdge) -> Piece:
    carriers = {pattern.carriers[member] for member in require(pattern, tiered.edge)}
    if len(carriers) != 1:
        raise StepRefused(
            "run-across-pieces", edge=spoken(tiered.edge), pieces=tuple(map(spoken, sorted(carriers)))
        )
    return pattern.pieces[carriers.pop()]


def _freed(pattern: Pattern, piece: Piece, tiered: TieredEdge) -> Pattern:
    """The edge is sewn now and no longer turned up."""
    members = set(require(pattern, tiered.edge))
    outline = tuple(
        replace(edge, kind="seam") if edge.name in members and edge.kind == "hem" else edge
        for edge in piece.outline
    )
    freed = pattern.with_pieces(replace(pattern.pieces[piece.name], outline=outline))
    return freed.with_allowances({tiered.edge: Allowance("plain")})


def _tier(slug: str, piece: Piece, tiered: TieredEdge, number: int, size: tuple[float, float]) -> Piece:
    """A strip with its center on x = 0, reaching toward the side as the piece above it does."""
    width, height = size
    name = piece_name(slug, f"{last_word(piece.name)}_tier_{number}")
    center = _center_kind(piece, tiered)
    rightward = _reaches_right(piece, tiered)
    side = width if rightward else -width
    upper, lower = Point(0.0, 0.0), Point(0.0, -height)
    upper_side, lower_side = Point(side, 0.0), Point(side, -height)
    corners = {
        "upper_center": upper,
        "lower_center": lower,
        "lower_side": lower_side,
        "upper_side": upper_side,
    }
    walk: tuple[tuple[str, EdgeKind], ...] = (
        ("center", center),
        ("lower", "seam"),
        ("side", "seam"),
        ("upper", "seam"),
    )
    edges = tuple(_edge(name, word, kind, corners, index) for index, (word, kind) in enumerate(walk))
    if not rightward:
        edges = tuple(edge.reversed() for edge in reversed(edges))
    title = f"{piece.title} tier {number}"
    return Piece(name, title, edges, cut=piece.cut, rule=slug)


def _edge(name: str, word: str, kind: EdgeKind, corners: dict[str, Point], index: int) -> Edge:
    """One side of the strip; the corners are named in its order."""
    words = tuple(corners)
    first, last = words[index], words[(index + 1) % 4]
    path = Path.line(corners[first], corners[last])
    return Edge(part_name(name, word), path, part_name(name, first), part_name(name, last), kind)


def _center_kind(piece: Piece, tiered: TieredEdge) -> EdgeKind:
    """The edge of the piece above that runs up from the center end: on the fold or sewn."""
    beside = [
        edge
        for edge in piece.outline
        if tiered.center in (edge.start, edge.end) and edge.kind in ("fold", "seam")
    ]
    return "fold" if any(edge.kind == "fold" for edge in beside) else "seam"


def _reaches_right(piece: Piece, tiered: TieredEdge) -> bool:
    """Whether the piece above lies to the right of its center."""
    return piece.bounds.center.x > piece.points[tiered.center].x


def _with_hem(tier: Piece) -> Piece:
    lower = part_name(tier.name, "lower")
    outline = tuple(replace(edge, kind="hem") if edge.name == lower else edge for edge in tier.outline)
    return replace(tier, outline=outline)


def _sewn_on(pattern: Pattern, slug: str, hung: _Hung, tier: Piece, number: int) -> Pattern:
    """The tier gathered to what it hangs from, with a pair of notches half way, and its center seam."""
    upper, center = part_name(tier.name, "upper"), part_name(tier.name, "upper_center")
    amount = tier.edge(upper).length - hung.length
    gather = Intake(part_name(tier.name, "upper_gather"), upper, kind="gather", edge=upper, amount=amount)
    word = last_word(tier.name)
    seam = Seam(part_name(slug, word), (EdgeUse(hung.edge, hung.center),), (EdgeUse(upper, center),))
    label = f"tier_{number}_notch"
    notches = (
        Notch(part_name(hung.owner, label), Place(hung.edge, hung.center, _HALF, "fraction"), seam=seam.name),
        Notch(part_name(tier.name, label), Place(upper, center, _HALF, "fraction"), seam=seam.name),
    )
    if amount > 0.0:
        tier = replace(tier, intakes=(gather,))
    sewn = pattern.with_pieces(tier).with_seams(seam).with_notches(*notches)
    edge = tier.edge(part_name(tier.name, "center"))
    if edge.kind != "seam":
        return sewn
    uses = [EdgeUse(edge.name, center, "right"), EdgeUse(edge.name, center, "left")]
    return sewn.with_seams(Seam(part_name(slug, f"{word}_center"), (uses[0],), (uses[1],)))


def _side_seams(slug: str, pattern: Pattern, parameters: TiersParameters) -> Iterator[Seam]:
    """Tiers of front and back are sewn to each other at the side."""
    if len(parameters.edges) != 2:
        return
    words = [last_word(_piece_of(pattern, tiered).name) for tiered in parameters.edges]
    for number in range(1, parameters.number + 1):
        names = [piece_name(slug, f"{word}_tier_{number}") for word in words]
        uses = [EdgeUse(part_name(name, "side"), part_name(name, "upper_side")) for name in names]
        yield Seam(
            part_name(slug, f"side_seam_tier_{number}"), (uses[0],), (uses[1],), allowance_class="side"
        )


def _notes(pattern: Pattern, parameters: TiersParameters) -> Iterator[Finding]:
    """How long the tiers are, one after the other."""
    for tiered in parameters.edges:
        first = sewn_length(pattern, tiered.edge)
        lengths = [first * parameters.ratio**number for number in range(1, parameters.number + 1)]
        yield worded(
            STEP.operation,
            "tiers-hung",
            Severity.NOTE,
            Measured(lengths[-1], first),
            where=tiered.edge,
            edge=spoken(tiered.edge),
            number=parameters.number,
            ratio=parameters.ratio,
            last=lengths[-1],
        )


STEP = StepDefinition(
    operation="tiers",
    version=1,
    kind="style",
    phase="derived",
    title="Tiers",
    sentence="{edges:{edge}}: {number} tiers, {height} high, each {ratio} times the one above",
    parameters=TiersParameters,
    run=run,
)
