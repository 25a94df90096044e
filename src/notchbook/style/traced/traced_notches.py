"""The notches of an edge, on what was traced along it."""

from dataclasses import replace

from notchbook.pattern import Notch, Pattern, Place, locate
from notchbook.style.traced.faced_run import Faced
from notchbook.style.traced.traced_names import own_name, role_of
from notchbook.style.traced.traced_piece import Traced


def traced_notches(pattern: Pattern, made: Traced, index: int, seam: str) -> list[Notch]:
    """A notch on the traced piece for each of the edge, at the same place as sewn.

    One that served no seam now serves this one, together with its mate; the mate of one that serves another
    seam is a mark only.
    """
    faced, edge = made.faced[index]
    owner = next(run for run in made.runs if faced in run.faced)
    prefix = role_of(owner) if len(made.runs) > 1 else ""
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
    return found


def _along(pattern: Pattern, notch: Notch, faced: Faced) -> float | None:
    """How far along the edge, counter-clockwise and with its darts closed; None where it lies elsewhere."""
    place = locate(pattern, notch.place)
    travelled = 0.0
    for member in faced.members:
        if member.name == place.edge.name:
            return travelled + place.distance
        travelled += member.length
    return None
