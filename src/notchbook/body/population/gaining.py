"""Which measure to take next."""

import math
from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from notchbook.body.population.evidence import Evidence, Frame
from notchbook.body.population.model import Array
from notchbook.body.population.results import Gain
from notchbook.body.population.systems import Systems


def gains_of(
    systems: Systems, given: Evidence, candidates: Iterable[str], weights: Mapping[str, float]
) -> tuple[Gain, ...]:
    """How far each candidate that was not taken shrinks the weighted variance of the wanted measures."""
    known, taken = systems.known(given.frame), tuple(given.values)
    wanted = [key for key in weights if key in known]
    asked = [key for key in dict.fromkeys(candidates) if key in known and key not in given.values]
    worth = np.array([weights[key] for key in wanted]) ** 2
    before = float(worth @ _true_variances(systems, given.frame, taken, wanted))
    gains = []
    for key in asked:
        after = float(worth @ _true_variances(systems, given.frame, (*taken, key), wanted))
        share = max(0.0, 1.0 - after / before) if before > 0 else 0.0
        gains.append(Gain(key, math.sqrt(before), math.sqrt(after), share))
    return tuple(sorted(gains, key=lambda one: one.after))


def _true_variances(systems: Systems, frame: Frame, keys: tuple[str, ...], wanted: Sequence[str]) -> Array:
    """Variances of the wanted measures as they are, given readings of these keys."""
    whole = systems.of(frame, (*wanted, *keys))
    count = len(wanted)
    variances: Array = np.diag(whole.truth)[:count].copy()
    if len(whole.mean) == count:
        return variances
    across = whole.truth[:count, count:]
    solved = np.linalg.solve(whole.read[count:, count:], across.T)
    told: Array = np.sum(across.T * solved, axis=0)
    return np.maximum(variances - told, 0.0)
