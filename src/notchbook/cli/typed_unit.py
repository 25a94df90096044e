"""The unit in which a command was asked to answer, read from its words: a refusal knows no options."""

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from notchbook.units import UNITS, Unit

_NAMES: Final = ("--unit", "-u")

_ANSWERS_IN_CM: Final = frozenset(
    {"draft", "check", "compare", "cut", "explain", "make-it-measure", "mtm", "print", "sewing-order"}
)
"""Verbs that answer in centimeters where no unit was typed; the others write millimeters then."""


def typed_unit(words: Sequence[str]) -> Unit:
    """``in`` of ``draft skirt --unit in``; where none was typed the unit in which the verb answers."""
    asked = [second for first, second in pairwise(words) if first in _NAMES]
    asked += [word.removeprefix("--unit=") for word in words if word.startswith("--unit=")]
    known = [unit for unit in UNITS if unit in asked]
    if known:
        return known[0]
    return "cm" if words and words[0] in _ANSWERS_IN_CM else "mm"
