"""Whether the lengths of a file were taken to another waist than its bodies say.

Loads numpy; imported only where a file is held against a population.
"""

import math
import statistics
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

import numpy as np

from notchbook.body.doubts.file_shift import MAD_TO_SD, FileShift
from notchbook.body.doubts.slips.waist_taken import WaistTaken, waist_taken
from notchbook.body.doubts.together import Together, together
from notchbook.body.measure_set import MeasureSet, WaistLevel
from notchbook.body.measure_table import measure_entry
from notchbook.body.population import Population

MOST_GAIN: Final = 6.0
"""A body counts for no more than this either way, so that one wild value does not speak for the file."""

SURE: Final = 12.0
"""Sum of the logarithms from which another waist is sure: a body each of a dozen (own judgment)."""

MOST_BODIES: Final = 0.65
"""Share of the bodies that must fit better with another waist. Of bodies drawn from the population 1 of 10
does at most, of bodies whose lengths go to the navel 9 of 10 (computed by drawing them)."""

CLEAR: Final = 3.0
"""Logarithm from which a single body looks taken to another waist. At most one clean body of 140 does, and
half or more of those whose lengths go to the navel (computed by drawing them)."""

LEAST_CLEAR: Final = 0.1
"""Share of clear bodies from which a part of the file is spoken of (own judgment)."""

MOST_DEVIATIONS: Final = 3.0
"""Standard deviations of the drop beyond which no waist lies."""

LEVEL_SCATTER: Final = 20.0
"""mm by which a tied tape may lie off its level, twice the SD (common practice, no source)."""


@dataclass(slots=True)
class _Group:
    """Lengths that go to one waist together: what each body says about them."""

    question: str
    gains: list[float] = field(default_factory=list)
    drops: list[float] = field(default_factory=list)
    errors: list[float] = field(default_factory=list)
    keys: dict[str, float] = field(default_factory=dict)

    @property
    def total(self) -> float:
        return sum(max(-MOST_GAIN, min(MOST_GAIN, gain)) for gain in self.gains)


def other_waists(population: Population, sets: Sequence[MeasureSet], least: int) -> list[FileShift]:
    """The remarks about another waist in all bodies, one for each waist level that they state."""
    found = []
    for stated, held in _by_level(sets).items():
        groups = _groups(population, held, least)
        whole = [one for one in groups if one.total >= SURE and _share(one, 0.0) >= MOST_BODIES]
        if not whole:
            continue
        best = max(whole, key=lambda one: one.total)
        hanging = {key for one in held for key in one.measure_keys() if measure_entry(key).waist_shift}
        level: WaistLevel | None = None
        if not hanging - set(best.keys):
            level = "natural" if stated != "natural" else "navel"
        found.append(_shift(best, stated, level))
    return found


def waists_of_some(population: Population, sets: Sequence[MeasureSet], least: int) -> list[FileShift]:
    """The remarks about another waist in a part of the bodies, one for each waist level that they state."""
    found = []
    for stated, held in _by_level(sets).items():
        groups = [one for one in _groups(population, held, least) if _share(one, CLEAR) >= LEAST_CLEAR]
        if groups:
            best = max(groups, key=lambda one: _share(one, CLEAR))
            found.append(_shift(best, stated, None, some=True))
    return found


def _by_level(sets: Sequence[MeasureSet]) -> dict[WaistLevel, list[MeasureSet]]:
    found: dict[WaistLevel, list[MeasureSet]] = defaultdict(list)
    for measures in sets:
        if measures.taken_as == "book":
            found[measures.waist_level].append(measures)
    return found


def _groups(population: Population, sets: Sequence[MeasureSet], least: int) -> list[_Group]:
    """What all bodies say about each group of lengths that enough of them have."""
    groups: dict[int, _Group] = {}
    for measures in sets:
        waist = waist_taken(measures, population.name)
        if waist is not None:
            _judge(groups, together(population, measures), waist)
    return [one for one in groups.values() if len(one.gains) >= max(least, len(sets) // 2)]


def _share(group: _Group, beyond: float) -> float:
    return sum(gain > beyond for gain in group.gains) / len(group.gains)


def _judge(groups: dict[int, _Group], whole: Together, waist: WaistTaken) -> None:
    """What one body says about each group of lengths, as many of them as it has."""
    for number, names in enumerate(waist.groups):
        directions = {key: waist.directions[key] for key in whole.keys if key in names}
        if not directions:
            continue
        group = groups.setdefault(number, _Group(waist.question))
        drop, error = _drop(whole, directions)
        gain = whole.gain_of_shift(directions, waist.size, waist.spread)
        explains = abs(drop - waist.size) <= math.hypot(MOST_DEVIATIONS * waist.spread, LEVEL_SCATTER, error)
        # What lies farther off than any waist is another slip, though a waist would make it less.
        group.gains.append(gain if explains else min(gain, 0.0))
        group.drops.append(drop)
        group.errors.append(error)
        group.keys |= directions


def _drop(whole: Together, directions: dict[str, float]) -> tuple[float, float]:
    """By how much lower the waist of these lengths looks, mm, and the SD of that."""
    way = np.zeros(len(whole.values))
    way[: len(whole.keys)] = [directions.get(key, 0.0) for key in whole.keys]
    along = way @ whole.precision
    weight = float(along @ way)
    return float(along @ whole.off) / weight, weight**-0.5


def _shift(group: _Group, stated: WaistLevel, level: WaistLevel | None, *, some: bool = False) -> FileShift:
    chosen = [place for place, gain in enumerate(group.gains) if not some or gain > CLEAR]
    drops = [group.drops[place] for place in chosen]
    middle = statistics.median(drops)
    scatter = MAD_TO_SD * statistics.median(abs(drop - middle) for drop in drops)
    error = statistics.median(group.errors[place] for place in chosen)
    return FileShift(
        "waist-of-some" if some else "waist",
        tuple(_in_order(group.keys)),
        middle,
        math.sqrt(max(0.0, scatter**2 - error**2)),
        1.0,
        len(chosen),
        len(group.gains),
        tuple(group.keys[key] for key in _in_order(group.keys)),
        group.question,
        stated,
        level,
    )


def _in_order(keys: dict[str, float]) -> Iterator[str]:
    """The keys in the order of the measure table."""
    yield from sorted(keys, key=lambda key: measure_entry(key).number)
