"""One measured value and how far it can be trusted."""

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from notchbook.body.one_line import LONGEST_NAME, LONGEST_NOTE, one_line
from notchbook.errors import InputError

Status = Literal["measured", "chart", "estimated"]

READING_SLACK: Final = 0.01
"""How far the value may lie off the median of its readings: what rounding in a file leaves."""

STATUSES: Final[tuple[Status, ...]] = ("measured", "chart", "estimated")


@dataclass(frozen=True, slots=True)
class Measure:
    """A value in mm (or degrees, or kg), never negative, with where it comes from.

    ``error`` is the half width (±) of an estimate in the unit of the value: every estimate has one,
    nothing else does; nine bodies of ten lie within it. ``method`` says how it was taken, ``by`` who took
    it. ``readings`` are all that the tape said when it was laid more than once, in the order in which they
    were read; the value is their median, so that of three readings one slip does no harm.
    Refused: ``measure-not-usable`` (NaN, infinite or negative), ``measure-error-missing``,
    ``measure-error-unwanted``, ``measure-choice`` (unknown status), ``measure-readings`` (the value is not
    their median, or they stand beside an estimate).
    """

    value: float
    status: Status = "measured"
    error: float | None = None
    method: str = ""
    by: str = ""
    note: str = ""
    readings: tuple[float, ...] = ()

    def __post_init__(self) -> None:
        object.__setattr__(self, "value", _usable(self.value))
        if self.status not in STATUSES:
            raise InputError("measure-choice", what="status", given=self.status, known=STATUSES, where="")
        if self.status == "estimated":
            if self.error is None:
                raise InputError("measure-error-missing", where="")
            object.__setattr__(self, "error", _usable(self.error))
        elif self.error is not None:
            raise InputError("measure-error-unwanted", status=self.status, where="")
        for what, longest in (("method", LONGEST_NAME), ("by", LONGEST_NAME), ("note", LONGEST_NOTE)):
            object.__setattr__(self, what, one_line(getattr(self, what), what, longest))
        self._check_readings()

    def _check_readings(self) -> None:
        readings = tuple(_usable(reading) for reading in self.readings)
        # One reading alone is the value itself and says nothing more.
        object.__setattr__(self, "readings", readings if len(readings) > 1 else ())
        if not readings:
            return
        median = statistics.median(readings)
        if self.status == "estimated" or abs(median - self.value) > READING_SLACK:
            raise InputError("measure-readings", count=len(readings), value=self.value, where="")
        object.__setattr__(self, "value", median)

    @classmethod
    def of_readings(
        cls, readings: Sequence[float], method: str = "", by: str = "", note: str = ""
    ) -> "Measure":
        """The measure that these readings of the tape give, one or more."""
        value = statistics.median(readings)
        return cls(value, method=method, by=by, note=note, readings=tuple(readings))

    @property
    def spread(self) -> float:
        """How far the readings lie apart, in the unit of the value; 0 for a single one."""
        return max(self.readings) - min(self.readings) if self.readings else 0.0


def _usable(value: float) -> float:
    if not math.isfinite(value) or value < 0:
        raise InputError("measure-not-usable", value=value, where="")
    return float(value) + 0.0
