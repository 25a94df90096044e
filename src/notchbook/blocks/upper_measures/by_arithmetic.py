"""Naming what arithmetic alone forbids, also where no population tells anything."""

from typing import Final

from notchbook.blocks.upper_measures.agreement_table import Pair
from notchbook.blocks.upper_measures.disagreement import Disagreement
from notchbook.blocks.upper_measures.expecting import expected_value
from notchbook.blocks.upper_measures.limits import Breach, is_within, usual_diagonal
from notchbook.blocks.upper_measures.read_again import read_again
from notchbook.blocks.upper_measures.upper_measures import UpperMeasures
from notchbook.blocks.upper_measures.usual_dart import DART_KEYS, dart_change

UNUSUAL: Final = 2.0
"""Standard deviations from which a value is held for the wrong one though nothing is known of the other
(own judgment)."""

_STEPS: Final = 60
"""Hundredths of a value, up to which another one is looked for that keeps a limit."""


def by_arithmetic(measures: UpperMeasures, breach: Breach) -> Disagreement | None:
    """The disagreement that a limit shows, explained by what the body lets expect, else by the limit."""
    limit = breach.limit
    deviations, key, value = farthest_off(measures, limit.keys)
    if value is None:
        value = _nearest_within(measures, breach, key)
    given = measures.find(key)
    if given is None or value is None:
        return None
    pair = limit.pair if key in limit.pair else Pair(limit.pair.first, key, limit.pair.what)
    is_told = key in DART_KEYS and deviations is not None
    return Disagreement(
        kind="pair",
        pair=pair,
        key=key,
        keys=(key,),
        given=given,
        explaining=value,
        read_again=read_again(measures, key, pair),
        deviations=deviations,
        dart=dart_change(measures, measures.with_value(key, value)) if is_told else None,
    )


def farthest_off(measures: UpperMeasures, keys: tuple[str, ...]) -> tuple[float | None, str, float | None]:
    """Which of these lies farthest off what the rest lets expect: how far (SD), which, what is expected.

    Where the population does not know all of them, and those that it knows are usual, it is the first of the
    others: nothing is expected of that one.
    """
    told: list[tuple[float, str, float]] = []
    untold: list[str] = []
    for key in keys:
        given = measures.find(key)
        if given is None:
            continue
        expected = expected_value(measures, key, frozenset(keys))
        if expected is None:
            untold.append(key)
        else:
            told.append((abs(given - expected.value) / expected.sd, key, expected.value))
    farthest = max(told, default=None)
    if farthest is not None and (not untold or farthest[0] >= UNUSUAL):
        return farthest
    return None, (untold or list(keys))[0], None


def _nearest_within(measures: UpperMeasures, breach: Breach, key: str) -> float | None:
    """The value of this measure of the pair, nearest to the one given, that keeps the limit."""
    limit, given = breach.limit, measures.find(key)
    if given is None:
        return None
    if key == "shoulder_point_to_center_waist":
        return usual_diagonal(measures.find)
    for step in range(1, _STEPS + 1):
        for way in (-1.0, 1.0):
            tried = given * (1.0 + way * step / 100.0)
            if tried > 0.0 and is_within(limit, measures.with_value(key, tried)):
                return tried
    return None
