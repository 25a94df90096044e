"""Measures that are off in a whole file of bodies: another waist, another unit, another way to take them.

Loads numpy; imported only where a file is held against a population.
"""

import statistics
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Final, Literal

from notchbook.body.doubts.slips.waist_taken import WaistTaken, waist_taken
from notchbook.body.doubts.together import together
from notchbook.body.measure_set import MeasureSet, WaistLevel
from notchbook.body.measure_table import measure_entry
from notchbook.body.population import Population

LEAST_ROWS: Final = 12
"""Fewer bodies than these do not tell a shift of the file from bodies that are so (own judgment)."""

MOST_SAMPLED: Final = 400
"""Bodies that are looked at for shifts, spread over the file: more would not be surer, only slower."""

FAR_OFF: Final = 1.5
"""Standard deviations by which the middle of a measure must lie off. The middle of a civilian sample lies up
to 0.9 off in the waist girth of this survey (computed from a published sample of 600 women)."""

WAIST_GAIN: Final = 1.0
"""Logarithm of how much better the middle body must fit with another waist. The middle of bodies drawn from
the population has -2.7, of bodies whose lengths go to the navel 4.7 (computed by drawing them)."""

MOST_SHIFTS: Final = 8

_FACTORS: Final = (2.54, 25.4, 10.0, 2.0)
_SAME_FACTOR: Final = 0.06
_MAD_TO_SD: Final = 1.4826
"""The median deviation of a normal distribution times this is its standard deviation."""

ShiftKind = Literal["waist", "unit", "shifted"]


@dataclass(frozen=True, slots=True)
class FileShift:
    """Measures that are off in the whole file, in mm (degrees, kg).

    ``off`` is the middle of value minus expected value of the first of the ``keys``, ``scatter`` its SD,
    ``times`` the middle of their quotient, ``rows`` how many bodies it was seen in. ``waist`` is the question
    to ask where another waist would explain it; ``level`` is that waist, where everything that hangs on the
    waist goes with it.
    """

    kind: ShiftKind
    keys: tuple[str, ...]
    off: float
    scatter: float
    times: float
    rows: int
    waist: str = ""
    level: WaistLevel | None = None

    def taken_off(self, measures: MeasureSet) -> MeasureSet:
        """The set as it is to be judged: at the other waist, or without what is off in the whole file."""
        if self.level is not None:
            return replace(measures, waist_level=self.level, waist_drop=0.0)
        gone = set(self.keys)
        values = {text: one for text, one in measures.values.items() if text.partition("@")[0] not in gone}
        return replace(measures, values=values)


def file_shifts(population: Population, sets: Sequence[MeasureSet]) -> tuple[FileShift, ...]:
    """What is off in the whole file, the furthest first; all sets are held against this population."""
    sample = sets[:: max(1, len(sets) // MOST_SAMPLED)][:MOST_SAMPLED]
    if len(sample) < LEAST_ROWS:
        return ()
    waist = _other_waist(population, sample)
    if waist:
        sample = [waist.taken_off(one) for one in sample]
    shifted: list[str] = []
    rest = sample
    while len(shifted) < MOST_SHIFTS:
        key, middle = _furthest(population, rest)
        if abs(middle) < FAR_OFF:
            break
        shifted.append(key)
        rest = [FileShift("shifted", (key,), 0.0, 0.0, 1.0, 0).taken_off(one) for one in rest]
    found = [_shift_of(population, key, sample, shifted) for key in shifted]
    kept = [one for one in found if one is not None]
    return (waist, *kept) if waist else tuple(kept)


def _furthest(population: Population, sample: Sequence[MeasureSet]) -> tuple[str, float]:
    """The measure whose middle lies furthest off what the others of each body let expect."""
    by_key: dict[str, list[float]] = defaultdict(list)
    for scores in population.scores_of_many(sample):
        for score in scores:
            by_key[score.key.partition("@")[0]].append(score.z)
    middles = {key: statistics.median(z) for key, z in by_key.items() if len(z) >= LEAST_ROWS}
    return max(middles.items(), key=lambda one: abs(one[1]), default=("", 0.0))


def _other_waist(population: Population, sample: Sequence[MeasureSet]) -> FileShift | None:
    """Lengths of the file that fit far better with another waist, where several go together."""
    gains: dict[tuple[str, ...], list[float]] = defaultdict(list)
    question = ""
    for measures in sample:
        waist = waist_taken(measures, population.name)
        if waist is None:
            continue
        question = waist.question
        for keys, gain in _gains(population, measures, waist):
            gains[keys].append(gain)
    best: tuple[float, tuple[str, ...]] = (WAIST_GAIN, ())
    for keys, found in gains.items():
        if len(found) >= max(LEAST_ROWS, len(sample) // 2):
            best = max(best, (statistics.median(found), keys))
    if not best[1]:
        return None
    first = _shift_of(population, best[1][0], sample, best[1])
    off, scatter, rows = (first.off, first.scatter, first.rows) if first else (0.0, 0.0, len(sample))
    return FileShift("waist", best[1], off, scatter, 1.0, rows, question, _level_of(sample[0], best[1]))


def _level_of(measures: MeasureSet, keys: Sequence[str]) -> WaistLevel | None:
    """The other waist, where every measure that hangs on the waist was taken to it."""
    hanging = [key for key in measures.measure_keys() if measure_entry(key).waist_shift]
    if set(hanging) - set(keys):
        return None
    return "navel" if measures.waist_level == "natural" else "natural"


def _gains(
    population: Population, measures: MeasureSet, waist: WaistTaken
) -> Iterable[tuple[tuple[str, ...], float]]:
    whole = together(population, measures)
    for group in waist.groups:
        directions = {key: waist.directions[key] for key in whole.keys if key in group}
        if len(directions) > 1:
            yield tuple(directions), whole.gain_of_shift(directions, waist.size, waist.spread)


def _shift_of(
    population: Population, key: str, sample: Sequence[MeasureSet], out: Sequence[str]
) -> FileShift | None:
    """How far the measure is off, the others that are off left out; None when it fits after all."""
    off: list[float] = []
    times: list[float] = []
    sd = 1.0
    for measures in sample:
        found = measures.find(key)
        expected = population.expect(key, measures, without=out)
        if found is None or found.status == "estimated" or expected is None or expected.value <= 0:
            continue
        off.append(found.value - expected.value)
        times.append(found.value / expected.value)
        sd = expected.sd
    if len(off) < LEAST_ROWS or abs(statistics.median(off)) < FAR_OFF * sd:
        return None
    middle = statistics.median(off)
    scatter = _MAD_TO_SD * statistics.median(abs(one - middle) for one in off)
    middle_times = statistics.median(times)
    kind, question = _kind(population, key, sample[0], middle, middle_times)
    return FileShift(kind, (key,), middle, max(scatter, sd), middle_times, len(off), question)


def _kind(
    population: Population, key: str, measures: MeasureSet, off: float, times: float
) -> tuple[ShiftKind, str]:
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
