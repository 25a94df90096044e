"""What the crotch seam of a body's trousers can be."""

from notchbook.blocks.legs.belly_room import room_for
from notchbook.blocks.legs.crotch_fit import CrotchFit
from notchbook.blocks.legs.given import TrousersGiven


def attainable_crotch(given: TrousersGiven) -> tuple[float, float]:
    """The least and the most sewn length of the whole crotch seam that the levers reach, mm."""
    return CrotchFit(given, room_for(given)).attainable()


def usual_crotch(given: TrousersGiven) -> float:
    """The sewn length of the whole crotch seam with no lever pulled, mm."""
    return CrotchFit(given, room_for(given)).at(0.0).crotch
