"""What moves an edge: each number and each measure that it comes from, moved a little and drawn again."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from notchbook.app.why.explaining_names import WhySo, line_moved
from notchbook.body import Measure
from notchbook.body.measure_table import measure_entry
from notchbook.pattern import Pattern
from notchbook.recipe import Replay, replay
from notchbook.recipe.targets import StepNumber, Trials, numbers_of

LEAST_MOVED: Final = 0.1
"""mm; what moves a line by less does not move it: no pencil is finer. Own judgment."""

MORE: Final = 10.0
"""mm by which a length is made larger to see what it does; a plain number by 1."""


@dataclass(frozen=True, slots=True)
class Mover:
    """A number or a measure that moves what is explained.

    ``word`` names it, ``more`` is how much larger it was made (mm where ``is_length``, else in the unit of
    the number), ``moved`` the largest way that a line then goes, mm.
    """

    word: str
    said: str
    is_measure: bool
    is_length: bool
    more: float
    moved: float


def movers(run: Replay, why: WhySo) -> tuple[Mover, ...]:
    """The numbers and measures that move what is explained, what moves it most first.

    Only what the steps that touched it hold and read is tried; what is refused when larger is left out.
    """
    found = (*_numbers(run, why), *_measures(run, why))
    return tuple(sorted((one for one in found if one.moved > LEAST_MOVED), key=lambda one: -one.moved))


def _numbers(run: Replay, why: WhySo) -> Iterator[Mover]:
    steps = {doing.record.id for doing in why.doings}
    for number in numbers_of(run.recipe):
        if number.step in steps:
            yield from _number(run, why, number)


def _number(run: Replay, why: WhySo, number: StepNumber) -> Iterator[Mover]:
    trials = Trials(run, (number,), ())
    more = MORE if number.kind == "amount" else min(1.0, (number.high - number.low) / 20.0)
    here = trials.at((number.value,)).run if number.stored is None else run
    there = trials.at((number.value + more,)).run
    if here is not None and there is not None:
        moved = _largest(here.pattern, there.pattern, why)
        yield Mover(number.word, number.said, False, number.kind == "amount", more, moved)


def _measures(run: Replay, why: WhySo) -> Iterator[Mover]:
    keys = dict.fromkeys(read.key for doing in why.doings for read in doing.reads if read.measure is not None)
    for key in keys:
        entry, measure = measure_entry(key), run.measures.find(key)
        if measure is None or not entry.is_length:
            continue
        body = run.measures.with_value(key, _larger(measure))
        there = replay(run.recipe, body, run)
        if there.suspended is None:
            moved = _largest(run.pattern, there.pattern, why)
            yield Mover(key, entry.short_name.replace("_", " "), True, True, MORE, moved)


def _larger(measure: Measure) -> Measure:
    return replace(measure, value=measure.value + MORE, readings=())


def _largest(before: Pattern, after: Pattern, why: WhySo) -> float:
    ways = (line_moved(before, after, name) for name in why.lines)
    return max((way for way in ways if way is not None), default=0.0)
