"""The place on the other side of a seam that a place on one side meets."""

from dataclasses import dataclass

from notchbook.pattern import EdgeUse, Pattern, Place, Seam, run_length, run_of
from notchbook.pattern.run_place import place_on
from notchbook.pattern.sewn import sewn_edge_length
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class MatePlace:
    """A seam, and the place on its other side."""

    seam: Seam
    place: Place
    piece: str


def mate_of(pattern: Pattern, edge: str, from_point: str, distance: float) -> MatePlace | None:
    """What the place so far (mm, as sewn) from an end of an edge meets across its seam; None where the edge
    is sewn to nothing, or to itself."""
    for seam in pattern.seams.values():
        for own, other in ((seam.first, seam.second), (seam.second, seam.first)):
            at = _distance_along(pattern, own, edge, from_point, distance)
            if at is None or any(use.side != "both" for use in own):
                continue
            if at <= run_length(pattern, other) + TOLERANCES.sew_length:
                edges = [EdgeUse(step.edge.name, step.start) for step in run_of(pattern, other)]
                place = place_on(pattern, edges, at)
                return MatePlace(seam, place, pattern.carriers[place.edge])
    return None


def _distance_along(
    pattern: Pattern, run: tuple[EdgeUse, ...], edge: str, from_point: str, distance: float
) -> float | None:
    travelled = 0.0
    for step in run_of(pattern, run):
        length = sewn_edge_length(pattern, step.edge)
        if step.edge.name == edge:
            return travelled + (distance if step.start == from_point else length - distance)
        travelled += length
    return None
