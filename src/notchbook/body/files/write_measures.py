"""Writing the measures of one body to a file; the file is whole or not there."""

import csv
import io
import json
import os
from fractions import Fraction
from pathlib import Path
from typing import Final

from notchbook.body.files.raw_value import READINGS_SIGN, VALUE_FIELDS
from notchbook.body.files.set_data import set_to_data
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError, OutputError
from notchbook.units import decimal_text, quoted

_CSV_FIELDS: Final = tuple(name for name in VALUE_FIELDS if name != "unit")


def write_measures(measures: MeasureSet, path: str | Path) -> None:
    """Write the set in mm, as JSON or CSV by the ending; reading it again gives an equal set.

    Refused: another ending (``measures-file-kind``), a place that cannot be written (OutputError
    ``measures-file-not-written``). An existing file is replaced only when the new one is complete.
    """
    place = Path(path)
    writers = {".json": json_text, ".csv": csv_text}
    writer = writers.get(place.suffix.lower())
    if writer is None:
        raise InputError("measures-file-kind", file=quoted(place.name), known=tuple(writers))
    _replace_file(place, writer(measures))


def json_text(measures: MeasureSet) -> str:
    """The set as JSON text, in mm, with its keys in their fixed order."""
    return json.dumps(set_to_data(measures), indent=2, ensure_ascii=False, allow_nan=False) + "\n"


def csv_text(measures: MeasureSet) -> str:
    """The set as CSV text, in mm, one line for each measure after the lines about the whole."""
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    writer.writerow(("measure", *_CSV_FIELDS))
    for name, value in set_to_data(measures).items():
        if name != "measures":
            writer.writerow((name, _cell(value)))
    for key, measure in measures.values.items():
        writer.writerow((key, *(_cell(getattr(measure, name)) for name in _CSV_FIELDS)))
    return stream.getvalue()


def _cell(value: object) -> str:
    if isinstance(value, tuple):
        return READINGS_SIGN.join(_cell(one) for one in value)
    if isinstance(value, float):
        return decimal_text(Fraction(repr(value))) or ""
    return "" if value is None else str(value)


def _replace_file(place: Path, text: str) -> None:
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
