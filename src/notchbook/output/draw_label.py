"""The label of a piece, set to the room that finishing found for it."""

from notchbook.finish import CutPiece
from notchbook.geometry import Point
from notchbook.output.label_lines import LabelLine, label_lines
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pen import MM_PER_POINT, Pen, Text
from notchbook.output.typeset import text_width, wrapped

_LEADING = 1.22
"""From base line to base line, as a share of the type size."""

_SHARES = (1.0, 0.85, 0.7, 0.6, 0.5)
"""Shares of the full type size for which lines are wrapped, to find what fits best."""

_LEAST_SHARE = 0.5
"""Below this share of its full type size a label leaves lines out rather than shrink on."""


def draw_label(pen: Pen, piece: CutPiece, info: PaperInfo) -> None:
    """Write the label along the grain, centered in its box."""
    box = piece.label
    lines, share = fitted(label_lines(piece, info), box.length, box.height)
    along = Point(1.0, 0.0).rotated(box.degrees)
    down = -along.perpendicular()
    height = sum(line.size * _LEADING for line in lines) * share * MM_PER_POINT
    place = box.center - along * (_width(lines) * share / 2.0) - down * (height / 2.0)
    for line in lines:
        size = line.size * share
        place = place + down * (size * MM_PER_POINT)
        pen.write(Text(line.words, place, size, line.bold, box.degrees, halo=not box.is_clear))
        place = place + down * (size * (_LEADING - 1.0) * MM_PER_POINT)


def fitted(lines: tuple[LabelLine, ...], length: float, height: float) -> tuple[tuple[LabelLine, ...], float]:
    """The lines that fit a box (mm) and the share of their type size; long ones are wrapped first, lines
    of less weight left out before the label becomes too small to read."""
    kept = lines
    while True:
        best = max(
            (_wrapped_to(kept, length / share, share, length, height) for share in _SHARES),
            key=lambda found: found[1],
        )
        spare = max((line.spare for line in kept), default=0)
        if best[1] >= _LEAST_SHARE or spare == 0:
            return best
        kept = tuple(line for line in kept if line.spare < spare)


def _wrapped_to(
    lines: tuple[LabelLine, ...], width: float, share: float, length: float, height: float
) -> tuple[tuple[LabelLine, ...], float]:
    """The lines wrapped to a width in mm at full size, and the share at which they fit the box."""
    broken = tuple(
        LabelLine(words, line.size, line.bold, line.spare)
        for line in lines
        for words in wrapped(line.words, line.size, width, line.bold)
    )
    tall = sum(line.size * _LEADING for line in broken) * MM_PER_POINT
    return broken, min(share, length / max(_width(broken), 0.1), height / tall)


def _width(lines: tuple[LabelLine, ...]) -> float:
    return max(text_width(line.words, line.size, line.bold) for line in lines)
