"""How an estimate says where it comes from, and telling the book's own estimates from hers."""

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import Final

from notchbook.body.measure import Measure
from notchbook.body.measure_set import PopulationName
from notchbook.body.one_line import LONGEST_NAME
from notchbook.body.quantity_words import said_key

_MOST_NAMED: Final = 4
"""Measures that are named as the ground of an estimate; the rest is counted."""

NO_OTHER: Final = "no other measure"
"""What an estimate rests on that is the mean of its population."""

_OWN: Final = re.compile(r"from .+; ([\d,]+ (women|men) of|a size table of (women|men),) .+")


def estimate_method(given: Sequence[str], people: str, population: PopulationName | None = None) -> str:
    """``from height, bust girth, waist girth; 993 women of ANSUR II (2012)``, short enough for a method.

    ``given`` are the keys on which it rests, the strongest first, said in the words of ``population``;
    ``people`` says of whom it was learned.
    """
    return _method(tuple(given), people, population)


@lru_cache(maxsize=4096)
def _method(given: tuple[str, ...], people: str, population: PopulationName | None) -> str:
    said = [said_key(key, population) for key in given]
    named = min(len(given), _MOST_NAMED)
    while named > 1 and len(_words(said, named, people)) > LONGEST_NAME:
        named -= 1
    return _words(said, named, people)


def is_own_estimate(measure: Measure) -> bool:
    """Whether the book worked this estimate out from other measures (and not she by her judgment)."""
    return measure.status == "estimated" and _OWN.fullmatch(measure.method) is not None


def _words(said: Sequence[str], named: int, people: str) -> str:
    words = ", ".join(said[:named]) or NO_OTHER
    more = f" and {len(said) - named} more" if len(said) > named else ""
    return f"from {words}{more}; {people}"
