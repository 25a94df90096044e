"""Estimating for a whole file of bodies: those that hold the same measures are worked out together."""

from collections import defaultdict
from collections.abc import Sequence

import numpy as np

from notchbook.body.estimating.estimate import Estimate, Estimates, NotEstimable
from notchbook.body.estimating.estimating import estimate_from, missing_keys, people_for
from notchbook.body.estimating.reach import cautions_for
from notchbook.body.measure_set import MeasureSet, PopulationName
from notchbook.body.population import Expected, Population, population
from notchbook.body.population.evidence import Evidence, Frame, evidence_of
from notchbook.body.population.system import level_shift, make_system
from notchbook.errors import InputError

_Group = tuple[PopulationName, Frame, tuple[str, ...]]


def estimate_many(sets: Sequence[MeasureSet]) -> list[Estimates | InputError]:
    """As :func:`~notchbook.body.estimating.estimating.estimate`, for many sets; where it would refuse one,
    the refusal stands in its place."""
    answers: dict[int, Estimates | InputError] = {}
    groups: dict[_Group, list[tuple[int, Evidence]]] = defaultdict(list)
    for place, measures in enumerate(sets):
        try:
            people = people_for(measures)
        except InputError as error:
            answers[place] = error
            continue
        given = evidence_of(measures, _known(people, measures))
        groups[people.name, given.frame, tuple(given.values)].append((place, given))
    for (name, _, _), members in groups.items():
        people = population(name)
        expected = _expected(people, sets[members[0][0]], [given for _, given in members])
        missing = _Missing()
        for (place, _), found in zip(members, expected, strict=True):
            answers[place] = _answer(people, sets[place], found, missing.of(sets[place]))
    return [answers[place] for place in range(len(sets))]


def _known(people: Population, measures: MeasureSet) -> tuple[str, ...]:
    return tuple(people.model.survey if measures.taken_as == "survey" else people.model.book)


class _Missing:
    """What is missing in a set: worked out once for all sets of a kind that hold the same values."""

    def __init__(self) -> None:
        self._found: dict[tuple[str | None, ...], tuple[str, ...]] = {}

    def of(self, measures: MeasureSet) -> tuple[str, ...]:
        """The missing keys of a set."""
        alike = (measures.kind, measures.population, *measures.values)
        if alike not in self._found:
            self._found[alike] = missing_keys(measures)
        return self._found[alike]


def _answer(
    people: Population, measures: MeasureSet, expected: dict[str, Expected], missing: tuple[str, ...]
) -> Estimates:
    found: dict[str, Estimate] = {}
    left_out: list[NotEstimable] = []
    for key in missing:
        one = estimate_from(expected.get(key), key, people)
        if isinstance(one, Estimate):
            found[key] = one
        else:
            left_out.append(one)
    return Estimates(found, tuple(left_out), people.words, cautions_for(measures, people))


def _expected(people: Population, alike: MeasureSet, given: Sequence[Evidence]) -> list[dict[str, Expected]]:
    """What is expected of every other measure, for bodies that hold the same measures in one frame as
    ``alike`` does: all have its weights, its ± and its grounds, each has its own values."""
    model, frame, keys = people.model, given[0].frame, tuple(given[0].values)
    told = [people.expect(key, alike) for key in _known(people, alike) if key not in keys]
    patterns = [expected for expected in told if expected is not None]
    wanted = [expected.key for expected in patterns]
    whole = make_system(model, frame, (*wanted, *keys))
    first = len(wanted)
    weights = np.linalg.solve(whole.read[first:, first:], whole.read[first:, :first]).T
    rows = np.array([[*one.values.values(), *([one.drop] if frame.drop_known else [])] for one in given])
    off = rows.reshape(len(given), len(whole.mean) - first) - whole.mean[first:]
    if frame.level == "lower":
        off[:, : len(keys)] -= [[level_shift(model, key, one.drop) for key in keys] for one in given]
    values = whole.mean[:first] + off @ weights.T
    if frame.level == "lower":
        values += [[level_shift(model, key, one.drop) for key in wanted] for one in given]
    return [
        {
            one.key: Expected(one.key, value, one.sd, one.given)
            for one, value in zip(patterns, row, strict=True)
        }
        for row in values.tolist()
    ]
