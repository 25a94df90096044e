"""Where belt loops stand on one side of a waist: evenly, clear of seams, darts, notches and each other."""

from collections.abc import Sequence
from typing import Final

from notchbook.errors import StepRefused
from notchbook.pattern import Pattern
from notchbook.style.closures.half_waist import HalfWaist, stations_on_half
from notchbook.units import TOLERANCES

CLEAR: Final = 13.0
"""mm between a loop and a seam, dart or notch of the waist, so that the two are not read as a double notch:
the trade sets those 10 to 13 mm apart (common practice)."""


def loop_places(pattern: Pattern, half: HalfWaist, first: float, each_side: int) -> tuple[float, ...]:
    """How far from the opening the loops stand, mm as sewn: so many on this side, and that at the center
    opposite.

    Each is moved to the nearest clear place, by no more than half of what they stand apart; that at the
    center stays. StepRefused ``loop-no-room``.
    """
    step = (half.length - first) / each_side
    stops = stations_on_half(pattern, half)
    _require_clear(half.length, stops)
    stops.append(half.length)
    for index in range(each_side):
        stops.append(_clear_place(first + index * step, stops, (half.length, step / 2.0)))
    return (*stops[-each_side:], half.length)


def _clear_place(wanted: float, stops: Sequence[float], limits: tuple[float, float]) -> float:
    """The nearest place that is clear of every stop; ``limits``: how long the waist is, and how far the loop
    may be moved, mm."""
    length, most = limits
    beside = [wanted, *(stop + way * CLEAR for stop in stops for way in (1.0, -1.0))]
    near = [at for at in beside if 0.0 <= at <= length and abs(at - wanted) <= most]
    clear = [at for at in near if _is_clear(at, stops)]
    if not clear:
        raise StepRefused("loop-no-room", distance=wanted, clear=CLEAR)
    return min(clear, key=lambda at: abs(at - wanted))


def _require_clear(center: float, stops: Sequence[float]) -> None:
    """The loop at the center opposite stands there and nowhere else."""
    if not _is_clear(center, stops):
        raise StepRefused("loop-no-room", distance=center, clear=CLEAR)


def _is_clear(at: float, stops: Sequence[float]) -> bool:
    return all(abs(at - stop) >= CLEAR - TOLERANCES.sew_length for stop in stops)
