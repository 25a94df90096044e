"""Whether a pocket lies wholly on its piece, clear of darts."""

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import Piece, spoken

_ON_EDGE = 0.2
"""mm by which a line may touch an edge of the piece and not count as crossing it. Own judgment."""


def require_inside(piece: Piece, line: Path) -> None:
    """StepRefused ``pocket-over-dart`` where a closed line on the piece runs over a dart or a fold of it,
    ``pocket-over-edge`` where it leaves the piece."""
    for intake in piece.intakes:
        if not intake.has_legs:
            continue
        legs = (piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path)
        if any(line.intersections(leg) or line.contains(leg.end) for leg in legs):
            raise StepRefused("pocket-over-dart", piece=spoken(piece.name), dart=spoken(intake.name))
    for dart in piece.inner_darts:
        drawn = [piece.line(leg).path for leg in (dart.center_leg, dart.side_leg)]
        if any(line.intersections(leg) or line.contains(leg.start) for leg in drawn):
            raise StepRefused("pocket-over-dart", piece=spoken(piece.name), dart=spoken(dart.name))
    for edge in piece.outline:
        if any(_leaves(piece, line, crossing.at_self) for crossing in line.intersections(edge.path)):
            raise StepRefused("pocket-over-edge", piece=spoken(piece.name), edge=spoken(edge.name))
    if not piece.sew_line.contains(line.start):
        nearest = min(piece.outline, key=lambda edge: edge.path.nearest(line.start).gap)
        raise StepRefused("pocket-over-edge", piece=spoken(piece.name), edge=spoken(nearest.name))


def _leaves(piece: Piece, line: Path, at: float) -> bool:
    """Whether the line runs on outside the piece at a crossing, before it or after."""
    beside = [line.point_at((at + step) % line.length) for step in (-_ON_EDGE, _ON_EDGE)]
    outline = piece.sew_line
    return any(not outline.contains(place) for place in beside)
