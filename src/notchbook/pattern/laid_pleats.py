"""What pleats and tucks take of a line that runs across them, laid as they lie at their edge."""

from notchbook.geometry import Path
from notchbook.pattern.piece import Intake, Piece


def laid_away(piece: Piece, path: Path, *, stitched_only: bool = False) -> float:
    """How much of a line across the piece lies in its folds when they are laid, mm.

    A fold takes what lies between its two lines; one that the path meets only beyond them takes nothing.
    With ``stitched_only`` the folds count where they are stitched down alone: elsewhere they open as the
    body asks.
    """
    return sum(
        _between(piece, intake, path, intake.stitched if stitched_only else None)
        for intake in piece.intakes
        if intake.is_folded
    )


def _between(piece: Piece, intake: Intake, path: Path, down_to: float | None) -> float:
    names = (intake.first_line, intake.second_line)
    first, second = (path.intersections(piece.line(name).path) for name in names)
    if not first or not second or (down_to is not None and first[0].at_other > down_to):
        return 0.0
    return abs(second[0].at_self - first[0].at_self)
