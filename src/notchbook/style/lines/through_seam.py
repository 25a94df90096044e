"""A seam from edge to edge that takes darts in: their legs become the edges of two panels."""

from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, InnerDart, Intake, Piece, mouth_of, spoken
from notchbook.pattern.splitting import CutEnd, parted_outline
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class ThroughLine:
    """Where the seam runs: from ``start`` (a place or a dart) to ``end``, through an inner dart if one is
    given.

    ``top`` is the way from a place to the first point of the seam; None where it starts in a dart. ``center``
    is an edge of the center panel.
    """

    start: CutEnd
    end: CutEnd
    inner: InnerDart | None
    top: Path | None
    center: str


@dataclass(frozen=True, slots=True)
class Panel:
    """One panel: what is left of the outline, on which side of the seam it lies, and the ways along the seam
    from top to bottom: those before the first joint, where the darts of the bust meet, come first."""

    run: tuple[Edge, ...]
    is_right: bool
    ways: tuple[Path, ...]


def led_to(piece: Piece, darts: tuple[Intake, ...], point: Point) -> Piece:
    """The piece with the points of these darts led to one point; their mouths stay.

    StepRefused ``dart-aims-elsewhere`` where the two legs would not be equally long there.
    """
    moved: dict[str, Path] = {}
    for dart in darts:
        first, second = piece.edge(dart.first_leg).path, piece.edge(dart.second_leg).path
        off = first.start.distance_to(point) - second.end.distance_to(point)
        if abs(off) > TOLERANCES.seam_walk:
            raise StepRefused("dart-aims-elsewhere", intake=spoken(dart.name), off=abs(off))
        moved[dart.first_leg] = Path.line(first.start, point)
        moved[dart.second_leg] = Path.line(point, second.end)
    outline = tuple(replace(edge, path=moved.get(edge.name, edge.path)) for edge in piece.outline)
    return replace(piece, outline=outline)


def panels(piece: Piece, line: ThroughLine) -> tuple[Panel, Panel]:
    """The center panel and the side panel.

    StepRefused ``princess-center-elsewhere`` where neither panel has the edge named for the center.
    """
    runs = parted_outline(piece, line.start, line.end)
    is_right = any(edge.name == line.center for edge in runs.right)
    if not is_right and all(edge.name != line.center for edge in runs.left):
        raise StepRefused("princess-center-elsewhere", edge=spoken(line.center), piece=spoken(piece.name))
    ways = [_ways(piece, line, is_right=is_right, is_center=True)]
    ways.append(_ways(piece, line, is_right=not is_right, is_center=False))
    center, side = (runs.right, runs.left) if is_right else (runs.left, runs.right)
    return Panel(center, is_right, ways[0]), Panel(side, not is_right, ways[1])


def _ways(piece: Piece, line: ThroughLine, *, is_right: bool, is_center: bool) -> tuple[Path, ...]:
    ways: list[Path] = [] if line.top is None else [line.top]
    if isinstance(line.start, Intake):
        # Round the outline the right run begins after the dart where the seam starts, with its second leg.
        path = piece.edge(line.start.second_leg if is_right else line.start.first_leg).path
        ways.append(path.reversed() if is_right else path)
    if line.inner is not None:
        leg = piece.line(line.inner.center_leg if is_center else line.inner.side_leg).path
        mouth = mouth_of(leg)[1]
        ways += [Path.line(ways[-1].end, mouth), Path.line(mouth, leg.end)]
    if isinstance(line.end, Intake):
        path = piece.edge(line.end.first_leg if is_right else line.end.second_leg).path
        down = path.reversed() if is_right else path
        ways += [*_link(ways[-1].end, down.start), down]
    else:
        ways += _link(ways[-1].end, line.end.located.position)
    return tuple(ways)


def _link(start: Point, end: Point) -> list[Path]:
    """The straight way between two points of the seam; none where they are one."""
    return [Path.line(start, end)] if start.distance_to(end) > TOLERANCES.join else []
