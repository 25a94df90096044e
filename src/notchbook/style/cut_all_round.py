"""Cut a seam round the garment in one go: a waist seam over all panels, a yoke round front and back.

She says which upright edges the line crosses, in order, and how high: at the center, at the side, at each
panel seam, or level with the place before. Where the line crosses a seam it goes on at the place that is sewn
to where it came, so that both sides meet. Each piece is cut as by a style line, with a seam and notches of
its own; a double-ended dart opens from the seam on both sides, another is closed where she names it.
"""

from itertools import pairwise
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import InputError, StepRefused
from notchbook.geometry import Line, Path, Point
from notchbook.geometry.met_square import met_square
from notchbook.pattern import Located, Pattern, Place, directed, locate, require, require_one, spoken
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
    Word,
)
from notchbook.style.lines.across_seams import edges_on, on_piece, pieces_at
from notchbook.style.lines.called_parts import PartWords
from notchbook.style.lines.cutting import Cut, cut_piece
from notchbook.style.lines.division import Draw, is_center
from notchbook.style.lines.parameters import DartOnLineParameters
from notchbook.style.lines.seams import NotchChoice


class CrossedEdgeParameters(StepParameters):
    """An upright edge that the line crosses."""

    edge: EdgeName
    """The edge: of two that are sewn to each other either one."""
    distance: AmountText | None = None
    """How far from its end on the same side of the line as the first one's, as sewn; empty: level with the
    place before, square to the grain."""


class CutAllRoundParameters(StepParameters):
    """The edges that the line crosses in order, from center front to center back for example."""

    from_point: PointName
    """The end of the first edge from which all heights are counted, such as the waist at the center front:
    the parts on this side of the line are the first."""
    crosses: Annotated[tuple[CrossedEdgeParameters, ...], Field(min_length=2)]
    """The edges in order. Each two that follow one another are on one piece, or sewn to it."""
    shape: Literal["curve", "straight"] = "curve"
    """curve: leaves and meets the edges square; straight: from place to place."""
    darts: tuple[DartOnLineParameters, ...] = ()
    """Darts that end on the line or are cut by it, and are closed. Darts with two points need no naming."""
    first_role: Word = "above"
    """What the parts with the named end are called in names."""
    second_role: Word = "below"
    """What the other parts are called in names."""
    first_title: str = "yoke"
    """Added to the titles of the parts with the named end."""
    second_title: str = ""
    """Added to the titles of the other parts."""
    notches: NotchChoice = "balance"
    """balance: on each piece one pair off the middle; apex: two pairs; none."""


def run(pattern: Pattern, context: StepContext, parameters: CutAllRoundParameters) -> Change:
    """Cut every piece; all or nothing. StepRefused ``round-*``, and what a style line refuses."""
    words = PartWords(
        (parameters.first_role, parameters.second_role),
        (parameters.first_title, parameters.second_title),
        parameters.notches,
    )
    first_is_left = directed(pattern, parameters.crosses[0].edge, parameters.from_point)[0].forward
    pieces = _pieces(pattern, parameters)
    places = _places(pattern, context, parameters, pieces, first_is_left=first_is_left)
    for dart in parameters.darts:
        _require_on(pattern, dart, pieces)
    change = Change(pattern)
    for piece, (begin, finish) in zip(pieces, pairwise(places), strict=True):
        start, end = on_piece(pattern, begin, piece), on_piece(pattern, finish, piece)
        darts = tuple(one for one in parameters.darts if _carrier(pattern, one) == piece)
        keeps_start = is_center(start.edge) or not is_center(end.edge)
        waves = 0 if parameters.shape == "straight" else 1
        cut = Cut(start, end, _draw(parameters), first_is_left, darts, keeps_start, waves)
        change = cut_piece(change, context, words, cut)
    return change


def _pieces(pattern: Pattern, parameters: CutAllRoundParameters) -> tuple[str, ...]:
    """The piece between each two edges; which it is follows from the edges that were named alone."""
    found: list[str] = []
    edges = [one.edge for one in parameters.crosses]
    for first, second in pairwise(edges):
        between = pieces_at(pattern, first) & pieces_at(pattern, second)
        between -= set(found[-1:]) if len(between) > 1 else set()
        if len(between) != 1 or between & set(found):
            raise StepRefused("round-not-one-piece", first=spoken(first), second=spoken(second))
        found.extend(between)
    return tuple(found)


def _places(
    pattern: Pattern,
    context: StepContext,
    parameters: CutAllRoundParameters,
    pieces: tuple[str, ...],
    *,
    first_is_left: bool,
) -> tuple[Located, ...]:
    """Where the line crosses each of the edges."""
    if parameters.crosses[0].distance is None:
        raise InputError("place-needs-one-amount", edge=spoken(parameters.crosses[0].edge))
    places: list[Located] = []
    for index, cross in enumerate(parameters.crosses):
        if cross.distance is None:
            piece = pieces[index - 1]
            places.append(_level(pattern, on_piece(pattern, places[-1], piece), cross.edge))
            continue
        members = require(pattern, cross.edge)
        leaves = index < len(pieces) and bool(edges_on(pattern, cross.edge, pieces[index], own_only=True))
        start, end = pattern.edges[members[0]].start, pattern.edges[members[-1]].end
        from_point = start if leaves is first_is_left else end
        places.append(locate(pattern, Place(cross.edge, from_point, context.mm(cross.distance))))
    return tuple(places)


_FARTHEST = 2000.0
"""mm; farther than any piece is wide."""


def _level(pattern: Pattern, place: Located, edge: str) -> Located:
    """Where a line square to the grain from the place meets the edge, or the one that is sewn to it there."""
    piece = pattern.pieces[place.piece]
    across = Point(0.0, 1.0).rotated(piece.grain.degrees)
    level = Path.of(Line(place.position - across * _FARTHEST, place.position + across * _FARTHEST))
    met = [
        Located(piece.edge(name), piece.name, crossing.at_other, crossing.point)
        for name in edges_on(pattern, edge, piece.name)
        for crossing in level.intersections(piece.edge(name).path)
    ]
    if len(met) != 1:
        raise StepRefused("round-level-misses", edge=spoken(edge), piece=spoken(piece.name), times=len(met))
    return met[0]


def _draw(parameters: CutAllRoundParameters) -> Draw:
    if parameters.shape == "straight":
        return lambda start, end: Path.line(start[0], end[0])
    return met_square


def _carrier(pattern: Pattern, dart: DartOnLineParameters) -> str:
    return pattern.carriers[require_one(pattern, dart.intake, "intake")]


def _require_on(pattern: Pattern, dart: DartOnLineParameters, pieces: tuple[str, ...]) -> None:
    if _carrier(pattern, dart) not in pieces:
        raise StepRefused(
            "dart-on-other-piece", intake=spoken(dart.intake), piece=", ".join(map(spoken, pieces))
        )


STEP = StepDefinition(
    operation="cut_all_round",
    version=2,
    kind="style",
    title="Cut all round",
    sentence="across {crosses:{edge} {distance}}, closing {darts}, {shape}",
    parameters=CutAllRoundParameters,
    run=run,
    upcasters={1: dict},
)
