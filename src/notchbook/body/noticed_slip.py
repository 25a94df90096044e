"""How large a slip must be to be noticed."""

from functools import lru_cache
from statistics import NormalDist

_NORMAL = NormalDist()


@lru_cache(maxsize=64)
def noticed_slip(look_again: float, chance: float = 0.5) -> float:
    """The slip, in SD of the value given all others, that lifts its ``|z|`` over ``look_again``.

    It does so with this chance (0 to 1): the value without the slip is normally distributed, so it may lie on
    either side, and be seen beyond either limit.
    """
    low, high = 0.0, look_again + 10.0
    while high - low > 1e-9:
        middle = (low + high) / 2.0
        seen = _NORMAL.cdf(middle - look_again) + _NORMAL.cdf(-middle - look_again)
        low, high = (middle, high) if seen < chance else (low, middle)
    return high
