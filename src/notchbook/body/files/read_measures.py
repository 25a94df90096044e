"""Reading one body from a file, whatever its form."""

from pathlib import Path
from typing import Final

from notchbook.body.doubts.consistency import refuse_inconsistent
from notchbook.body.files.read_csv import read_csv
from notchbook.body.files.read_json import read_json
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError
from notchbook.units import located_errors, quoted

_READERS: Final = {".json": read_json, ".csv": read_csv, ".tsv": read_csv, ".txt": read_csv}


def read_measures(path: str | Path, *, as_typed: bool = False) -> MeasureSet:
    """The measures of one body, form or chart size, from a JSON or CSV file chosen by its ending.

    Every refusal is an InputError that names the file, and where it can, line and key; no impossible
    value and no contradiction passes. What is only unusual passes: see :func:`check_consistent`.
    ``as_typed``: impossible and contradicting values are kept, for looking over and for nothing else.
    """
    place = Path(path)
    reader = _READERS.get(place.suffix.lower())
    if reader is None and not place.is_dir():
        raise InputError("measures-file-kind", file=quoted(place.name), known=tuple(_READERS))
    measures = (reader or read_csv)(place, as_typed=as_typed)
    if as_typed:
        return measures
    with located_errors(quoted(place.name)):
        refuse_inconsistent(measures)
    return measures
