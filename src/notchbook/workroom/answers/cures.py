"""What would heal, as buttons; and two measures that disagree, as a card."""

from typing import Any

from notchbook import pattern
from notchbook.app.contradictions import contradiction_in_words
from notchbook.app.offered_cure import OfferedCure
from notchbook.body import MeasureSet, measure_entry
from notchbook.body.quantity_words import quantity_text, said_key
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class AddedStep(Answer):
    """A step ready to be added at the end."""

    operation: str
    parameters: dict[str, Any]


class Cure(Answer):
    """A changed parameter of a step (by its id) that heals; ``value`` is what a change of the step takes.

    Where a step ``adds``, it is that step which heals, and ``disturbs`` says what else comes of it.
    """

    step: str
    parameter: str
    value: Any
    words: str
    adds: AddedStep | None = None
    disturbs: tuple[str, ...] = ()


class Contradiction(Answer):
    """Two measures (by their keys) that disagree, and the one that would explain both.

    ``value`` is what that one would be as an edit takes it (mm, degrees), ``by_text`` how much that differs;
    ``read_again`` is which to take again. ``question`` is a code, empty where nothing is to be asked.
    """

    first: str
    first_said: str
    first_text: str
    second: str
    second_said: str
    second_text: str
    explains: str
    explains_said: str
    explains_text: str
    value: float
    by_text: str
    read_again: str
    read_again_said: str
    second_reading: str
    question: str


def cure(offered: OfferedCure, reader: Reader) -> Cure:
    """The button, in the reader's unit."""
    added = offered.adds
    return Cure(
        step=offered.step,
        parameter=offered.parameter,
        value=offered.value,
        words=offered.words(reader.style),
        adds=None
        if added is None
        else AddedStep(operation=added.operation, parameters=dict(added.parameters)),
        disturbs=offered.disturbs.words(reader.style),
    )


def contradiction(told: pattern.Contradiction, measures: MeasureSet, reader: Reader) -> Contradiction:
    """The card, in the reader's unit."""

    def said(key: str) -> str:
        return said_key(key, measures.population)

    def text(key: str) -> str:
        found = measures.find(key)
        return "" if found is None else quantity_text(measure_entry(key), found.value, reader.style)

    words = contradiction_in_words(told, measures, reader.style)
    return Contradiction(
        first=told.first,
        first_said=said(told.first),
        first_text=text(told.first),
        second=told.second,
        second_said=said(told.second),
        second_text=text(told.second),
        explains=told.explains,
        explains_said=said(told.explains),
        explains_text=quantity_text(measure_entry(told.explains), told.value, reader.style),
        value=told.value,
        by_text=words.by,
        read_again=told.read_again,
        read_again_said=said(told.read_again),
        second_reading=words.second_reading,
        question=told.question,
    )
