"""A straight waistband, cut in one piece for the whole waist with an underlap at the opening.

It is made when the wearer's two sides are laid together, from the waist as sewn, so it always fits.
"""

from typing import Annotated, NamedTuple

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Allowance,
    CutInstruction,
    Edge,
    EdgeKind,
    EdgeUse,
    Grain,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    piece_name,
    require,
    resolve,
    run_length,
    run_of,
    with_side,
)
from notchbook.pattern.names import Side, last_word
from notchbook.pattern.resolve import Found
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.units import TOLERANCES


class BandedEdge(StepParameters):
    """One edge (or group) of the waist and the end at which the band comes to it."""

    edge: EdgeName
    """A part of the waist."""
    starts_at: PointName
    """The end at which the band comes to it."""


class WaistbandParameters(StepParameters):
    """The edges of one side's waist, in order from the opening to the center opposite.

    ``depth`` is the finished width (the band is folded), ``underlap`` what is added at the opening on
    the wearer's left, ``ease`` how much of the whole waist is eased into the band.
    """

    edges: Annotated[tuple[BandedEdge, ...], Field(min_length=1)]
    """The waist of one side, from the opening to the center opposite."""
    depth: AmountText = "35 mm"
    """Finished width; the band is folded along its middle."""
    underlap: AmountText = "30 mm"
    """Added at the opening, on the wearer's left."""
    ease: AmountText = "0 mm"
    """How much of the whole waist is eased into the band."""


class _Half(NamedTuple):
    """One side of the waist: its run of edges and its sewn length, mm."""

    side: Side
    uses: tuple[EdgeUse, ...]
    length: float


def run(pattern: Pattern, context: StepContext, parameters: WaistbandParameters) -> Change:
    """Draw the band from its end at the opening on the right, round the front, to the underlap."""
    depth = context.positive(parameters.depth, "depth")
    underlap = context.mm(parameters.underlap)
    ease = context.mm(parameters.ease)
    if underlap < 0.0 or ease < 0.0:
        raise StepRefused("band-negative", underlap=underlap, ease=ease)
    sides: tuple[Side, Side] = ("right", "left")
    halves = [_half(pattern, parameters, side) for side in sides]
    lengths = [half.length - ease / 2.0 for half in halves]
    if min(lengths) <= depth:
        raise StepRefused("band-too-short", depth=depth, length=min(lengths))
    piece = _band(piece_name(context.slug, "band"), lengths, depth, underlap)
    after = pattern.with_pieces(piece)
    for half in halves:
        after = after.with_seams(_seam(context.slug, piece.name, half, ease / 2.0))
    after = after.with_notches(*_notches(piece.name, pattern, halves, lengths))
    sewn = [edge.name for edge in piece.outline if edge.kind == "seam"]
    plain = [edge.name for edge in piece.outline if edge.kind == "plain"]
    after = after.with_allowances(dict.fromkeys(sewn, Allowance("waist")))
    after = after.with_allowances(dict.fromkeys(plain, Allowance("waistband")))
    return Change(after.with_materials({"fusible": "fusible"}))


def _half(pattern: Pattern, parameters: WaistbandParameters, side: Side) -> _Half:
    """The run of one side; where the sides are alike, the same edges stand for both."""
    uses: list[EdgeUse] = []
    for banded in parameters.edges:
        if isinstance(resolve(pattern, banded.edge), Found):
            uses.append(EdgeUse(banded.edge, banded.starts_at, side))
            continue
        edge = with_side(banded.edge, side)
        require(pattern, edge)
        point = banded.starts_at if banded.starts_at in pattern.index else with_side(banded.starts_at, side)
        uses.append(EdgeUse(edge, point))
    return _Half(side, tuple(uses), run_length(pattern, tuple(uses)))


def _band(name: str, lengths: list[float], depth: float, underlap: float) -> Piece:
    """The band laid flat, its sewn edge below: the wearer's right, left, then the underlap."""
    height = 2.0 * depth
    right, left = lengths
    stops = [0.0, right, right + left, right + left + underlap]
    words = ["right", "left", "underlap"]
    points = ["right_opening", "center", "left_opening", "underlap_lower"]
    if underlap == 0.0:
        stops, words, points = stops[:3], words[:2], points[:3]
    corners = [Point(x, 0.0) for x in stops] + [Point(stops[-1], height), Point(0.0, height)]
    names = [*points, "underlap_upper", "right_upper"]
    edges = [*(f"lower/{word}" for word in words), "underlap_end", "upper", "right_end"]
    sewn: list[EdgeKind] = ["seam"] * len(words)
    kinds: list[EdgeKind] = [*sewn, "plain", "plain", "plain"]
    outline = tuple(
        Edge(
            part_name(name, *edges[index].split("/")),
            Path.line(corners[index], corners[(index + 1) % len(corners)]),
            part_name(name, names[index]),
            part_name(name, names[(index + 1) % len(corners)]),
            kinds[index],
        )
        for index in range(len(corners))
    )
    fold = Path.line(Point(0.0, depth), Point(stops[-1], depth))
    return Piece(
        name=name,
        title="Waistband",
        outline=outline,
        lines=(InternalLine(part_name(name, "fold_line"), fold, "fold_line"),),
        grain=Grain(0.0),
        instructions=(CutInstruction("self"), CutInstruction("fusible")),
        rule=name.split(".", 1)[0],
    )


def _seam(slug: str, band: str, half: _Half, ease: float) -> Seam:
    """The waist of one side sewn to its part of the band, from the opening to the center."""
    start = part_name(band, f"{half.side}_opening")
    edge = part_name(band, "lower", half.side)
    return Seam(
        part_name(slug, f"waist_{half.side}"), (EdgeUse(edge, start),), half.uses, ease, "waist", "LSa"
    )


def _notches(band: str, pattern: Pattern, halves: list[_Half], lengths: list[float]) -> list[Notch]:
    """Marks on the band where the seams of the skirt and its center come to lie."""
    marks: list[Notch] = []
    for half, length in zip(halves, lengths, strict=True):
        edge, start = part_name(band, "lower", half.side), part_name(band, f"{half.side}_opening")
        travelled = 0.0
        for use in half.uses[:-1]:
            travelled += run_length(pattern, (use,))
            place = Place(edge, start, travelled * length / half.length)
            marks.append(Notch(part_name(band, f"{half.side}_seam_notch"), place, purpose="side seam"))
    center = Place(part_name(band, "lower", "right"), part_name(band, "right_opening"), lengths[0])
    marks.append(Notch(part_name(band, "center_notch"), center, purpose=_center_words(pattern, halves[0])))
    opening = Place(part_name(band, "lower", "left"), part_name(band, "left_opening"), 0.0)
    marks.append(Notch(part_name(band, "opening_notch"), opening, purpose="underlap"))
    return marks


def _center_words(pattern: Pattern, half: _Half) -> str:
    """What the center opposite the opening is called: after the edge that meets the waist there."""
    last = run_of(pattern, half.uses)[-1]
    end = last.edge.end if last.forward else last.edge.start
    piece = pattern.piece_of(last.edge.name)
    beside = [edge.name for edge in piece.outline if end in (edge.start, edge.end)]
    place = piece.points[end]
    beside += [
        line.name
        for line in piece.lines
        if min(line.path.start.distance_to(place), line.path.end.distance_to(place)) < TOLERANCES.closure
    ]
    centers = [last_word(name) for name in beside if last_word(name).startswith("center")]
    return centers[0].replace("_", " ") if centers else "center"


STEP = StepDefinition(
    operation="waistband",
    version=1,
    kind="style",
    phase="whole",
    title="Waistband",
    sentence="{edges:{edge}}: {depth} finished, underlap {underlap}",
    parameters=WaistbandParameters,
    run=run,
)
