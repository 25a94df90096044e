"""Reading one body from a CSV file with a line for each measure."""

from pathlib import Path
from typing import Final

from notchbook.body.files.csv_lines import CsvSheet, read_sheet
from notchbook.body.files.fields import check_fields
from notchbook.body.files.raw_value import VALUE_FIELDS, RawValue, read_value
from notchbook.body.files.set_data import SET_FIELDS, set_about, unit_of
from notchbook.body.files.text_file import MOST_BYTES_ONE_BODY, read_text_file
from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError
from notchbook.units import Unit, located_errors, quoted

COLUMNS: Final = ("measure", *VALUE_FIELDS)
"""What a line says: the key (or ``name``, ``unit``, ``waist_level`` and the like), its value, and more."""

ABOUT_LINES: Final = tuple(name for name in SET_FIELDS if name != "measures")


def read_csv(path: Path, *, as_typed: bool = False) -> MeasureSet:
    """The measure set in the file: columns ``measure,value`` and, where wanted, unit, status and more.

    Lines ``name``, ``unit``, ``kind``, ``waist_level`` and the others of :data:`ABOUT_LINES`
    speak of the whole body. Refused with InputError that names line and key: see :func:`read_text_file`,
    :func:`read_sheet`, :func:`read_value`; ``measures-csv-columns`` when measure or value is missing.
    ``as_typed``: impossible values are kept, for looking over and for nothing else.
    """
    text = read_text_file(path, MOST_BYTES_ONE_BODY)
    with located_errors(quoted(path.name)):
        return _set_from_sheet(read_sheet(text), path.stem, as_typed)


def _set_from_sheet(sheet: CsvSheet, default_name: str, as_typed: bool) -> MeasureSet:
    missing = tuple(name for name in ("measure", "value") if name not in sheet.columns)
    if missing:
        raise InputError("measures-csv-columns", missing=missing, where="")
    check_fields(sheet.columns, COLUMNS)
    about: dict[str, str] = {}
    raw: list[tuple[int, str, RawValue]] = []
    for number, line in sheet.lines:
        with located_errors(f"line {number}"):
            cells = sheet.row(line)
            key = cells.pop("measure").lower()
            if key in about:
                raise InputError("measure-duplicate", key=key, where="")
            if key in ABOUT_LINES:
                about[key] = cells["value"]
            else:
                raw.append((number, key, RawValue(**cells)))
    return set_about(about, _values(raw, unit_of(about), as_typed), unit_of(about), default_name)


def _values(raw: list[tuple[int, str, RawValue]], unit: Unit | None, as_typed: bool) -> dict[str, Measure]:
    found: dict[str, Measure] = {}
    for number, text_key, value in raw:
        with located_errors(f"line {number}"):
            key, measure = read_value(text_key, value, unit, as_typed=as_typed)
            if key in found:
                raise InputError("measure-duplicate", key=key, where="")
            found[key] = measure
    return found
