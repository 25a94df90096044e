"""How front, back and depth of a legging share its crotch length: within what a hand would draw."""

from dataclasses import dataclass

from notchbook.blocks.stretch.figures import figure
from notchbook.errors import DraftRefused

_SLACK = 1.0
"""mm; what the slant of the centers leaves of a rise at its limit."""


@dataclass(frozen=True, slots=True)
class Rises:
    """How high the waist stands at the centers over that at the side, mm."""

    front: float
    back: float

    @property
    def both(self) -> float:
        """Their sum."""
        return self.front + self.back


@dataclass(frozen=True, slots=True)
class Limits:
    """The least, usual and most rises, and how far the depth may be pulled either way, mm."""

    least: Rises
    usual: Rises
    most: Rises
    shallow: float
    deep: float


def limits(hip: float) -> Limits:
    """What a hand would draw over a hip of this girth on the pattern."""
    scale = hip / figure("leggings.figures_hip")
    least, usual, most = (
        Rises(scale * figure(f"leggings.{word}_front_rise"), scale * figure(f"leggings.{word}_back_rise"))
        for word in ("least", "usual", "most")
    )
    shallow, deep = (scale * figure(f"leggings.{word}_depth") for word in ("least", "most"))
    return Limits(least, usual, most, shallow, deep)


def crotch_depth(level: Rises, bounds: Limits) -> float:
    """By how much the crotch lies lower than the rise says, mm, where with no depth pulled the waist would
    stand at ``level``. Rises and depth are pulled together, each to its own limit and no farther."""
    off = level.both - bounds.usual.both
    end, depth = (bounds.most, bounds.deep) if off > 0.0 else (bounds.least, bounds.shallow)
    room = end.both - bounds.usual.both + 2.0 * depth
    return min(off / room, 1.0) * depth


def require_agreement(rises: Rises, bounds: Limits, crotch: float, rise: float) -> None:
    """DraftRefused ``leggings-crotch-short`` and ``leggings-crotch-long`` where even with everything pulled
    the waist stands too low or too high; with the crotch length that can be had and the rise that would
    agree."""
    if rises.both > bounds.most.both + _SLACK:
        code, beyond = "leggings-crotch-long", rises.both - bounds.most.both
    elif rises.both < bounds.least.both - _SLACK:
        code, beyond = "leggings-crotch-short", rises.both - bounds.least.both
    else:
        return
    raise DraftRefused(
        code, crotch=crotch, rise=rise, attainable=crotch - beyond, agreeing_rise=rise + beyond / 2.0
    )


def evened_depth(level: Rises, depth: float, bounds: Limits, lift: float) -> float:
    """The depth, greater where the back would rise by more than the slant of its center lifts it (``lift``,
    mm): the waist edge would become an S. The front falls no farther below the side for that than a little
    more than usual."""
    too_high = level.back - depth - figure("leggings.even_back_rise") * lift
    fall = figure("leggings.even_front_share") * (bounds.usual.front - bounds.least.front)
    room = min(
        figure("leggings.even_depth_share") * bounds.deep - depth,
        level.front - depth - bounds.usual.front + fall,
    )
    return depth + max(min(too_high, room), 0.0)


def moved_to_front(rises: Rises, bounds: Limits, even_back: float) -> float:
    """By how much the front crotch is drafted longer, and the back shorter, so that both rises lie within
    their limits, mm; where together they cannot, both are off alike. Where there is room for it the back
    rises no more than ``even_back``, up to which the waist edge bends one way."""
    low = max(bounds.least.front - rises.front, rises.back - bounds.most.back)
    high = min(bounds.most.front - rises.front, rises.back - bounds.least.back)
    if low > high:
        return (low + high) / 2.0
    return min(max(0.0, low, min(rises.back - even_back, figure("leggings.most_moved"))), high)
