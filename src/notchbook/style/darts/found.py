"""The darts, the pivot and the places that a step names, found on the pattern or refused in words."""

from collections.abc import Iterable

from notchbook.errors import NameLost, StepRefused
from notchbook.geometry import Point
from notchbook.pattern import (
    Edge,
    Intake,
    Located,
    Pattern,
    Piece,
    directed,
    locate,
    require,
    require_one,
    spoken,
)
from notchbook.pattern.names import last_word
from notchbook.recipe import PlaceParameters, StepContext
from notchbook.units import TOLERANCES

BUST_POINT = "bust_point"


def darts_named(pattern: Pattern, names: Iterable[str]) -> tuple[Piece, tuple[Intake, ...]]:
    """The darts of these names and the one piece that they lie on.

    NameLost where one is gone; StepRefused ``intake-no-dart`` for a pleat or gather, ``darts-apart`` for
    darts of several pieces.
    """
    intakes = tuple(pattern.intakes[require_one(pattern, name, "intake")] for name in names)
    for intake in intakes:
        if intake.kind != "dart":
            raise StepRefused("intake-no-dart", intake=spoken(intake.name), kind=intake.kind)
    pieces = {pattern.carriers[intake.name] for intake in intakes}
    if len(pieces) > 1:
        raise StepRefused("darts-apart", darts=tuple(spoken(intake.name) for intake in intakes))
    return pattern.piece_of(intakes[0].name), intakes


def pivot_of(pattern: Pattern, piece: Piece, intake: Intake, named: str | None) -> Point:
    """The point about which the piece is turned: the named one, else its bust point, else the dart's point.

    NameLost where the named one is gone; StepRefused ``pivot-elsewhere`` when it lies on another piece.
    """
    if named is not None:
        point = require_one(pattern, named, "point")
        if pattern.carriers[point] != piece.name:
            raise StepRefused("pivot-elsewhere", point=spoken(named), piece=spoken(piece.name))
        return piece.points[point]
    bust = bust_point_of(piece)
    return piece.points[intake.point] if bust is None else bust


def bust_point_of(piece: Piece) -> Point | None:
    """The one bust point marked on the piece; None where it has none, or one for each of two sides."""
    found = [mark.position for mark in piece.marks if last_word(mark.name) == BUST_POINT]
    return found[0] if len(found) == 1 else None


def still_edge(pattern: Pattern, piece: Piece, named: str | None) -> str:
    """The edge that does not move: the named one, else that on the fold.

    NameLost where it became several edges: they may come to lie on different parts. StepRefused
    ``still-edge-elsewhere`` on another piece, ``still-edge-missing`` when none is said and not exactly one
    lies on the fold.
    """
    if named is not None:
        edge = require_one(pattern, named)
        if not piece.has_edge(edge):
            raise StepRefused("still-edge-elsewhere", edge=spoken(named), piece=spoken(piece.name))
        return edge
    on_fold = [edge.name for edge in piece.outline if edge.kind == "fold"]
    if len(on_fold) != 1:
        raise StepRefused("still-edge-missing", piece=spoken(piece.name))
    return on_fold[0]


def place_on(
    pattern: Pattern, context: StepContext, piece: Piece, at: PlaceParameters
) -> tuple[Located, bool]:
    """The place on the edge that is meant, and whether it is counted from the start of that edge.

    Where darts divide the edge, it is found along the whole as sewn, unless a part is written down.
    NameLost ``dart-place-other-part`` when it comes to lie on another part of the edge than the one that is
    written down; StepRefused ``dart-place-elsewhere`` on another piece, ``dart-on-fold``, ``dart-on-leg``,
    ``dart-at-corner``.
    """
    found = locate(pattern, context.place(pattern, at))
    wanted = at.part or at.edge
    if found.edge.name not in require(pattern, wanted):
        raise NameLost(
            "dart-place-other-part",
            name=wanted,
            found=spoken(found.edge.name),
            wanted=spoken(wanted),
            candidates=(found.edge.name,),
            by="",
        )
    if found.piece != piece.name:
        raise StepRefused("dart-place-elsewhere", edge=spoken(wanted), piece=spoken(piece.name))
    _require_cloth(found.edge)
    walk = directed(pattern, at.edge, at.from_point)
    found = _at_joint(found, {walk[0].start, walk[-1].edge.end if walk[-1].forward else walk[-1].edge.start})
    return found, next(step.forward for step in walk if step.edge.name == found.edge.name)


def _at_joint(found: Located, ends: set[str]) -> Located:
    """The place, at a joint of the edge exactly there; StepRefused ``dart-at-corner`` at its end."""
    edge = found.edge
    for point, distance in ((edge.start, 0.0), (edge.end, edge.length)):
        if abs(found.distance - distance) <= TOLERANCES.closure:
            if point in ends:
                raise StepRefused("dart-at-corner", edge=spoken(edge.name), point=spoken(point))
            return Located(edge, found.piece, distance, edge.path.point_at(distance))
    return found


def _require_cloth(edge: Edge) -> None:
    if edge.kind == "fold":
        raise StepRefused("dart-on-fold", edge=spoken(edge.name))
    if edge.kind == "leg":
        raise StepRefused("dart-on-leg", edge=spoken(edge.name))
