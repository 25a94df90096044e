"""The edge beside a trued seam drawn to its new end, over its whole run: through the darts, laid closed."""

from dataclasses import dataclass
from itertools import chain

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Intake, Piece
from notchbook.pattern.closing import ClosedRun, close_run, darts_in
from notchbook.style.edges.carried_edge import Carry, carried_edge
from notchbook.style.edges.edge_points import waves_more
from notchbook.units import TOLERANCES

_NOWHERE = Point(0.0, 0.0)

_LEAN = 0.8
"""How much the moved end of a straight edge turns with it, as a share of its mean slant. Moved by 8 mm on
250 mm it turns by 1.5 degrees, which no corner shows, and waves by 1 instead of 2.7. Own judgment."""


@dataclass(frozen=True, slots=True)
class _Run:
    """Edges in the order of the outline, the darts between them, and which end of it moves."""

    edges: tuple[Edge, ...]
    darts: tuple[Intake, ...]
    at_start: bool


def carried_run(piece: Piece, beside: Edge, moved: Point, *, at_start: bool) -> dict[str, Path]:
    """The paths of a run of edges whose end is moved by a vector (mm), by name; empty where it cannot be.

    The run begins with the edge ``beside`` the seam, at its start or at its end, and goes on through the
    darts that follow to the next corner. With the darts closed it is carried along evenly, so that its
    directions at both ends stay; a straight one, which would wave, turns a little at the moved end. Opened
    again, the legs of each dart are as long as each other.
    """
    run = _run_from(piece, beside, at_start=at_start)
    still = 0 if at_start else len(run.darts)
    try:
        closed = close_run(run.edges, run.darts, still)
    except StepRefused:
        return {}
    whole = Path(tuple(chain.from_iterable(_drawn(edge.path).segments for edge in closed.edges)))
    begin, end = (moved, _NOWHERE) if at_start else (_NOWHERE, moved)
    drawn = carried_edge(whole, Carry(begin, end, _NOWHERE))
    if waves_more(whole, drawn):
        drawn = carried_edge(whole, Carry(begin, end, _NOWHERE, _LEAN))
    return _opened(run, closed, drawn)


def _run_from(piece: Piece, beside: Edge, *, at_start: bool) -> _Run:
    outline, index = piece.outline, piece.edge_index(beside.name)
    way = 1 if at_start else -1
    darts: list[Intake] = []
    edges = [beside]
    while len(edges) + 3 < len(outline):
        legs = [outline[(index + step * way) % len(outline)] for step in (1, 2, 3)]
        dart = _dart_of(piece, legs[0], legs[1])
        if dart is None or legs[2].kind in ("fold", "leg"):
            break
        darts.append(dart)
        edges.extend(legs)
        index += 3 * way
    ordered = tuple(edges if at_start else reversed(edges))
    return _Run(ordered, darts_in(ordered, darts), at_start)


def _dart_of(piece: Piece, one: Edge, other: Edge) -> Intake | None:
    """The dart of which these are the two legs."""
    names = {one.name, other.name}
    found = (dart for dart in piece.intakes if dart.kind == "dart" and dart.first_leg)
    return next((dart for dart in found if {dart.first_leg, dart.second_leg} == names), None)


def _drawn(path: Path) -> Path:
    """The path without segments that are too short to be carried."""
    kept = tuple(segment for segment in path.segments if segment.length > TOLERANCES.join)
    return Path(kept) if kept else path


def _opened(run: _Run, closed: ClosedRun, whole: Path) -> dict[str, Path]:
    """The carried run in its edges, each laid back to where it was, with the legs led to the new mouths."""
    paths: dict[str, Path] = {}
    segments = list(whole.segments)
    for stretch, motion in zip(closed.stretches, closed.motions, strict=True):
        for edge in stretch:
            count = len(_drawn(edge.path).segments)
            part, segments = Path(tuple(segments[:count])), segments[count:]
            paths[edge.name] = part.transformed(motion.inverse())
    far = run.edges[-1] if run.at_start else run.edges[0]
    still = paths[far.name]
    paths[far.name] = still.with_end(far.path.end) if run.at_start else still.with_start(far.path.start)
    for before, edge, after in zip(run.edges, run.edges[1:], run.edges[2:], strict=False):
        if edge.kind == "leg":
            path = edge.path
            path = path.with_start(paths[before.name].end) if before.kind != "leg" else path
            paths[edge.name] = path.with_end(paths[after.name].start) if after.kind != "leg" else path
    return paths
