"""A sleeve that follows its armhole: its underarm goes down with it and out until the cap fits as before."""

from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, direction
from notchbook.pattern import Pattern, Piece, directed, run_length, spoken
from notchbook.pattern.seam import EdgeUse, Seam
from notchbook.pattern.sewn import Directed
from notchbook.style.edges.carried import carried_on
from notchbook.style.edges.carried_edge import Carry, carried_edge
from notchbook.style.edges.redrawn import redrawn
from notchbook.units import TOLERANCES

_MOST_ASIDE = 60.0
"""mm that an underarm point moves aside at most: farther it is another sleeve. Own judgment."""

_TRIES = 20


@dataclass(frozen=True)
class _Cap:
    """A half of the cap walked from the underarm, the underarm seam beside it (running to the underarm), its
    name and whether it runs so in the outline, and how long the cap is to become."""

    cap: Directed
    seam: Path
    seam_name: str
    seam_runs_up: bool
    wanted: float


def following_sleeve(
    before: Pattern, after: Pattern, sleeve: str, lower: float, armholes: frozenset[str]
) -> Pattern:
    """``after`` with the sleeve's underarm lowered along its seam and moved aside, so that each half of its
    cap grows or shrinks by what its armhole did; the ease of the cap stays.

    StepRefused ``armhole-sleeve-elsewhere`` where it is not sewn to these armholes,
    ``armhole-sleeve-cannot-follow`` where no such cap is found.
    """
    piece = after.pieces[sleeve]
    runs = [run for seam in before.seams.values() for run in _runs(seam, armholes)]
    caps = [_cap(before, after, piece, *run) for run in runs if _is_on(before, piece, run[1])]
    if not caps:
        raise StepRefused("armhole-sleeve-elsewhere", piece=spoken(sleeve))
    paths: dict[str, Path] = {}
    for cap in caps:
        moved, seam = _followed(piece, cap, lower)
        paths[cap.cap.edge.name] = moved if cap.cap.forward else moved.reversed()
        paths[cap.seam_name] = seam if cap.seam_runs_up else seam.reversed()
    return after.with_pieces(_with_biceps(piece, redrawn(piece, paths)))


def _runs(seam: Seam, armholes: frozenset[str]) -> list[tuple[tuple[EdgeUse, ...], tuple[EdgeUse, ...]]]:
    """The run of each of these armholes in a seam, and what is sewn to it there."""
    both = ((seam.first, seam.second), (seam.second, seam.first))
    return [(one, other) for one, other in both if {use.edge for use in one} <= armholes]


def _cap(
    before: Pattern, after: Pattern, piece: Piece, armhole: tuple[EdgeUse, ...], cap: tuple[EdgeUse, ...]
) -> _Cap:
    """The half of the cap that is sewn to an armhole, and how long it is to become."""
    (step,) = directed(before, cap[0].edge, cap[0].starts_at)
    grown = run_length(after, armhole) - run_length(before, armhole)
    name = step.edge.name
    beside = piece.edge_before(name) if step.forward else piece.edge_after(name)
    path = beside.path if step.forward else beside.path.reversed()
    return _Cap(step, path, beside.name, step.forward, step.edge.length + grown)


def _is_on(pattern: Pattern, piece: Piece, uses: tuple[EdgeUse, ...]) -> bool:
    return len(uses) == 1 and pattern.carriers.get(uses[0].edge) == piece.name


def _followed(piece: Piece, cap: _Cap, lower: float) -> tuple[Path, Path]:
    """The cap and the underarm seam with the underarm at its new place."""
    path, base = cap.cap.path, carried_on(cap.seam, -lower)
    across = direction(piece.grain.degrees - 90.0)
    outward = across if (path.start - path.end).dot(across) > 0.0 else -across
    aside = 0.0
    moved = path
    for _ in range(_TRIES):
        goal = base.end + outward * aside
        moved = carried_edge(path, Carry(goal - path.start, Point(0.0, 0.0), Point(0.0, 0.0)))
        missing = cap.wanted - moved.length
        if abs(missing) <= TOLERANCES.join:
            break
        aside += missing
        if abs(aside) > _MOST_ASIDE:
            raise StepRefused("armhole-sleeve-cannot-follow", piece=spoken(piece.name), most=_MOST_ASIDE)
    return moved, base.with_end(moved.start)


def _with_biceps(before: Piece, after: Piece) -> Piece:
    """Levels that ran from underarm to underarm do so again."""
    places = {edge.start: edge.path.start for edge in before.outline}
    now = {edge.start: edge.path.start for edge in after.outline}
    moved = {name: place for name, place in places.items() if place.distance_to(now[name]) > TOLERANCES.join}
    lines = []
    for line in after.lines:
        old = before.line(line.name).path
        ends = [_corner(moved, point) for point in (old.start, old.end)]
        if line.kind == "level" and None not in ends:
            line = replace(line, path=Path.line(*(now[end] for end in ends if end is not None)))
        lines.append(line)
    return replace(after, lines=tuple(lines))


def _corner(corners: dict[str, Point], point: Point) -> str | None:
    return next((name for name, at in corners.items() if at.distance_to(point) <= TOLERANCES.closure), None)
