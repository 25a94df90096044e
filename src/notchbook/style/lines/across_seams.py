"""A line that goes on across a seam: the edge on the other side, and the place that is sewn to a place."""

from collections.abc import Iterator

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Located, Pattern, Seam, require, run_of, spoken, walk_seam
from notchbook.pattern.sewn import run_length, sewn_edge_length


def pieces_at(pattern: Pattern, edge: str) -> frozenset[str]:
    """The pieces that meet at an edge: its own, and those that are sewn to it there."""
    members = require(pattern, edge)
    names = set(members)
    for own, other, _ in _uses(pattern):
        if names & _members(pattern, own):
            names |= _members(pattern, other)
    return frozenset(pattern.carriers[name] for name in names)


def edges_on(pattern: Pattern, edge: str, piece: str, *, own_only: bool = False) -> tuple[str, ...]:
    """The parts of an edge that lie on this piece; where none does, those that are sewn to it there."""
    members = require(pattern, edge)
    own = tuple(name for name in members if pattern.carriers[name] == piece)
    if own or own_only:
        return own
    sewn = {
        name
        for mine, other, _ in _uses(pattern)
        if set(members) & _members(pattern, mine)
        for name in _members(pattern, other)
    }
    return tuple(name for name in pattern.edges if name in sewn and pattern.carriers[name] == piece)


def on_piece(pattern: Pattern, place: Located, piece: str) -> Located:
    """The place as it lies on this piece: itself, or what is sewn to it there.

    Counted as sewn from notch to notch, so that ease stays where it is declared; StepRefused
    ``round-not-sewn`` where no seam joins the two.
    """
    if place.piece == piece:
        return place
    for own, other, seam in _uses(pattern):
        if place.edge.name in _members(pattern, own):
            found = _sewn_to(pattern, place, own, other, seam)
            if found.piece == piece:
                return found
    raise StepRefused("round-not-sewn", edge=spoken(place.edge.name), piece=spoken(piece))


Uses = tuple[EdgeUse, ...]


def _uses(pattern: Pattern) -> Iterator[tuple[Uses, Uses, Seam]]:
    """Both runs of every seam that does not join the wearer's left to her right, either way about."""
    for seam in pattern.seams.values():
        if all(use.side == "both" for use in (*seam.first, *seam.second)):
            yield seam.first, seam.second, seam
            yield seam.second, seam.first, seam


def _members(pattern: Pattern, uses: Uses) -> set[str]:
    return {step.edge.name for step in run_of(pattern, uses)}


def _sewn_to(pattern: Pattern, place: Located, own: Uses, other: Uses, seam: Seam) -> Located:
    is_first = own is seam.first
    stops = [(0.0, 0.0)]
    for stop in walk_seam(pattern, seam).stations:
        here, there = (stop.first, stop.second) if is_first else (stop.second, stop.first)
        if here is not None and there is not None and here > stops[-1][0] and there > stops[-1][1]:
            stops.append((here, there))
    stops.append((run_length(pattern, own), run_length(pattern, other)))
    along = _along(pattern, own, place)
    index = next((i for i in range(1, len(stops)) if along <= stops[i][0]), len(stops) - 1)
    (begin, start), (end, finish) = stops[index - 1], stops[index]
    share = (along - begin) / (end - begin) if end > begin else 0.0
    return _at(pattern, other, start + share * (finish - start))


def _along(pattern: Pattern, uses: Uses, place: Located) -> float:
    """How far along the run the place lies, as sewn, mm."""
    travelled = 0.0
    for step in run_of(pattern, uses):
        sewn = sewn_edge_length(pattern, step.edge)
        if step.edge.name == place.edge.name:
            along = place.distance if step.forward else step.edge.length - place.distance
            return travelled + along * sewn / step.edge.length
        travelled += sewn
    return travelled


def _at(pattern: Pattern, uses: Uses, along: float) -> Located:
    """The place so far along the run, as sewn; at a joint of edges that before it."""
    steps = run_of(pattern, uses)
    for step in steps:
        sewn = sewn_edge_length(pattern, step.edge)
        if along <= sewn or step is steps[-1]:
            break
        along -= sewn
    share = min(along / sewn, 1.0) if sewn > 0.0 else 0.0
    distance = step.edge.length * (share if step.forward else 1.0 - share)
    position = step.edge.path.point_at(distance)
    return Located(step.edge, pattern.carriers[step.edge.name], distance, position)
