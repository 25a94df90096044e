"""Slips planted into measures and judged by the program itself, with all its words and offers.

Where survey_measures.py asks the bare statistics, this asks what she gets to see: explanations, repairs, and
what is off in a whole file.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

from make_population import JUDGED
from notchbook.app.looking_over.shift import look_over_beside, shift_words
from notchbook.body import LookedOver, MeasureSet, PopulationName, look_over
from notchbook.units import LengthStyle
from planted_slips import SLIPS
from survey_rows import held_back_rows, survey_set

CM: Final = LengthStyle("cm")

BODIES: Final = 20
"""Bodies of which every length slips once for each kind: enough for a percent, and quick."""

SEED: Final = 8560

SAME: Final = 6.0
"""mm; an offer so near is the true value: whole centimeters, as some slips are typed, lose up to 5 mm."""

Judge = Callable[[MeasureSet], LookedOver]


@dataclass(frozen=True, slots=True)
class Planted:
    """A body with one slip: the measure, and its value before (mm)."""

    measures: MeasureSet
    key: str
    true: float


def through_program(name: PopulationName, count: int = 0) -> dict[str, Any]:
    """What the program says of clean bodies and of each kind of slip; ``count`` rows, or all held back.

    ``labeled`` are single bodies whose sheet says that the survey took them; ``in a file without label`` are
    files in which every body has a slip and none says how it was taken.
    """
    rows = held_back_rows(name)[: count or None]
    labeled = [survey_set(row, name, JUDGED) for row in rows]
    unlabeled = [replace(one, taken_as="book", waist_level="natural") for one in labeled]
    few = labeled[:: max(1, len(labeled) // BODIES)][:BODIES]
    return {
        "labeled": {
            "clean": _clean(labeled, lambda one: look_over(one, CM)),
            "slips": {
                kind: _shares(list(_each_length(few, kind)), lambda one: look_over(one, CM)) for kind in SLIPS
            },
        },
        "in a file without label": {
            "clean": _clean(unlabeled, _judge_of(unlabeled)),
            "slips": {kind: _of_file(list(_one_length(unlabeled, kind))) for kind in SLIPS},
        },
    }


def _judge_of(sets: Sequence[MeasureSet]) -> Judge:
    """How the bodies of this file are judged."""
    shifts = shift_words(sets, CM)
    return lambda one: look_over_beside(one, shifts, CM)


def _of_file(planted: Sequence[Planted]) -> dict[str, Any]:
    return _shares(planted, _judge_of([one.measures for one in planted]))


def _each_length(sets: Sequence[MeasureSet], kind: str) -> Iterator[Planted]:
    """Every length of every body slips once, one way or the other."""
    chance = random.Random(SEED)
    for measures in sets:
        for key in measures.values:
            yield from _planted(measures, key, kind, chance)


def _one_length(sets: Sequence[MeasureSet], kind: str) -> Iterator[Planted]:
    """One length of every body slips."""
    chance = random.Random(SEED)
    for measures in sets:
        yield from _planted(measures, chance.choice(JUDGED[:-1]), kind, chance)


def _planted(measures: MeasureSet, key: str, kind: str, chance: random.Random) -> Iterator[Planted]:
    """The body with the slip as it would be typed, to the millimeter; nothing where there is no such slip."""
    true = measures.value(key)
    typed = [value for value in SLIPS[kind](true) if value > 0] if key != "weight" else []
    if typed:
        yield Planted(measures.with_value(key, float(round(chance.choice(typed)))), key, true)


def _clean(sets: Sequence[MeasureSet], judge: Judge) -> dict[str, float]:
    levels = [judge(one).level for one in sets]
    return {level: round(levels.count(level) / len(levels), 4) for level in ("stop", "check", "fine")}


def _shares(planted: Sequence[Planted], judge: Judge) -> dict[str, float]:
    """Shares of the slips: stopped, at least looked at, rightly named and offered among those."""
    stopped = seen = named = offered = right = 0
    for one in planted:
        looked = judge(one.measures)
        stopped += looked.level == "stop"
        offers = [dict(repair.values) for doubt in looked.doubts for repair in doubt.repairs]
        if looked.level != "fine":
            seen += 1
            named += one.key in {suspect.key for suspect in looked.suspects()[:1]}
        if offers:
            offered += 1
            right += any(abs(offer.get(one.key, -99.0) - one.true) <= SAME for offer in offers)
    return {
        "count": len(planted),
        "stopped": _share(stopped, len(planted)),
        "seen": _share(seen, len(planted)),
        "named": _share(named, seen),
        "offered": _share(offered, len(planted)),
        "right": _share(right, offered),
    }


def _share(part: int, whole: int) -> float:
    return round(part / whole, 4) if whole else 0.0
