"""JSON texts: sets in this program's own form, or lists of flat objects from elsewhere."""

from collections.abc import Mapping, Sequence

from notchbook.body.files.fields import text_of
from notchbook.body.files.read_json import json_data
from notchbook.body.importing.cell_text import clean_cell
from notchbook.body.importing.foreign_table import ForeignBody, ForeignLine, ForeignTable
from notchbook.body.importing.split_text import MOST_CELLS, MOST_COLUMNS, MOST_ROWS
from notchbook.errors import InputError
from notchbook.units import located_errors, quoted


def json_table(text: str) -> ForeignTable:
    """The table in a JSON text: one set, a list of sets, or a list of objects with one value a key.

    A single list inside of an object (``{"clients": [...]}``) is taken for the list. Refused:
    ``measures-json-broken``, ``measures-json-endless``, ``measure-duplicate``, ``number-not-finite``;
    anything but objects in the list (``measures-shape``); a value that is no text and no number
    (``field-not-text``); no end (``import-too-large``).
    """
    items = _items(json_data(text))
    if not items:
        raise InputError("import-empty")
    if len(items) > MOST_ROWS:
        raise _too_large()
    for number, item in enumerate(items, 1):
        if not isinstance(item, Mapping):
            raise InputError(
                "measures-shape", what=f"entry {number}", wanted="a table of names and values", where=""
            )
    if any(isinstance(item, Mapping) and "measures" in item for item in items):
        return ForeignTable("own_sets", "json", 0, own_sets=tuple(items))
    return _flat([item for item in items if isinstance(item, Mapping)])


def _items(data: object) -> Sequence[object]:
    if isinstance(data, list):
        return data
    if isinstance(data, Mapping) and "measures" not in data:
        lists = [value for value in data.values() if isinstance(value, list)]
        if len(lists) == 1:
            return lists[0]
    return [data]


def _flat(items: Sequence[Mapping[str, object]]) -> ForeignTable:
    names = list(dict.fromkeys(name for item in items for name in item))
    if len(names) > MOST_COLUMNS or len(names) * len(items) > MOST_CELLS:
        raise _too_large()
    lines = tuple(ForeignLine(name or f"column {place}", place, name) for place, name in enumerate(names, 1))
    bodies = tuple(
        ForeignBody(number, "", tuple(_cell(item, name, number) for name in names))
        for number, item in enumerate(items, 1)
    )
    return ForeignTable("body_a_row", "json", 0, lines, bodies)


def _cell(item: Mapping[str, object], name: str, number: int) -> str:
    if item.get(name) is None:
        return ""
    with located_errors(f"entry {number}: {quoted(name)}"):
        return clean_cell(text_of(item, name))


def _too_large() -> InputError:
    return InputError("import-too-large", rows=MOST_ROWS, columns=MOST_COLUMNS, cells=MOST_CELLS)
