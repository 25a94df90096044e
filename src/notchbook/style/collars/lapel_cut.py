"""The front with its lapel cut on: what the outline becomes, and what became of each name."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from notchbook.geometry import Path
from notchbook.pattern import (
    Allowance,
    Edge,
    InternalLine,
    Mark,
    Notch,
    Pattern,
    Place,
    child_name,
    frozen_map,
    locate,
    part_name,
)
from notchbook.style.collars.lapel_given import LapelFront
from notchbook.style.edges.redrawn import require_plain

_WHY = "the lapel is cut on there"


@dataclass(frozen=True, slots=True)
class LapelCut:
    """The pattern with the lapel, the new edges from the break point up in order, and what became of the old
    names: ``splits``, ``removals``."""

    pattern: Pattern
    edges: tuple[Edge, ...]
    splits: dict[str, tuple[str, ...]]
    removals: dict[str, str]


@dataclass(frozen=True, slots=True)
class NewEdge:
    """An edge of the new outline: its whole name, its line, and the name of the corner where it begins."""

    name: str
    path: Path
    start: str


def below_name(front: LapelFront) -> str:
    """What the front edge below the break point is called."""
    return child_name(front.edge.name, "below")


def lapel_name(front: LapelFront) -> str:
    """What the front edge above the break point is called."""
    return child_name(front.edge.name, "lapel")


def cut_on(pattern: Pattern, front: LapelFront, drawn: Sequence[NewEdge], roll: InternalLine) -> LapelCut:
    """The front with these edges from its break point to its side-neck point in place of the old ones.

    The old neck stays as a line inside the piece, and its corners as places to measure from, so that what a
    draft promised of the neck can still be held. StepRefused ``edge-crosses-outline``.
    """
    below = Edge(
        below_name(front),
        front.edge.path.between(0.0, front.break_at),
        front.edge.start,
        drawn[0].start,
        front.edge.kind,
    )
    ends = [*(one.start for one in drawn[1:]), front.shoulder.start]
    edges = tuple(Edge(one.name, one.path, one.start, end) for one, end in zip(drawn, ends, strict=True))
    gone = {front.edge.name, *(one.name for one in front.neck)}
    outline: list[Edge] = []
    for edge in front.piece.outline:
        if edge.name == front.edge.name:
            outline += [below, *edges]
        elif edge.name not in gone:
            outline.append(edge)
    corners = tuple(Mark(one.start, one.path.start, "datum") for one in front.neck)
    piece = replace(
        front.piece,
        outline=_snapped(outline),
        lines=(*front.piece.lines, roll, _old_neck(front)),
        marks=(*front.piece.marks, *corners),
    )
    require_plain(piece)
    splits: dict[str, tuple[str, ...]] = {front.edge.name: (below.name, lapel_name(front))}
    removals = dict.fromkeys((one.name for one in front.neck[:-1]), _WHY)
    after, lost = _notches_kept(pattern, front, gone, below)
    removals |= lost
    after = after.with_pieces(piece)
    after = replace(after, allowances=_allowances_kept(pattern, gone, below))
    return LapelCut(after, edges, splits, removals)


def _old_neck(front: LapelFront) -> InternalLine:
    """The neck as a line of the piece: the collar is cut on beyond it."""
    return InternalLine(front.neck[-1].name, front.neck[-1].path, "match")


def _snapped(outline: list[Edge]) -> tuple[Edge, ...]:
    """Each edge beginning exactly where the one before ends."""
    found = list(outline)
    for index, edge in enumerate(found):
        before = found[index - 1]
        if edge.path.start != before.path.end:
            found[index] = replace(edge, path=edge.path.with_start(before.path.end))
    return tuple(found)


def _notches_kept(
    pattern: Pattern, front: LapelFront, gone: set[str], below: Edge
) -> tuple[Pattern, dict[str, str]]:
    """Notches below the break point, counted from the other end; those above are gone with their edges."""
    kept: list[Notch] = []
    lost: dict[str, str] = {}
    for notch in pattern.notches.values():
        found = locate(pattern, notch.place)
        if found.edge.name not in gone:
            continue
        if found.edge.name == front.edge.name and found.distance < below.length:
            place = Place(below.name, below.start, found.distance)
            kept.append(replace(notch, place=place))
        else:
            lost[notch.name] = _WHY
    return pattern.with_notches(*kept, without=tuple(lost)), lost


def _allowances_kept(pattern: Pattern, gone: set[str], below: Edge) -> Mapping[str, Allowance]:
    """What was said of the old edges is said of what is left of them; the new ones are turned."""
    kept: dict[str, Allowance] = {name: one for name, one in pattern.allowances.items() if name not in gone}
    kept[below.name] = Allowance("collar_edge")
    return frozen_map(kept)


def own(front: LapelFront, slug: str, word: str) -> str:
    """The name of a new part on the front, under the step."""
    base = front.piece.name.rsplit(".", 1)[-1]
    return part_name(f"{slug}.{base}", word)
