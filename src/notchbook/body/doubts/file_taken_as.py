"""Whether the bodies of a file were taken as the survey takes them, though the file does not say so.

Loads numpy; imported only where a file is held against a population.
"""

import statistics
from collections import Counter
from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Final

import numpy as np

from notchbook.body.doubts.file_shift import FileShift
from notchbook.body.doubts.together import Together, together
from notchbook.body.measure_set import MeasureSet
from notchbook.body.population import Population

FRAME_GAIN: Final = 1.0
"""Logarithm of how much better the middle body must fit as the survey takes it. With 20 measures the middle
of rows of the survey has 3 to 4, of bodies drawn as this book takes them -4 to -10, and the likeliest of 80
dozens of these -4 (computed on the rows that the populations are made from)."""

LEAST_KNOWN: Final = 0.9
"""Share of the values that the survey must know: a file with more of other measures is not its own (own
judgment)."""

MOST_SLIPS: Final = 2
"""So many slips of a body are left out of the question."""

LEAST_VALUES: Final = 6
"""Values of a body that can tell how they were taken; fewer tell next to nothing (own judgment)."""


def taken_as_survey(
    population: Population, sets: Sequence[MeasureSet], spoiled: Collection[str], least: int
) -> FileShift | None:
    """The remark that the file looks taken as the survey takes it; None where it does not.

    ``sets`` do not say so. ``spoiled`` are measures that are off either way, and tell nothing.
    """
    gains: list[float] = []
    keys: Counter[str] = Counter()
    for measures in sets:
        gain = _gain(population, measures, spoiled)
        if gain is not None:
            gains.append(gain)
            keys.update(measures.measure_keys())
    if len(gains) < max(least, len(sets) // 2) or statistics.median(gains) < FRAME_GAIN:
        return None
    known = tuple(key for key in population.model.survey if keys[key])
    ways = (0.0,) * len(known)
    rows = sum(gain > 0 for gain in gains)
    return FileShift("survey", known, 0.0, 0.0, 1.0, rows, len(gains), ways, taken_as="survey")


def _gain(population: Population, measures: MeasureSet, spoiled: Collection[str]) -> float | None:
    """By how much the logarithm of the likelihood rises, against the waist that is stated and the navel."""
    keys = [key for key in measures.measure_keys() if key in population.keys]
    known = [key for key in keys if key in population.model.survey]
    if len(known) < LEAST_VALUES or len(known) < LEAST_KNOWN * len(keys) or measures.waist_level == "lower":
        return None
    without = {*keys} - {*known} | {*spoiled}
    at_navel = replace(measures, waist_level="navel", waist_drop=0.0)
    ways = (replace(at_navel, taken_as="survey"), at_navel, replace(measures, waist_drop=0.0))
    survey, *book = _without_slips(
        [together(population, one, without) for one in ways], population.look_again
    )
    return _log_likelihood(survey) - max(map(_log_likelihood, book))


def _without_slips(wholes: list[Together], look_again: float) -> list[Together]:
    """The body without values that stand out whichever way it was taken; one after the other."""
    for _ in range(MOST_SLIPS):
        far = [_standing_out(whole, look_again) for whole in wholes]
        worst = max(far[0].items(), key=lambda one: one[1], default=("", 0.0))[0]
        if not all(worst in one for one in far):
            break
        wholes = [whole.keeping((worst,)) for whole in wholes]
    return wholes


def _standing_out(whole: Together, look_again: float) -> dict[str, float]:
    standings = whole.standings()
    return {key: abs(one.z) for key, one in standings.items() if abs(one.z) >= look_again}


def _log_likelihood(whole: Together) -> float:
    distance = float(whole.off @ whole.precision @ whole.off)
    return -0.5 * (distance - float(np.linalg.slogdet(whole.precision)[1]))
