"""Both panels' waists at once: darts, side seams and bust level, so that the sewn waist is what was wanted.

All of it hangs together (the width of a dart moves the bust level, the bust level tilts the side seam,
its tilt bends the waist), but weakly: a few rounds of putting each right in turn settle it.
"""

from dataclasses import dataclass, replace
from math import atan2, sqrt

from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.suppression import Suppression
from notchbook.blocks.upper.waist_chain import DartAim, WaistChain, waist_chain
from notchbook.errors import DraftRefused

_ROUNDS = 60
_EXACTNESS = 1e-10


@dataclass(frozen=True, slots=True)
class Chest:
    """What the waist must know of the chest: where the bust point stands (x), how long the way down from
    it to the waist is (None without bust measures: the bust level is then the underarm level)."""

    point_x: float
    below_point: float | None


@dataclass(slots=True)
class Guess:
    """What is put right round by round, mm: the summed dart mouths of each panel, the side, the height of
    the back's bust line and of its waist at the side, how far the front's bust line falls to the side; the
    tilt in radians."""

    front: float
    back: float
    side: float
    back_y: float
    back_foot: float = 0.0
    fall: float = 0.0
    tilt: float = 0.0

    def put(self, tilt: float, back_foot: float, tall: float, fall: float) -> float:
        """Take these over; returns by how much they differ from what was there, all in all."""
        moved = abs(tilt - self.tilt) + abs(back_foot - self.back_foot) + abs(fall - self.fall)
        moved += abs(back_foot + tall - self.back_y)
        self.tilt, self.back_foot, self.back_y, self.fall = tilt, back_foot, back_foot + tall, fall
        return moved


@dataclass(frozen=True, slots=True)
class Waists:
    """The settled waists. Heights over the waist at the centers; ``tilt`` of the side seams in radians
    (positive: they lean out upward); ``side`` what each panel gives up there; lengths in mm.

    ``bust_y`` is the height of the bust point; ``bust_run`` the way along the side seam from the waist up to
    the bust line, the same in front and behind. Where the underarm lies lower than the bust point, the
    bust line falls from there to the underarm. ``settled`` is where a search nearby may begin.
    """

    front: WaistChain
    back: WaistChain
    tilt: float
    side: float
    bust_y: float
    settled: Guess


def settle_waists(
    given: BodiceGiven,
    shares: Suppression,
    chest: Chest,
    widths: tuple[float, float],
    start: Guess | None = None,
) -> Waists:
    """Front and back waist of panels so wide at the bust line, mm; ``start`` is where the search begins.

    The sewn lengths sum to half the waist (where one is given) within 1e-9 mm. DraftRefused:
    ``bodice-waist-darts-too-wide``, ``bodice-bust-point-low``, ``bodice-bust-point-wide``,
    ``bodice-waist-unreachable``.
    """
    front_width, back_width = widths
    underarm = given.back_length - given.scye_depth
    guess = replace(start) if start else Guess(shares.front, shares.back, shares.side, underarm)
    front_wanted = front_width - shares.side - shares.front
    for _ in range(_ROUNDS):
        front_side = _slanted(chest.point_x, front_width, guess.fall) - guess.side
        front = waist_chain(
            _front_aims(given, chest, guess.front, front_side, underarm), front_side, guess.tilt
        )
        level = _bust_level(chest, front, underarm)
        tall = min(level - front.side_y, underarm - guess.back_foot)
        if tall < proportion("bust.least_height"):
            raise DraftRefused("bodice-bust-point-low", height=tall)
        tilt, back_side = atan2(guess.side, tall), back_width - guess.side
        back = waist_chain(_back_aims(given, guess.back, back_side, guess.back_y), back_side, tilt)
        moved = guess.put(tilt, back.side_y, tall, level - front.side_y - tall)
        moved += _put_right(guess, given, shares, front.length - front_wanted, front.length + back.length)
        if moved < _EXACTNESS:
            return Waists(front, back, tilt, guess.side, level, guess)
    raise DraftRefused("bodice-waist-unreachable", waist=given.waist or 0.0, bust=given.bust)


def _put_right(
    guess: Guess, given: BodiceGiven, shares: Suppression, front_over: float, sewn: float
) -> float:
    """Move what may move by what the sewn waist is off; returns by how much all in all."""
    if given.waist is None:
        return 0.0
    over = sewn - given.waist / 2.0
    if shares.front > 0.0 and shares.back > 0.0:
        guess.front = max(guess.front + front_over, 0.0)
        guess.back = max(guess.back + over - front_over, 0.0)
        return abs(over) + abs(front_over)
    if shares.front > 0.0:
        guess.front = max(guess.front + over, 0.0)
    elif shares.back > 0.0:
        guess.back = max(guess.back + over, 0.0)
    else:
        guess.side += over / 2.0
    return abs(over)


def _slanted(point_x: float, width: float, fall: float) -> float:
    """How far from the center the side lies where a line of this width falls so far from the bust point."""
    beside = width - point_x
    if abs(fall) >= beside:
        raise DraftRefused("bodice-bust-point-far", way=beside, beside=abs(fall))
    return point_x + sqrt(beside * beside - fall * fall)


def _bust_level(chest: Chest, front: WaistChain, underarm: float) -> float:
    if chest.below_point is None:
        return underarm
    if front.darts:
        return front.darts[0].point_y
    if chest.point_x >= front.parts[-1].end_x:
        raise DraftRefused(
            "bodice-bust-point-wide", width=2.0 * chest.point_x, front=2.0 * front.parts[-1].end_x
        )
    return front.height_at(chest.point_x) + chest.below_point


def _front_aims(
    given: BodiceGiven, chest: Chest, mouths: float, side_x: float, underarm: float
) -> tuple[DartAim, ...]:
    """The first dart stands under the bust point, the second halfway on to the side."""
    if given.front_darts == 0 or given.waist is None:
        return ()
    wider = _first_mouth(mouths, "waist.first_front_share") if given.front_darts == 2 else mouths
    half = wider / 2.0
    level = underarm if chest.below_point is None else min(chest.below_point, underarm)
    drop = _drop("waist.front_second_drop", level)
    first = DartAim(chest.point_x, half, leg=chest.below_point)
    if chest.below_point is None:
        first = DartAim(chest.point_x, half, height=underarm - drop)
    if given.front_darts == 1:
        return (first,)
    middle = (chest.point_x + half + side_x) / 2.0
    return first, DartAim(middle, (mouths - wider) / 2.0, height=level - drop)


def _back_aims(given: BodiceGiven, mouths: float, side_x: float, bust_y: float) -> tuple[DartAim, ...]:
    """The back darts stand at shares of the sewn waist and end below the bust line."""
    if given.back_darts == 0 or given.waist is None:
        return ()
    sewn = side_x - mouths
    height = bust_y - _drop("waist.back_first_drop", bust_y)
    if given.back_darts == 1:
        half = mouths / 2.0
        return (DartAim(proportion("waist.back_one_place") * sewn + half, half, height=height),)
    first = _first_mouth(mouths, "waist.first_back_share")
    second = mouths - first
    return (
        DartAim(proportion("waist.back_two_first") * sewn + first / 2.0, first / 2.0, height=height),
        DartAim(
            proportion("waist.back_two_second") * sewn + first + second / 2.0,
            second / 2.0,
            height=bust_y - _drop("waist.back_second_drop", bust_y),
        ),
    )


def _first_mouth(mouths: float, share: str) -> float:
    """The mouth of the first of two darts, mm: the wider one, as long as it is not too wide for one dart."""
    return min(proportion(share) * mouths, max(proportion("waist.most_one_dart"), mouths / 2.0))


def _drop(name: str, level: float) -> float:
    """How far a dart ends below the bust level, mm: little where that lies low itself."""
    return min(proportion(name), proportion("waist.most_drop_share") * max(level, 0.0))
