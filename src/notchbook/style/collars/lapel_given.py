"""The front that a lapel is turned back from: its neck, its front edge, its shoulder."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Point
from notchbook.pattern import Edge, Pattern, Piece, require, require_one, spoken
from notchbook.style.collars.neck import Neck

_LEAST_BREAK = 30.0
"""mm that the break point lies below the neck and above the lower end of the front edge at least. Own
judgment."""


@dataclass(frozen=True, slots=True)
class LapelFront:
    """One front piece, its outline run counter-clockwise: up the front ``edge``, along the ``neck`` edges,
    down the ``shoulder``; ``break_at`` is how far from the start of the front edge the lapel breaks, mm."""

    piece: Piece
    edge: Edge
    neck: tuple[Edge, ...]
    shoulder: Edge
    break_at: float

    @property
    def break_point(self) -> Point:
        """Where the lapel breaks."""
        return self.edge.path.point_at(self.break_at)

    @property
    def neck_point(self) -> Point:
        """The side-neck point."""
        return self.neck[-1].path.end

    @property
    def down_neck(self) -> Point:
        """The direction of the neck from the shoulder down, as it runs on from the back neck."""
        path = self.neck[-1].path
        return -path.tangent_at(path.length)

    @property
    def up_shoulder(self) -> Point:
        """The direction of the shoulder seam at the neck, toward the neck."""
        return -self.shoulder.path.tangent_at(0.0)


def lapel_front(pattern: Pattern, neck: Neck, edge: str, below: float) -> LapelFront:
    """The front with the break point so far below the neck, along its front edge.

    NameLost where the edge is gone; StepRefused ``lapel-on-fold``, ``lapel-neck-parted``,
    ``lapel-edge-elsewhere``, ``lapel-neck-dart``, ``lapel-break-off``.
    """
    front = pattern.edges[require_one(pattern, edge)]
    piece = pattern.piece_of(front.name)
    if front.kind == "fold":
        raise StepRefused("lapel-on-fold", edge=spoken(edge))
    members = [pattern.edges[name] for use in neck.before for name in require(pattern, use.edge)]
    if not members or not neck.behind or any(not piece.has_edge(one.name) for one in members):
        raise StepRefused("lapel-neck-parted", piece=spoken(piece.name))
    following, run = piece.edge_after(front.name), []
    while following.name in {one.name for one in members}:
        run.append(following)
        following = piece.edge_after(following.name)
    if run and following.kind == "leg":
        raise StepRefused("lapel-neck-dart", piece=spoken(piece.name))
    if len(run) != len(members):
        raise StepRefused("lapel-edge-elsewhere", edge=spoken(edge), neck=spoken(members[0].name))
    at = front.length - below
    if min(at, below) < _LEAST_BREAK:
        raise StepRefused("lapel-break-off", below=below, length=front.length, edge=spoken(edge))
    return LapelFront(piece, front, tuple(run), following, at)
