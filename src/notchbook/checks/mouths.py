"""What angle an edge makes across a dart when the dart is closed."""

from notchbook.checks.corners import inside_angle
from notchbook.pattern import Edge, Intake, Piece
from notchbook.units import TOLERANCES


def angle_across(piece: Piece, intake: Intake) -> float | None:
    """The sum of the two angles at the mouth, degrees; None where the edge beside it is a leg too."""
    legs = {leg for other in piece.intakes for leg in (other.first_leg, other.second_leg)}
    first, second = piece.edge(intake.first_leg), piece.edge(intake.second_leg)
    before, after = _beside(piece, first, -1), _beside(piece, second, 1)
    if {before.name, after.name} & legs or min(first.length, second.length) <= TOLERANCES.sew_length:
        return None
    return inside_angle(before, first) + inside_angle(second, after)


def _beside(piece: Piece, edge: Edge, step: int) -> Edge:
    return piece.outline[(piece.edge_index(edge.name) + step) % len(piece.outline)]
