"""The one place where a cubic polynomial changes its sign between 0 and 1, without looking for others."""

_STEPS = 60
_EXACT = 1e-15


def one_root(constant: float, first: float, second: float, third: float) -> float:
    """A root in [0, 1] of a polynomial whose values at 0 and 1 differ in sign: Newton, kept in a bracket."""
    low, high, t = 0.0, 1.0, 0.5
    is_rising = constant < 0.0
    for _ in range(_STEPS):
        value = constant + t * (first + t * (second + t * third))
        if (value < 0.0) == is_rising:
            low = t
        else:
            high = t
        slope = first + t * (2.0 * second + t * 3.0 * third)
        proposed = t - value / slope if slope else low
        following = proposed if low < proposed < high else (low + high) / 2.0
        if abs(following - t) < _EXACT:
            break
        t = following
    return t
