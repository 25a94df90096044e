"""The cut line round each piece with its notches: shown on the sheet, never worked on."""

from collections.abc import Iterable

from notchbook.finish import CutNotch, CutPiece
from notchbook.geometry import Path
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.answers.lines import path_text


class CutLine(Answer):
    """The cut line of one piece in the piece's own frame, and its notches as one path."""

    piece: str
    path: str
    notches: str


class CutAnswer(Answer):
    """The cut lines of a style."""

    lines: tuple[CutLine, ...]


def cut_answer(pieces: Iterable[CutPiece]) -> CutAnswer:
    """The cut lines of all pieces."""
    return CutAnswer(lines=tuple(map(_line, pieces)))


def _line(piece: CutPiece) -> CutLine:
    return CutLine(
        piece=piece.name,
        path=path_text(piece.cut_line) + "Z",
        notches="".join(map(_notch, piece.notches)),
    )


def _notch(notch: CutNotch) -> str:
    """Its slits, from the cut line inward; nothing where the allowance is too narrow to be slit."""
    if notch.depth <= 0.0:
        return ""
    slits = (Path.line(place, place + notch.direction * notch.depth) for place in notch.cut_positions)
    return "".join(map(path_text, slits))
