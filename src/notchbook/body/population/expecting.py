"""What one measure is expected to be, given others."""

import math

import numpy as np

from notchbook.body.population.evidence import Evidence
from notchbook.body.population.results import Expected
from notchbook.body.population.scoring import LEAST_SHARE
from notchbook.body.population.system import level_shift, widening
from notchbook.body.population.systems import Systems


def expected_from(systems: Systems, key: str, given: Evidence) -> Expected | None:
    """The measure as a tape would read it, given the evidence (which does not hold it); None if unknown."""
    if key not in systems.known(given.frame):
        return None
    keys = tuple(given.values)
    whole = systems.of(given.frame, (key, *keys))
    shift = level_shift(systems.model, key, given.drop) if given.frame.level == "lower" else 0.0
    middle, variance = float(whole.mean[0]) + shift, float(whole.read[0, 0])
    if len(whole.mean) == 1:
        return Expected(key, middle, math.sqrt(variance * widening(whole.bodies, 0)))
    system = systems.of(given.frame, keys)
    weights = system.precision @ whole.read[0, 1:]
    rest = variance - float(weights @ whole.read[0, 1:])
    value = middle + float(weights @ systems.off(system, [given])[0])
    # What leaving a measure out would add to the variance, the others staying.
    added = (weights**2 / np.diag(system.precision))[: len(keys)]
    order = np.argsort(-added, kind="stable")
    named = tuple(keys[place] for place in order if added[place] >= LEAST_SHARE * rest)
    return Expected(key, value, math.sqrt(rest * widening(whole.bodies, len(whole.mean) - 1)), named)
