"""Upper bodies of the survey as a tape would read them, and wrong values planted into them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
import numpy.typing as npt

from notchbook.blocks.upper_measures import UPPER_KEYS, UpperMeasures
from notchbook.body import PopulationName
from notchbook.body.population import population
from survey_rows import Row

LENGTHS: Final = ("back_waist_length", "front_waist_length", "center_front_length")
"""What ends at the waist and shapes the bodice."""


@dataclass(frozen=True, slots=True)
class UpperBody:
    """One surveyed body with what a bodice reads, and how far (mm) its navel lies below its natural waist."""

    measures: UpperMeasures
    navel_drop: float

    def off(self, by: Mapping[str, float]) -> UpperMeasures:
        """The same with these values too large by so many mm (degrees)."""
        taken = {key: value + by.get(key, 0.0) for key, value in self.measures.taken.items()}
        return replace(self.measures, taken=taken)

    def at_the_navel(self, keys: Sequence[str]) -> UpperMeasures:
        """The same with these lengths taken to the navel."""
        return self.off(dict.fromkeys(keys, self.navel_drop))


def upper_bodies(name: PopulationName, rows: Sequence[Row], seed: int) -> list[UpperBody]:
    """The rows at their natural waist: what the survey took as it is, with the definitions of the book.

    What it did not take is foretold with its whole scatter, and every value is read with the scatter of a
    tape; both by chance, from the seed.
    """
    model = population(name).model
    chance = np.random.default_rng(seed)
    columns = [column for column in model.behind if column in rows[0]]
    behind = np.zeros((len(rows), len(model.behind)))
    behind[:, : len(columns)] = [[row[column] for column in columns] for row in rows]
    rest = model.covariance[len(columns) :, len(columns) :]
    behind[:, len(columns) :] = chance.multivariate_normal(np.zeros(len(rest)), rest, len(rows))
    keys = [key for key in UPPER_KEYS if key in model.book]
    values = _read(name, keys, behind, chance)
    drops = behind @ model.drop.weights
    return [
        UpperBody(UpperMeasures(dict(zip(keys, map(float, line), strict=True)), population=name), float(drop))
        for line, drop in zip(values, drops, strict=True)
    ]


def _read(
    name: PopulationName,
    keys: Sequence[str],
    behind: npt.NDArray[np.float64],
    chance: np.random.Generator,
) -> npt.NDArray[np.float64]:
    """What a tape reads of bodies with this behind their measures, to the mm."""
    model = population(name).model
    weights = np.array([model.book[key].weights for key in keys])
    constants = np.array([model.book[key].constant for key in keys])
    scatter = np.array([np.hypot(model.book[key].scatter, model.tape[key]) for key in keys])
    exact = behind @ weights.T + constants
    read: npt.NDArray[np.float64] = np.round(exact + chance.normal(size=exact.shape) * scatter)
    return read
