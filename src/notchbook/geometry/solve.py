"""The one place where a monotone function has a wanted value."""

from collections.abc import Callable
from functools import cache

from notchbook.errors import GeometryError

_GROWTH = 1.6
_MOST_GROWTHS = 60
_PLACE = 1e-9
"""How exactly the place is found, in the unit of the argument: far below any closure."""

_RELATIVE = 1e-15
"""The same as a share of the place: the least that the solver accepts."""


def solve_rising(
    function: Callable[[float], float], start: float, step: float, low: float, high: float
) -> float:
    """The place where a rising or falling function is 0, sought outward from ``start``.

    The bracket grows from ``step`` and never leaves [low, high]: a fixed wide bracket would ask for
    shapes that cannot be drawn although a solution lies near. GeometryError ``no-solution`` with the
    values at both ends when the function does not change its sign between the limits.
    """
    from scipy.optimize import brentq  # imported here: starting the command line loads no numerics

    function = cache(function)  # a shape is dear: none is drawn twice, at a limit or as an end of the bracket
    left = right = min(max(start, low), high)
    value_left = value_right = function(left)
    for _ in range(_MOST_GROWTHS):
        if value_left == 0.0:
            return left
        if value_right == 0.0:
            return right
        # Signs are compared, not the product: that of two very small values is 0.
        if (value_left < 0.0) != (value_right < 0.0):
            return float(brentq(function, left, right, xtol=_PLACE, rtol=_RELATIVE))
        if left <= low and right >= high:
            break
        left, right = max(low, left - step), min(high, right + step)
        value_left, value_right = function(left), function(right)
        step *= _GROWTH
    raise GeometryError("no-solution", low=low, high=high, at_low=value_left, at_high=value_right)
