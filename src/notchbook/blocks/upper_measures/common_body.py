"""The taken measures of a body as one draw from its population: what each says of the others.

Loads the numbers of the population; a body without one is judged by arithmetic alone. The lower body is
judged by it as the upper one is.
"""

from collections.abc import Mapping
from functools import lru_cache
from typing import Protocol

import numpy as np

from notchbook.body import PopulationName, WaistLevel
from notchbook.body.doubts.together import Together
from notchbook.body.population import Expected, population
from notchbook.body.population.evidence import Evidence, Frame
from notchbook.body.population.expecting import expected_from
from notchbook.body.population.system import System, level_shift, make_system
from notchbook.body.population.systems import Systems
from notchbook.body.waist_drop import DROP_KEY


class JudgedBody(Protocol):
    """What is asked of the measures of a body: see ``UpperMeasures`` and ``LowerMeasures``."""

    @property
    def taken(self) -> Mapping[str, float]:
        """What a tape or a chart says, mm or degrees by key."""

    @property
    def population(self) -> PopulationName | None:
        """Whose body it is."""

    @property
    def is_child(self) -> bool:
        """Whether no population fits."""

    @property
    def waist_level(self) -> WaistLevel:
        """To which waist lengths were taken."""

    @property
    def waist_drop(self) -> float:
        """mm from the natural waist down to that one."""


def common_body(measures: JudgedBody) -> Together | None:
    """The taken values with their common distribution; None where no population fits or fewer than two."""
    if measures.population is None or measures.is_child:
        return None
    model = population(measures.population).model
    keys = tuple(key for key in measures.taken if key in model.book)
    if len(keys) < 2:
        return None
    frame = frame_of(measures)
    system = _system(measures.population, frame, keys)
    mean = system.mean
    if frame.level == "lower":
        mean = mean + np.array([level_shift(model, key, measures.waist_drop) for key in keys])
    values = [measures.taken[key] for key in keys]
    if frame.drop_known:
        keys, values = (*keys, DROP_KEY), [*values, measures.waist_drop]
    taken = np.array(values, dtype=np.float64)
    return Together(keys, taken, mean, system.read, system.precision, system.bodies)


def expected_among(
    measures: JudgedBody, name: PopulationName, key: str, without: frozenset[str]
) -> Expected | None:
    """What this population expects of a measure, given what was taken but for it and ``without``."""
    systems = _systems(name)
    given = {
        other: value
        for other, value in measures.taken.items()
        if other != key and other not in without and other in systems.model.book
    }
    return expected_from(systems, key, Evidence(frame_of(measures), measures.waist_drop, given, ()))


def frame_of(measures: JudgedBody) -> Frame:
    """At which waist the lengths were taken."""
    level = measures.waist_level
    return Frame("book", level, level == "navel" and measures.waist_drop > 0)


@lru_cache(maxsize=64)
def _system(name: PopulationName, frame: Frame, keys: tuple[str, ...]) -> System:
    return make_system(population(name).model, frame, keys)


@lru_cache(maxsize=2)
def _systems(name: PopulationName) -> Systems:
    return Systems(population(name).model)
