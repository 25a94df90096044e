"""Measures that are off in a whole file of bodies: another waist, another unit, another way to take them.

Loads numpy; imported only where a file is held against a population.
"""

import math
import statistics
from collections import Counter, defaultdict
from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Final

from notchbook.body.doubts.file_shift import MAD_TO_SD, FileShift, ShiftKind
from notchbook.body.doubts.file_taken_as import taken_as_survey
from notchbook.body.doubts.file_waist import other_waists, waists_of_some
from notchbook.body.doubts.slips.waist_taken import waist_taken
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.population import Population
from notchbook.body.sides import plain_key

LEAST_ROWS: Final = 12
"""Fewer bodies than these do not tell a shift of the file from bodies that are so (own judgment)."""

MOST_SAMPLED: Final = 400
"""Bodies that are looked at for shifts, spread over the file: more would not be surer, only slower."""

FAR_OFF: Final = 1.5
"""Standard deviations by which the middle of a measure must lie off, to be judged by the file. The middle of
a civilian sample lies up to 0.9 off in the waist girth of this survey (computed from a published sample of
600 women)."""

A_LITTLE_OFF: Final = 1.0
"""Standard deviations from which a shift is named, though each body is judged as if there were none."""

SURELY_OFF: Final = 6.0
"""Standard errors of the middle from which a little shift is no chance."""

MEDIAN_ERROR: Final = 1.2533
"""The standard error of the median of normal values, in that of their mean: the root of half of pi."""

MOST_SHIFTS: Final = 8

OFTEN: Final = 0.25
"""Share of the bodies in which a measure must be the worst to be no slip of single ones (own judgment)."""

_FACTORS: Final = (2.54, 25.4, 10.0, 2.0)
_SAME_FACTOR: Final = 0.06


def file_shifts(population: Population, sets: Sequence[MeasureSet]) -> tuple[FileShift, ...]:
    """What is off in the whole file: how it was taken, which waist, then the furthest measure first.

    All sets are held against this population. None for fewer than :data:`LEAST_ROWS`.
    """
    sample = list(sets[:: math.ceil(len(sets) / MOST_SAMPLED)]) if sets else []
    if len(sample) < LEAST_ROWS:
        return ()
    survey = _taken_as_survey(population, sample)
    if survey:
        sample = [survey.reframed(one) for one in sample]
    gross = _in_another_unit(population, sample)
    waists = other_waists(population, [_without(one, gross) for one in sample], LEAST_ROWS)
    moved = [key for waist in waists if waist.moves_values for key in waist.keys]
    for waist in waists:
        sample = [waist.reframed(one) if waist.is_of(one) else one for one in sample]
    sample = _without_slips(population, sample)
    shifted = _shifted_keys(population, sample, FAR_OFF, moved)
    found = [_shift_of(population, key, sample, [*moved, *shifted]) for key in shifted]
    far = [one for one in found if one is not None]
    out = [*moved, *(one.keys[0] for one in far)]
    some = waists_of_some(population, [_without(one, out) for one in sample], LEAST_ROWS)
    little = _little_shifts(population, sample, [*out, *(key for one in some for key in one.keys)])
    return (*([survey] if survey else []), *waists, *far, *some, *little)


def _taken_as_survey(population: Population, sample: Sequence[MeasureSet]) -> FileShift | None:
    unsaid = [one for one in sample if one.taken_as == "book"]
    if len(unsaid) < LEAST_ROWS or len(unsaid) < len(sample):
        return None
    as_survey = [replace(one, taken_as="survey", waist_level="navel", waist_drop=0.0) for one in unsaid]
    spoiled = {*_shifted_keys(population, as_survey, FAR_OFF)} & {*_shifted_keys(population, unsaid, FAR_OFF)}
    return taken_as_survey(population, unsaid, spoiled, LEAST_ROWS)


def _in_another_unit(population: Population, sample: Sequence[MeasureSet]) -> list[str]:
    """The columns in another unit: what they say about a waist is nothing."""
    shifted = _shifted_keys(population, sample, FAR_OFF)
    found = [_shift_of(population, key, sample, shifted) for key in shifted]
    return [one.keys[0] for one in found if one is not None and one.kind == "unit"]


def _shifted_keys(
    population: Population, sample: Sequence[MeasureSet], least: float, out: Sequence[str] = ()
) -> list[str]:
    """The measures whose middle lies so many SD off, the furthest first."""
    found: list[str] = []
    rest = [_without(one, out) for one in sample]
    while len(found) < MOST_SHIFTS:
        key, middle = _furthest(population, rest)
        if abs(middle) < least:
            break
        found.append(key)
        rest = [_without(one, (key,)) for one in rest]
    return found


def _without_slips(population: Population, sample: Sequence[MeasureSet]) -> list[MeasureSet]:
    """The bodies without single wild values, which would pull along what is expected of all others.

    What is the worst in many bodies is no slip of one: it stays.
    """
    worst = [
        max(scores, key=lambda one: abs(one.z), default=None) for scores in population.scores_of_many(sample)
    ]
    slips = [plain_key(one.key) if one and abs(one.z) >= population.stop else "" for one in worst]
    often = {key for key, count in Counter(slips).items() if count >= OFTEN * len(sample)}
    return [_without(one, {slip} - often) for one, slip in zip(sample, slips, strict=True)]


def _without(measures: MeasureSet, keys: Collection[str]) -> MeasureSet:
    """The set without these measures, on any side."""
    if not keys:
        return measures
    kept = {text: one for text, one in measures.values.items() if plain_key(text) not in keys}
    return replace(measures, values=kept)


def _furthest(population: Population, sample: Sequence[MeasureSet]) -> tuple[str, float]:
    """The measure whose middle lies furthest off what the others of each body let expect."""
    by_key: dict[str, list[float]] = defaultdict(list)
    for scores in population.scores_of_many(sample):
        for score in scores:
            by_key[plain_key(score.key)].append(score.z)
    middles = [(key, statistics.median(z)) for key, z in by_key.items() if len(z) >= LEAST_ROWS]
    return max(middles, key=lambda one: abs(one[1]), default=("", 0.0))


def _little_shifts(
    population: Population, sample: Sequence[MeasureSet], out: Sequence[str]
) -> list[FileShift]:
    """Shifts that are sure and small: named, and not taken off."""
    keys = _shifted_keys(population, sample, A_LITTLE_OFF, out)
    found = [_shift_of(population, key, sample, [*out, *keys], little=True) for key in keys]
    return [one for one in found if one is not None]


def _shift_of(
    population: Population,
    key: str,
    sample: Sequence[MeasureSet],
    out: Sequence[str],
    *,
    little: bool = False,
) -> FileShift | None:
    """How far the measure is off, the others that are off left out; None when it fits after all."""
    pairs: list[tuple[float, float]] = []
    z: list[float] = []
    sd = 1.0
    holder = sample[0]
    for measures in sample:
        found, expected = measures.find(key), population.expect(key, measures, without=out)
        if found is None or found.status == "estimated" or expected is None or expected.value <= 0:
            continue
        pairs.append((found.value, expected.value))
        z.append((found.value - expected.value) / expected.sd)
        holder, sd = measures, expected.sd
    if len(pairs) < LEAST_ROWS or not _far_enough(z, little=little):
        return None
    off = statistics.median(value - expected for value, expected in pairs)
    times = statistics.median(value / expected for value, expected in pairs)
    kind, question = _kind(population, key, holder, off, times)
    factor, added = (times, 0.0) if kind == "unit" else (1.0, off)
    left = statistics.median(abs(value - factor * expected - added) for value, expected in pairs)
    spread = math.sqrt(max(0.0, (MAD_TO_SD * left) ** 2 - (factor * sd) ** 2))
    if little:
        kind = "a-little"
    return FileShift(kind, (key,), off, spread, times, len(pairs), len(sample), (1.0,), question)


def _far_enough(z: Sequence[float], *, little: bool) -> bool:
    middle = statistics.median(z)
    if not little:
        return abs(middle) >= FAR_OFF
    scatter = MAD_TO_SD * statistics.median(abs(one - middle) for one in z)
    error = MEDIAN_ERROR * max(scatter, 1.0) / math.sqrt(len(z))
    return abs(middle) >= max(A_LITTLE_OFF, SURELY_OFF * error)


def _kind(
    population: Population, key: str, measures: MeasureSet, off: float, times: float
) -> tuple[ShiftKind, str]:
    """What explains the shift: another unit, another waist (with the question), or nothing known."""
    if measure_entry(key).is_length:
        factors = (*_FACTORS, *(1.0 / factor for factor in _FACTORS))
        if any(abs(times / factor - 1.0) < _SAME_FACTOR for factor in factors):
            return "unit", ""
    waist = waist_taken(measures, population.name)
    direction = waist.directions.get(key) if waist else None
    if waist and direction:
        # Three standard deviations of the drop, and at least its third: what another waist explains.
        drop = off / (direction * waist.size)
        if 0.33 <= drop <= 1.0 + 3.0 * max(waist.spread / abs(waist.size), 0.2):
            return "waist", waist.question
    return "shifted", ""
