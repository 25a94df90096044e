"""Zips in the order of work: what a seam leaves open for one, and what must be sewn before it is set in."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Final, Literal

from notchbook.finish.sewing.joints import Joints, steps
from notchbook.finish.sewing.task import Task, key_of
from notchbook.pattern import Edge, Operation, Pattern, Seam
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import expand
from notchbook.pattern.sewn import Directed
from notchbook.pattern.zip_openings import parts_whole, zip_opening
from notchbook.units import TOLERANCES

Zipped = Literal["whole", "below", "above"]
"""All of a seam is left open for a zip, or it is sewn below or above the notch of one."""

_INVISIBLE: Final = "zip_invisible"
_LAPPED: Final = "zip_lapped"
"""Classes of the allowance beside a zip: how it is set in."""

_FROM_END_TO_END: Final[Mapping[str, str]] = {
    _INVISIBLE: "Sew one tape of the invisible zip to each edge, from end to end.",
    _LAPPED: (
        "Sew one tape of the zip close to the fold of the side that lies under, from end to end, lap the "
        "other side over it, stitch the lap."
    ),
    "zip": "Turn both edges in and sew one tape of the zip behind each, from end to end.",
}
"""How a zip is set in that parts its edge: it has no notch down to which it is sewn (common practice, no
source)."""


_IN_LEATHER: Final = ("Baste or tape", "Tape")
"""What is not done in leather, whose holes stay, and what is done instead."""


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
        if (_members(pattern, seam) & edges or seam.name in across) and _joins_alike(pattern, seam):
            yield seam.name


def is_invisible(pattern: Pattern, seam: Seam) -> bool:
    """Whether the zip in the seam is an invisible one: the rest of the seam is closed after it."""
    return _INVISIBLE in _classes(pattern, (use.edge for use in (*seam.first, *seam.second)))


def closed_after_zips(pattern: Pattern, tasks: Iterable[Task], in_one: Mapping[str, str]) -> list[Task]:
    """The tasks, seams with an invisible zip after that: its tapes are sewn to flat edges first, then the
    seam is closed from the end of its stitches on (common practice, no source). Of a seam that must come
    before its zip for another reason nothing changes."""
    found = {task.key: task for task in tasks}
    for one in pattern.operations.values():
        zip_key = in_one.get(one.name, one.name)
        if last_word(one.name) != "zip" or zip_key not in found:
            continue
        edges = {member for name in one.at for member in expand(pattern, name)[0]}
        for seam in pattern.seams.values():
            key = key_of(seam.name)
            if key in found and _members(pattern, seam) & edges and _is_closed_after(pattern, seam):
                rest = replace(found[zip_key], after=found[zip_key].after - {key})
                if not _waits(found | {zip_key: rest}, zip_key, key):
                    found[zip_key] = rest
                    found[key] = replace(found[key], after=found[key].after | {zip_key})
    return list(found.values())


def zip_text(pattern: Pattern, operation: Operation, in_one: Mapping[str, str]) -> str:
    """The line of an operation; of a zip that parts its edge from end to end and runs on into no other, how
    that is set in."""
    if last_word(operation.name) != "zip":
        return operation.text
    goes_on = operation.name in in_one or operation.name in in_one.values()
    if not goes_on and _parts(pattern, operation):
        classes = _classes(pattern, operation.at)
        return next((text for told, text in _FROM_END_TO_END.items() if told in classes), operation.text)
    return operation.text.replace(*_IN_LEATHER) if pattern.making is not None else operation.text


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


def _is_closed_after(pattern: Pattern, seam: Seam) -> bool:
    return is_invisible(pattern, seam) and zip_in(pattern, seam) in ("below", "above")


def _members(pattern: Pattern, seam: Seam) -> frozenset[str]:
    """The edges that the seam joins."""
    uses = (*seam.first, *seam.second)
    return frozenset(member for use in uses for member in expand(pattern, use.edge)[0])


def _waits(tasks: Mapping[str, Task], key: str, other: str) -> bool:
    """Whether the task of this key comes after the other."""
    waiting, seen = [key], set[str]()
    while waiting:
        after = tasks[waiting.pop()].after
        if other in after:
            return True
        waiting += [name for name in after if name in tasks and name not in seen]
        seen |= after
    return False


def _parts(pattern: Pattern, operation: Operation) -> bool:
    """Whether the zip opens its edges from end to end."""
    zipped = (one for one in pattern.notches.values() if "zip" in one.purpose)
    stops = [one.place for one in zipped if one.place.edge in operation.at]
    return bool(stops) and all(parts_whole(pattern, stop) for stop in stops)


def _classes(pattern: Pattern, names: Iterable[str]) -> frozenset[str]:
    """The classes of allowance that were given to these edges."""
    edges = {member for name in names for member in (name, *expand(pattern, name)[0])}
    given = (pattern.allowances.get(edge) for edge in sorted(edges))
    return frozenset(one.allowance_class for one in given if one is not None)


def _opened(pattern: Pattern, operation: Operation) -> Iterator[str]:
    """The points at which a zip opens the edges that its line names."""
    named = (member for name in operation.at for member in expand(pattern, name)[0])
    for name in sorted({name for name in named if name in pattern.edges}):
        yield from _open_ends(pattern, pattern.edges[name])


def _zip_in_run(pattern: Pattern, run: tuple[Directed, ...]) -> Zipped | None:
    if not run:
        return None
    first, last = run[0], run[-1]
    at_start = zip_opening(pattern, first.edge, first.start)
    at_end = zip_opening(pattern, last.edge, last.edge.end if last.forward else last.edge.start)
    if max(at_start, at_end) <= 0.0:
        return None
    if max(at_start, at_end) >= sum(step.edge.length for step in run) - TOLERANCES.seam_walk:
        return "whole"
    start, end = first.path.start, last.path.end
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
    names = _members(pattern, seam) & pattern.carriers.keys()
    return len({pattern.piece_of(name).rule for name in names}) == 1
