"""The values of one set as one draw from a population: what each says about the others.

Loads numpy; imported only where a set is held against a population.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np

from notchbook.body.doubts.standing import Standing
from notchbook.body.measure_set import MeasureSet
from notchbook.body.population import Population
from notchbook.body.population.evidence import Frame, evidence_of
from notchbook.body.population.model import Array
from notchbook.body.population.system import level_shift, make_system, widening
from notchbook.body.waist_drop import DROP_KEY


@dataclass(frozen=True, eq=False)
class Together:
    """Values (mm, degrees, kg) in the order of ``keys``, with their common normal distribution.

    ``precision`` is the inverse of ``covariance``; ``bodies`` is how many the covariance comes from.
    Where the drop of the navel is known, it is the last value, under the key ``waist_drop``.
    """

    keys: tuple[str, ...]
    values: Array
    mean: Array
    covariance: Array
    precision: Array
    bodies: int

    @cached_property
    def off(self) -> Array:
        """How far each value lies from its mean."""
        off: Array = self.values - self.mean
        return off

    @property
    def distance(self) -> float:
        """The squared Mahalanobis distance of the whole set."""
        return float(self.off @ self.precision @ self.off)

    def keeping(self, out: Collection[str]) -> "Together":
        """The same without the values left ``out``."""
        places = self._places(out)
        keys = tuple(self.keys[place] for place in places)
        covariance = self.covariance[np.ix_(places, places)]
        mean, precision = self.mean[places], _inverse(covariance)
        return Together(keys, self.values[places], mean, covariance, precision, self.bodies)

    def standings(self, out: Collection[str] = ()) -> dict[str, Standing]:
        """Every value against all others but those left ``out``; those too are judged by the rest."""
        kept = self._places(out)
        precision = self.precision if not out else np.linalg.inv(self.covariance[np.ix_(kept, kept)])
        pull = precision @ self.off[kept]
        diagonal = np.diag(precision)
        sd = np.sqrt(widening(self.bodies, len(kept) - 1) / diagonal)
        z = pull / diagonal / sd
        judged = dict(zip(kept, zip(z.tolist(), sd.tolist(), strict=True), strict=True))
        for place, key in enumerate(self.keys):
            if key in out:
                across = self.covariance[place, kept]
                left = max(float(self.covariance[place, place] - across @ precision @ across), 1e-12)
                spread = (left * widening(self.bodies, len(kept))) ** 0.5
                judged[place] = (float(self.off[place] - across @ pull) / spread, spread)
        found = {}
        for place, key in enumerate(self.keys):
            z, spread = judged[place]
            value = float(self.values[place])
            found[key] = Standing(key, value, value - z * spread, spread, z)
        return found

    def _places(self, out: Collection[str]) -> list[int]:
        """The places of what is kept."""
        return [place for place, key in enumerate(self.keys) if key not in out]

    def best_pair(self) -> tuple[tuple[str, str], float] | None:
        """The two values without which the rest agrees best, and how much better (difference of squared
        Mahalanobis distances); None for fewer than three values.
        """
        count = len(self.keys)
        if count < 3:
            return None
        pull = self.precision @ self.off
        own, cross = np.diag(self.precision), self.precision
        across = np.outer(pull, pull)
        squares = pull[:, None] ** 2 * own[None, :] + pull[None, :] ** 2 * own[:, None] - 2.0 * cross * across
        area = np.outer(own, own) - cross**2
        np.fill_diagonal(area, 1.0)
        better = squares / area
        np.fill_diagonal(better, -1.0)
        one, other = np.unravel_index(int(np.argmax(better)), better.shape)
        return (self.keys[int(one)], self.keys[int(other)]), float(better[one, other])

    def value_of(self, key: str) -> float:
        """The value under this key."""
        return float(self.values[self.keys.index(key)])

    def z_after(self, changes: Mapping[str, float]) -> list[float]:
        """How many SD each of these values lies off all others once they have become what is given."""
        off = self.off.copy()
        places = [self.keys.index(key) for key in changes]
        off[places] += [
            value - self.values[place] for place, value in zip(places, changes.values(), strict=True)
        ]
        pull, own = self.precision[places] @ off, np.diag(self.precision)[places]
        z: list[float] = (pull / np.sqrt(own * widening(self.bodies, len(self.keys) - 1))).tolist()
        return z

    def gain_of(self, changes: Mapping[str, float]) -> float:
        """By how much the logarithm of the likelihood rises when these values become others."""
        step = np.zeros(len(self.values))
        for key, value in changes.items():
            place = self.keys.index(key)
            step[place] = value - self.values[place]
        return float(-step @ self.precision @ (self.off + step / 2.0))

    def gain_of_shift(self, directions: Mapping[str, float], size: float, spread: float) -> float:
        """By how much it rises when these values were all taken off by one unknown amount.

        The amount is normal with mean ``size`` and standard deviation ``spread``, times each direction.
        """
        way = np.array([directions.get(key, 0.0) for key in self.keys])
        along = float(way @ self.precision @ way) * spread**2
        before = self.off
        after = before - size * way
        pull = float(way @ self.precision @ after) * spread
        gain = float(before @ self.precision @ before) - float(after @ self.precision @ after)
        return 0.5 * (gain + pull**2 / (1.0 + along) - float(np.log1p(along)))


def together(population: Population, measures: MeasureSet, without: Collection[str] = ()) -> Together:
    """The measured values of the set that the population knows, in its frame."""
    known = population.model.survey if measures.taken_as == "survey" else population.model.book
    given = evidence_of(measures, known, without)
    keys = tuple(given.values)
    mean, covariance, precision = _distribution(population, given.frame, keys)
    values = list(given.values.values())
    if given.frame.level == "lower":
        shifts = [level_shift(population.model, key, given.drop) for key in keys]
        mean = mean + np.array(shifts)
    if given.frame.drop_known:
        keys, values = (*keys, DROP_KEY), [*values, given.drop]
    taken = np.array(values, dtype=np.float64)
    return Together(keys, taken, mean, covariance, precision, population.size)


@lru_cache(maxsize=256)
def _distribution(population: Population, frame: Frame, keys: tuple[str, ...]) -> tuple[Array, Array, Array]:
    """Mean, covariance and its inverse; many sets of a file hold the same measures."""
    system = make_system(population.model, frame, keys)
    return system.mean, system.read, system.precision


def _inverse(covariance: Array) -> Array:
    return np.asarray(np.linalg.inv(covariance), dtype=np.float64)
