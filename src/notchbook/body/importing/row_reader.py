"""Reading one body of a foreign table, under the meaning of its lines."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from notchbook.body.files.body_columns import ABOUT_COLUMNS, LENGTHS_ABOUT, split_column
from notchbook.body.files.raw_value import RawValue, read_value
from notchbook.body.files.set_data import set_about, unit_of
from notchbook.body.importing.answers import Again, RowAnswer
from notchbook.body.importing.foreign_table import ForeignBody, ForeignTable
from notchbook.body.importing.hints import cell_hint
from notchbook.body.importing.mapping import JOINED, MappedLine, TableMapping
from notchbook.body.importing.preview_doubts import with_doubts
from notchbook.body.importing.preview_rows import PreviewRow, PreviewValue, Refusal, refusal_of, shown_value
from notchbook.body.importing.propose import is_size
from notchbook.body.importing.row_unit import BareNumber, bare_number, other_unit
from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError
from notchbook.units import UNITS, LengthStyle, Unit, decimal_text, parse_length

_HINTED: Final = ("measure-impossible", "length-too-large", "number-text", "number-decimal-signs")


@dataclass(frozen=True, slots=True)
class _Cell:
    """A filled cell of one body with its line and what else its row says of it."""

    line: MappedLine
    text: str
    fields: tuple[tuple[str, str], ...]


class RowReader:
    """Reads the bodies of one table."""

    def __init__(self, table: ForeignTable, mapping: TableMapping, source: str, *, held: bool) -> None:
        self._held = held
        self._table, self._mapping, self._source = table, mapping, source
        self._lines = _lines_read(mapping)
        self._unread = _lines_unread(mapping)
        self._read: dict[tuple[str, RawValue, Unit | None], Measure] = {}
        units = Counter(line.unit for _place, line in self._lines if line.unit in UNITS)
        common = units.most_common(1)
        self._unit: Unit | None = next((unit for unit in UNITS if common and unit == common[0][0]), None)

    def row(self, body: ForeignBody) -> PreviewRow:
        """What would be stored of one body."""
        cells = [
            _Cell(line, body.cells[place], self._table.lines[place].fields)
            for place, line in self._lines
            if body.cells[place]
        ]
        about = _about(cells)
        refusals: list[Refusal] = []
        values: dict[str, Measure] = {}
        shown: list[PreviewValue] = []
        if body.cells_found:
            refusals.append(refusal_of("", "", _too_many(body, self._table)))
        said = self._mapping.rows.get(body.number, RowAnswer(body.number))
        unit = said.unit or self._row_unit(about, refusals)
        by_key = _by_key(cells)
        other = None if said.unit or refusals else other_unit(self._bare(by_key, unit))
        if other is not None:
            return self._asked(body, about, unit, other, said.choice)
        for key, found in by_key.items():
            status = about.get("status", "") or self._status()
            raw, bare_unit = _raw(found, status, unit, whole_row=said.unit is not None)
            try:
                values[key] = self._measure(key, raw, bare_unit)
                shown.append(shown_value(key, found[0].text, values[key]))
            except InputError as error:
                hint = cell_hint(key, raw.value, bare_unit) if error.code in _HINTED else ""
                refusals.append(refusal_of(found[0].line.name, found[0].text, error, hint))
        measures = self._set(body, about, values, unit, refusals)
        name = measures.name if measures else self._name(body, about)
        row = PreviewRow(
            body.number,
            about.get("id", ""),
            name,
            tuple(shown),
            tuple(refusals),
            measures=measures,
            choice=said.choice,
            unit=said.unit,
            unread=tuple(line.name for place, line in self._unread if body.cells[place]),
        )
        return with_doubts(row, LengthStyle(unit or self._unit or "cm"), held=self._held)

    def _bare(self, by_key: Mapping[str, Sequence[_Cell]], unit: Unit | None) -> list[BareNumber]:
        """The bare numbers of lengths in a row, each with the unit that it would be read in."""
        found = []
        for key, cells in by_key.items():
            for cell in cells:
                if split_column(cell.line.target)[1] == "value" and "unit" not in dict(cell.fields):
                    number = bare_number(key, cell.text, _length_unit(cell.line, unit))
                    found += [number] if number else []
        return found

    def _asked(
        self, body: ForeignBody, about: dict[str, str], unit: Unit | None, other: Unit, choice: Again | None
    ) -> PreviewRow:
        """A row of which nothing is read before its unit is said."""
        name = self._name(body, about)
        own = unit or self._unit
        return PreviewRow(body.number, about.get("id", ""), name, choice=choice, unit=own, other_unit=other)

    def _measure(self, key: str, raw: RawValue, unit: Unit | None) -> Measure:
        """The measure; the same words are read once, since lists say the same numbers again and again."""
        known = self._read.get((key, raw, unit))
        if known is None:
            known = self._read[key, raw, unit] = read_value(key, raw, unit)[1]
        return known

    def _row_unit(self, about: dict[str, str], refusals: list[Refusal]) -> Unit | None:
        try:
            return unit_of(about)
        except InputError as error:
            refusals.append(refusal_of("unit", about["unit"], error))
            return None

    def _set(
        self,
        body: ForeignBody,
        about: dict[str, str],
        values: dict[str, Measure],
        unit: Unit | None,
        refusals: list[Refusal],
    ) -> MeasureSet | None:
        if not values:
            if not refusals:
                refusals.append(refusal_of("", "", InputError("import-row-empty", where="")))
            return None
        said: dict[str, object] = {"kind": self._mapping.kind, "population": self._mapping.population or ""}
        if is_size(body.name):
            said["label_size"] = body.name
        said |= {name: text for name, text in about.items() if text and name not in ("unit", "id", "status")}
        try:
            for name in LENGTHS_ABOUT:
                if name in about:
                    said[name] = self._mm_text(name, about[name], unit)
            return set_about(said, values, None, self._name(body, about))
        except InputError as error:
            refusals.append(refusal_of("", "", error))
            return None

    def _mm_text(self, name: str, text: str, unit: Unit | None) -> str:
        line = next(line for _place, line in self._lines if line.target == name)
        value = parse_length(text, _length_unit(line, unit))
        return f"{decimal_text(Fraction(repr(value)))} mm"

    def _status(self) -> str:
        return "chart" if self._mapping.kind == "chart" else ""

    def _name(self, body: ForeignBody, about: dict[str, str]) -> str:
        found = about.get("name") or body.name or about.get("id", "")
        if found and not (body.name and is_size(body.name)):
            return found
        if body.name:
            return f"{self._source or 'Size'} {body.name}".strip()
        place = "" if len(self._table.bodies) == 1 else f", {self._table.body_place} {body.number}"
        return f"{self._source or 'Imported'}{place}"


def _lines_read(mapping: TableMapping) -> tuple[tuple[int, MappedLine], ...]:
    """The lines that are read, with their places: those with a target, and with a unit where one is asked."""
    taken: set[str] = set()
    found = []
    for place, line in enumerate(mapping.lines):
        readable = line.target and (line.unit_sure or line.unit)
        if readable and (line.target in JOINED or line.target not in taken):
            taken.add(line.target)
            found.append((place, line))
    return tuple(found)


def _lines_unread(mapping: TableMapping) -> tuple[tuple[int, MappedLine], ...]:
    """The lines that wait for an answer before anything can be read of them."""
    return tuple(
        (place, line)
        for place, line in enumerate(mapping.lines)
        if not line.sure and not (line.target and (line.unit_sure or line.unit))
    )


def _about(cells: Sequence[_Cell]) -> dict[str, str]:
    """The filled fields about the whole body; first and last name are joined."""
    found: dict[str, str] = {}
    for cell in cells:
        if cell.line.target in ABOUT_COLUMNS:
            before = found.get(cell.line.target, "")
            found[cell.line.target] = f"{before} {cell.text}".strip()
    return found


def _by_key(cells: Sequence[_Cell]) -> dict[str, list[_Cell]]:
    """The cells of each measure, in the order of the table."""
    found: dict[str, list[_Cell]] = {}
    for cell in cells:
        if cell.line.target not in ABOUT_COLUMNS:
            found.setdefault(split_column(cell.line.target)[0], []).append(cell)
    return found


def _raw(
    cells: Sequence[_Cell], status: str, row_unit: Unit | None, *, whole_row: bool
) -> tuple[RawValue, Unit | None]:
    """What a row says of one measure, and the unit of its bare numbers.

    ``whole_row``: she said the unit of this row, and that goes before what its columns say.
    """
    fields = {"value": "", "status": status}
    unit = row_unit
    for cell in cells:
        field = split_column(cell.line.target)[1]
        if field == "value":
            fields |= dict(cell.fields)
            unit = row_unit if whole_row else _length_unit(cell.line, row_unit)
        fields[field] = cell.text
    return RawValue(**fields), unit


def _length_unit(line: MappedLine, row_unit: Unit | None) -> Unit | None:
    return next((unit for unit in UNITS if unit == line.unit), row_unit)


def _too_many(body: ForeignBody, table: ForeignTable) -> InputError:
    columns = max((line.number for line in table.lines), default=0)
    return InputError("measures-csv-cells", cells=body.cells_found, columns=columns, where="")
