"""The pieces of a fly: the facing behind the side that lies over, and the shield behind the zip."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import CutInstruction, Edge, EdgeKind, Grain, InternalLine, Pattern, Piece, part_name
from notchbook.pattern.names import Side
from notchbook.style.closures.fly_cut import FlySide
from notchbook.style.closures.fly_shape import j_line, walked_down

_ACROSS = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))


def fly_facing(pattern: Pattern, over: FlySide, name: str, width: float) -> Piece:
    """The facing of the side that lies over, face up: traced off its front and turned over.

    Its upper edge follows the waist; its free edge goes down and round in a J.
    """
    front = pattern.pieces[over.piece]
    lines = fly_lines(front, over, width)
    runs_down = lines.runs_down
    sides = [lines.fly, lines.free.reversed(), lines.upper.reversed()]
    if front.side == "both" and over.side == "left":
        turned, runs = sides, runs_down
    else:
        turned, runs = [path.transformed(_ACROSS) for path in sides], not runs_down
    points = [part_name(name, word) for word in ("upper_center", "fly_end", "upper_outer")]
    words = ("opening", "edge", "upper")
    kinds: tuple[EdgeKind, ...] = ("seam", "plain", "plain")
    return Piece(
        name=name,
        title="Fly facing",
        outline=_ring([part_name(name, word) for word in words], turned, points, kinds, forward=runs),
        grain=front.grain if front.grain.degrees == 90.0 else Grain(90.0),
        side=over.side,
        instructions=(CutInstruction("self"), CutInstruction("fusible")),
        rule=name.split(".", 1)[0],
    )


@dataclass(frozen=True, slots=True)
class FlyLines:
    """The fly walked down, the waist from it as far as the facing reaches, and the free edge from there down
    and round to the lower end; whether the outline runs down the fly."""

    fly: Path
    upper: Path
    free: Path
    runs_down: bool


def fly_lines(front: Piece, side: FlySide, width: float) -> FlyLines:
    """The lines of a facing so wide, mm, as they lie on the front."""
    edge = front.edge(side.edge)
    fly = walked_down(edge, side.top)
    runs_down = edge.start == side.top
    waist = front.edge_before(edge.name).path.reversed() if runs_down else front.edge_after(edge.name).path
    upper, free = _met(waist, j_line(fly, width if runs_down else -width))
    return FlyLines(fly, upper, free, runs_down)


_LED_ON = 30.0
"""mm by which the free edge is led on above its upper end to look for the waist."""

_STUB = 0.5
"""mm; what is shorter is no piece of an edge: the edge begins at the waist instead."""


def _met(waist: Path, free: Path) -> tuple[Path, Path]:
    """The waist up to the free edge, and that from there down; led on straight where they do not meet."""
    tangent = free.tangent_at(0.0)
    longer = Path.line(free.start - tangent * _LED_ON, free.start).joined(free)
    crossings = waist.intersections(longer)
    if not crossings:
        return Path.line(waist.start, free.start), free
    crossing = min(crossings, key=lambda found: found.at_self)
    is_stub = 0.0 <= _LED_ON - crossing.at_other < _STUB
    begun = free if is_stub else longer.split_at(crossing.at_other)[1]
    upper = waist.split_at(crossing.at_self)[0]
    return upper, begun.with_start(upper.end)


def _ring(
    names: Sequence[str],
    paths: Sequence[Path],
    points: Sequence[str],
    kinds: Sequence[EdgeKind],
    *,
    forward: bool,
) -> tuple[Edge, ...]:
    """The edges round a piece, turned about where they were walked clockwise."""
    count = len(paths)
    edges: list[Edge] = []
    for index in range(count):
        path = paths[index] if index == 0 else paths[index].with_start(paths[index - 1].end)
        if index == count - 1:
            path = path.with_end(paths[0].start)
        edges.append(Edge(names[index], path, points[index], points[(index + 1) % count], kinds[index]))
    return tuple(edges) if forward else tuple(edge.reversed() for edge in reversed(edges))


def fly_shield(name: str, side: Side, fly: float, size: tuple[float, float]) -> Piece:
    """The shield laid flat: two widths side by side, folded along the middle; ``size``: its finished width,
    and what it reaches below the opening, mm. Its sewn edge is that on the wearer's ``side``."""
    width, more = size
    height, full = fly + more, 2.0 * width
    corners = [
        Point(0.0, height),
        Point(0.0, more),
        Point(0.0, 0.0),
        Point(full, 0.0),
        Point(full, height),
    ]
    words = ("opening", "below", "end", "inner", "upper")
    kinds: tuple[EdgeKind, ...] = ("seam", "plain", "plain", "plain", "plain")
    points = [
        part_name(name, word)
        for word in ("upper_outer", "fly_end", "lower_outer", "lower_inner", "upper_inner")
    ]
    paths = [Path.line(corners[index], corners[(index + 1) % 5]) for index in range(5)]
    fold = Path.line(Point(width, 0.0), Point(width, height))
    return Piece(
        name=name,
        title="Fly shield",
        outline=_ring([part_name(name, word) for word in words], paths, points, kinds, forward=True),
        lines=(InternalLine(part_name(name, "fold_line"), fold, "fold_line"),),
        side=side,
        instructions=(CutInstruction("self"),),
        rule=name.split(".", 1)[0],
    )
