"""A cap that is hollower in front: where it would not be, its front follows the armhole farther.

The front of the cap is scooped more than its back, as the armhole is. Where both armholes are nearly alike,
the crown behind the shoulder seam leaves the front the flatter half; the hand then scoops it deeper.
"""

import math

from notchbook.blocks._least import nearest_serving
from notchbook.blocks.set_in.cap import Cap, CapLengths, cap_halves, cap_of_biceps, low_share
from notchbook.blocks.set_in.cap_line import CapLine
from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.levers import flank, half_width
from notchbook.blocks.set_in.room import lies_on_armhole

_STEPS = 5
"""Steps in which the front is made to follow the armhole farther, until one serves."""

_HALVINGS = 3
"""Rounds in which the least is then sought, so that sizes beside each other are drawn alike."""

_SAME = 1e-3
"""mm; widths that differ by less are the same."""


def hollower_in_front(given: SleeveGiven, cap: Cap, lengths: CapLengths) -> Cap:
    """The cap with its front scooped by as little as makes it hollower than its back.

    The same cap where it is so, and where no scoop makes it so without spoiling what was good of it.
    """
    if given.keep != "biceps" or _more_in_front(cap, lengths) >= 0.0:
        return cap
    whole = figure("cap.most_farther") / _STEPS
    for step in range(1, _STEPS + 1):
        found = _scooped(given, cap, lengths, step * whole)
        if found is not None:
            least = nearest_serving(
                lambda farther: _scooped(given, cap, lengths, farther),
                (step - 1) * whole,
                step * whole,
                _HALVINGS,
            )
            return least or found
    return cap


def _scooped(given: SleeveGiven, cap: Cap, lengths: CapLengths, farther: float) -> Cap | None:
    """The cap whose front follows the armhole so much farther; None where that does not serve."""
    found = cap_of_biceps(given, *cap_halves(given, lengths, farther))
    return found if found is not None and _is_better(given, found, cap, lengths) else None


def _is_better(given: SleeveGiven, scooped: Cap, cap: Cap, lengths: CapLengths) -> bool:
    """Whether a scooped cap is hollower in front, and no wider, lower, boxier or steeper than is good or than
    the cap was without."""
    low, boxy = low_share(given) * given.armhole.girth, figure("cap.most_half_width")
    return (
        _more_in_front(scooped, lengths) >= figure("cap.hollower_by")
        and scooped.biceps <= max(given.biceps, cap.biceps) + _SAME
        and scooped.height >= min(low, cap.height)
        and half_width(scooped) <= max(boxy * scooped.biceps, half_width(cap))
        and flank(scooped.front) <= max(figure("cap.steepest"), flank(cap.front))
        and (lies_on_armhole(scooped) or not lies_on_armhole(cap))
    )


def _more_in_front(cap: Cap, lengths: CapLengths) -> float:
    """By how much the front is hollower than the back, mm; each is compared with the straight way between its
    ends at the underarm and the shoulder seam."""
    whole = cap.front_width + cap.back_width
    if lengths.behind >= 0.0:
        x, y, _ = cap.front.at(lengths.front)
    else:
        back_x, y, _ = cap.back.at(lengths.back)
        x = whole - back_x
    chord = math.hypot(x, y)
    return chord * (_hollow(cap.front, x, y) - _hollow(cap.back, whole - x, y))


def _hollow(line: CapLine, end_x: float, end_y: float) -> float:
    """How far half a cap strays below the straight way from its underarm to an end, as a share of that."""
    deepest = max(end_y * x - end_x * y for x, y, _ in line.hollow)
    return deepest / (end_x * end_x + end_y * end_y)
