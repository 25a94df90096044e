"""Doubts that come from a population, in words."""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Final

from notchbook.body.doubts.doubt import Doubt, DoubtLevel, Repair, Suspect
from notchbook.body.doubts.rest_words import listed
from notchbook.body.quantity_words import exact_text, quantity_text
from notchbook.body.waist_drop import value_entry
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
        "values": _first_alone([_said(one, style) for one in suspects]),
        "rest": "all the rest" if code == "measure-against-rest" else "the rest",
        "go": "does not go" if len(suspects) == 1 else "do not go",
        "ranges": _ranges(suspects, style),
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


def _first_alone(words: Sequence[str]) -> str:
    """``Hip girth of ..., knee girth of ... and ...``: the first begins the sentence."""
    return listed([words[0], *(within_sentence(word) for word in words[1:])])


def _ranges(suspects: Sequence[Suspect], style: LengthStyle) -> str:
    told = [range_words(one, style) for one in suspects]
    return "; ".join([told[0], *(within_sentence(words) for words in told[1:])])


def within_sentence(words: str) -> str:
    """The words as they stand within a sentence: ``Hip girth`` becomes ``hip girth``."""
    return words[:1].lower() + words[1:]


def _said(one: Suspect, style: LengthStyle) -> str:
    """``Wrist girth of 15.5 cm``."""
    return f"{label_of_text_key(one.key)} of {_typed(one, style)}"


def _facts_of(one: Suspect, style: LengthStyle) -> dict[str, object]:
    return {
        "key": one.key,
        "label": label_of_text_key(one.key),
        "given": _typed(one, style),
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
    told = [f"{label_of_text_key(key)} {_value(key, value, style)}" for key, value in repair.values]
    return f"{', '.join([told[0], *map(within_sentence, told[1:])])} would fit: {repair.question}"


def label_of_text_key(text_key: str) -> str:
    """``Hip depth`` or ``Hip depth, left``."""
    label, side = value_entry(text_key).label, text_key.partition("@")[2]
    return f"{label}, {side}" if side else label


def sentence(question: str) -> str:
    """The question with a capital letter."""
    return question[:1].upper() + question[1:]


def _typed(one: Suspect, style: LengthStyle) -> str:
    return exact_text(value_entry(one.key), one.value, style)


def _value(text_key: str, value: float, style: LengthStyle) -> str:
    return quantity_text(value_entry(text_key), value, style)
