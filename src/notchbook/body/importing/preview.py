"""From a foreign table and the meaning of its lines to what would be stored."""

from collections.abc import Sequence
from dataclasses import replace

from notchbook.body.files.set_data import set_from_data
from notchbook.body.importing.foreign_table import ForeignTable
from notchbook.body.importing.known_names import KnownNames, with_known
from notchbook.body.importing.mapping import TableMapping
from notchbook.body.importing.preview_chart import gives_chart
from notchbook.body.importing.preview_doubts import MOST_ROWS_HELD, with_doubts
from notchbook.body.importing.preview_rows import Preview, PreviewRow, RowDoubt, refusal_of, shown_value
from notchbook.body.importing.propose import propose
from notchbook.body.importing.row_reader import RowReader
from notchbook.errors import InputError
from notchbook.units import LengthStyle, quoted


def preview(
    table: ForeignTable,
    mapping: TableMapping | None = None,
    source: str = "",
    known: KnownNames | None = None,
) -> Preview:
    """What would be stored of the table, under this meaning of its lines (by default the proposed one).

    ``source`` is the name of the file or list; it names what has no name of its own. ``known`` are the names
    that the book has already: their rows are asked about, except for the sizes of one chart, which are stored
    under the name of the chart. Lines whose meaning
    or unit is still open are read as proposed, and not at all where nothing is proposed. No cell is
    refused by an exception: refusals stand in the rows.
    """
    meaning = mapping or propose(table)
    held = len(table.own_sets) + len(table.bodies) <= MOST_ROWS_HELD
    if table.layout == "own_sets":
        rows = [
            _own_row(item, meaning, default, held=held)
            for item, default in zip(table.own_sets, _own_names(table, source), strict=True)
        ]
        said = {number: meaning.rows.get(number) for number in range(1, len(rows) + 1)}
        rows = [
            replace(row, number=number, choice=answer.choice if (answer := said[number]) else None)
            for number, row in enumerate(rows, 1)
        ]
    else:
        reader = RowReader(table, meaning, source, held=held)
        rows = [reader.row(body) for body in table.bodies]
    told = held or not any(row.measures is not None and row.measures.population for row in rows)
    found = Preview(table, meaning, _with_same_names(rows, table.body_place), source, told)
    if not known or gives_chart(found):
        return found
    return replace(found, rows=with_known(found.rows, known, meaning))


def _own_names(table: ForeignTable, source: str) -> list[str]:
    """Names for sets without one: that of the list, and the place in it when there are several."""
    base = source or "Imported"
    if len(table.own_sets) == 1:
        return [base]
    return [f"{base}, entry {number}" for number in range(1, len(table.own_sets) + 1)]


def _own_row(item: object, mapping: TableMapping, default: str, *, held: bool) -> PreviewRow:
    """A set in the program's own form, read as it stands."""
    try:
        measures = set_from_data(item, default)
    except InputError as error:
        return PreviewRow(0, "", "", refusals=(refusal_of("", "", error),))
    if measures.population is None:
        measures = replace(measures, population=mapping.population)
    shown = tuple(shown_value(key, "", measure) for key, measure in measures.values.items())
    empty = () if shown else (refusal_of("", "", InputError("import-row-empty", where="")),)
    row = PreviewRow(0, "", measures.name, shown, empty, measures=measures)
    return with_doubts(row, LengthStyle("cm"), held=held)


def _with_same_names(rows: Sequence[PreviewRow], place: str) -> tuple[PreviewRow, ...]:
    """The rows, each name that stands on an earlier row too with a doubt."""
    first: dict[str, int] = {}
    found = []
    for row in rows:
        earlier = first.setdefault(row.name.casefold(), row.number)
        if row.measures is not None and earlier != row.number:
            problem = InputError("import-name-twice", name=quoted(row.name), place=place, other=earlier)
            doubt = RowDoubt("check", problem.code, problem.text(), problem.next_step(), ())
            row = replace(row, doubts=(*row.doubts, doubt))
        found.append(row)
    return tuple(found)
