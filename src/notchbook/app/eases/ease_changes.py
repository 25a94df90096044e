"""Which steps changed a length that a draft promised."""

from collections.abc import Iterator, Sequence

from notchbook.pattern import Expectation, Pattern, split_side
from notchbook.pattern.promised_length import promised_length
from notchbook.recipe import Replay, StepState
from notchbook.units import TOLERANCES


def changed_by(run: Replay, promise: Expectation) -> tuple[str, ...]:
    """The titles of the steps that made a promised length longer or shorter, or took it away, in order.

    Steps of one side are asked as their side drafted the length; steps of the whole under its name there.
    """
    base, side = split_side(promise.name)
    tracks = [run.right, *([run.left] if run.left is not None else [])]
    if side != "both" and run.left is not None:
        tracks = [run.left if side == "left" else run.right]
    found = [title for track in tracks for title in _of_side(track.states, base)]
    if run.whole is not None:
        found.extend(_changes(run.whole.start, run.whole.states, promise))
    return tuple(dict.fromkeys(found))


def _of_side(states: Sequence[StepState], name: str) -> Iterator[str]:
    """The steps of one side that changed a length since it was drafted there."""
    for index, state in enumerate(states):
        promise = next((one for one in state.expectations if one.name == name), None)
        if promise is not None:
            yield from _changes(state.pattern, states[index + 1 :], promise)


def _changes(start: Pattern, states: Sequence[StepState], promise: Expectation) -> Iterator[str]:
    known, pattern = promised_length(start, promise), start
    for state in states:
        if _has_the_same_shell(pattern, state.pattern):
            continue
        pattern = state.pattern
        now = promised_length(pattern, promise)
        if _differ(known, now):
            yield state.record.title or state.record.operation.replace("_", " ")
        known = now


def _differ(first: float | None, second: float | None) -> bool:
    """Whether a length changed or was taken away; one that has its names only from here on did not."""
    if first is None:
        return False
    return second is None or abs(first - second) > TOLERANCES.closure


def _has_the_same_shell(first: Pattern, second: Pattern) -> bool:
    """Whether no piece but those traced off others was touched."""
    pieces = [
        {name: piece for name, piece in one.pieces.items() if piece.rule is None} for one in (first, second)
    ]
    return pieces[0].keys() == pieces[1].keys() and all(
        piece is pieces[1][name] for name, piece in pieces[0].items()
    )
