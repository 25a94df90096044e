"""Several wanted values by several numbers at once: Newton's steps, kept short where they overshoot."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

Functions = Callable[[Sequence[float]], "Sequence[float] | None"]
"""The values at a place; None where there are none."""

_MOST_ROUNDS = 30
_MOST_HALVINGS = 14
_RANK = 1e-7
"""Below this share of the strongest, a way to move the values is none."""


@dataclass(frozen=True, slots=True)
class Together:
    """Where the search ended: the place, the values there, and whether all are 0 to the accuracy.

    ``is_bound`` says that the values cannot be moved apart from each other there.
    """

    place: tuple[float, ...]
    values: tuple[float, ...]
    is_solved: bool
    is_bound: bool = False


def solve_together(
    functions: Functions, start: Sequence[float], steps: Sequence[float], accuracy: float
) -> Together:
    """The place where all values are 0, as many numbers as values, from a place that has values.

    ``steps`` are how far each number is moved to see what it does. Every step makes the values smaller, so
    that the search ends; it may end beside the solution where the functions turn or have no values.
    """
    place, values = tuple(start), _values(functions, start)
    for _ in range(_MOST_ROUNDS):
        if max(map(abs, values)) <= accuracy:
            return Together(place, values, True)
        move, is_bound = _newton(functions, place, values, steps)
        following = _shortened(functions, place, values, move)
        if following is None:
            return Together(place, values, False, is_bound)
        place, values = following
    return Together(place, values, max(map(abs, values)) <= accuracy)


def _values(functions: Functions, place: Sequence[float]) -> tuple[float, ...]:
    found = functions(place)
    if found is None:
        raise ValueError("the place to start from has no values")
    return tuple(found)


def _newton(
    functions: Functions, place: tuple[float, ...], values: tuple[float, ...], steps: Sequence[float]
) -> tuple[tuple[float, ...], bool]:
    """The step that would take all values to 0 if they were straight; and whether they are bound together."""
    import numpy as np  # imported here: starting the command line loads no numerics

    columns = [_slope(functions, place, values, index, step) for index, step in enumerate(steps)]
    scale = np.array([max(map(abs, column)) or 1.0 for column in columns])
    slopes = np.array(columns).T / scale
    move, _, rank, _ = np.linalg.lstsq(slopes, -np.array(values), rcond=_RANK)
    return tuple(float(part) for part in move / scale), bool(rank < len(values))


def _slope(
    functions: Functions, place: tuple[float, ...], values: tuple[float, ...], index: int, step: float
) -> list[float]:
    """What each value gains for each unit of one number."""
    for by in (step, -step, step / 16.0, -step / 16.0):
        moved = [number + by if at == index else number for at, number in enumerate(place)]
        found = functions(moved)
        if found is not None:
            return [(after - before) / by for before, after in zip(values, found, strict=True)]
    return [0.0] * len(values)


def _shortened(
    functions: Functions, place: tuple[float, ...], values: tuple[float, ...], move: tuple[float, ...]
) -> tuple[tuple[float, ...], tuple[float, ...]] | None:
    """The first of the step, its half, its quarter ... after which the values are smaller; None for none."""
    share = 1.0
    for _ in range(_MOST_HALVINGS):
        there = tuple(number + share * by for number, by in zip(place, move, strict=True))
        found = functions(there)
        if found is not None and _size(found) < _size(values):
            return there, tuple(found)
        share /= 2.0
    return None


def _size(values: Sequence[float]) -> float:
    return sum(value * value for value in values)
