"""Writing many bodies to one file; the file is whole or not there."""

import csv
import io
import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from notchbook.body.files.body_columns import ABOUT_COLUMNS, MEASURE_FIELDS
from notchbook.body.files.csv_cell import csv_cell
from notchbook.body.files.in_unit import set_to_data_in
from notchbook.body.files.write_measures import replace_file
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_table
from notchbook.body.sides import SIDES, sided_key
from notchbook.errors import InputError
from notchbook.units import Unit, quoted


def write_bodies(
    sets: Sequence[MeasureSet], path: str | Path, unit: Unit = "mm", ids: Sequence[str] | None = None
) -> None:
    """Write the sets to a bodies file (``.csv``) or as a list of sets (``.json``), lengths in ``unit``.

    Nothing is lost: what belongs to one measure alone (status, error, readings, method, by, note) stands
    in columns of its own, such as ``hip_girth.error``. :func:`read_bodies` reads the CSV back, in mm and
    cm exactly, in inches within 0.001 mm; sets that contradict themselves it refuses, as always.
    ``ids`` are the bodies' ids in the CSV, by default 1, 2, 3. Refused: another ending
    (``measures-file-kind``), an id twice or empty (``bodies-id-twice``, ``bodies-id-missing``), a place
    that cannot be written (OutputError ``measures-file-not-written``).
    """
    place = Path(path)
    ending = place.suffix.lower()
    if ending == ".csv":
        replace_file(place, bodies_csv(sets, unit, ids))
    elif ending == ".json":
        replace_file(place, bodies_json(sets, unit))
    else:
        raise InputError("measures-file-kind", file=quoted(place.name), known=(".csv", ".json"))


def bodies_json(sets: Sequence[MeasureSet], unit: Unit = "mm") -> str:
    """The sets as the JSON text of a list."""
    data = [set_to_data_in(measures, unit) for measures in sets]
    return json.dumps(data, indent=2, ensure_ascii=False, allow_nan=False) + "\n"


def bodies_csv(sets: Sequence[MeasureSet], unit: Unit = "mm", ids: Sequence[str] | None = None) -> str:
    """The sets as the text of a bodies file, with the columns that are needed and no others."""
    named = [str(number) for number in range(1, len(sets) + 1)] if ids is None else list(ids)
    _check_ids(named)
    rows = [
        _row(identity, set_to_data_in(measures, unit)) for identity, measures in zip(named, sets, strict=True)
    ]
    used = {name for row in rows for name in row}
    columns = [name for name in _all_columns() if name in used]
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    writer.writerow(columns)
    writer.writerows([row.get(name, "") for name in columns] for row in rows)
    return stream.getvalue()


def _check_ids(ids: Sequence[str]) -> None:
    seen: set[str] = set()
    for identity in ids:
        if not identity.strip():
            raise InputError("bodies-id-missing", where="")
        if identity in seen:
            raise InputError("bodies-id-twice", id=quoted(identity), where="")
        seen.add(identity)


def _all_columns() -> list[str]:
    columns = list(ABOUT_COLUMNS)
    for key in measure_table():
        for side in SIDES:
            name = sided_key(key, side)
            columns += [name, *(f"{name}.{field}" for field in MEASURE_FIELDS)]
    return columns


def _row(identity: str, data: Mapping[str, Any]) -> dict[str, str]:
    """The filled cells of one body by column."""
    row = {"id": identity}
    row |= {name: csv_cell(value) for name, value in data.items() if name != "measures"}
    for key, value in data["measures"].items():
        if isinstance(value, Mapping):
            row |= {key if name == "value" else f"{key}.{name}": csv_cell(of) for name, of in value.items()}
        else:
            row[key] = csv_cell(value)
    return row
