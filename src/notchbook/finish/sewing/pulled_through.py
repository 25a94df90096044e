"""Facings of neck and armhole in one: each back is pulled through its shoulders, and what meets below the
armholes is closed last, garment and facing in one go (common practice, no source).

That needs an opening at a center. Where both centers lie on the fold nothing is pulled through.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from notchbook.finish.sewing.joints import Joints, steps
from notchbook.finish.sewing.seam_words import titled
from notchbook.finish.sewing.task import Task, key_of
from notchbook.pattern import Edge, Pattern, Piece, Seam
from notchbook.pattern.seam import TURNED_SEAM

_TEXT = (
    "Trim, clip and press the edges of the {titles}, and pull each back through its shoulders to the front"
)


@dataclass(frozen=True, slots=True)
class PulledThrough:
    """What is closed last: for each seam the lines that come before it; and the lines of pulling through."""

    closed_after: Mapping[str, frozenset[str]] = field(default_factory=dict)
    tasks: tuple[Task, ...] = ()


@dataclass(frozen=True, slots=True)
class _Facing:
    """A facing on both sides of its shoulder: its two turned seams, its center and the seams that meet at its
    other ends, on it and on what it faces."""

    piece: Piece
    turned: frozenset[str]
    closing: frozenset[str]
    is_open: bool


def pulled_through(pattern: Pattern, joints: Joints) -> PulledThrough:
    """What facings of neck and armhole in one ask of the order."""
    found: dict[str, list[_Facing]] = {}
    seams = _seams_by_edge(pattern)
    for piece in pattern.pieces.values():
        if piece.rule is not None:
            found.setdefault(piece.rule, []).extend(_facings(pattern, piece, joints, seams))
    closed: dict[str, frozenset[str]] = {}
    tasks: list[Task] = []
    for rule, facings in found.items():
        if not any(one.is_open for one in facings):
            continue
        turned = frozenset(name for one in facings for name in one.turned)
        titles = tuple(dict.fromkeys(one.piece.title.lower() for one in facings))
        after = frozenset(map(key_of, turned))
        at = tuple(one.piece.name for one in facings)
        task = Task(f"{rule}/pulled_through", "armholes", _TEXT.format(titles=titled(titles)), at, after)
        tasks.append(task)
        for name in {name for one in facings for name in one.closing}:
            closed[name] = closed.get(name, frozenset()) | turned | {task.key}
    return PulledThrough(closed, tuple(tasks))


def _seams_by_edge(pattern: Pattern) -> dict[str, Seam]:
    """The last seam in which each edge is sewn."""
    return {
        step.edge.name: seam
        for seam in pattern.seams.values()
        for step in (*steps(pattern, seam.first), *steps(pattern, seam.second))
    }


def _facings(
    pattern: Pattern, piece: Piece, joints: Joints, seams_by_edge: Mapping[str, Seam]
) -> Iterator[_Facing]:
    """The piece as such a facing, where a shoulder lies between two of its turned edges."""
    sewn = {edge.name: seams_by_edge[edge.name] for edge in piece.outline if edge.name in seams_by_edge}
    turned = {name: seam for name, seam in sewn.items() if seam.seam_class == TURNED_SEAM}
    shoulders = {name for name, seam in sewn.items() if seam.allowance_class == "shoulder"}
    count = len(piece.outline)
    for index, edge in enumerate(piece.outline):
        shoulder, other = (piece.outline[(index + offset) % count] for offset in (1, 2))
        if edge.name in turned and other.name in turned and shoulder.name in shoulders - turned.keys():
            ends = ((edge, edge.start), (other, other.end))
            seams = frozenset(seam.name for seam in (turned[edge.name], turned[other.name]))
            closing = frozenset(
                name for one, at in ends for name in _closing(pattern, joints, turned[one.name], at)
            )
            yield _Facing(piece, seams, closing, _is_open(piece, ends))


def _closing(pattern: Pattern, joints: Joints, seam: Seam, end: str) -> frozenset[str]:
    """The seams that meet the turned one at this end of the facing, on it and on what it faces; none where
    the facing has none there."""
    inner, outer = steps(pattern, seam.first), steps(pattern, seam.second)
    if not inner or not outer:
        return frozenset()
    at_start = inner[0].start == end
    last = outer[-1]
    faced = outer[0].start if at_start else (last.edge.end if last.forward else last.edge.start)
    plain = {name for name, one in pattern.seams.items() if one.seam_class != TURNED_SEAM}
    own = joints.at(end) & plain
    return frozenset(own | (joints.at(faced) & plain)) if own else frozenset()


def _is_open(piece: Piece, ends: tuple[tuple[Edge, str], tuple[Edge, str]]) -> bool:
    """Whether neither end of the facing lies on the fold."""
    (first, _), (last, _) = ends
    return "fold" not in (piece.edge_before(first.name).kind, piece.edge_after(last.name).kind)
