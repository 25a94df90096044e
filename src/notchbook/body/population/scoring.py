"""Every value of a record against all others of it."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

import numpy as np

from notchbook.body.population.evidence import Evidence, Frame
from notchbook.body.population.results import Expected, Score
from notchbook.body.population.system import System
from notchbook.body.population.systems import Systems

LEAST_SHARE = 0.01
"""A measure is named among those that an expectation rests on when leaving it out would raise the variance
by this part or more (own judgment)."""


def score_records(systems: Systems, given: Sequence[Evidence]) -> list[tuple[Score, ...]]:
    """The scores of each record; those that hold the same measures in the same frame are done at once."""
    groups: dict[tuple[Frame, tuple[str, ...]], list[int]] = defaultdict(list)
    for place, one in enumerate(given):
        groups[one.frame, tuple(one.values)].append(place)
    found: list[tuple[Score, ...]] = [()] * len(given)
    for (frame, keys), places in groups.items():
        if keys:
            records = [given[place] for place in places]
            for place, scores in zip(places, _group(systems, systems.of(frame, keys), records), strict=True):
                found[place] = scores
    return found


def _group(systems: Systems, system: System, given: Sequence[Evidence]) -> Iterator[tuple[Score, ...]]:
    off = systems.off(system, given)
    sd = system.sd_given_rest.tolist()
    # What is left of a value beside the others: its part of (precision x distances), over its precision.
    left = (off @ system.precision) / np.diag(system.precision)
    names = _rests_on(system)
    for one, lefts in zip(given, left.tolist(), strict=True):
        expected = {
            key: Expected(key, value - lefts[place], sd[place], names[place])
            for place, (key, value) in enumerate(one.values.items())
        }
        yield tuple(_score(name, value, expected[key]) for name, key, value in one.entries)


def _score(name: str, value: float, expected: Expected) -> Score:
    return Score(name, value, expected, (value - expected.value) / expected.sd)


def _rests_on(system: System) -> list[tuple[str, ...]]:
    """For each key, the others that it hangs on when all are given, strongest first."""
    precision, count = system.precision, len(system.keys)
    partial = precision**2 / np.outer(np.diag(precision), np.diag(precision))
    names = []
    for place in range(count):
        # A squared partial correlation r2 raises the variance by r2 / (1 - r2) when the other is left out.
        share = partial[place, :count] / np.maximum(1.0 - partial[place, :count], 1e-12)
        share[place] = 0.0
        order = np.argsort(-share, kind="stable")
        names.append(tuple(system.keys[other] for other in order if share[other] >= LEAST_SHARE))
    return names
