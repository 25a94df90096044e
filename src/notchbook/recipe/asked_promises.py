"""What steps were asked to change of a promised length: the promise grows by as much, told as ease."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from notchbook.pattern.expectation import Expectation
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.resolve import Found, resolve
from notchbook.recipe.track import StepState


def promises_of(states: Iterable[StepState], standing: Iterable[Expectation] = ()) -> tuple[Expectation, ...]:
    """The closures promised by the steps, each with what later steps were asked to change of it.

    ``standing`` were promised before these steps. A waist that a step was asked to make 2 cm wider is
    promised 2 cm wider: what was asked is what is checked.
    """
    found = list(standing)
    for state in states:
        found = [_with_asked(promise, state) for promise in found]
        found.extend(state.expectations)
    return tuple(found)


def _with_asked(promise: Expectation, state: StepState) -> Expectation:
    if not state.asked:
        return promise
    asked = sum(state.asked.get(name, 0.0) for name in _living(state.pattern, promise))
    return promise if asked == 0.0 else replace(promise, ease=promise.ease + promise.times * asked)


def _living(pattern: Pattern, promise: Expectation) -> Iterator[str]:
    """The edges and lines that a promise is measured on now."""
    for name in promise.names:
        answer = resolve(pattern, name)
        yield from answer.members if isinstance(answer, Found) else (name,)
