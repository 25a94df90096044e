"""A neck edge drawn anew between the center and the shoulder seam."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, direction
from notchbook.pattern import Edge, Pattern, Piece, directed, require_one, spoken
from notchbook.pattern.sewn import Directed
from notchbook.style._edges.carried import carried_on
from notchbook.style._edges.neck_shapes import NeckEnds, NeckShape, neckline
from notchbook.style._edges.redrawn import redrawn
from notchbook.units import TOLERANCES


@dataclass(frozen=True)
class NeckEdges:
    """The neck edge of a piece, walked from the center, with the edges beside it, each running to the
    neck."""

    piece: Piece
    neck: Directed
    center: Edge
    shoulder: Edge

    @property
    def center_path(self) -> Path:
        """The edge at the center, running to the neck."""
        return self.center.path if self.neck.forward else self.center.path.reversed()

    @property
    def shoulder_path(self) -> Path:
        """The shoulder seam, running to the neck."""
        return self.shoulder.path.reversed() if self.neck.forward else self.shoulder.path


def neck_edges(pattern: Pattern, name: str, center: str) -> NeckEdges:
    """The neck edge by its name and its end at the center."""
    edge = require_one(pattern, name)
    (step,) = directed(pattern, edge, center)
    piece = pattern.piece_of(edge)
    index, count = piece.edge_index(edge), len(piece.outline)
    before, after = piece.outline[index - 1], piece.outline[(index + 1) % count]
    return NeckEdges(piece, step, *((before, after) if step.forward else (after, before)))


def redrawn_neck(edges: NeckEdges, shape: NeckShape, depth: float, width: float) -> Piece:
    """The piece with its neck lower by ``depth`` at the center and wider by ``width`` at the shoulder, mm.

    StepRefused ``neckline-past-edge`` where center or shoulder is not that long.
    """
    center = _ended(edges.center, edges.center_path, depth)
    shoulder = _ended(edges.shoulder, edges.shoulder_path, width)
    path = neckline(shape, _ends(edges, center, shoulder))
    forward = edges.neck.forward
    paths = {
        edges.center.name: center if forward else center.reversed(),
        edges.neck.edge.name: path if forward else path.reversed(),
        edges.shoulder.name: shoulder.reversed() if forward else shoulder,
    }
    return redrawn(edges.piece, paths)


def _ended(edge: Edge, path: Path, amount: float) -> Path:
    if amount >= path.length - TOLERANCES.closure:
        raise StepRefused("neckline-past-edge", edge=spoken(edge.name), length=path.length, amount=amount)
    return carried_on(path, -amount)


def _ends(edges: NeckEdges, center: Path, shoulder: Path) -> NeckEnds:
    """Square to the center and to the shoulder seam; looking along the neck the piece lies on one side."""
    side = 1.0 if edges.neck.forward else -1.0
    leaving = center.tangent_at(center.length).perpendicular() * side
    arriving = shoulder.tangent_at(shoulder.length).perpendicular() * side
    up = direction(edges.piece.grain.degrees)
    rises = (shoulder.end - center.end).dot(up) > 0.0
    return NeckEnds(
        center.end,
        leaving.direction(),
        shoulder.end,
        arriving.direction(),
        (up if rises else -up).direction(),
    )


def corners_of(edges: NeckEdges) -> tuple[Point, Point]:
    """The two ends of the neck edge."""
    return edges.neck.path.start, edges.neck.path.end
