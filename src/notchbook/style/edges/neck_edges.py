"""A neck edge drawn anew between the center and the shoulder seam."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, direction
from notchbook.pattern import Edge, Pattern, Piece, directed, require_one, spoken
from notchbook.pattern.sewn import Directed
from notchbook.style.edges.carried import carried_on
from notchbook.style.edges.neck_shapes import NeckEnds, NeckShape, neckline
from notchbook.style.edges.redrawn import redrawn
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
    before, after = piece.edge_before(edge), piece.edge_after(edge)
    return NeckEdges(piece, step, *((before, after) if step.forward else (after, before)))


def neck_slant(edges: NeckEdges) -> float:
    """Degrees by which the neck arrives at the shoulder seam turned from square, as it is now.

    Front and back of a sloper slant alike, one each way, so that they meet as one line.
    """
    old, square = edges.neck.path, _square(edges, edges.shoulder_path)
    return old.tangent_at(old.length).rotated(-square.direction()).direction()


def redrawn_neck(edges: NeckEdges, shape: NeckShape, depth: float, width: float, slant: float = 0.0) -> Piece:
    """The piece with its neck lower by ``depth`` at the center and wider by ``width`` at the shoulder, mm.

    It arrives at the shoulder seam turned by ``slant`` degrees from square.

    StepRefused ``neckline-past-edge`` where center or shoulder is not that long.
    """
    center = _ended(edges.center, edges.center_path, depth)
    shoulder = _ended(edges.shoulder, edges.shoulder_path, width)
    path = neckline(shape, _ends(edges, center, shoulder, slant))
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


def _square(edges: NeckEdges, beside: Path) -> Point:
    """The way of the neck square to an edge that runs to it: the piece lies on one side of the neck."""
    return beside.tangent_at(beside.length).perpendicular() * (1.0 if edges.neck.forward else -1.0)


def _ends(edges: NeckEdges, center: Path, shoulder: Path, slant: float) -> NeckEnds:
    leaving, arriving = _square(edges, center), _square(edges, shoulder)
    up = direction(edges.piece.grain.degrees)
    rises = (shoulder.end - center.end).dot(up) > 0.0
    return NeckEnds(
        center.end,
        leaving.direction(),
        shoulder.end,
        arriving.direction() + slant,
        (up if rises else -up).direction(),
    )


def corners_of(edges: NeckEdges) -> tuple[Point, Point]:
    """The two ends of the neck edge."""
    return edges.neck.path.start, edges.neck.path.end
