"""Gathers in the flat: short lines that run from the gathered edge into the cloth."""

from collections.abc import Iterator
from typing import Final

from notchbook.errors import NotchbookError
from notchbook.geometry import Path
from notchbook.output.flat.joined import center_x
from notchbook.output.flat.laid import laid_path, laying
from notchbook.pattern import Pattern, Piece
from notchbook.pattern.resolve import expand

_APART: Final = 11.0
"""mm between the lines of a gather."""

_LENGTHS: Final = (34.0, 18.0, 26.0)
"""mm that the lines of a gather are long, in turn. Own judgment: a picture."""

_STEP: Final = 0.2


def gather_lines(pattern: Pattern, piece: Piece) -> tuple[Path, ...]:
    """The lines of the gathers of a piece, in its frame with its folds laid."""
    laid = laying(piece, center_x(piece))
    edges = {edge.name: edge.path for edge in piece.outline}
    return tuple(
        laid_path(line, laid, _STEP)
        for name in _gathered(pattern, piece)
        if name in edges
        for line in _lines(edges[name])
    )


def _gathered(pattern: Pattern, piece: Piece) -> Iterator[str]:
    """The edges that are gathered: a stretch that was cut is named as a whole."""
    for intake in piece.intakes:
        if intake.kind == "gather" and intake.amount > 0.0:
            try:
                yield from expand(pattern, intake.edge)[0]
            except NotchbookError:
                continue  # the checks tell of it


def _lines(edge: Path) -> Iterator[Path]:
    count = max(2, round(edge.length / _APART))
    for index in range(count):
        at = edge.length * (index + 0.5) / count
        start = edge.point_at(at)
        inward = edge.tangent_at(at).perpendicular()
        yield Path.line(start, start + inward * _LENGTHS[index % len(_LENGTHS)])
