"""What is off in a whole file of bodies, and how a body is judged beside it: its values stay, and are held
against what this file lets expect.

Loads numpy; imported only where a file is held against a population.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final, Literal

import numpy as np

from notchbook.body.doubts.consistency import check_consistent
from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.together import Together
from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet, TakenAs, WaistLevel
from notchbook.body.population.model import Array
from notchbook.body.sides import plain_key
from notchbook.units import LengthStyle

ShiftKind = Literal["survey", "waist", "waist-of-some", "unit", "shifted", "a-little"]

MAD_TO_SD: Final = 1.4826
"""The median deviation of a normal distribution times this is its standard deviation."""

_ONLY_TOLD: Final = frozenset({"waist-of-some", "a-little"})
"""Kinds that are named and change nothing in how the bodies are judged."""


@dataclass(frozen=True, slots=True)
class FileShift:
    """Measures that are off in the whole file, in mm (degrees, kg).

    ``off`` is the middle of value minus expected value of the first of the ``keys`` (for a waist: of a length
    that goes down to it), ``times`` the middle of their quotient. ``directions`` say how a measure goes with
    ``off``, one for each key. ``spread`` is the SD by which bodies differ in this beyond what the population
    knows. ``rows`` is how many bodies it was seen in, ``of`` among how many. ``waist`` is the question to ask
    where another waist would explain it. ``stated`` are the bodies that it is true of: those that say this
    waist level (None: all). Those are judged as at the waist ``level``, or as ``taken_as``, where these are
    named.
    """

    kind: ShiftKind
    keys: tuple[str, ...]
    off: float
    spread: float
    times: float
    rows: int
    of: int
    directions: tuple[float, ...] = (1.0,)
    waist: str = ""
    stated: WaistLevel | None = None
    level: WaistLevel | None = None
    taken_as: TakenAs | None = None

    def is_of(self, measures: MeasureSet) -> bool:
        """Whether it is true of this body."""
        if self.taken_as is not None:
            return measures.taken_as != self.taken_as
        if self.stated is None:
            return True
        return measures.taken_as == "book" and measures.waist_level == self.stated

    def reframed(self, measures: MeasureSet) -> MeasureSet:
        """The set with the waist, or with the way of taking, that the whole file looks like."""
        if self.taken_as is not None:
            return replace(measures, taken_as=self.taken_as, waist_level="navel", waist_drop=0.0)
        if self.level is not None:
            return replace(measures, waist_level=self.level, waist_drop=0.0)
        return measures

    @property
    def moves_values(self) -> bool:
        """Whether other values are expected beside the file than of the population alone."""
        return self.kind not in _ONLY_TOLD and self.level is None and self.taken_as is None

    def placed(self, whole: Together) -> Together:
        """The common distribution as it is in this file."""
        size = len(whole.values)
        times, way = np.ones(size), np.zeros(size)
        for key, direction in zip(self.keys, self.directions, strict=True):
            if key in whole.keys:
                place = whole.keys.index(key)
                if self.kind == "unit":
                    times[place] = self.times
                way[place] = direction
        mean = whole.mean * times + (0.0 if self.kind == "unit" else self.off) * way
        covariance = whole.covariance * np.outer(times, times) + self.spread**2 * np.outer(way, way)
        inverse = np.linalg.inv(covariance)
        return replace(whole, mean=mean, covariance=covariance, precision=(inverse + inverse.T) / 2.0)

    def taken_back(self, measures: MeasureSet) -> MeasureSet:
        """The values as they would be were the file not off by this."""
        values = dict(measures.values)
        for text_key, one in measures.values.items():
            key = plain_key(text_key)
            if key in self.keys:
                way = self.directions[self.keys.index(key)]
                meant = one.value / self.times if self.kind == "unit" else one.value - self.off * way
                values[text_key] = Measure(max(meant, 0.0), one.status, one.error)
        return replace(measures, values=values)


@dataclass(frozen=True, slots=True)
class BesideFile:
    """How the bodies of a file are judged beside all that is off in the whole of it."""

    shifts: tuple[FileShift, ...]

    def reframed(self, measures: MeasureSet) -> MeasureSet:
        """The set with the waist, or with the way of taking, that the whole file looks like."""
        for shift in self._of(measures):
            measures = shift.reframed(measures)
        return measures

    def placed(self, whole: Together) -> Together:
        """The common distribution as it is in this file."""
        for shift in self.shifts:
            if shift.moves_values:
                whole = shift.placed(whole)
        return whole

    def of(self, measures: MeasureSet) -> "BesideFile":
        """Only what is true of this body."""
        return BesideFile(tuple(self._of(measures)))

    @property
    def moved_keys(self) -> tuple[str, ...]:
        """The measures of which other values are expected beside the file."""
        return tuple(key for shift in self.shifts if shift.moves_values for key in shift.keys)

    def times(self, keys: Sequence[str]) -> Array:
        """By how much the numbers of each of these columns are larger than meant: 1 but for another unit."""
        by_key = {key: shift.times for shift in self.shifts if shift.kind == "unit" for key in shift.keys}
        return np.array([by_key.get(key, 1.0) for key in keys])

    @property
    def units(self) -> frozenset[str]:
        """The measures whose whole column is in another unit, doubled or halved."""
        return frozenset(key for shift in self.shifts if shift.kind == "unit" for key in shift.keys)

    @property
    def moves_waist(self) -> bool:
        """Whether lengths are off by another waist: then each body is not asked about its waist again."""
        return any(shift.moves_values and shift.waist for shift in self.shifts)

    def arithmetic(self, measures: MeasureSet, style: LengthStyle) -> tuple[Doubt, ...]:
        """What arithmetic asks of the values as they stand, without what the file already explains.

        A value that no body has stays, unless its column is in another unit and then it is possible.
        """
        as_typed = check_consistent(measures, style)
        moved = set(self.moved_keys)
        if not moved:
            return as_typed
        meant = measures
        for shift in self.shifts:
            meant = shift.taken_back(meant) if shift.moves_values else meant
        still = {(doubt.code, doubt.keys) for doubt in check_consistent(meant, style)}
        return tuple(doubt for doubt in as_typed if self._stays(doubt, moved, still))

    def _stays(self, doubt: Doubt, moved: set[str], still: set[tuple[str, tuple[str, ...]]]) -> bool:
        bare = {plain_key(key) for key in doubt.keys}
        if not bare & moved or (doubt.code, doubt.keys) in still:
            return True
        return doubt.code == "measure-impossible" and not bare <= self.units

    def _of(self, measures: MeasureSet) -> Sequence[FileShift]:
        return [shift for shift in self.shifts if shift.is_of(measures)]
