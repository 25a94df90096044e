"""The ease table: what every girth and length of a draft is on the body, on the pattern and when sewn."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from notchbook.errors import NameLost
from notchbook.geometry import Point
from notchbook.pattern import Expectation, ExpectationKind, Pattern, Seam, resolve, sewn_length
from notchbook.pattern.expectation import Reach
from notchbook.pattern.resolve import Found
from notchbook.pattern.sewn import run_of
from notchbook.recipe import Replay
from notchbook.units import LengthStyle

_ROUNDING_STEPS: Final = 1.5
"""Steps of a style by which two rounded lengths may set their difference off: half a step each, and as much
again for what the sew line is off."""


@dataclass(frozen=True, slots=True)
class EaseRow:
    """One line of the ease table, mm, each number as the measure is taken: a girth whole.

    ``body`` is the body, ``ease`` what was drafted, ``pattern`` what the sew line measures now with the
    darts closed, ``finished`` what it measures in the garment: a line that is eased into a shorter one
    is then as long as that. Both are None where the pattern no longer has this line. ``usual`` is the usual
    ease; ``error`` is the ± of the body where that is an estimate, else None. ``measure`` is empty where
    the length comes from no measure of the body, such as a sleeve cap that goes into an armhole.
    """

    name: str
    kind: ExpectationKind
    measure: str
    body: float
    ease: float
    pattern: float | None
    finished: float | None
    usual: tuple[float, float] | None
    error: float | None = None

    @property
    def miss(self) -> float:
        """How far the sew line is from body and ease, mm; 0 where the pattern no longer has it."""
        return 0.0 if self.pattern is None else abs(self.pattern - self.body - self.ease)

    def shown_ease(self, style: LengthStyle) -> float:
        """The ease, mm, to be written between body and pattern in this style, so that they add up as written.

        Where the pattern has gone farther from body and ease than rounding explains, or has no such line any
        more, it is the ease as drafted.
        """
        if self.pattern is None:
            return self.ease
        between = style.nearest(self.pattern) - style.nearest(self.body)
        return between if abs(between - self.ease) <= _ROUNDING_STEPS * style.step else self.ease


def ease_table(replay: Replay) -> tuple[EaseRow, ...]:
    """A row for every girth, then for every length, that the drafts promised."""
    promises = replay.expectations
    if not promises:
        return ()
    shares = sewn_shares(replay.pattern)
    rows = [_row(replay, promise, shares) for promise in promises]
    return tuple(sorted(rows, key=lambda row: row.kind != "girth"))


def _row(replay: Replay, promise: Expectation, shares: Mapping[str, float]) -> EaseRow:
    body = replay.measures.find(promise.measure) if promise.measure else None
    return EaseRow(
        name=promise.name,
        kind=promise.kind,
        measure=promise.measure,
        body=promise.body,
        ease=promise.ease,
        pattern=promised_length(replay.pattern, promise),
        finished=promised_length(replay.pattern, promise, shares),
        usual=promise.usual_ease,
        error=None if body is None else body.error,
    )


def promised_length(
    pattern: Pattern, promise: Expectation, shares: Mapping[str, float] | None = None
) -> float | None:
    """What the promised length measures on the sew line now, mm; None when a part of it is gone.

    ``shares`` say how much of an edge is left in the garment, by its name (:func:`sewn_shares`).
    """
    left = shares or {}
    lines = {line.name: line.path.length for piece in pattern.pieces.values() for line in piece.lines}
    total = 0.0
    for name in promise.names:
        found = resolve(pattern, name)
        if name in lines:
            total += lines[name]
        elif isinstance(found, Found):
            total += sum(sewn_length(pattern, member) * left.get(member, 1.0) for member in found.members)
        else:
            return None
    for chain in promise.chains:
        points = _points(pattern, chain)
        if points is None:
            return None
        total += sum(_apart(*pair, promise.reach) for pair in pairwise(points))
    return promise.times * total


def sewn_shares(pattern: Pattern) -> dict[str, float]:
    """The part of its length that each edge keeps in the garment, where its seam eases it into a shorter run.

    Edges that keep all of it are left out; so is a seam that has lost an edge, for which the checks answer.
    """
    return {edge: share for seam in pattern.seams.values() for edge, share in _shares(pattern, seam)}


def _shares(pattern: Pattern, seam: Seam) -> Iterator[tuple[str, float]]:
    if not seam.ease:
        return
    shorter, longer = (seam.first, seam.second) if seam.ease > 0.0 else (seam.second, seam.first)
    try:
        into, eased = run_of(pattern, shorter), run_of(pattern, longer)
    except NameLost:
        return
    share = sum(step.edge.length for step in into) / sum(step.edge.length for step in eased)
    for step in eased:
        yield step.edge.name, share


def _points(pattern: Pattern, names: tuple[str, ...]) -> list[Point] | None:
    """Where these corners and marks of one piece lie; None when one is gone."""
    carrier = pattern.carriers.get(names[0])
    if carrier is None:
        return None
    places = pattern.pieces[carrier].points
    return [places[name] for name in names] if all(name in places for name in names) else None


def _apart(first: Point, second: Point, reach: Reach) -> float:
    if reach == "down":
        return abs(first.y - second.y)
    return abs(first.x - second.x) if reach == "across" else first.distance_to(second)
