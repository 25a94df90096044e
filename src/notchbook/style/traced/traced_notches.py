"""The notches of an edge, on what was traced along it."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from notchbook.pattern import Notch, Pattern, Place, locate, part_name, require, split_side, with_side
from notchbook.pattern.names import last_word
from notchbook.style.traced.faced_run import Faced
from notchbook.style.traced.traced_names import own_name
from notchbook.style.traced.traced_piece import Traced

_APART = 20.0
"""mm; two notches nearer than this are taken for a double notch. Own judgment."""


def traced_notches(pattern: Pattern, made: Traced, index: int, seam: str) -> list[Notch]:
    """A notch on the traced piece for each of the edge, at the same place as sewn.

    One that served no seam now serves this one, together with its mate; the mate of one that serves another
    seam is a mark only.
    """
    faced, edge = made.faced[index]
    owner = next(run for run in made.runs if faced in run.faced)
    prefix = owner.word if len(made.runs) > 1 else ""
    found: list[Notch] = []
    for notch in pattern.notches.values():
        along = _along(pattern, notch, faced)
        if along is None:
            continue
        at = min(max(along - faced.trim[0] - made.shape.trims[index][0], 0.0), edge.length)
        serves = seam if notch.seam is None else None
        place = Place(edge.name, edge.start, at)
        name = own_name(made.piece.name, notch.name, prefix, apart=True)
        found.append(Notch(name, place, notch.kind, serves, notch.purpose))
        if serves is not None:
            found.append(replace(notch, seam=serves))
    own = [notch.place.amount for notch in found if notch.place.edge == edge.name]
    return [*found, *_joint_notches(made, index, own)]


def _joint_notches(made: Traced, index: int, notched: Sequence[float]) -> Iterator[Notch]:
    """A mark where panels of the garment meet that are one in the traced piece; none beside another notch,
    with which it would be read as a double one."""
    faced, edge = made.faced[index]
    for number, joint in enumerate(faced.joints, 1):
        at = min(max(joint - faced.trim[0] - made.shape.trims[index][0], 0.0), edge.length)
        if any(abs(at - other) < _APART for other in notched):
            continue
        word = f"{last_word(edge.name)}_panel_notch" + (f"_{number}" if len(faced.joints) > 1 else "")
        name = with_side(part_name(made.piece.name, word), split_side(edge.name)[1])
        yield Notch(name, Place(edge.name, edge.start, at), purpose="panel")


def _along(pattern: Pattern, notch: Notch, faced: Faced) -> float | None:
    """How far along the edge, counter-clockwise and with its darts closed; None where it lies elsewhere."""
    if {member.name for member in faced.members}.isdisjoint(require(pattern, notch.place.edge)):
        return None
    place = locate(pattern, notch.place)
    travelled = 0.0
    for member in faced.members:
        if member.name == place.edge.name:
            return travelled + place.distance
        travelled += member.length
    return None
