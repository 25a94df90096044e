"""Zips in the order of work: what a seam leaves open for one, and what must be sewn before it is set in."""

from collections.abc import Iterator
from typing import Literal

from notchbook.finish.sewing.joints import Joints, steps
from notchbook.pattern import Edge, Operation, Pattern, Seam
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import expand
from notchbook.pattern.sewn import Directed
from notchbook.pattern.zip_openings import zip_opening
from notchbook.units import TOLERANCES

Zipped = Literal["whole", "below", "above"]
"""All of a seam is left open for a zip, or it is sewn below or above the notch of one."""


def zip_in(pattern: Pattern, seam: Seam) -> Zipped | None:
    """What a zip leaves of a seam of the garment, or of its lining; None where there is no zip."""
    if not _joins_alike(pattern, seam):
        return None
    found = (_zip_in_run(pattern, steps(pattern, uses)) for uses in (seam.first, seam.second))
    return next((one for one in found if one is not None), None)


def seams_before_zip(pattern: Pattern, operation: Operation, joints: Joints) -> Iterator[str]:
    """The seams that come before a zip: that in which it stands, and at its ends those that join the garment
    across it. A facing, a band or a collar is sewn on after it."""
    if last_word(operation.name) != "zip":
        return
    edges = {member for name in operation.at for member in expand(pattern, name)[0]}
    across = {name for point in _opened(pattern, operation) for name in joints.at(point)}
    for seam in pattern.seams.values():
        own = {member for use in (*seam.first, *seam.second) for member in expand(pattern, use.edge)[0]}
        if (own & edges or seam.name in across) and _joins_alike(pattern, seam):
            yield seam.name


def run_on(pattern: Pattern, joints: Joints) -> dict[str, str]:
    """For each zip that goes on where another opens an edge from end to end, sewn to it there: that other.

    One zip is set into both, in one line.
    """
    zips = [one for one in pattern.operations.values() if last_word(one.name) == "zip"]
    ends = {one.name: frozenset(_opened(pattern, one)) for one in zips}
    found: dict[str, str] = {}
    for index, first in enumerate(zips):
        for second in zips[index + 1 :]:
            meets = {met for point in ends[first.name] for met in joints.meets(point)}
            if second.name not in found and second.text == first.text and meets & ends[second.name]:
                found[second.name] = found.get(first.name, first.name)
    return found


def _opened(pattern: Pattern, operation: Operation) -> Iterator[str]:
    """The points at which a zip opens the edges that its line names."""
    named = (member for name in operation.at for member in expand(pattern, name)[0])
    for name in sorted({name for name in named if name in pattern.edges}):
        yield from _open_ends(pattern, pattern.edges[name])


def _zip_in_run(pattern: Pattern, run: tuple[Directed, ...]) -> Zipped | None:
    if not run:
        return None
    first, last = run[0], run[-1]
    start, end = first.path.start, last.path.end
    at_start = zip_opening(pattern, first.edge, first.start)
    at_end = zip_opening(pattern, last.edge, last.edge.end if last.forward else last.edge.start)
    if max(at_start, at_end) <= 0.0:
        return None
    if max(at_start, at_end) >= sum(step.edge.length for step in run) - TOLERANCES.seam_walk:
        return "whole"
    opened = start if at_start > 0.0 else end
    return "below" if opened.y == max(start.y, end.y) else "above"


def _open_ends(pattern: Pattern, edge: Edge) -> Iterator[str]:
    """The ends of an edge at which a zip opens it: both, where it is open from end to end."""
    for corner, other in ((edge.start, edge.end), (edge.end, edge.start)):
        opened = zip_opening(pattern, edge, corner)
        if opened > 0.0:
            yield corner
        if opened >= edge.length - TOLERANCES.seam_walk:
            yield other


def _joins_alike(pattern: Pattern, seam: Seam) -> bool:
    """Whether the seam joins pieces of the garment, or pieces of one lining: no facing, band or collar to
    what it is sewn to."""
    names = [edge for use in (*seam.first, *seam.second) for edge in expand(pattern, use.edge)[0]]
    return len({pattern.piece_of(name).rule for name in names if name in pattern.carriers}) == 1
