"""From which distance on a body lies outside of a population."""

import math
from functools import cache
from typing import Final

ONE_IN_1000: Final = 3.090
ONE_IN_10000: Final = 3.719
"""Standard deviations that one of so many passes (normal distribution, one-sided)."""


@cache
def farthest(count: int, one_sided: float = ONE_IN_10000) -> float:
    """The distance (standard deviations) that one body passes with so many measures (1 or more), of as many
    as pass ``one_sided`` standard deviations in one.

    The square of it is distributed as chi-square; its quantile after Wilson and Hilferty (1931).
    """
    spread = 2.0 / (9.0 * count)
    return math.sqrt(count * (1.0 - spread + one_sided * math.sqrt(spread)) ** 3)
