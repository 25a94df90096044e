"""The history of an edge in words, as the command line and the page say it."""

from collections.abc import Mapping, Sequence
from typing import Any, Final

from notchbook.app.amount_words import amount_in_words
from notchbook.app.step_sentence import sentence
from notchbook.app.why.explaining_names import Doing, MeasureRead
from notchbook.app.why.what_moves import Mover
from notchbook.body import PopulationName
from notchbook.body.quantity_words import measure_text, said_key
from notchbook.errors import InputError
from notchbook.pattern import spoken
from notchbook.recipe import definition
from notchbook.units import LengthStyle, length_in_words

_DEEDS: Final = {
    "made": "made it",
    "changed": "changed it",
    "divided": "divided {names}",
    "joined": "joined {names} into it",
}

_STATUS: Final = {"measured": "measured", "chart": "from the chart", "estimated": "estimated"}
"""How a measure was come by."""

_NOT_TAKEN: Final = "asked for, not taken"


def deed_words(doing: Doing, style: LengthStyle) -> str:
    """What a step did: ``changed it, by up to 1.2 cm``."""
    gone = " and ".join(map(spoken, doing.came_from))
    said = _DEEDS[doing.deed].format(names=gone)
    if doing.moved is None or doing.deed == "made":
        return said
    if doing.moved < style.step / 2.0:
        return f"{said}, nothing moved"
    return f"{said}, by up to {length_in_words(doing.moved, style)}"


def order_words(doing: Doing, style: LengthStyle) -> str:
    """The step as a written order, its lengths in the reader's unit."""
    values = {name: _in_unit(value, style) for name, value in doing.record.parameters.items()}
    return sentence(definition(doing.record.operation).sentence, values)


def _in_unit(value: Any, style: LengthStyle) -> Any:
    """A length in the reader's unit, within lists and entries too; anything else as it is."""
    if isinstance(value, Mapping):
        return {name: _in_unit(one, style) for name, one in value.items()}
    if isinstance(value, (list, tuple)):
        return [_in_unit(one, style) for one in value]
    try:
        return amount_in_words(value, style.unit) if isinstance(value, str) else value
    except InputError:
        return value


def read_words(
    reads: Sequence[MeasureRead], style: LengthStyle, population: PopulationName | None
) -> tuple[str, ...]:
    """The measures that were read, by how they were come by: ``measured: hip girth 97.0 cm, ...``."""
    by_status: dict[str, list[str]] = {word: [] for word in (*_STATUS.values(), _NOT_TAKEN)}
    for read in reads:
        said = said_key(read.key, population)
        if read.measure is None:
            by_status[_NOT_TAKEN].append(said)
        else:
            text = f"{said} {measure_text(read.key, read.measure, style)}"
            by_status[_STATUS[read.measure.status]].append(text)
    return tuple(f"{status}: {', '.join(said)}" for status, said in by_status.items() if said)


def mover_words(one: Mover, style: LengthStyle) -> tuple[str, str, str]:
    """What moves it, by how much it was made larger, and how far that moves it."""
    more = length_in_words(one.more, style) if one.is_length else f"{one.more:g}"
    return one.said, f"+{more}", length_in_words(one.moved, style)
