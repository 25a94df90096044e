"""A body that lies outside of its population as a whole, though its values agree with each other.

Loads numpy; imported only where a set is held against a population.
"""

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from notchbook.body.doubts.file_shift import BesideFile
from notchbook.body.doubts.together import Together
from notchbook.body.measure_set import MeasureSet
from notchbook.body.population import Population
from notchbook.body.population.evidence import frame_of
from notchbook.body.population.far_outside import farthest
from notchbook.body.population.model import Array
from notchbook.body.population.system import make_system
from notchbook.body.waist_drop import DROP_KEY

SIZE: Final = ("weight", "height")
"""What makes a body large or small as a whole."""

ANY_SIZE: Final = 6.0
"""Weight and height may lie so many times further out than in the population (own judgment)."""

SCATTER_GROWS_FROM: Final = 2.0
"""SD of weight or height beyond which the scatter of all else grows in proportion: a straight line through
bodies of middling size is carried on to where there were none (own judgment)."""

LEAST_FAR: Final = 2
"""So many values must lie far out by themselves: one alone is a slip, not a body."""


@dataclass(frozen=True, slots=True)
class Outside:
    """The set judged with any size of body and a wider scatter.

    ``way`` says how the body lies outside: larger, smaller, taller, shorter. ``bad`` are the values that
    stand out even so: no size explains them.
    """

    wide: Together
    way: str
    bad: tuple[str, ...]


def outside(
    population: Population, measures: MeasureSet, whole: Together, beside: BesideFile | None = None
) -> Outside | None:
    """How the body lies outside of the population; None for a body that it holds, and for a slip.

    Far out is what one body of 10,000 is, without what stands out of the widened set as well.
    """
    if not _is_far(whole, ()):
        return None
    ways = _ways(population, measures, whole)
    ways = ways if beside is None else ways * beside.times(whole.keys)[:, None]
    out = _standing_out(_widened(whole, ways, _sizes(whole, ways, ())), population.look_again)
    if not _is_far(whole, out) or _far_values(whole, out, population.look_again) < LEAST_FAR:
        return None
    sizes = _sizes(whole, ways, out)
    if max(abs(sizes)) < SCATTER_GROWS_FROM:
        return None
    wide = _widened(whole, ways, sizes)
    return Outside(wide, _way(sizes), _standing_out(wide, population.look_again))


def _standing_out(wide: Together, look_again: float) -> tuple[str, ...]:
    """The worst is left out and the rest judged again, until no value stands out or too few are left."""
    out: list[str] = []
    while len(wide.keys) - len(out) > LEAST_FAR:
        kept = [one for one in wide.standings(out).values() if one.key not in out]
        worst = max(kept, key=lambda one: abs(one.z))
        if abs(worst.z) < look_again:
            break
        out.append(worst.key)
    return tuple(out)


def _is_far(whole: Together, out: Collection[str]) -> bool:
    kept = whole.keeping(out)
    return bool(kept.off @ kept.precision @ kept.off > farthest(max(len(kept.keys), 1)) ** 2)


def _far_values(whole: Together, out: Collection[str], look_again: float) -> int:
    """How many of the values lie far from the middle of the population by themselves."""
    alone = np.abs(whole.off) / np.sqrt(np.diag(whole.covariance))
    return sum(z >= look_again for key, z in zip(whole.keys, alone, strict=True) if key not in out)


def _ways(population: Population, measures: MeasureSet, whole: Together) -> Array:
    """How each value goes with weight, and with height at one weight: per SD, a line for each value."""
    keys = tuple(key for key in whole.keys if key != DROP_KEY)
    # A drop that is known stands last in both.
    system = make_system(population.model, frame_of(measures)[0], (*keys, *SIZE))
    count = len(keys)
    size = [count, count + 1]
    kept = [place for place in range(len(system.mean)) if place not in size]
    shape = np.linalg.cholesky(system.truth[np.ix_(size, size)])
    ways: Array = np.linalg.solve(shape, system.truth[np.ix_(size, kept)]).T
    return ways


def _sizes(whole: Together, ways: Array, out: Collection[str]) -> Array:
    """Weight and height that the values speak for, in SD, when any size is possible."""
    kept = [place for place, key in enumerate(whole.keys) if key not in out]
    rest = (whole.covariance - ways @ ways.T)[np.ix_(kept, kept)]
    pull = np.linalg.solve(rest, ways[kept])
    found = np.linalg.solve(pull.T @ ways[kept] + np.eye(2) / ANY_SIZE**2, pull.T @ whole.off[kept])
    return np.asarray(found, dtype=np.float64)


def _widened(whole: Together, ways: Array, sizes: Array) -> Together:
    grown = max(1.0, float(np.hypot(*sizes)) / SCATTER_GROWS_FROM)
    by_size = ways @ ways.T
    covariance = (whole.covariance - by_size) * grown**2 + by_size * ANY_SIZE**2
    return replace(whole, covariance=covariance, precision=np.asarray(np.linalg.inv(covariance)))


def _way(sizes: Array) -> str:
    by_weight, by_height = sizes.tolist()
    if abs(by_weight) >= SCATTER_GROWS_FROM:
        return "larger" if by_weight > 0 else "smaller"
    return "taller" if by_height > 0 else "shorter"
