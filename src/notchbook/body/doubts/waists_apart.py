"""Whether the lengths from neck and nape were taken to one waist."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.known import known_values, label_of, said_of, sided_keys
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError

MOST_DEVIATIONS: Final = 2.6
"""Standard deviations beyond which is asked: 1 body of 100 (normal distribution)."""


@dataclass(frozen=True, slots=True)
class _Difference:
    """``longer`` minus ``shorter`` in mm: mean and standard deviation."""

    longer: str
    shorter: str
    mean: float
    deviation: float


_DIFFERENCES: Final = (
    _Difference("front_waist_length", "back_waist_length", 39.0, 13.0),
    _Difference("front_waist_length", "center_front_length", 88.0, 8.0),
    _Difference("back_waist_length", "center_front_length", 49.0, 13.0),
)
"""Women, computed from a published sample of 600 women, its scatter partly simulated (own statistics).
All lengths of a pair go to the same waist, whichever it is."""


def waist_doubts(measures: MeasureSet) -> Iterator[Doubt]:
    """A question where two lengths differ as if they went to two waists.

    For men there is no source, and records of a survey take the front otherwise: neither is judged.
    """
    if measures.population == "men" or measures.taken_as == "survey":
        return
    for rule in _DIFFERENCES:
        yield from _one_difference(measures, rule)


def _one_difference(measures: MeasureSet, rule: _Difference) -> Iterator[Doubt]:
    keys = (rule.longer, rule.shorter)
    reach = MOST_DEVIATIONS * rule.deviation
    # Where nobody said whose measures these are, a body without bust must pass as well (own judgment).
    low = rule.mean - reach - (0.0 if measures.population else 40.0)
    for side, (longer, shorter) in known_values(measures, keys):
        if low <= longer - shorter <= rule.mean + reach:
            continue
        problem = InputError(
            "waists-apart",
            longer_label=label_of(rule.longer, side),
            shorter_label=said_of(rule.shorter, side),
            difference=abs(longer - shorter),
            more="longer" if longer >= shorter else "shorter",
            low=low,
            high=rule.mean + reach,
            where="",
        )
        yield Doubt("check", sided_keys(keys, side), problem)
