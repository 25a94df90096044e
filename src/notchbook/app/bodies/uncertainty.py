"""How far a pattern moves when a measure that nobody took is off by its ±.

Nothing is linearized: the recipe is run again at both ends of the ±, and the two patterns are compared.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from notchbook.app.drift import edge_drift
from notchbook.body import Measure, MeasureSet, split_key
from notchbook.pattern import Pattern, sewn_length
from notchbook.pattern.resolve import Found, resolve
from notchbook.pattern.sewn import run_length
from notchbook.recipe import Recipe, Replay, estimated_reads, replay

LEAST_MOVED: Final = 0.1
"""mm; a pattern does not answer to a measure that moves none of its lines by more: no pencil is finer. Own
judgment."""


@dataclass(frozen=True, slots=True)
class Moved:
    """The largest of some movements: what moved, by its name, and by how much, mm."""

    name: str
    amount: float


@dataclass(frozen=True, slots=True)
class Sensitivity:
    """How a pattern answers to one measure.

    ``outline`` is the largest way that a point of an outline goes from the pattern as it stands, in the
    frame in which its piece is drawn, ``seam`` the largest change of a seam's length, when the measure is
    off by ``error`` (±) one way or the other. ``per_mm`` is the movement of the outline for each mm (degree,
    kg) of the measure. ``refused`` are the values at which the recipe is refused, if it is.
    """

    key: str
    error: float
    outline: Moved
    seam: Moved
    per_mm: float
    refused: tuple[float, ...]


def sensitivities(recipe: Recipe, measures: MeasureSet) -> tuple[Sensitivity, ...]:
    """The answer of the pattern to each estimate that it rests on, the largest movement first.

    Empty while the recipe does not run on these measures to its end.
    """
    run = replay(recipe, measures)
    if run.suspended is not None:
        return ()
    found = (sensitivity(run, key, measure) for key, measure in estimated_reads(run).items())
    return tuple(sorted(found, key=lambda one: -one.outline.amount))


def sensitivity(run: Replay, text_key: str, measure: Measure) -> Sensitivity:
    """How the pattern of a run moves when a measure of its set (with ±) is off by that much.

    ``measure`` need not stand in the set yet: then the pattern is compared with what it would become.
    """
    ends: list[tuple[float, Pattern]] = []
    refused: list[float] = []
    for value, tried in _tried(run, text_key, measure):
        if tried.suspended is None:
            ends.append((value, tried.pattern))
        else:
            refused.append(value)
    outlines = [_largest(outline_movements(run.pattern, pattern)) for _, pattern in ends]
    seams = [_largest(seam_changes(run.pattern, pattern)) for _, pattern in ends]
    return Sensitivity(
        key=text_key,
        error=measure.error or 0.0,
        outline=max(outlines, key=_amount, default=_NOTHING),
        seam=max(seams, key=_amount, default=_NOTHING),
        per_mm=_slope(ends, (measure.value, run.pattern)),
        refused=tuple(refused),
    )


def answers(run: Replay, text_key: str, measure: Measure) -> bool:
    """Whether a line of the pattern moves by more than :data:`LEAST_MOVED`, or the run is refused, when a
    measure of its set is off by its ±."""
    for _, tried in _tried(run, text_key, measure):
        if tried.suspended is not None or tried.pattern.edges.keys() != run.pattern.edges.keys():
            return True
        if any(moved.amount > LEAST_MOVED for moved in outline_movements(run.pattern, tried.pattern)):
            return True
    return False


def _tried(run: Replay, text_key: str, measure: Measure) -> Iterator[tuple[float, Replay]]:
    """The run again at both ends of the ±."""
    key, side = split_key(text_key)
    error = measure.error or 0.0
    for value in (max(measure.value - error, 0.0), measure.value + error):
        moved = run.measures.with_value(key, replace(measure, value=value), side)
        yield value, replay(run.recipe, moved, run)


def outline_movements(before: Pattern, after: Pattern) -> Iterator[Moved]:
    """How far each edge that both patterns have has moved, mm."""
    for name, edge in before.edges.items():
        if name in after.edges:
            other = after.edges[name].path
            yield Moved(name, 0.0 if edge.path == other else edge_drift(edge.path, other))


def seam_changes(before: Pattern, after: Pattern) -> Iterator[Moved]:
    """How much longer or shorter each seam has become as sewn, mm, darts left out.

    An edge that is in no seam, such as a waist or a hem, counts as one by itself.
    """
    sewn: set[str] = set()
    for name, seam in before.seams.items():
        if name in after.seams:
            change = run_length(after, after.seams[name].first) - run_length(before, seam.first)
            yield Moved(name, abs(change))
            sewn.update(use.edge for use in (*seam.first, *seam.second))
    for name in (*before.edges, *before.groups):
        if name not in sewn and _lives(before, name) and _lives(after, name):
            yield Moved(name, abs(sewn_length(after, name) - sewn_length(before, name)))


_NOTHING = Moved("", 0.0)


def _lives(pattern: Pattern, name: str) -> bool:
    return isinstance(resolve(pattern, name), Found)


def _amount(moved: Moved) -> float:
    return moved.amount


def _largest(moved: Iterator[Moved]) -> Moved:
    return max(moved, key=_amount, default=_NOTHING)


def _slope(ends: list[tuple[float, Pattern]], middle: tuple[float, Pattern]) -> float:
    """Movement of the outline for each unit of the measure, between the ends that could be drafted."""
    places = ends if len(ends) > 1 else [middle, *ends]
    if len(places) < 2:
        return 0.0
    (low, before), (high, after) = places[0], places[-1]
    span = abs(high - low)
    return _largest(outline_movements(before, after)).amount / span if span > 0.0 else 0.0
