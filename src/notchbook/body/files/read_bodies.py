"""Reading many bodies from a CSV file with a line for each body."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from notchbook.body.doubts.consistency import refuse_inconsistent
from notchbook.body.files.body_columns import ABOUT_COLUMNS, split_column
from notchbook.body.files.csv_lines import CsvSheet, read_sheet
from notchbook.body.files.raw_value import RawValue, read_value
from notchbook.body.files.set_data import set_about, unit_of
from notchbook.body.files.text_file import MOST_BYTES_BODIES, read_text_file
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_table
from notchbook.errors import InputError
from notchbook.units import LengthStyle, Unit, located, quoted


@dataclass(frozen=True, slots=True)
class BodyRow:
    """One line of a bodies file: its number, its id, and either the measures or why they are refused.

    ``unit`` is what the line names for its bare numbers.
    """

    line: int
    id: str
    measures: MeasureSet | None = None
    error: InputError | None = None
    unit: Unit | None = None


def read_bodies(path: str | Path, *, as_typed: bool = False) -> Iterator[BodyRow]:
    """Every body of the file, in order; a bad line gives a row with its error and the rest is read on.

    Columns are ``id``, ``unit``, keys of measures (``hip_depth@left`` too) and, where wanted, name, kind,
    status and all that :data:`ABOUT_COLUMNS` names. What is said of one measure alone stands in a column
    such as ``hip_girth.error``, ``.status``, ``.readings``, ``.method``, ``.by``, ``.note`` or ``.unit``,
    which goes before what the row says of all. An empty cell is a measure that was not taken.
    Refused at once, before any row: what :func:`read_text_file` and :func:`read_sheet` refuse, and a
    column that is no measure (``measure-unknown``) or a missing id (``measures-csv-columns``).
    ``as_typed``: impossible and contradicting values are kept, for looking over and for nothing else.
    """
    place = Path(path)
    text = read_text_file(place, MOST_BYTES_BODIES)
    try:
        sheet = read_sheet(text)
        _check_columns(sheet)
    except InputError as error:
        raise located(error, quoted(place.name)) from None
    return _rows(sheet, place.name, as_typed)


def _check_columns(sheet: CsvSheet) -> None:
    if "id" not in sheet.columns:
        raise InputError("measures-csv-columns", missing=("id",), where="")
    keys = [name for name in sheet.columns if name not in ABOUT_COLUMNS]
    if not keys:
        raise InputError("measures-csv-columns", missing=tuple(list(measure_table())[:3]), where="")
    for name in keys:
        split_column(name)


def _rows(sheet: CsvSheet, file_name: str, as_typed: bool) -> Iterator[BodyRow]:
    seen: set[str] = set()
    for number, line in sheet.lines:
        identity = ""
        try:
            cells = sheet.row(line)
            identity = cells["id"]
            _refuse_id(identity, seen)
            row = BodyRow(number, identity, _body(cells, as_typed), unit=unit_of(cells))
        except InputError as error:
            row = BodyRow(number, identity, error=located(error, f"{quoted(file_name)}, line {number}"))
        yield row


def _refuse_id(identity: str, seen: set[str]) -> None:
    if not identity:
        raise InputError("bodies-id-missing", where="")
    if identity in seen:
        raise InputError("bodies-id-twice", id=quoted(identity), where="")
    seen.add(identity)


def _body(cells: dict[str, str], as_typed: bool) -> MeasureSet:
    unit = unit_of(cells)
    values = {}
    for key, fields in _fields_by_key(cells).items():
        said = {"value": "", "status": cells.get("status", ""), **fields}
        values[key] = read_value(key, RawValue(**said), unit, as_typed=as_typed)[1]
    about: dict[str, object] = {name: cells[name] for name in ABOUT_COLUMNS if name in cells}
    measures = set_about(about, values, unit, cells["id"])
    if not as_typed:
        refuse_inconsistent(measures, LengthStyle(unit or "cm"))
    return measures


def _fields_by_key(cells: dict[str, str]) -> dict[str, dict[str, str]]:
    """The filled fields of each measure: ``{"hip_girth": {"value": "98", "error": "1"}}``."""
    found: dict[str, dict[str, str]] = {}
    for name, text in cells.items():
        if name not in ABOUT_COLUMNS and text:
            key, field = split_column(name)
            found.setdefault(key, {})[field] = text
    return found
