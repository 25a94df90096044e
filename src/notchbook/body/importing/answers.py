"""Her answers to the questions of an import: what a column means, in which unit, what is left out."""

from dataclasses import dataclass
from typing import Final, Literal, get_args

from notchbook.body.files.body_columns import ABOUT_COLUMNS, split_column
from notchbook.body.importing.header_words import header_meaning
from notchbook.body.importing.unit_words import LINE_UNITS, LineUnit
from notchbook.body.measure_set import PopulationName, SetKind
from notchbook.errors import InputError
from notchbook.units import UNITS, Unit, quoted

Again = Literal["skip", "add"]
"""What becomes of a row whose name the book has already: left out, or kept as another."""

AGAIN_WORDS: Final[tuple[Again, ...]] = get_args(Again)


@dataclass(frozen=True, slots=True)
class LineAnswer:
    """One column (or row) by its name, or by its number as ``#5``: its target, and its unit.

    An empty target keeps the one that was proposed, an empty unit likewise.
    """

    name: str
    target: str = ""
    unit: LineUnit = ""


@dataclass(frozen=True, slots=True)
class RowAnswer:
    """One body by the number of its row (or column): the unit of its bare numbers, and whether it is stored.

    The unit goes before that of the columns. ``choice`` skip leaves the row out whatever it is.
    """

    number: int
    unit: Unit | None = None
    choice: Again | None = None


@dataclass(frozen=True, slots=True)
class Answers:
    """All that she has said. ``unit`` is that of bare numbers where the table itself names none.

    ``skip`` are names of columns or rows to be left out, ``skip_unknown`` leaves out all whose words are
    not known. ``kind`` and ``population`` count for every set. ``rows`` speak of single bodies, ``again`` of
    all whose names the book has already and of which ``rows`` say nothing.
    """

    unit: Unit | None = None
    lines: tuple[LineAnswer, ...] = ()
    skip: tuple[str, ...] = ()
    skip_unknown: bool = False
    kind: SetKind | None = None
    population: PopulationName | None = None
    rows: tuple[RowAnswer, ...] = ()
    again: Again | None = None


_FORM: Final = 'NAME=MEASURE:UNIT, such as "Bust=bust_girth:cm"'


def read_line_answer(text: str) -> LineAnswer:
    """The answer in ``Bust=bust_girth:cm``, ``Bust=bust_girth``, ``Bust=:in`` or ``#5=hip_girth:in``.

    Refused: another form (``import-answer-malformed``), an unknown unit (``length-unit-unknown``), and a
    target that is no measure and no field about the body (``measure-unknown`` and the like; for a word of
    the trade ``import-target-word``, with the keys that it may mean).
    """
    name, equals, said = text.rpartition("=")
    target, _colon, unit = said.partition(":")
    target, unit = target.strip().lower(), unit.strip().lower()
    if not equals or not name.strip() or not (target or unit):
        raise InputError("import-answer-malformed", text=quoted(text), form=_FORM)
    return LineAnswer(name.strip(), check_target(target), line_unit(unit))


def read_row_answer(text: str) -> RowAnswer:
    """The answer in ``6=cm``, ``6=skip`` or ``6=add``. Refused: another form (``import-row-malformed``)."""
    number, _equals, said = (part.strip() for part in text.partition("="))
    word = said.lower()
    if number.isdecimal() and len(number) < 9:
        for unit in UNITS:
            if word == unit:
                return RowAnswer(int(number), unit=unit)
        for choice in AGAIN_WORDS:
            if word == choice:
                return RowAnswer(int(number), choice=choice)
    raise InputError("import-row-malformed", text=quoted(text))


def check_target(target: str) -> str:
    """The target in its one form; refused when nothing of a set is called so."""
    if not target or target in ABOUT_COLUMNS:
        return target
    try:
        key, field = split_column(target)
    except InputError as error:
        meant = header_meaning(target).targets
        if error.code != "measure-unknown" or not meant:
            raise
        raise InputError("import-target-word", word=quoted(target), keys=" or ".join(meant)) from None
    return key if field == "value" else f"{key}.{field}"


def line_unit(text: str) -> LineUnit:
    """The unit by its word, or nothing for no word."""
    for unit in LINE_UNITS:
        if text == unit:
            return unit
    if text:
        raise InputError("length-unit-unknown", unit=quoted(text), where="")
    return ""
