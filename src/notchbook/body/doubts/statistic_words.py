"""Doubts that come from a population, in words."""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Final

from notchbook.body.doubts.doubt import Doubt, DoubtLevel, Repair, Suspect
from notchbook.body.measure_table import measure_entry
from notchbook.body.quantity_words import quantity_text
from notchbook.errors import InputError
from notchbook.units import LengthStyle

if TYPE_CHECKING:
    from notchbook.body.doubts.slips.hypothesis import Hypothesis
    from notchbook.body.population import Population

_CODE_OF_SLIP: Final[Mapping[str, str]] = {
    "exchanged": "measures-exchanged",
    "navel": "measure-to-which-waist",
    "hidden-pair": "measures-hide-each-other",
}


def doubt_in_words(
    level: DoubtLevel,
    cause: "Hypothesis",
    suspects: Sequence[Suspect],
    repairs: Sequence[Repair],
    population: "Population",
    style: LengthStyle,
) -> Doubt:
    """The doubt that ``cause`` explains best; every number in the reader's unit."""
    code = _code(level, cause, suspects)
    first = suspects[0]
    facts: dict[str, object] = {
        **_facts_of(first, style),
        "values": _listed([_said(one, style) for one in suspects]),
        "go": "does not go" if len(suspects) == 1 else "do not go",
        "ranges": "; ".join(range_words(one, style) for one in suspects),
        "question": sentence(cause.question),
        "hint": hint_words(repairs, style),
        "population": population.words,
        "where": "",
    }
    keys = tuple(one.key for one in suspects)
    return Doubt(level, keys, InputError(code, **facts), tuple(suspects), tuple(repairs))


def _code(level: DoubtLevel, cause: "Hypothesis", suspects: Sequence[Suspect]) -> str:
    if cause.slip in _CODE_OF_SLIP:
        return _CODE_OF_SLIP[cause.slip]
    if len(suspects) > 1:
        return "one-of-two-unlike-rest"
    return "measure-against-rest" if level == "stop" else "measure-unlike-rest"


def _listed(words: Sequence[str]) -> str:
    """``a, b and c``."""
    return " and ".join([", ".join(words[:-1]), words[-1]]) if len(words) > 1 else words[0]


def _said(one: Suspect, style: LengthStyle) -> str:
    """``Wrist girth of 15.5 cm``."""
    return f"{label_of_text_key(one.key)} of {_value(one.key, one.value, style)}"


def _facts_of(one: Suspect, style: LengthStyle) -> dict[str, object]:
    return {
        "key": one.key,
        "label": label_of_text_key(one.key),
        "given": _value(one.key, one.value, style),
        "expected": _value(one.key, max(one.expected, 0.0), style),
        "low": _value(one.key, one.low, style),
        "high": _value(one.key, one.high, style),
        "z": one.z,
    }


def range_words(one: Suspect, style: LengthStyle) -> str:
    """``Wrist girth would fit from 14.8 cm to 16.9 cm``."""
    low, high = _value(one.key, one.low, style), _value(one.key, one.high, style)
    return f"{label_of_text_key(one.key)} would fit from {low} to {high}"


def hint_words(repairs: Sequence[Repair], style: LengthStyle) -> str:
    """A sentence for each repair, with a blank behind it; nothing where none is offered."""
    return "".join(f"{repair_words(one, style)} " for one in repairs)


def repair_words(repair: Repair, style: LengthStyle) -> str:
    """``95.3 cm would fit: were two digits swapped?``."""
    if len(repair.values) == 1:
        key, value = repair.values[0]
        return f"{_value(key, value, style)} would fit: {repair.question}"
    meant = ", ".join(f"{label_of_text_key(key)} {_value(key, value, style)}" for key, value in repair.values)
    return f"{meant} would fit: {repair.question}"


def label_of_text_key(text_key: str) -> str:
    """``Hip depth`` or ``Hip depth, left``."""
    key, _, side = text_key.partition("@")
    label = measure_entry(key).label
    return f"{label}, {side}" if side else label


def sentence(question: str) -> str:
    """The question with a capital letter."""
    return question[:1].upper() + question[1:]


def _value(text_key: str, value: float, style: LengthStyle) -> str:
    return quantity_text(measure_entry(text_key.partition("@")[0]), value, style)
