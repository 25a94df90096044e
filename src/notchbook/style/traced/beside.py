"""What the outline runs on along beside a traced run: over closed darts, and over seams between panels.

The parts of one edge count as one edge beside, on whatever panels they lie now: a shoulder that a princess
seam cut is still the shoulder.
"""

from dataclasses import dataclass, replace

from notchbook.geometry import Path, Transform
from notchbook.pattern import Edge, Pattern, Piece
from notchbook.pattern.resolve import expand
from notchbook.pattern.sewn import closing_motion
from notchbook.style.traced.sewn_corner import seam_at


@dataclass(frozen=True, slots=True)
class Laid:
    """A piece, and how it was laid with a stretch of its outline between darts in place."""

    piece: Piece
    motion: Transform

    def moved(self, motion: Transform) -> "Laid":
        """The same laid elsewhere."""
        return Laid(self.piece, self.motion.then(motion))


@dataclass(frozen=True, slots=True)
class Beside:
    """What follows a run at one of its ends: the edge there, and the line that the outline runs on along,
    away from the run, its darts closed.

    ``walked``: the edges of the line, on the piece itself and then on each of the further ``panels``, as
    these were laid; ``seams``: the seam line at which each of them lies, away from the corner.
    """

    edge: Edge
    path: Path
    walked: tuple[tuple[str, ...], ...]
    panels: tuple[Laid, ...] = ()
    seams: tuple[Path, ...] = ()

    def moved(self, motion: Transform) -> "Beside":
        """The same laid elsewhere."""
        panels = tuple(one.moved(motion) for one in self.panels)
        seams = tuple(seam.transformed(motion) for seam in self.seams)
        return replace(self, path=self.path.transformed(motion), panels=panels, seams=seams)


@dataclass(frozen=True, slots=True)
class _Reached:
    """A walk along the outline of one piece: its edges and their line, the edge where it stopped, and how the
    piece was laid there."""

    edges: tuple[Edge, ...]
    path: Path
    stop: Edge
    motion: Transform

    @property
    def names(self) -> tuple[str, ...]:
        """The names of the edges, in walking order."""
        return tuple(edge.name for edge in self.edges)


def seam_on_seam(still: Path, moved: Path, depth: float) -> Transform:
    """The motion that lays one seam line on the other: corner on corner, and edge to edge ``depth`` mm on.

    Both run away from the corner. What curves differ between the two places lies open or over.
    """
    reach = min(depth, still.length, moved.length)
    return Transform.carrying(moved.start, moved.point_at(reach), still.start, still.point_at(reach))


def outline_beyond(
    pattern: Pattern, owner: Piece, edge: str, motion: Transform, depth: float, *, ahead: bool
) -> Beside:
    """The outline from the end of an edge on (``ahead``, counter-clockwise), or back from its start.

    ``motion`` is how the edge was laid. Panels are laid edge to edge down to ``depth`` mm.
    """
    parts = _parts_of_whole(pattern, owner.edge_after(edge) if ahead else owner.edge_before(edge))
    reached = _along(owner, edge, motion, parts, ahead=ahead)
    beside = Beside(reached.edges[0], reached.path, (reached.names,))
    following = _following(parts, reached.edges[-1].name, ahead=ahead)
    while following is not None and pattern.carriers[following] != owner.name:
        panel = pattern.piece_of(following)
        beyond = panel.edge_before(following) if ahead else panel.edge_after(following)
        corners = (reached.stop.start, beyond.end) if ahead else (reached.stop.end, beyond.start)
        if seam_at(pattern, (reached.stop.name, corners[0]), (beyond.name, corners[1])) is None:
            break
        still = _away(reached.stop, ahead=ahead).transformed(reached.motion)
        laid = seam_on_seam(still, _away(beyond, ahead=not ahead), depth)
        owner = panel
        reached = _along(owner, beyond.name, laid, parts, ahead=ahead)
        path = beside.path.joined(reached.path.with_start(beside.path.end))
        beside = replace(
            beside,
            path=path,
            walked=(*beside.walked, reached.names),
            panels=(*beside.panels, Laid(panel, laid)),
            seams=(*beside.seams, still),
        )
        following = _following(parts, reached.edges[-1].name, ahead=ahead)
    return beside


def _parts_of_whole(pattern: Pattern, edge: Edge) -> tuple[str, ...]:
    """All that the edge was one edge with before it was cut, in order; itself where it is whole."""
    wholes = [expand(pattern, name)[0] for name in pattern.groups]
    return max((parts for parts in wholes if edge.name in parts), key=len, default=(edge.name,))


def _following(parts: tuple[str, ...], edge: str, *, ahead: bool) -> str | None:
    """The part of the whole beyond this one."""
    if edge not in parts:
        return None
    index = parts.index(edge) + (1 if ahead else -1)
    return parts[index] if 0 <= index < len(parts) else None


def _away(edge: Edge, *, ahead: bool) -> Path:
    return edge.path if ahead else edge.path.reversed()


def _along(owner: Piece, edge: str, motion: Transform, parts: tuple[str, ...], *, ahead: bool) -> _Reached:
    """The outline of one piece beyond an edge: over darts, and over further parts of the first edge there."""
    darts = {(dart.first_leg if ahead else dart.second_leg): dart for dart in owner.intakes if dart.has_legs}
    step, count = (1 if ahead else -1), len(owner.outline)
    index = owner.edge_index(edge) + step
    walked: list[Edge] = []
    whole: Path | None = None
    while True:
        now = owner.outline[index % count]
        if now.name in darts:
            closing = closing_motion(owner, darts[now.name])
            motion = (closing if ahead else closing.inverse()).then(motion)
            index += 2 * step
            continue
        path = _away(now, ahead=ahead).transformed(motion)
        whole = path if whole is None else whole.joined(path.with_start(whole.end))
        walked.append(now)
        index += step
        following = owner.outline[index % count]
        if following.name not in darts and (following.name not in parts or len(walked) >= count):
            return _Reached(tuple(walked), whole, following, motion)
