"""Every closure of a pattern, measured on its finished outline: promises, seams, darts, angles, shapes.

What is measured follows from the seams, folds and darts of the pattern, not from the names of a block.
"""

from collections.abc import Iterator
from itertools import pairwise

from notchbook.checks.centers import centers
from notchbook.checks.closure import Closure
from notchbook.checks.corners import corner
from notchbook.checks.junctions import junctions
from notchbook.checks.legs import leg_pairs
from notchbook.checks.mouths import angle_across
from notchbook.checks.promised import promised
from notchbook.checks.shapes import shape_closures
from notchbook.checks.subject import Subject
from notchbook.checks.walks import WalkedSeam, notches_met, walked_seams
from notchbook.pattern import Pattern

_SIDES = frozenset({"side"})
"""Allowance classes of the seams down the side of the body and under the arm: across these an edge may turn
by the limit for junctions, elsewhere by that for a square."""


def closures(subject: Subject) -> tuple[Closure, ...]:
    """The closures of a subject, in a fixed order; what was promised but is gone is left to the checks."""
    return (
        *_promises(subject),
        *_seams(subject),
        *_stretches(subject),
        *_darts(subject),
        *_junctions(subject),
        *_centers(subject),
        *_mouths(subject),
        *shape_closures(subject),
    )


def _promises(subject: Subject) -> Iterator[Closure]:
    for promise in subject.promises:
        measured, gone = promised(subject.pattern, promise)
        if not gone:
            yield Closure(
                promise.name, "length", promise.parts, measured, promise.wanted, subject.limits.closure
            )


def _seams(subject: Subject) -> Iterator[Closure]:
    for walked in walked_seams(subject.pattern):
        first, second = walked.lengths
        yield Closure(
            walked.seam.name,
            "length",
            _edges(walked),
            second,
            first + walked.seam.ease,
            subject.limits.closure,
        )


def _stretches(subject: Subject) -> Iterator[Closure]:
    """The stretches of each seam from notch to notch, where no ease is declared for them."""
    for walked in walked_seams(subject.pattern):
        stops = _stops(subject.pattern, walked)
        free = _eased(walked, [label for label, _, _ in stops])
        for index, (begin, stop) in enumerate(pairwise(stops)):
            if index in free:
                continue
            first, second = stop[1] - begin[1], stop[2] - begin[2]
            name = f"{walked.seam.name}: {begin[0]} to {stop[0]}"
            yield Closure(name, "length", _edges(walked), second, first, subject.limits.closure)


def _stops(pattern: Pattern, walked: WalkedSeam) -> list[tuple[str, float, float]]:
    """The ends of a seam and the notches that both its sides have: label and distance on each, mm."""
    first, second = (notches_met(pattern, walked, side) for side in (0, 1))
    mates = {met.label: met.distance for met in second}
    met = [(one.label, one.distance, mates[one.label]) for one in first if one.label in mates]
    return [("start", 0.0, 0.0), *met, ("end", *walked.lengths)] if met else []


def _eased(walked: WalkedSeam, labels: list[str]) -> range:
    """The stretches that the declared ease may lie in, by their number: all of them where none is named."""
    between = walked.seam.ease_between
    if walked.seam.ease == 0.0:
        return range(0)
    if between is None or not set(between) <= set(labels):
        return range(len(labels))
    return range(labels.index(between[0]), labels.index(between[1]))


def _darts(subject: Subject) -> Iterator[Closure]:
    for pair in leg_pairs(subject.pattern):
        name = f"{pair.dart}: {pair.part}" if pair.part else pair.dart
        yield Closure(name, "length", pair.legs, pair.lengths[1], pair.lengths[0], subject.limits.closure)


def _junctions(subject: Subject) -> Iterator[Closure]:
    limits = subject.limits
    for found in junctions(subject.pattern):
        seam = found.walked.seam
        within = limits.junction if seam.allowance_class in _SIDES else limits.square
        where = (found.first.neighbor.name, found.second.neighbor.name)
        end = "start" if found.at_start else "end"
        yield Closure(f"{seam.name}: {end}", "angle", where, found.degrees, 180.0, within, "deg")


def _centers(subject: Subject) -> Iterator[Closure]:
    for piece, center, end in centers(subject.pattern):
        found = corner(piece, center, end)
        if not found.is_open:
            where = (center.name, found.neighbor.name)
            name = f"{center.name}: {end}"
            yield Closure(name, "angle", where, found.degrees, 90.0, subject.limits.square, "deg")


def _mouths(subject: Subject) -> Iterator[Closure]:
    for piece in subject.pattern.pieces.values():
        for intake in (one for one in piece.intakes if one.has_legs):
            turned = angle_across(piece, intake)
            if turned is not None:
                where = (intake.mouth, intake.first_leg, intake.second_leg)
                yield Closure(intake.name, "angle", where, turned, 180.0, subject.limits.square, "deg")


def _edges(walked: WalkedSeam) -> tuple[str, ...]:
    return tuple(step.edge.name for run in walked.runs for step in run)
