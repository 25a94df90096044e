"""How an estimate says where it comes from, and telling the book's own estimates from hers."""

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import Final

from notchbook.body.measure import Measure
from notchbook.body.one_line import LONGEST_NAME
from notchbook.body.quantity_words import said_key

_MOST_NAMED: Final = 4
"""Measures that are named as the ground of an estimate; the rest is counted."""

_OWN: Final = re.compile(r"from .+; [\d,]+ (women|men) of .+")


def estimate_method(given: Sequence[str], people: str) -> str:
    """``from height, bust girth, waist girth; 993 women of ANSUR II (2012)``, short enough for a method.

    ``given`` are the keys on which it rests, the strongest first; ``people`` says of whom.
    """
    return _method(tuple(given), people)


@lru_cache(maxsize=4096)
def _method(given: tuple[str, ...], people: str) -> str:
    named = min(len(given), _MOST_NAMED)
    while named > 1 and len(_words(given, named, people)) > LONGEST_NAME:
        named -= 1
    return _words(given, named, people)


def is_own_estimate(measure: Measure) -> bool:
    """Whether the book worked this estimate out from other measures (and not she by her judgment)."""
    return measure.status == "estimated" and _OWN.fullmatch(measure.method) is not None


def _words(given: Sequence[str], named: int, people: str) -> str:
    words = ", ".join(said_key(key) for key in given[:named]) or "no other measure"
    more = f" and {len(given) - named} more" if len(given) > named else ""
    return f"from {words}{more}; {people}"
