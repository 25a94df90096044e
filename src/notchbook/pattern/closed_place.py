"""Where two corners of a piece lie to each other with the darts closed that steps opened between them."""

from notchbook.geometry import Point, Transform
from notchbook.pattern.names import instance_of
from notchbook.pattern.piece import Edge, Piece
from notchbook.pattern.sewn import closing_motion


def closed_place(piece: Piece, first: str, second: str, drafted_by: str) -> Point:
    """The second corner as it lies when the first lies still, mm, in the frame of the piece.

    Closed are the darts and folds on the shorter way round the outline that are not of the block
    ``drafted_by``: with its own darts open the block was measured. A point within the piece stays.
    """
    place = piece.points[second]
    corners = [edge.start for edge in piece.outline]
    if first not in corners or second not in corners:
        return place
    ahead = _edges(piece, first, second)
    back = _edges(piece, second, first)
    if sum(edge.length for edge in ahead) <= sum(edge.length for edge in back):
        return _closing(piece, ahead, drafted_by).apply(place)
    return _closing(piece, back, drafted_by).inverse().apply(place)


def _edges(piece: Piece, start: str, stop: str) -> list[Edge]:
    """The edges from one corner to another, counter-clockwise."""
    count = len(piece.outline)
    begin = next(index for index, edge in enumerate(piece.outline) if edge.start == start)
    found: list[Edge] = []
    for step in range(count):
        edge = piece.outline[(begin + step) % count]
        if edge.start == stop and found:
            break
        found.append(edge)
    return found


def _closing(piece: Piece, edges: list[Edge], drafted_by: str) -> Transform:
    """The motion of what comes after these edges when the steps' darts among them are closed."""
    names = {edge.name for edge in edges}
    motion = Transform.identity()
    ordered = {edge.name: place for place, edge in enumerate(edges)}
    darts = [
        intake
        for intake in piece.intakes
        if intake.has_legs
        and {intake.first_leg, intake.second_leg} <= names
        and instance_of(intake.name) != drafted_by
    ]
    for intake in sorted(darts, key=lambda one: ordered[one.first_leg]):
        motion = closing_motion(piece, intake).then(motion)
    return motion
