"""Which values of a set count as evidence, and how its waist was taken."""

import statistics
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Literal, NamedTuple

from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet, TakenAs

Level = Literal["natural", "lower", "navel"]


class Frame(NamedTuple):
    """By whose definitions and at which waist the values of a set were taken."""

    taken_as: TakenAs
    level: Level
    drop_known: bool


@dataclass(frozen=True, slots=True)
class Evidence:
    """The values (mm, degrees, kg) that were taken, by key without sides; estimates are none.

    ``entries`` are all that was written down, (key with side, key, value). ``drop`` is mm from the natural
    waist down to this one, 0 where it is not known.
    """

    frame: Frame
    drop: float
    values: Mapping[str, float]
    entries: tuple[tuple[str, str, float], ...]


def evidence_of(measures: MeasureSet, known: Collection[str], without: Collection[str] = ()) -> Evidence:
    """What the set says about the measures that a population knows.

    Where only sides were given, their mean speaks for the body. ``without`` leaves out keys (all sides).
    """
    values: dict[str, float] = {}
    entries: list[tuple[str, str, float]] = []
    for key in measures.measure_keys():
        if key not in known or key in without:
            continue
        taken = [(name, found.value) for name in _names(key) if (found := _taken(measures, name))]
        entries += [(name, key, value) for name, value in taken]
        if taken:
            plain = taken[0][0] == key
            values[key] = taken[0][1] if plain else statistics.mean(value for _, value in taken)
    frame, drop = frame_of(measures)
    return Evidence(frame, drop, values, tuple(entries))


def frame_of(measures: MeasureSet) -> tuple[Frame, float]:
    """The frame of the set and its drop, mm. Records of the survey have their waist at the navel."""
    drop = measures.waist_drop
    if measures.taken_as == "survey":
        return Frame("survey", "navel", drop > 0), drop
    level = measures.waist_level
    return Frame("book", level, level == "navel" and drop > 0), drop


def _names(key: str) -> tuple[str, str, str]:
    return key, f"{key}@left", f"{key}@right"


def _taken(measures: MeasureSet, name: str) -> Measure | None:
    found = measures.values.get(name)
    return None if found is None or found.status == "estimated" else found
