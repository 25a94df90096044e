"""Closing the darts of a run of edges: its stretches are laid together, leg on leg."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Transform
from notchbook.pattern.names import spoken
from notchbook.pattern.piece import Edge, Intake
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class ClosedRun:
    """A run with its darts closed.

    ``stretches`` are the edges between the darts as they lay, ``motions`` how each was moved, ``edges`` all
    of them laid together. ``merges``: the mouth point of a closed dart that is gone -> the one that it fell
    on.
    """

    edges: tuple[Edge, ...]
    stretches: tuple[tuple[Edge, ...], ...]
    motions: tuple[Transform, ...]
    merges: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


def darts_in(run: Sequence[Edge], darts: Sequence[Intake]) -> tuple[Intake, ...]:
    """Those of the darts whose legs lie in the run, in its order."""
    place = {edge.name: index for index, edge in enumerate(run)}
    found = [dart for dart in darts if dart.first_leg in place]
    return tuple(sorted(found, key=lambda dart: place[dart.first_leg]))


def stretches_between(run: Sequence[Edge], darts: Sequence[Intake]) -> tuple[tuple[Edge, ...], ...]:
    """The edges before, between and after the darts, whose legs are left out."""
    first, second = {dart.first_leg for dart in darts}, {dart.second_leg for dart in darts}
    stretches: list[list[Edge]] = [[]]
    for edge in run:
        if edge.name in first:
            stretches.append([])
        elif edge.name not in second:
            stretches[-1].append(edge)
    return tuple(tuple(stretch) for stretch in stretches)


def close_run(run: Sequence[Edge], darts: Sequence[Intake], still: int) -> ClosedRun:
    """The run with these darts (in its order) closed, each about its own point; stretch ``still`` stays.

    StepRefused ``dart-legs-uneven`` where the two legs of a dart differ by more than a seam may.
    """
    stretches = stretches_between(run, darts)
    motions = [Transform.identity()]
    for dart in darts:
        motions.append(_closing(run, dart).then(motions[-1]))
    back = motions[still].inverse()
    moved = tuple(motion.then(back) for motion in motions)
    edges: list[Edge] = []
    merges: dict[str, tuple[str, ...]] = {}
    for index, (stretch, motion) in enumerate(zip(stretches, moved, strict=True)):
        laid = [edge.transformed(motion) for edge in stretch]
        if edges and laid:
            edges[-1], laid[0], gone = _joined(edges[-1], laid[0], keeps_first=index > still)
            merges.update(gone)
        edges.extend(laid)
    return ClosedRun(tuple(edges), stretches, moved, merges)


def _closing(run: Sequence[Edge], dart: Intake) -> Transform:
    """The turn about the dart's point that lays its second leg on its first."""
    first = next(edge.path for edge in run if edge.name == dart.first_leg)
    second = next(edge.path for edge in run if edge.name == dart.second_leg)
    if first.length <= TOLERANCES.join:
        return Transform.identity()
    turn = (first.start - first.end).direction() - (second.end - second.start).direction()
    return Transform.rotation(turn, first.end)


def _joined(before: Edge, after: Edge, *, keeps_first: bool) -> tuple[Edge, Edge, dict[str, tuple[str, ...]]]:
    """Two edges that meet where a dart is closed: one point, under the name on the side that stays."""
    gap = before.path.end.distance_to(after.path.start)
    if gap > TOLERANCES.seam_walk:
        raise StepRefused("dart-legs-uneven", first=spoken(before.end), second=spoken(after.start), gap=gap)
    if keeps_first:
        after = replace(after, path=after.path.with_start(before.path.end))
    else:
        before = replace(before, path=before.path.with_end(after.path.start))
    kept, gone = (before.end, after.start) if keeps_first else (after.start, before.end)
    return replace(before, end=kept), replace(after, start=kept), {gone: (kept,)}
