"""One measured value and how far it can be trusted."""

import math
from dataclasses import dataclass
from typing import Final, Literal

from notchbook.body.one_line import LONGEST_NAME, LONGEST_NOTE, one_line
from notchbook.errors import InputError

Status = Literal["measured", "chart", "estimated"]

STATUSES: Final[tuple[Status, ...]] = ("measured", "chart", "estimated")


@dataclass(frozen=True, slots=True)
class Measure:
    """A value in mm (or degrees, or kg), never negative, with where it comes from.

    ``error`` is the half width (±) of an estimate in the unit of the value: every estimate has one,
    nothing else does. ``method`` says how it was taken, ``by`` who took it.
    Refused: ``measure-not-usable`` (NaN, infinite or negative), ``measure-error-missing``,
    ``measure-error-unwanted``, ``measure-choice`` (unknown status).
    """

    value: float
    status: Status = "measured"
    error: float | None = None
    method: str = ""
    by: str = ""
    note: str = ""

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


def _usable(value: float) -> float:
    if not math.isfinite(value) or value < 0:
        raise InputError("measure-not-usable", value=value, where="")
    return float(value) + 0.0
