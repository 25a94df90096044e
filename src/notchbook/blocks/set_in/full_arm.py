"""A full arm in a small armhole: the ease round the upper arm gives way a little before the armhole must."""

import math
from dataclasses import replace

from notchbook.blocks.set_in.cap import Cap, low_share
from notchbook.blocks.set_in.crown import crowned_cap
from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.levers import half_width
from notchbook.blocks.set_in.room import has_room, lies_on_armhole

_STEP = 2.0
"""mm by which the ease gives way from one trial to the next."""


def with_room(given: SleeveGiven, most: float) -> SleeveGiven:
    """The same sleeve, narrower by as little as gives its cap a good shape, by ``most`` mm at most.

    Nothing gives way where the cap is good as it is, or where so little does not heal it; where the arm finds
    no room at all, all of it does, so that the armhole need be lowered by less.
    """
    if given.keep != "biceps" or most <= 0.0:
        return given
    cap = crowned_cap(given)[0]
    if _is_good(given, cap):
        return given
    for number in range(1, math.ceil(most / _STEP) + 1):
        trial = _narrower(given, min(number * _STEP, most))
        if _is_good(trial, crowned_cap(trial)[0]):
            return trial
    return given if has_room(given, cap) else _narrower(given, most)


def _narrower(given: SleeveGiven, by: float) -> SleeveGiven:
    return replace(given, biceps=given.biceps - by, gave_way=by)


def _is_good(given: SleeveGiven, cap: Cap | None) -> bool:
    """Whether a cap is neither low nor boxy and lies on the armhole."""
    if cap is None:
        return False
    return (
        cap.height >= low_share(given) * given.armhole.girth
        and half_width(cap) <= figure("cap.most_half_width") * cap.biceps
        and lies_on_armhole(cap)
    )
