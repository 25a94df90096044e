"""One run of steps over one side of a body: the chain of kept states.

Each state is kept under a hash of all that it came from: the state before, the operation with its
version and parameters, and the measures that it read, with what is told of them: a step may look at
whose body it is, at which waist it was measured, and at what is an estimate. Whether it is a child's is told
by height and girths together: that alone counts, so that another girth of an adult re-runs no step that did
not ask for it. An edit re-runs the suffix only.
"""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from pydantic import ValidationError

from notchbook.body import MeasureSet
from notchbook.body.doubts.child import is_child
from notchbook.errors import HouseFault, InputError, NameLost, NotchbookError
from notchbook.pattern.expectation import Expectation
from notchbook.pattern.finding import Finding
from notchbook.pattern.names import Side
from notchbook.pattern.pattern import Pattern
from notchbook.recipe.context import StepContext
from notchbook.recipe.definition import Change
from notchbook.recipe.ledger import LedgerEntry, account
from notchbook.recipe.parameters import StepParameters
from notchbook.recipe.recipe import StepRecord
from notchbook.recipe.refused_words import refused_words
from notchbook.recipe.registry import AnyStep, definition

Reads = tuple[tuple[str, Side, float | None], ...]
"""The measures that a step asked for: key, side and the value found (None when the set has none)."""


@dataclass(frozen=True, slots=True)
class StepState:
    """The pattern after one step, and what the step did, said and read."""

    record: StepRecord
    key: str
    pattern: Pattern
    entry: LedgerEntry
    reads: Reads
    expectations: tuple[Expectation, ...]
    notes: tuple[Finding, ...]
    asked: Mapping[str, float] = field(default_factory=dict)
    waves: Mapping[str, int] = field(default_factory=dict)
    grains: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Suspension:
    """Where a run stopped and why; the steps after it wait, the last good state stays.

    For a lost or ambiguous reference: the ``name`` (of the point, where that is no end of its edge
    now), the ``candidates`` and ``taken_by``, the step that took it (empty when none did).
    """

    step: str
    error: NotchbookError
    waiting: tuple[str, ...]
    name: str | None = None
    candidates: tuple[str, ...] = ()
    taken_by: str = ""


@dataclass(frozen=True, slots=True)
class Track:
    """The states of one run in order; ``reused`` of them were taken over from the run before."""

    side: Side
    start: Pattern
    start_key: str
    states: tuple[StepState, ...]
    suspended: Suspension | None = None
    reused: int = field(default=0, compare=False)

    @property
    def pattern(self) -> Pattern:
        """The last good pattern."""
        return self.states[-1].pattern if self.states else self.start

    @property
    def key(self) -> str:
        """The hash of the last good state."""
        return self.states[-1].key if self.states else self.start_key


def run_track(
    records: tuple[StepRecord, ...],
    start: tuple[Pattern, str],
    measures: MeasureSet,
    side: Side,
    previous: Track | None = None,
) -> Track:
    """Run the steps in order from a start (pattern and its hash), re-using what still holds.

    A step that is refused, or whose reference is lost or ambiguous, suspends itself and the steps
    after it. Our own faults (HouseFault) are raised.
    """
    pattern, key = start
    old = previous.states if previous is not None and previous.start_key == key else ()
    states: list[StepState] = []
    reused = 0
    for index, record in enumerate(records):
        if reused == index < len(old) and _holds(old[index], record, measures, key):
            state, reused = replace(old[index], record=record), reused + 1
        else:
            try:
                state = run_step(record, pattern, measures, side, key)
            except HouseFault:
                raise
            except NotchbookError as error:
                waiting = tuple(later.id for later in records[index + 1 :])
                stopped = _suspension(record, error, waiting)
                return Track(side, *start, tuple(states), stopped, reused)
        states.append(state)
        pattern, key = state.pattern, state.key
    return Track(side, *start, tuple(states), None, reused)


def run_step(
    record: StepRecord, pattern: Pattern, measures: MeasureSet, side: Side, key_before: str
) -> StepState:
    """Run one step and write its names into the ledger."""
    step = definition(record.operation)
    parameters = read_parameters(step, record)
    context = StepContext(measures, record.slug, record.id, side)
    change: Change = step.run(pattern, context, parameters)
    after, entry = account(pattern, change, record)
    reads: Reads = tuple((name, of, value) for (name, of), value in sorted(context.reads.items()))
    return StepState(
        record=record,
        key=state_key(key_before, record, reads, measures),
        pattern=after,
        entry=entry,
        reads=reads,
        expectations=change.expectations,
        notes=change.notes,
        asked=change.asked,
        waves=change.waves,
        grains=change.grains,
    )


def read_parameters(step: AnyStep, record: StepRecord) -> StepParameters:
    """The typed parameters of a record; InputError with the field and the reason."""
    try:
        parameters: StepParameters = step.parameters.model_validate(record.parameters)
    except ValidationError as error:
        raise parameter_error(record.id, error) from error
    return parameters


def parameter_error(step_id: str, error: ValidationError) -> InputError:
    """The first complaint about a step's parameters in our own words."""
    first = error.errors()[0]
    field_name = ".".join(str(part) for part in first["loc"]) or "the whole"
    return InputError("parameter-refused", step=step_id, field=field_name, reason=refused_words(first))


def state_key(before: str, record: StepRecord, reads: Reads, measures: MeasureSet) -> str:
    """The hash of a state: chain of operation, version, names, parameters and measures read."""
    content: list[Any] = [before, record.operation, record.version, record.id, record.slug, record.side]
    content += [record.parameters, [[*read, *_told(measures, read[0], read[1])] for read in reads]]
    if reads:
        content.append([getattr(measures, fact) for fact in _FACTS])
        content += ["child"] if is_child(measures) else []
    text = json.dumps(content, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


_FACTS = ("kind", "population", "taken_as", "waist_level", "waist_drop", "rise_method")
"""What a set tells of all its measures."""


def _told(measures: MeasureSet, key: str, side: Side) -> tuple[Any, ...]:
    """What is told of a measure beside its value: how it was come by, its ± and all its readings."""
    measure = measures.find(key, side)
    return () if measure is None else (measure.status, measure.error, measure.readings)


def _holds(known: StepState, record: StepRecord, measures: MeasureSet, key_before: str) -> bool:
    """Whether a kept state is what running the step now would give."""
    reads: Reads = tuple((key, side, _now(measures, key, side)) for key, side, _ in known.reads)
    return state_key(key_before, record, reads, measures) == known.key


def _now(measures: MeasureSet, key: str, side: Side) -> float | None:
    measure = measures.find(key, side)
    return None if measure is None else measure.value


def _suspension(record: StepRecord, error: NotchbookError, waiting: tuple[str, ...]) -> Suspension:
    if not isinstance(error, NameLost):
        return Suspension(record.id, error, waiting)
    facts = error.facts
    candidates = facts.get("candidates", facts.get("ends", ()))
    names = tuple(str(one) for one in candidates) if isinstance(candidates, (tuple, list)) else ()
    name = str(facts.get("point", facts.get("name", "")))
    taken_by = str(facts.get("by", ""))
    return Suspension(record.id, error, waiting, name, names, "" if taken_by == "no step" else taken_by)
