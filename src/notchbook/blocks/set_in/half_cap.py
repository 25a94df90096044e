"""One half of the cap with its one lever, and the limits that the armhole sets to it.

The lever runs from 0 to 9 and always makes the cap higher and narrower:

* 0 to 1: the hollow goes from much shallower than the armhole's to deeper, at its shortest;
* 1 to 2: the turn-over goes up from its lowest place to where 60 mm of the cap lie on the armhole, the
  crown broad and the hollow deeper than the armhole's;
* 2 to 3: the hollow goes from deeper to as deep as the armhole's, 60 mm still lying on it;
* 3 to 4: the turn-over goes up to where 60 mm lie close on the armhole, the crown half way to usual;
* 4 to 5: the crown goes on to usual;
* 5 to 6: the turn-over goes on to where 75 mm of the cap lie on the armhole;
* 6 to 7: the turn-over goes on to its highest place;
* 7 to 8: the crown goes on to narrow;
* 8 to 9: the hollow grows steeper than the armhole's, as far as 60 mm still lie on it (on a wide, flat
  armhole the cap could not rise otherwise).

Below 2 the cap leaves the armhole sooner than it should.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Literal, NamedTuple

from notchbook.blocks.set_in.cap_line import CapLine
from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.lower_armhole import LowerArmhole
from notchbook.geometry.solve import solve_rising

Which = Literal["front", "back"]

LEAST, LAID, USUAL, HIGHEST, MOST = 0.0, 2.0, 5.0, 7.0, 9.0
"""Places on the lever, see above."""


_LEVER_STEP = 1e-5
_LAID_SHAPE, _HIGHEST_SHAPE = 3, 7
"""Shapes from which 60 mm of the cap lie on the armhole, and with the turn-over at its highest place."""


class Slopes(NamedTuple):
    """mm of width and of height to one step of the lever."""

    inward: float
    up: float


class _Shape(NamedTuple):
    """A place on the lever: the turn-over, how much deeper the hollow is, rise and top of the crown."""

    turn_over: float
    deeper: float
    rise: float
    top: float


@dataclass(frozen=True, slots=True)
class HalfCap:
    """Front or back of the cap: ``length`` to the crown, and its shapes at 0, 1 ... 9 on the lever."""

    which: Which
    lower: LowerArmhole
    length: float
    shapes: tuple[_Shape, ...]

    def line(self, lever: float, tilt: float) -> CapLine:
        """The half cap at a place of the lever; ``tilt`` of the underarm seam in radians."""
        whole = min(int(lever), len(self.shapes) - 2)
        share = lever - whole
        pairs = zip(self.shapes[whole], self.shapes[whole + 1], strict=True)
        turn_over, deeper, rise, top = (low + share * (high - low) for low, high in pairs)
        return CapLine(self.lower, self.length, turn_over, deeper, rise, top, tilt)

    def slopes(self, lever: float, line: CapLine) -> "Slopes":
        """How fast width and height change along the lever, from ``line``, which is the one at it."""
        step = _LEVER_STEP if lever + _LEVER_STEP <= MOST else -_LEVER_STEP
        x, y, _ = self.line(lever + step, line.tilt).end
        return Slopes((x - line.end[0]) / step, (y - line.end[1]) / step)

    def reaching(self, height: float, tilt: float) -> float:
        """The lever at which the cap is so high (mm), or the end of the lever that comes nearest."""
        if height <= self.line(LEAST, tilt).end[1]:
            return LEAST
        if height >= self.line(MOST, tilt).end[1]:
            return MOST
        return solve_rising(lambda p: self.line(p, tilt).end[1] - height, USUAL, 0.5, LEAST, MOST)


def half_cap(which: Which, lower: LowerArmhole, length: float, tilt: float, farther: float = 0.0) -> HalfCap:
    """A half cap of this length to the crown over this armhole.

    ``tilt`` (radians) is about how the underarm seam will lean: the gaps are judged with it. ``farther`` is
    the share of the way to its highest place by which the turn-over lies higher from 3 to 6 on the lever.
    """
    lowest = figure("cap.first_turn")
    highest = max(figure("cap.last_turn_share") * length, lowest)
    broad, usual, narrow = _crowns()
    middle = ((broad[0] + usual[0]) / 2.0, (broad[1] + usual[1]) / 2.0)
    limit = figure(f"lay.{which}_gap") - figure("lay.margin")
    least, most = figure("lay.least_length"), figure("lay.most_length")

    def laid_from(low: float, reach: float, gap: float, deeper: float, crown: tuple[float, float]) -> float:
        """The lowest turn-over at which so much of the cap lies on the armhole, mm."""

        # The cap leaves the armhole outward only, so the gap is widest at the end of the reach.
        def over(turn_over: float) -> float:
            return CapLine(lower, length, turn_over, deeper, *crown, tilt).gap_at(reach) - gap

        if over(low) <= 0.0:
            return low
        if over(highest) >= 0.0:
            return highest
        return solve_rising(over, min(max(reach, low), highest), 6.0, low, highest)

    deeper = figure("cap.deeper")
    deep = laid_from(lowest, least, limit, deeper, broad)
    laid = laid_from(deep, least, limit, 0.0, broad)
    close = laid_from(laid, least, figure("lay.close_gap"), 0.0, middle)
    far = laid_from(close, most, limit, 0.0, usual)
    shapes = (
        _Shape(lowest, -figure("cap.shallower"), *broad),
        _Shape(lowest, deeper, *broad),
        _Shape(deep, deeper, *broad),
        _Shape(laid, 0.0, *broad),
        _Shape(close, 0.0, *middle),
        _Shape(close, 0.0, *usual),
        _Shape(far, 0.0, *usual),
        _Shape(highest, 0.0, *usual),
        _Shape(highest, 0.0, *narrow),
        _Shape(highest, _steeper(lower, length, highest, limit, tilt), *narrow),
    )
    return HalfCap(which, lower, length, tuple(_followed(shapes, farther)))


def _followed(shapes: tuple[_Shape, ...], farther: float) -> Iterator[_Shape]:
    """The shapes with their turn-over so much higher, where 60 mm of the cap lie on the armhole anyhow."""
    highest = shapes[_HIGHEST_SHAPE].turn_over
    for number, shape in enumerate(shapes):
        if _LAID_SHAPE <= number < _HIGHEST_SHAPE:
            shape = shape._replace(turn_over=shape.turn_over + farther * (highest - shape.turn_over))
        yield shape


def _steeper(lower: LowerArmhole, length: float, turn_over: float, limit: float, tilt: float) -> float:
    """How much more than the armhole a hollow may turn, its first 60 mm still lying on it."""
    reach, most = figure("lay.least_length"), figure("cap.steeper")

    def over(steeper: float) -> float:
        return CapLine(lower, length, turn_over, steeper, *_crowns()[2], tilt).gap_at(reach) + limit

    if over(0.0) <= 0.0:
        return 0.0
    return most if over(most) >= 0.0 else solve_rising(over, most / 4.0, most / 4.0, 0.0, most)


@cache
def _crowns() -> tuple[tuple[float, float], tuple[float, float], tuple[float, float]]:
    """Rise and top of the broad, the usual and the narrow crown."""
    broad, usual, narrow = (
        (figure(f"cap.{name}_crown_rise"), figure(f"cap.{name}_crown_top"))
        for name in ("broad", "usual", "narrow")
    )
    return broad, usual, narrow
