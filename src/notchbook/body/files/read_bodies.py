"""Reading many bodies from a CSV file with a line for each body."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from notchbook.body.doubts.consistency import refuse_inconsistent
from notchbook.body.files.csv_lines import CsvSheet, read_sheet
from notchbook.body.files.raw_value import RawValue, read_value
from notchbook.body.files.set_data import set_about, unit_of
from notchbook.body.files.text_file import MOST_BYTES_BODIES, read_text_file
from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_table
from notchbook.body.sides import split_key
from notchbook.errors import InputError
from notchbook.units import LengthStyle, located, quoted

ABOUT_COLUMNS: Final = (
    "id",
    "unit",
    "name",
    "kind",
    "status",
    "waist_level",
    "waist_drop",
    "rise_method",
    "population",
    "label_size",
    "taken_on",
    "taken_by",
    "undergarment",
    "heel",
    "note",
)


@dataclass(frozen=True, slots=True)
class BodyRow:
    """One line of a bodies file: its number, its id, and either the measures or why they are refused."""

    line: int
    id: str
    measures: MeasureSet | None = None
    error: InputError | None = None


def read_bodies(path: str | Path) -> Iterator[BodyRow]:
    """Every body of the file, in order; a bad line gives a row with its error and the rest is read on.

    Columns are ``id``, ``unit``, keys of measures (``hip_depth@left`` too) and, where wanted, name, kind,
    status and all that :data:`ABOUT_COLUMNS` names. An empty cell is a measure that was not taken.
    Refused at once, before any row: what :func:`read_text_file` and :func:`read_sheet` refuse, and a
    column that is no measure (``measure-unknown``) or a missing id (``measures-csv-columns``).
    """
    place = Path(path)
    text = read_text_file(place, MOST_BYTES_BODIES)
    try:
        sheet = read_sheet(text)
        _check_columns(sheet)
    except InputError as error:
        raise located(error, quoted(place.name)) from None
    return _rows(sheet, place.name)


def _check_columns(sheet: CsvSheet) -> None:
    if "id" not in sheet.columns:
        raise InputError("measures-csv-columns", missing=("id",), where="")
    keys = [name for name in sheet.columns if name not in ABOUT_COLUMNS]
    if not keys:
        raise InputError("measures-csv-columns", missing=tuple(list(measure_table())[:3]), where="")
    for name in keys:
        split_key(name)


def _rows(sheet: CsvSheet, file_name: str) -> Iterator[BodyRow]:
    seen: set[str] = set()
    for number, line in sheet.lines:
        identity = ""
        try:
            cells = sheet.row(line)
            identity = _new_id(cells["id"], seen)
            row = BodyRow(number, identity, _body(cells))
        except InputError as error:
            row = BodyRow(number, identity, error=located(error, f"{quoted(file_name)}, line {number}"))
        yield row


def _new_id(identity: str, seen: set[str]) -> str:
    if not identity:
        raise InputError("bodies-id-missing", where="")
    if identity in seen:
        raise InputError("bodies-id-twice", id=quoted(identity), where="")
    seen.add(identity)
    return identity


def _body(cells: dict[str, str]) -> MeasureSet:
    values: dict[str, Measure] = {}
    status = cells.get("status", "")
    unit = unit_of(cells)
    for name, text in cells.items():
        if name not in ABOUT_COLUMNS and text:
            key, measure = read_value(name, RawValue(text, status=status), unit)
            values[key] = measure
    about: dict[str, object] = {name: cells[name] for name in ABOUT_COLUMNS if name in cells}
    measures = set_about(about, values, unit, cells["id"])
    refuse_inconsistent(measures, LengthStyle(unit or "cm"))
    return measures
