"""One line of a report for each body that was looked over."""

import csv
import io
import math
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal

from notchbook.body import BodyRow, Doubt, LookedOver, Repair, Standing, Suspect
from notchbook.body.waist_drop import value_entry
from notchbook.errors import HouseFault, InputError
from notchbook.units import MM_PER_UNIT, LengthStyle, Unit

COLUMNS: Final = (
    "id",
    "level",
    "worst_z",
    "measure",
    "unit",
    "value",
    "expected",
    "low",
    "high",
    "slip",
    "repair",
    "codes",
    "message",
)
"""The columns of the report. ``measure`` is the value that would explain it, or else the one furthest off;
``low`` to ``high`` is where nine of ten bodies lie that are like it in all else; ``repair`` is what was
probably meant, ``key=value``, in the unit of the file. Lengths are in ``unit``."""

_DECIMALS: Final[dict[Unit, int]] = {"mm": 1, "cm": 2, "in": 3}

RowLevel = Literal["stop", "check", "fine", "not held", "refused"]
"""``not held``: nothing is to be asked, but nothing was held against a population either."""


@dataclass(frozen=True, slots=True)
class LookedRow:
    """One body of a file: its level and what there is to say, already in the unit of its line."""

    id: str
    line: int
    level: RowLevel
    unit: Unit | None = None
    standing: Standing | Suspect | None = None
    repairs: tuple[Repair, ...] = ()
    codes: tuple[str, ...] = ()
    message: str = ""

    @property
    def asks(self) -> bool:
        """Whether anything is to be looked at: a doubt, a line that cannot be read or that is empty."""
        return self.level not in ("fine", "not held") or "held-nothing" in self.codes


def refused_row(row: BodyRow) -> LookedRow:
    """The row for a line that could not be read."""
    if row.error is None:
        raise HouseFault("body-row-empty", row=row.id)
    return LookedRow(row.id, row.line, "refused", codes=(row.error.code,), message=row.error.text())


def looked_row(row: BodyRow, looked: LookedOver, unit: Unit) -> LookedRow:
    """The row for a body that was looked over."""
    doubts = looked.doubts
    if not doubts and looked.not_held is not None:
        return _not_held_row(row, looked.not_held, unit)
    level: RowLevel = doubts[0].level if doubts else "fine"
    first = next((doubt for doubt in doubts if doubt.suspects), doubts[0] if doubts else None)
    style = LengthStyle(unit)
    standing: Standing | Suspect | None = looked.worst
    if first is not None and first.suspects:
        standing = first.suspects[0]
    elif standing is None and first is not None:
        standing = _bare(row, first)
    repairs = next((doubt.repairs for doubt in doubts if doubt.repairs), ())
    message = " ".join(doubt.problem.text(style.text) for doubt in doubts)
    codes = tuple(dict.fromkeys(doubt.code for doubt in doubts))
    return LookedRow(row.id, row.line, level, unit, standing, repairs, codes, message)


def _not_held_row(row: BodyRow, why: InputError, unit: Unit) -> LookedRow:
    """The row for a body of which nothing can be said, or next to nothing."""
    if row.measures is not None and not row.measures.values:
        why = InputError("held-nothing", where="")
    return LookedRow(row.id, row.line, "not held", unit, codes=(why.code,), message=why.text())


def _bare(row: BodyRow, doubt: Doubt) -> Standing | None:
    """The value of a doubt that rests on no population: nothing is expected of it."""
    measure = row.measures.values.get(doubt.keys[0]) if row.measures and doubt.keys else None
    if measure is None:
        return None
    return Standing(doubt.keys[0], measure.value, math.nan, math.nan, math.nan)


def report_text(rows: Iterable[LookedRow]) -> str:
    """The report as CSV text."""
    written = io.StringIO()
    writer = csv.writer(written, lineterminator="\n")
    writer.writerow(COLUMNS)
    for row in rows:
        writer.writerow(report_cells(row))
    return written.getvalue()


def report_cells(row: LookedRow) -> tuple[str, ...]:
    """The cells of one row, in the order of :data:`COLUMNS`."""
    worst = measure = value = expected = low = high = ""
    one = row.standing
    if one is not None:
        measure, value = one.key, number_text(one.key, one.value, row.unit)
    if one is not None and not math.isnan(one.z):
        worst = f"{one.z:.2f}"
        reach = (one.expected, one.low, one.high)
        expected, low, high = (number_text(one.key, number, row.unit) for number in reach)
    return (
        row.id,
        row.level,
        worst,
        measure,
        row.unit or "",
        value,
        expected,
        low,
        high,
        " or ".join(repair.slip for repair in row.repairs),
        " or ".join(_repair_text(repair, row.unit) for repair in row.repairs),
        " ".join(row.codes),
        row.message,
    )


def _repair_text(repair: Repair, unit: Unit | None) -> str:
    return "; ".join(f"{key}={number_text(key, value, unit)}" for key, value in repair.values)


def number_text(text_key: str, value: float, unit: Unit | None) -> str:
    """The bare number in the unit of the file, mm where it names none (degrees, kg)."""
    unit = unit or "mm"
    if not value_entry(text_key).is_length:
        return f"{value:.1f}"
    return f"{float(Fraction(value) / MM_PER_UNIT[unit]):.{_DECIMALS[unit]}f}"
