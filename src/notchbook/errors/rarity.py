"""How rare a value is, in words: what a number of standard deviations means among bodies."""

import math
from typing import Final

_MANY: Final = 5
"""So few bodies for one that lies as far off: nothing unusual."""

_HARDLY: Final = 1000
"""From here the tails of a table say no more than that hardly anybody is so."""


def rarity(deviations: float) -> str:
    """``about one body in 40``: how many lie as far off to either side, by the normal distribution."""
    share = math.erfc(abs(deviations) / math.sqrt(2.0))
    one_in = _HARDLY if share * _HARDLY <= 1.0 else 1.0 / share
    if one_in >= _HARDLY:
        return "hardly one body in a thousand"
    if one_in < _MANY:
        return "many a body"
    step = 1 if one_in < 20 else 10 if one_in < 200 else 100
    return f"about one body in {step * round(one_in / step)}"
