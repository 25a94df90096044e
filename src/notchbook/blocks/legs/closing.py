"""A length that is nearly proportional to what is moved: brought to its value in few drawings."""

from collections.abc import Callable

from notchbook.geometry.solve import solve_rising

_ROUNDS = 14
_EXACT = 1e-8
"""mm: far below any closure."""


def closed(
    error: Callable[[float], float],
    start: float,
    slope: float,
    low: float,
    high: float,
    step: float,
    exact: float = _EXACT,
) -> float:
    """The place within [low, high] where ``error`` (mm) is less than ``exact``, sought from ``start`` along
    its usual ``slope``.

    The slope is learned from the last two drawings. Where that does not settle, the place is sought by a
    bracket that grows from ``step``: GeometryError ``no-solution`` where there is none.
    """
    place, last = min(high, max(low, start)), None
    for _ in range(_ROUNDS):
        value = error(place)
        if abs(value) < exact:
            return place
        if last is not None and place != last[0]:
            found = (value - last[1]) / (place - last[0])
            if slope / 4.0 < found < slope * 4.0 or slope * 4.0 < found < slope / 4.0:
                slope = found
        last = (place, value)
        moved = min(high, max(low, place - value / slope))
        if moved == place:
            break
        place = moved
    return solve_rising(error, place, step, low, high)
