"""A neck edge drawn anew between the center and the shoulder seam."""

from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, direction
from notchbook.pattern import Edge, Pattern, Piece, directed, require, require_one, spoken
from notchbook.pattern.closing import darts_in
from notchbook.pattern.sewn import Directed
from notchbook.style.edges.carried import carried_on
from notchbook.style.edges.neck_shapes import NeckEnds, NeckShape, neckline
from notchbook.style.edges.redrawn import redrawn
from notchbook.style.lines.darts_on_line import Frame, face_parts, frame_of, opened_face
from notchbook.units import TOLERANCES


@dataclass(frozen=True)
class NeckEdges:
    """The neck edge of a piece, walked from the center, with the edges beside it, each running to the
    neck.

    Where darts open from it, it is the whole with them closed, under the name of the group, and the edge
    beside it at the shoulder lies as it does then: ``frame`` holds how the parts were moved.
    """

    piece: Piece
    neck: Directed
    center: Edge
    shoulder: Edge
    frame: Frame | None = None

    @property
    def center_path(self) -> Path:
        """The edge at the center, running to the neck."""
        return self.center.path if self.neck.forward else self.center.path.reversed()

    @property
    def shoulder_path(self) -> Path:
        """The shoulder seam, running to the neck."""
        return self.shoulder.path.reversed() if self.neck.forward else self.shoulder.path


def neck_edges(pattern: Pattern, name: str, center: str) -> NeckEdges:
    """The neck edge by its name and its end at the center.

    NameLost ``name-ambiguous`` where it consists of several edges for another reason than darts.
    """
    members = require(pattern, name)
    walk = directed(pattern, name, center)
    piece = pattern.piece_of(members[0])
    if len(members) == 1:
        before, after = piece.edge_before(members[0]), piece.edge_after(members[0])
        return NeckEdges(piece, walk[0], *((before, after) if walk[0].forward else (after, before)))
    run = _run(pattern, piece, members)
    if not run:
        require_one(pattern, name)  # several edges that no dart divides: which one is meant
    forward = walk[0].forward
    frame = frame_of(run, darts_in(run, piece.darts), keeps_start=forward)
    laid = frame.closed.edges
    whole = laid[1].path
    for edge in laid[2:-1]:
        whole = whole.joined(edge.path)
    neck = Edge(name, whole, laid[1].start, laid[-2].end, laid[1].kind)
    beside = (laid[0], laid[-1]) if forward else (laid[-1], laid[0])
    return NeckEdges(piece, Directed(neck, forward), *beside, frame)


def _run(pattern: Pattern, piece: Piece, members: tuple[str, ...]) -> tuple[Edge, ...]:
    """The outline over these edges of the piece, with that before and that after; none where anything but a
    dart lies between two of them."""
    if any(pattern.carriers[member] != piece.name for member in members):
        return ()
    count, begin = len(piece.outline), piece.edge_index(members[0]) - 1
    steps = (piece.edge_index(members[-1]) - begin) % count + 1
    run = tuple(piece.outline[(begin + step) % count] for step in range(steps + 1))
    darts = darts_in(run, piece.darts)
    legs = {leg for dart in darts for leg in (dart.first_leg, dart.second_leg)}
    inner = {edge.name for edge in run[1:-1]}
    return run if len(darts) == len(members) - 1 and inner == {*members, *legs} else ()


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
    return with_paths(edges, center, neckline(shape, _ends(edges, center, shoulder, slant)), shoulder)


def with_paths(edges: NeckEdges, center: Path, neck: Path, shoulder: Path) -> Piece:
    """The piece with its neck and the edges beside it drawn so, each walked as in ``edges``; a dart that
    opens from the neck has its mouth on the new line.

    StepRefused ``neckline-past-dart`` where the new line runs beyond the point of such a dart.
    """
    forward = edges.neck.forward
    along = neck if forward else neck.reversed()
    beside = (center, shoulder.reversed()) if forward else (shoulder, center.reversed())
    names = (edges.center.name, edges.shoulder.name) if forward else (edges.shoulder.name, edges.center.name)
    if edges.frame is None:
        return redrawn(edges.piece, {names[0]: beside[0], edges.neck.edge.name: along, names[1]: beside[1]})
    motions = edges.frame.closed.motions
    paths = {
        names[0]: beside[0].transformed(motions[0].inverse()),
        names[1]: beside[1].transformed(motions[-1].inverse()),
        **_opened(edges.neck.edge.name, edges.frame, along),
    }
    return redrawn(edges.piece, paths)


_LED_ON = 80.0
"""mm by which the legs of a dart are led on outward to meet a neckline that is raised."""


def _opened(name: str, frame: Frame, along: Path) -> dict[str, Path]:
    """The parts of the line with the darts opened again, and their legs from it to their points."""
    legs = {edge.name: edge.path for edge in frame.run}
    ahead = {dart.first_leg: _led_on(legs[dart.first_leg]) for dart in frame.darts}
    run = tuple(replace(edge, path=ahead.get(edge.name, edge.path)) for edge in frame.run)
    try:
        parts = opened_face(frame, face_parts(replace(frame, run=run), along))
    except StepRefused as error:
        darts = ", ".join(spoken(dart.name) for dart in frame.darts)
        raise StepRefused("neckline-past-dart", edge=spoken(name), darts=darts) from error
    taken = {leg for dart in frame.darts for leg in (dart.first_leg, dart.second_leg)}
    members = [edge.name for edge in frame.run[1:-1] if edge.name not in taken]
    paths = dict(zip(members, parts, strict=True))
    for dart, before, after in zip(frame.darts, parts, parts[1:], strict=False):
        point = legs[dart.first_leg].end
        paths[dart.first_leg] = Path.line(before.end, point)
        paths[dart.second_leg] = Path.line(point, after.start)
    return paths


def _led_on(leg: Path) -> Path:
    """A leg from farther out to its point."""
    outward = (leg.start - leg.end).unit()
    return Path.line(leg.start + outward * _LED_ON, leg.end)


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
