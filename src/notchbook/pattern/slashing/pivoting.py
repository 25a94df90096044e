"""Turning the parts of a piece about one point: some darts close, others open, the sum of angles is kept."""

from collections.abc import Mapping
from dataclasses import dataclass

from notchbook.errors import HouseFault
from notchbook.geometry import Point, Transform
from notchbook.pattern.piece import Intake, Piece
from notchbook.pattern.sewn import Located
from notchbook.pattern.slashing.assembling import Assembled, Filling, Keep, Legs, Shut, assemble
from notchbook.pattern.slashing.cuts import Cut, DartCut, slash_to
from notchbook.pattern.slashing.dividing import Division, divide
from notchbook.units import TOLERANCES

_CLOSED = 1e-9
"""Degrees that are nothing: 1e-8 mm at the end of a leg of half a meter."""


@dataclass(frozen=True, slots=True)
class Closing:
    """A dart of the piece that is turned by so many ``degrees``: closed by them, wider below zero."""

    intake: Intake
    degrees: float
    removed: bool
    """Whether it goes altogether, as the caller says; else it stays, if with nothing to take up."""


@dataclass(frozen=True, slots=True)
class Opening:
    """A place of the outline at which a new dart of so many ``degrees`` opens."""

    place: Located
    degrees: float
    legs: Legs


def pivot(
    piece: Piece, about: Point, closings: tuple[Closing, ...], openings: tuple[Opening, ...], still: str
) -> Assembled:
    """The piece with darts closed and opened about a point; the part with the edge ``still`` does not move.

    All darts that take part are drawn to the point first. What opens must be what closes, in degrees
    (HouseFault ``pivot-unbalanced``): no cloth is made or lost by turning. StepRefused as :func:`divide`
    and :func:`assemble`.
    """
    left = sum(closing.degrees for closing in closings) - sum(opening.degrees for opening in openings)
    if abs(left) > _CLOSED * 100.0:
        raise HouseFault("pivot-unbalanced", left=left)
    cuts: list[Cut] = [DartCut(closing.intake, about) for closing in closings]
    cuts += [slash_to(opening.legs.names.intake, opening.place, about) for opening in openings]
    turns = {closing.intake.name: -closing.degrees for closing in closings}
    turns |= {opening.legs.names.intake: opening.degrees for opening in openings}
    division = divide(piece, tuple(cuts))
    fillings: dict[str, Filling] = {
        closing.intake.name: Shut(TOLERANCES.seam_walk) if closing.removed else Keep() for closing in closings
    }
    fillings |= {opening.legs.names.intake: opening.legs for opening in openings}
    return assemble(division, turned_about(division, turns, about, still), fillings)


def turned_about(
    division: Division, turns: Mapping[str, float], about: Point, still: str
) -> dict[int, Transform]:
    """The turn of each part of a piece whose cuts all meet in one point.

    Walking round counter-clockwise from the part that holds the edge ``still``, every cut turns what follows
    by its angle, degrees: above zero it opens, below zero it closes. Together the turns are zero.
    """
    count = len(division.gates)
    begin = division.part_of_arc.index(division.part_of(still))
    turn = 0.0
    found = {division.part_of_arc[begin]: Transform.identity()}
    for step in range(count - 1):
        gate = division.gates[(begin + step) % count]
        turn += turns[gate.label]
        part = division.part_of_arc[(begin + step + 1) % count]
        found[part] = Transform.identity() if abs(turn) <= _CLOSED else Transform.rotation(turn, about)
    return found
