"""A population: what its bodies foretell about the measures of one."""

import math
from bisect import bisect_left
from collections.abc import Collection, Iterable, Mapping, Sequence
from functools import cache

from notchbook.body.measure_set import POPULATIONS, MeasureSet, PopulationName
from notchbook.body.noticed_slip import noticed_slip
from notchbook.body.population.evidence import Evidence, evidence_of, frame_of
from notchbook.body.population.expecting import expected_from
from notchbook.body.population.gaining import gains_of
from notchbook.body.population.model import Model, shipped_model
from notchbook.body.population.results import Expected, Gain, Score
from notchbook.body.population.scoring import score_records
from notchbook.body.population.systems import Systems


@cache
def population(name: PopulationName) -> "Population":
    """The population of this name."""
    return Population(shipped_model(name))


def populations() -> tuple["Population", ...]:
    """All populations, women first."""
    return tuple(population(name) for name in POPULATIONS)


class Population:
    """The bodies that a set of measures is held against.

    ``words`` say who they are and who they are not, ``size`` how many. ``look_again`` is the ``|z|`` that
    one clean value of a hundred reaches, ``stop`` the one that one clean record of a hundred reaches with
    its worst value. ``keys`` are the measures that it can judge and estimate.
    Estimates are never evidence. Lengths are mm, angles degrees, weight kg.
    """

    def __init__(self, model: Model) -> None:
        self.model = model
        self.name: PopulationName = model.name
        self.words = model.words
        self.size = model.size
        self.look_again = model.look_again
        self.stop = model.stop
        self._stops = sorted(model.stops.items())
        self.keys: tuple[str, ...] = tuple(model.book)
        self._systems = Systems(model)

    def stop_for(self, count: int) -> float:
        """The ``|z|`` that one clean record of a hundred with so many values reaches with its worst one.

        ``stop`` is that of the 22 measures by which the population is judged; between the counts of the
        model's table it is interpolated, beyond them it stays.
        """
        counts, limits = zip(*self._stops, strict=True)
        place = min(max(bisect_left(counts, count), 1), len(counts) - 1)
        low, high = counts[place - 1], counts[place]
        share = min(max((count - low) / (high - low), 0.0), 1.0)
        return float(limits[place - 1] + share * (limits[place] - limits[place - 1]))

    def expect(self, key: str, measures: MeasureSet, without: Collection[str] = ()) -> Expected | None:
        """What the measure is expected to be from all others that were taken, but for ``without``.

        None where this population has nothing for the measure.
        """
        return expected_from(self._systems, key, self._evidence(measures, {key, *without}))

    def scores(self, measures: MeasureSet, without: Collection[str] = ()) -> tuple[Score, ...]:
        """Every value of the set against all others, in the order of the measure table.

        Values of single sides are held against the same expectation as the plain one.
        """
        return score_records(self._systems, [self._evidence(measures, without)])[0]

    def scores_of_many(self, sets: Sequence[MeasureSet]) -> list[tuple[Score, ...]]:
        """As :meth:`scores`, for many sets at once; fast where many hold the same measures."""
        return score_records(self._systems, [self._evidence(one) for one in sets])

    def distance(self, measures: MeasureSet) -> float:
        """How far the whole set lies from the middle of the population, in standard deviations.

        The Mahalanobis distance of all values that were taken; 0 where there is none.
        """
        given = self._evidence(measures)
        if not given.values:
            return 0.0
        system = self._systems.of(given.frame, tuple(given.values))
        off = self._systems.off(system, [given])[0]
        return math.sqrt(max(0.0, float(off @ system.precision @ off)))

    def gain(
        self, measures: MeasureSet, candidates: Iterable[str], weights: Mapping[str, float]
    ) -> tuple[Gain, ...]:
        """Which of the candidates that were not taken would tell most about the wanted measures.

        ``weights`` maps wanted measures to what a mm (degree, kg) of them is worth. What shrinks is the sum
        of weight squared times the variance of the true measure; one reading of a tape does not make that
        0. Best first; measures that this population does not know are left out.
        """
        return gains_of(self._systems, self._evidence(measures), candidates, weights)

    def blind_spot(self, key: str, measures: MeasureSet, chance: float = 0.5) -> float:
        """The smallest slip (mm, degrees, kg) that is worth a second look with this chance (0 to 1).

        The value counts as taken, beside the other values of the set. Infinite where this population has
        nothing for the measure.
        """
        expected = self.expect(key, measures)
        return math.inf if expected is None else noticed_slip(self.look_again, chance) * expected.sd

    def _evidence(self, measures: MeasureSet, without: Collection[str] = ()) -> Evidence:
        return evidence_of(measures, self._systems.known(frame_of(measures)[0]), without)
