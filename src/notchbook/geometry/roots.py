"""Real roots of polynomials between 0 and 1."""

from collections.abc import Sequence
from itertools import pairwise
from math import comb
from operator import mul
from typing import Final

_STEPS = 80
"""Steps after which a bracket of width 1 is below float resolution even by halving alone."""

_MOST_DEGREE: Final = 5

_CONTROL_ROWS: Final = tuple(
    tuple(
        tuple(comb(place, power) / comb(degree, power) for power in range(place + 1))
        for place in range(1, degree)
    )
    for degree in range(_MOST_DEGREE + 1)
)
"""By degree: what each coefficient adds to the inner control values of the polynomial over [0, 1]."""


def value_at(coefficients: Sequence[float], t: float) -> float:
    """The polynomial (constant term first) at ``t``."""
    value = 0.0
    for coefficient in reversed(coefficients):
        value = value * t + coefficient
    return value


def unit_roots(coefficients: Sequence[float], touch: float = 0.0) -> list[float]:
    """The roots in [0, 1] of a polynomial (constant term first), rising.

    Between neighbouring turning points a polynomial is monotone and has one root at most, which is
    bracketed: nothing is missed. A turning point or end whose value is at most ``touch`` away from 0
    counts as a root too (curves that only touch). A polynomial that is 0 everywhere has no roots here.
    """
    trimmed = list(coefficients)
    while trimmed and trimmed[-1] == 0.0:
        trimmed.pop()
    if len(trimmed) < 2:
        return []
    derivative = [power * trimmed[power] for power in range(1, len(trimmed))]
    controls = _controls(trimmed)
    if controls and (min(controls) > touch or max(controls) < -touch):
        return []
    if touch == 0.0 and _changes_once(controls):
        return [_bracketed(trimmed, derivative, 0.0, 1.0, trimmed[0])]
    stops = [0.0, *(t for t in unit_roots(derivative) if 0.0 < t < 1.0), 1.0]
    values = [value_at(trimmed, t) for t in stops]
    found = [t for t, value in zip(stops, values, strict=True) if abs(value) <= touch]
    found += [
        _bracketed(trimmed, derivative, low, high, value_low)
        for (low, value_low), (high, value_high) in pairwise(zip(stops, values, strict=True))
        if value_low and value_high and (value_low < 0.0) != (value_high < 0.0)
    ]
    return sorted(set(found))


def _controls(coefficients: Sequence[float]) -> list[float]:
    """The control values of a polynomial over [0, 1] as a Bezier curve; none above degree 5.

    It lies between the least and the greatest of them, and has no more roots than they change their sign
    (Farouki and Rajan, "On the numerical condition of polynomials in Bernstein form", Computer Aided
    Geometric Design 4, 1987; from memory).
    """
    degree = len(coefficients) - 1
    if degree > _MOST_DEGREE:
        return []
    inner = [sum(map(mul, row, coefficients)) for row in _CONTROL_ROWS[degree]]
    return [coefficients[0], *inner, value_at(coefficients, 1.0)]


def _changes_once(controls: Sequence[float]) -> bool:
    """Whether the control values change their sign exactly once, and none of them is 0."""
    if not controls or 0.0 in controls:
        return False
    return sum((one < 0.0) != (other < 0.0) for one, other in pairwise(controls)) == 1


def _bracketed(
    coefficients: Sequence[float], derivative: Sequence[float], low: float, high: float, value_low: float
) -> float:
    """The one root between two places where the sign differs: Newton's steps, kept in the bracket."""
    # Written out, highest power first: this loop is where the search for nearest places spends its time.
    falling, slopes = coefficients[::-1], derivative[::-1]
    t = (low + high) / 2.0
    for _ in range(_STEPS):
        value = 0.0
        for coefficient in falling:
            value = value * t + coefficient
        if value == 0.0:
            return t
        if (value < 0.0) == (value_low < 0.0):
            low = t
        else:
            high = t
        slope = 0.0
        for coefficient in slopes:
            slope = slope * t + coefficient
        proposed = t - value / slope if slope else low
        following = proposed if low < proposed < high else (low + high) / 2.0
        if following in (t, low, high) or abs(following - t) < 1e-16:
            return following
        t = following
    return t
