"""How far a zip parts an edge from its corner on: there left and right are not sewn to each other."""

from notchbook.errors import NotchbookError
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.piece import Edge
from notchbook.pattern.place import Place
from notchbook.pattern.resolve import expand
from notchbook.pattern.sewn import locate
from notchbook.units import TOLERANCES


def zip_opening(pattern: Pattern, edge: Edge, corner: str) -> float:
    """How far a zip opens from this corner of the edge, mm as sewn, by the notch where it stops; 0.0 where
    none does.

    A zip that runs on over a style line counts with its whole length; one that opens from the other end of
    the edge does not open this corner, unless it parts the edge from end to end.
    """
    for notch in pattern.notches.values():
        if "zip" not in notch.purpose:
            continue
        try:
            place = locate(pattern, notch.place)
        except NotchbookError:
            continue  # the check of the notches tells of it
        if place.edge.name == edge.name:
            opened = place.distance if edge.start == corner else edge.length - place.distance
            if _is_length(notch.place) and notch.place.from_point in {edge.start, edge.end} - {corner}:
                if opened > TOLERANCES.seam_walk:
                    continue
                return edge.length
            return opened
        if _opens_on_from(pattern, notch.place, edge, corner):
            return notch.place.amount
    return 0.0


def parts_whole(pattern: Pattern, stop: Place) -> bool:
    """Whether a zip that stops here parts its edge from end to end, so that it must be one that parts."""
    place = locate(pattern, stop)
    left = min(place.distance, place.edge.length - place.distance)
    return _is_length(stop) and stop.amount > place.edge.length / 2.0 and left <= TOLERANCES.seam_walk


def _is_length(stop: Place) -> bool:
    return stop.measure == "distance" and stop.notch is None


def _opens_on_from(pattern: Pattern, stop: Place, edge: Edge, corner: str) -> bool:
    """Whether a zip that stops on another part is counted from this corner: it goes over a style line."""
    return _is_length(stop) and stop.from_point == corner and edge.name in expand(pattern, stop.edge)[0]
