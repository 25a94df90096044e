"""What looking over a body's measures came to, as the sheet shows it beside its lines."""

from typing import Final

from notchbook.app.studio import BodyState
from notchbook.body import DoubtLevel
from notchbook.body.doubts.doubt import Doubt, Repair, Suspect
from notchbook.body.doubts.look_over import look_over
from notchbook.body.doubts.looked_over import LookedOver, Unseen
from notchbook.body.doubts.standing import Standing
from notchbook.body.quantity_words import quantity_text, said_key
from notchbook.body.waist_drop import DROP_KEY, value_entry
from notchbook.workroom.answers.body import span_text
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.answers.refusal import refusal
from notchbook.workroom.reader import Reader

MOST_AT_LINES: Final = 3
"""A doubt about more measures than these is told once, over the lines."""

LARGE_SLIP: Final = 20.0
"""mm; what stays unseen below this is not worth a word: two layings of a tape differ by half of it."""

MOST_UNSEEN: Final = 5
"""How many of the largest unseen slips are told."""


class SuspectAnswer(Answer):
    """A value that would explain a doubt; ``range_text``: what would agree, empty where the words say it."""

    key: str
    label: str
    range_text: str


class RepairAnswer(Answer):
    """What was probably meant: the question, the words of the button, and the values that it stores."""

    question: str
    said: str
    values: dict[str, float]


class DoubtAnswer(Answer):
    """Something to look at again. ``at`` is the measure at whose line it is told, empty: over all lines."""

    level: DoubtLevel
    code: str
    message: str
    next_step: str
    at: str
    at_label: str
    keys: tuple[str, ...]
    suspects: tuple[SuspectAnswer, ...]
    repairs: tuple[RepairAnswer, ...]


class MeasureText(Answer):
    """A measure and what is said of it."""

    key: str
    label: str
    text: str


class ExpectedAnswer(Answer):
    """What the other measures of this body let expect; nine of ten lie within the range."""

    key: str
    expected_text: str
    range_text: str


class LookedOverAnswer(Answer):
    """All that is to be said of a body's measures.

    ``against`` names whom it was held against, or why nobody. ``twice`` should be taken once more.
    """

    id: int
    version: int
    summary: str
    against: str
    doubts: tuple[DoubtAnswer, ...]
    expected: tuple[ExpectedAnswer, ...]
    unseen: tuple[MeasureText, ...]
    twice: tuple[MeasureText, ...]


def looked_over_answer(state: BodyState, reader: Reader) -> LookedOverAnswer:
    """The body looked over; which slips are likely depends on the reader's unit."""
    looked = look_over(state.measures, reader.style)
    return LookedOverAnswer(
        id=state.id,
        version=state.version,
        summary=_summary(looked) if state.measures.values else "Nothing is taken yet.",
        against=_against(looked, reader),
        doubts=tuple(_doubt(doubt, reader) for doubt in looked.doubts),
        expected=tuple(_expected(standing, reader) for standing in looked.standings),
        unseen=_unseen(looked, reader),
        twice=tuple(
            MeasureText(key=key, label=said_key(key), text="")
            for key in dict.fromkeys(map(_plain, looked.take_twice))
        ),
    )


def _summary(looked: LookedOver) -> str:
    stops = sum(doubt.level == "stop" for doubt in looked.doubts)
    checks = len(looked.doubts) - stops
    told = [f"{stops} {'stops' if stops > 1 else 'stop'}"] if stops else []
    told += [f"{checks} to look at again"] if checks else []
    return f"{', '.join(told) or 'Nothing to look at again'}."


def _against(looked: LookedOver, reader: Reader) -> str:
    if looked.not_held is not None:
        said = refusal(looked.not_held, reader)
        return f"{said.message} {said.next_step}"
    cautions = (refusal(caution, reader).message for caution in looked.cautions)
    return " ".join([f"Held against {looked.population_words}.", *cautions])


def _doubt(doubt: Doubt, reader: Reader) -> DoubtAnswer:
    said = refusal(doubt.problem, reader)
    keys = tuple(dict.fromkeys(_plain(key) for key in doubt.keys))
    at = ""
    if 0 < len(keys) <= MOST_AT_LINES and DROP_KEY not in keys:
        at = _plain(doubt.suspects[0].key) if doubt.suspects else keys[0]
    return DoubtAnswer(
        level=doubt.level,
        code=doubt.code,
        message=said.message,
        next_step=said.next_step,
        at=at,
        at_label=said_key(at) if at else "",
        keys=keys,
        suspects=tuple(
            _suspect(suspect, f"{said.message} {said.next_step}", reader) for suspect in doubt.suspects
        ),
        repairs=tuple(_repair(repair, reader) for repair in doubt.repairs),
    )


def _suspect(suspect: Suspect, words: str, reader: Reader) -> SuspectAnswer:
    said = _quantity(suspect.key, suspect.low, reader) in words
    range_text = "" if said else _range(suspect.key, suspect.low, suspect.high, reader)
    return SuspectAnswer(key=_plain(suspect.key), label=said_key(suspect.key), range_text=range_text)


def _repair(repair: Repair, reader: Reader) -> RepairAnswer:
    values = dict(repair.values)
    if len(values) == 1:
        ((key, value),) = values.items()
        said = f"{_quantity(key, value, reader)} was meant"
    elif len(values) <= MOST_AT_LINES:
        told = (f"{said_key(key)} {_quantity(key, value, reader)}" for key, value in values.items())
        said = f"{', '.join(told)} was meant"
    else:
        said = f"change all {len(values)} values so"
    return RepairAnswer(question=repair.question, said=said, values=values)


def _expected(standing: Standing, reader: Reader) -> ExpectedAnswer:
    return ExpectedAnswer(
        key=standing.key,
        expected_text=_quantity(standing.key, standing.expected, reader),
        range_text=_range(standing.key, standing.low, standing.high, reader),
    )


def _unseen(looked: LookedOver, reader: Reader) -> tuple[MeasureText, ...]:
    """The largest slips that would go unnoticed, of measures that were taken once."""

    def size(one: Unseen) -> float:
        return one.slip or 0.0

    large = [one for one in looked.unseen if size(one) >= LARGE_SLIP and one.readings < 2]
    return tuple(
        MeasureText(key=_plain(one.key), label=said_key(one.key), text=_quantity(one.key, size(one), reader))
        for one in sorted(large, key=size, reverse=True)[:MOST_UNSEEN]
    )


def _range(key: str, low: float, high: float, reader: Reader) -> str:
    return span_text(_quantity(key, low, reader), _quantity(key, high, reader))


def _quantity(key: str, value: float, reader: Reader) -> str:
    return quantity_text(value_entry(key), value, reader.style)


def _plain(key: str) -> str:
    return key.partition("@")[0]
