"""How what the waist is smaller than the bust is shared between the sides and the darts."""

from dataclasses import dataclass

from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.proportions import proportion


@dataclass(frozen=True, slots=True)
class Suppression:
    """One side of the body, mm.

    ``side`` is what each panel gives up at its side seam between bust line and waist, negative where it
    leans out; ``front`` and ``back`` what the darts of each panel take in. ``whole`` is half the bust
    less half the waist, None where the waist is left as it falls.
    """

    whole: float | None
    side: float
    front: float
    back: float


def suppression(given: BodiceGiven) -> Suppression:
    """The shares for the counts of darts that are given."""
    if given.waist is None:
        return Suppression(None, given.side_take_in or 0.0, 0.0, 0.0)
    whole = (given.bust - given.waist) / 2.0
    has_front, has_back = given.front_darts > 0, given.back_darts > 0
    if whole <= 0.0 or not (has_front or has_back):
        return Suppression(whole, whole / 2.0, 0.0, 0.0)
    if has_front and has_back:
        side = min(_side(given), whole / 2.0)
        front = proportion("waist.front_share") * (whole - 2.0 * side)
        return Suppression(whole, side, front, whole - 2.0 * side - front)
    side = min(whole / 2.0, proportion("waist.most_side"))
    if given.side_take_in is not None:
        side = min(given.side_take_in, whole / 2.0)
    rest = whole - 2.0 * side
    return Suppression(whole, side, rest if has_front else 0.0, rest if has_back else 0.0)


def dart_counts(given: BodiceGiven) -> tuple[int, int]:
    """How many waist darts this body asks for in front and behind; the counts given are not looked at.

    Two where one would be wider than 40 mm, none where it would be narrower than 8 mm.
    """
    if given.waist is None:
        return 0, 0
    whole = (given.bust - given.waist) / 2.0
    rest = whole - 2.0 * _side(given)
    front = proportion("waist.front_share") * rest
    return count_for(front), count_for(rest - front)


def usual_side(given: BodiceGiven) -> float:
    """What each panel usually gives up at the side, mm; the waist is given and smaller than the bust."""
    whole = (given.bust - (given.waist or 0.0)) / 2.0
    return min(proportion("waist.side_share") * whole / 2.0, proportion("waist.most_side"))


def _side(given: BodiceGiven) -> float:
    return usual_side(given) if given.side_take_in is None else given.side_take_in


def count_for(intake: float) -> int:
    """How many darts serve an intake of so many mm: none under 8, two over 40."""
    if intake < proportion("waist.least_dart"):
        return 0
    return 1 if intake <= proportion("waist.most_one_dart") else 2
