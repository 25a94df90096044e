"""What angle an edge makes across a dart when the dart is closed."""

from notchbook.checks.corners import inside_angle
from notchbook.checks.measured import end_direction, start_direction, wrapped
from notchbook.pattern import Intake, Piece
from notchbook.units import TOLERANCES


def angle_across(piece: Piece, intake: Intake) -> float | None:
    """The angle inside the piece across a closed intake, degrees; None where the edge beside it is a leg too.

    Across a dart it is the sum of the two angles at its mouth; across a fold the angle between the two parts
    of the edge when its second line is laid on its first.
    """
    legs = {leg for other in piece.intakes for leg in (other.first_leg, other.second_leg)}
    first, second = piece.edge(intake.first_leg), piece.edge(intake.second_leg)
    before, after = piece.edge_before(first.name), piece.edge_after(second.name)
    if {before.name, after.name} & legs or min(first.length, second.length) <= TOLERANCES.sew_length:
        return None
    if intake.is_folded:
        still, moved = (piece.line(line).path for line in (intake.first_line, intake.second_line))
        turn = start_direction(still) - start_direction(moved)
        return 180.0 - wrapped(start_direction(after.path) + turn - end_direction(before.path))
    return inside_angle(before, first) + inside_angle(second, after)
