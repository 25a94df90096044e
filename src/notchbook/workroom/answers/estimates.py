"""Estimates for a body, those that no longer follow, and what to measure next."""

from notchbook.app.bodies.next_measure import NextMeasure, Reason, line_words
from notchbook.body import MeasureSet, PopulationName, measure_entry
from notchbook.body.estimate_method import is_own_estimate
from notchbook.body.estimating.estimate import Estimate
from notchbook.body.estimating.estimating import estimate
from notchbook.body.estimating.stale import StaleEstimate, stale_estimates
from notchbook.body.quantity_words import quantity_text, quantity_with_error, said_key
from notchbook.errors import InputError
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.answers.refusal import Refusal, refusal
from notchbook.workroom.reader import Reader


class EstimateLine(Answer):
    """What a missing measure may be, in the reader's unit: ``20.3 ± 1.8 cm``, and from what.

    ``value`` and ``error`` are mm (degrees, kg); nine bodies of ten lie from ``low_text`` to ``high_text``.
    """

    key: str
    label: str
    text: str
    low_text: str
    high_text: str
    value: float
    error: float
    method: str
    given: tuple[str, ...]


class NotEstimated(Answer):
    """A measure of which nothing is known, with the reason."""

    key: str
    label: str
    refusal: Refusal


class StaleLine(Answer):
    """A stored estimate (key with its side) that no longer follows; ``now`` is None where nothing does."""

    key: str
    label: str
    stored_text: str
    now: EstimateLine | None


class EstimatesAnswer(Answer):
    """All that can be estimated for a body.

    ``refused`` says why nothing can; ``people`` are those it is held against, ``caution`` says why the ± may
    not hold, if so. ``held`` are the stored estimates of the book.
    """

    refused: Refusal | None
    people: str
    caution: str
    lines: tuple[EstimateLine, ...]
    not_estimated: tuple[NotEstimated, ...]
    stale: tuple[StaleLine, ...]
    held: tuple[str, ...]


class NextLine(Answer):
    """A measure to take next and why, in words; ``moves`` names what would move most, by ``moves_text``."""

    key: str
    label: str
    reason: Reason
    words: str
    moves: str
    moves_text: str


class NextAnswer(Answer):
    """What to measure next, the best first; ``refused`` says why it cannot be told."""

    refused: Refusal | None
    lines: tuple[NextLine, ...]


def estimates_answer(measures: MeasureSet, reader: Reader) -> EstimatesAnswer:
    """The estimates in the reader's unit."""
    held = tuple(key for key, measure in measures.values.items() if is_own_estimate(measure))
    people = measures.population
    stale = tuple(_stale(one, people, reader) for one in stale_estimates(measures))
    try:
        found = estimate(measures)
    except InputError as error:
        return EstimatesAnswer(
            refused=refusal(error, reader),
            people="",
            caution="",
            lines=(),
            not_estimated=(),
            stale=stale,
            held=held,
        )
    return EstimatesAnswer(
        refused=None,
        people=found.people,
        caution=" ".join(caution.text() for caution in found.cautions),
        lines=tuple(_line(one, reader) for one in found.found.values()),
        not_estimated=tuple(
            NotEstimated(
                key=one.key,
                label=measure_entry(one.key).label_for(people),
                refusal=refusal(one.problem, reader),
            )
            for one in found.left_out
        ),
        stale=stale,
        held=held,
    )


def next_answer(found: tuple[NextMeasure, ...], reader: Reader) -> NextAnswer:
    """The measures to take next in the reader's unit."""
    return NextAnswer(refused=None, lines=tuple(_next_line(one, reader) for one in found))


def next_refused(error: InputError, reader: Reader) -> NextAnswer:
    """Why it cannot be told what to take next."""
    return NextAnswer(refused=refusal(error, reader), lines=())


def _line(one: Estimate, reader: Reader) -> EstimateLine:
    entry = measure_entry(one.key)
    return EstimateLine(
        key=one.key,
        label=entry.label_for(one.population),
        text=quantity_with_error(entry, one.value, one.error, reader.style),
        low_text=quantity_text(entry, one.low, reader.style),
        high_text=quantity_text(entry, one.high, reader.style),
        value=one.value,
        error=one.error,
        method=one.method,
        given=one.given,
    )


def _stale(one: StaleEstimate, people: PopulationName | None, reader: Reader) -> StaleLine:
    entry = measure_entry(one.key.partition("@")[0])
    stored = quantity_with_error(entry, one.stored.value, one.stored.error or 0.0, reader.style)
    now = None if one.now is None else _line(one.now, reader)
    return StaleLine(key=one.key, label=said_key(one.key, people), stored_text=stored, now=now)


def _next_line(one: NextMeasure, reader: Reader) -> NextLine:
    return NextLine(
        key=one.key,
        label=measure_entry(one.key).label_for(one.population),
        reason=one.reason,
        words=one.words(reader.style),
        moves="" if one.moves is None else line_words(one.moves.name),
        moves_text="" if one.moves is None else reader.text(one.moves.amount),
    )
