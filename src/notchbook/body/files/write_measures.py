"""Writing the measures of one body to a file; the file is whole or not there."""

import csv
import io
import json
import os
from collections.abc import Mapping
from pathlib import Path
from typing import Final

from notchbook.body.files.csv_cell import csv_cell
from notchbook.body.files.in_unit import set_to_data_in
from notchbook.body.files.raw_value import VALUE_FIELDS
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError, OutputError
from notchbook.units import Unit, quoted

_CSV_FIELDS: Final = tuple(name for name in VALUE_FIELDS if name != "unit")


def write_measures(measures: MeasureSet, path: str | Path, unit: Unit = "mm") -> None:
    """Write the set, as JSON or CSV by the ending, lengths in ``unit``.

    Read again, the set is equal; in inches, its lengths are within 0.001 mm.
    Refused: another ending (``measures-file-kind``), a place that cannot be written (OutputError
    ``measures-file-not-written``). An existing file is replaced only when the new one is complete.
    """
    place = Path(path)
    writers = {".json": json_text, ".csv": csv_text}
    writer = writers.get(place.suffix.lower())
    if writer is None:
        raise InputError("measures-file-kind", file=quoted(place.name), known=tuple(writers))
    replace_file(place, writer(measures, unit))


def json_text(measures: MeasureSet, unit: Unit = "mm") -> str:
    """The set as JSON text, with its keys in their fixed order."""
    data = set_to_data_in(measures, unit)
    return json.dumps(data, indent=2, ensure_ascii=False, allow_nan=False) + "\n"


def csv_text(measures: MeasureSet, unit: Unit = "mm") -> str:
    """The set as CSV text, one line for each measure after the lines about the whole."""
    data = set_to_data_in(measures, unit)
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    writer.writerow(("measure", *_CSV_FIELDS))
    for name, value in data.items():
        if name != "measures":
            writer.writerow((name, csv_cell(value)))
    for key, value in data["measures"].items():
        said = {"status": "measured", **(value if isinstance(value, Mapping) else {"value": value})}
        writer.writerow((key, *(csv_cell(said.get(name)) for name in _CSV_FIELDS)))
    return stream.getvalue()


def replace_file(place: Path, text: str) -> None:
    """Put the text under this name, whole or not at all (OutputError ``measures-file-not-written``)."""
    unfinished = place.with_name(f".{place.name}.{os.getpid()}.unfinished")
    try:
        unfinished.write_text(text, encoding="utf-8", newline="\n")
        unfinished.replace(place)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "the name cannot be used"
        raise OutputError("measures-file-not-written", file=quoted(place.name), reason=reason) from None
    finally:
        _forget(unfinished)


def _forget(unfinished: Path) -> None:
    try:
        unfinished.unlink(missing_ok=True)
    except (OSError, ValueError):
        # Nothing was written where nothing can be removed.
        return
