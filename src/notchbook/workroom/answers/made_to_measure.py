"""What can be made to measure by which numbers, and what solving them would do."""

from notchbook.app.amount_words import number_in_words
from notchbook.app.comparing.length_changes import LengthChange
from notchbook.app.finding_words import message_in
from notchbook.app.wishes.making_it_measure import Candidate, Consequences
from notchbook.app.wishes.measurable import measurable
from notchbook.app.wishes.target_findings import number_said
from notchbook.pattern import Finding, Severity
from notchbook.recipe import Replay
from notchbook.recipe.parameter_paths import path_in_words
from notchbook.recipe.targets import Made, StepNumber, numbers_of, said_quantity
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class QuantityLine(Answer):
    """Something that can be measured: its kept text, how it is said, what it measures now. ``edges`` are the
    names in it, so that what is picked on the sheet comes first."""

    text: str
    said: str
    now_text: str
    edges: tuple[str, ...]


class NumberLine(Answer):
    """A number of a step that may move."""

    step: str
    parameter: str
    said: str
    value_text: str


class NumbersAnswer(Answer):
    """The numbers that make a wish come true, the one that changes least besides first."""

    numbers: tuple[NumberLine, ...]


class MeasuringChoices(Answer):
    """What can be made to measure, and the numbers that may move, those of each step together."""

    quantities: tuple[QuantityLine, ...]
    numbers: tuple[NumberLine, ...]


class SolvedNumber(Answer):
    """A number as it stands and as it would be written, and what is then measured."""

    number: str
    said: str
    before_text: str
    after_text: str
    measured_text: str


class ChangedLength(Answer):
    """Another girth or edge that would become longer or shorter."""

    said: str
    before_text: str
    after_text: str


class TurnedFinding(Answer):
    """What the checks would newly say, or say no more."""

    code: str
    message: str
    stops: bool


class MadeAnswer(Answer):
    """What solving would do; nothing is stored. ``broken`` are kept wishes that would no longer come true."""

    solved: tuple[SolvedNumber, ...]
    changed: tuple[ChangedLength, ...]
    broken: tuple[str, ...]
    new_findings: tuple[TurnedFinding, ...]
    gone_findings: tuple[TurnedFinding, ...]


def measuring_choices(run: Replay, reader: Reader) -> MeasuringChoices:
    """What can be wished for on this run."""
    return MeasuringChoices(
        quantities=tuple(
            QuantityLine(
                text=one.quantity.text,
                said=said_quantity(one.quantity),
                now_text=reader.fine(one.now),
                edges=one.quantity.names,
            )
            for one in measurable(run)
        ),
        numbers=tuple(_number(one, reader) for one in numbers_of(run.recipe)),
    )


def numbers_answer(found: tuple[Candidate, ...], reader: Reader) -> NumbersAnswer:
    """The numbers that give it, as they stand now."""
    able = [one.made.orders[0].number for one in found if one.made is not None]
    return NumbersAnswer(numbers=tuple(_number(one, reader) for one in able))


def _number(one: StepNumber, reader: Reader) -> NumberLine:
    return NumberLine(
        step=one.step,
        parameter=one.path,
        said=path_in_words(one.path),
        value_text=number_in_words(one.stored, reader.unit),
    )


def made_answer(made: Made, effects: Consequences, reader: Reader) -> MadeAnswer:
    """What came of solving, in the reader's unit."""
    return MadeAnswer(
        solved=tuple(
            SolvedNumber(
                number=number.said,
                said=order.wish.said,
                before_text=number_in_words(order.number.stored, reader.unit),
                after_text=number_in_words(number.stored, reader.unit),
                measured_text=reader.fine(value),
            )
            for order, number, value in zip(made.orders, made.numbers, made.measured, strict=True)
        ),
        changed=tuple(_changed(one, reader) for one in (*effects.girths, *effects.edges)),
        broken=tuple(number_said(one) for one in effects.broken),
        new_findings=_turned(effects.new_findings, reader),
        gone_findings=_turned(effects.gone_findings, reader),
    )


def _changed(one: LengthChange, reader: Reader) -> ChangedLength:
    return ChangedLength(
        said=one.said, before_text=reader.fine(one.before), after_text=reader.fine(one.after)
    )


def _turned(findings: tuple[Finding, ...], reader: Reader) -> tuple[TurnedFinding, ...]:
    return tuple(
        TurnedFinding(
            code=one.code, message=message_in(one, reader.style), stops=one.severity is Severity.STOP
        )
        for one in findings
    )
