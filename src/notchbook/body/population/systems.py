"""The systems of a population, made once each, and how far records lie from their means."""

from collections.abc import Mapping, Sequence

import numpy as np

from notchbook.body.population.evidence import Evidence, Frame
from notchbook.body.population.model import Array, Model, Row
from notchbook.body.population.system import System, level_shift, make_system

_MOST_KEPT = 512

_FARTHEST = 1e7
"""mm from the mean; what is farther is no body at all, and the squares must stay finite."""


class Systems:
    """Makes the distribution of any measures in any frame, and keeps it for the next record."""

    def __init__(self, model: Model) -> None:
        self.model = model
        self._kept: dict[tuple[Frame, tuple[str, ...]], System] = {}

    def known(self, frame: Frame) -> Mapping[str, Row]:
        """The measures that the population knows in this frame."""
        return self.model.survey if frame.taken_as == "survey" else self.model.book

    def of(self, frame: Frame, keys: tuple[str, ...]) -> System:
        """The distribution of these measures, all of them known, in this frame."""
        found = self._kept.get((frame, keys))
        if found is None:
            if len(self._kept) >= _MOST_KEPT:
                self._kept.clear()
            found = self._kept[frame, keys] = make_system(self.model, frame, keys)
        return found

    def off(self, system: System, given: Sequence[Evidence]) -> Array:
        """How far the values of these records, all of one frame, lie from their means: a line for each."""
        frame = given[0].frame
        lines = [[*one.values.values(), *([one.drop] if frame.drop_known else [])] for one in given]
        off = np.array(lines, dtype=np.float64) - system.mean
        if frame.level == "lower":
            for place, key in enumerate(system.keys):
                off[:, place] -= [level_shift(self.model, key, one.drop) for one in given]
        return np.clip(off, -_FARTHEST, _FARTHEST)
