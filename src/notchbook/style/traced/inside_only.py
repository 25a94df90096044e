"""What is drawn inside a piece that was cut back: lines end at the cut, and what lies beyond it is gone."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from notchbook.geometry import Path
from notchbook.pattern import InternalLine, Piece
from notchbook.pattern.splitting import cut_path


def inside_only(piece: Piece, cuts: Sequence[Path]) -> Piece:
    """The piece with its lines cut at the new edges, and without the lines and marks beyond them.

    Legs and points of double-ended darts stay as they are.
    """
    kept = {
        name
        for dart in piece.inner_darts
        for name in (dart.center_leg, dart.side_leg, dart.upper_point, dart.lower_point)
    }
    outline = piece.sew_line
    marks = tuple(mark for mark in piece.marks if mark.name in kept or outline.contains(mark.position))
    return replace(piece, lines=tuple(_lines(piece, cuts, kept)), marks=marks)


def _lines(piece: Piece, cuts: Sequence[Path], kept: set[str]) -> Iterator[InternalLine]:
    outline = piece.sew_line
    for line in piece.lines:
        if line.name in kept:
            yield line
            continue
        parts: tuple[Path, ...] = (line.path,)
        for cut in cuts:
            parts = tuple(smaller for part in parts for smaller in cut_path(part, cut))
        inside = [part for part in parts if outline.contains(part.point_at(part.length / 2.0))]
        if inside:
            yield replace(line, path=max(inside, key=lambda part: part.length))
