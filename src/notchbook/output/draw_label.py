"""The label of a piece, set to the room that finishing found for it."""

from itertools import groupby

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

_WORTH_JOINING = 1.15
"""Lines are joined where the label then becomes larger by this much; else each thing has its own line."""

_LEAST_SHARE = 0.5
"""Below this share of its full type size a label leaves lines out rather than shrink on."""


def draw_label(pen: Pen, piece: CutPiece, info: PaperInfo) -> None:
    """Write the label along the grain, centered in its box."""
    box = piece.label
    lines, share = fitted(label_lines(piece, info), box.length, box.height)
    along = Point(1.0, 0.0).rotated(box.degrees)
    down = -along.perpendicular()
    height = _height(lines) * share
    place = box.center - along * (_width(lines) * share / 2.0) - down * (height / 2.0)
    for line in lines:
        size = line.size * share
        place = place + down * (size * MM_PER_POINT)
        pen.write(Text(line.words, place, size, line.bold, box.degrees, halo=not box.is_clear))
        place = place + down * (size * (_LEADING - 1.0) * MM_PER_POINT)


def label_size(piece: CutPiece, info: PaperInfo) -> tuple[float, float]:
    """The length along the grain and the height, mm, that the words of a label take in their box."""
    lines, share = fitted(label_lines(piece, info), piece.label.length, piece.label.height)
    return _width(lines) * share, _height(lines) * share


def fitted(lines: tuple[LabelLine, ...], length: float, height: float) -> tuple[tuple[LabelLine, ...], float]:
    """The lines that fit a box (mm) and the share of their type size; long ones are wrapped first, lines
    of less weight left out before the label becomes too small to read."""
    kept = lines
    while True:
        best = _best(kept, length, height)
        joined = _best(_joined(kept), length, height)
        if joined[1] > _WORTH_JOINING * best[1]:
            best = joined
        spare = max((line.spare for line in kept), default=0)
        if best[1] >= _LEAST_SHARE or spare == 0:
            return best
        kept = tuple(line for line in kept if line.spare < spare)


def _best(lines: tuple[LabelLine, ...], length: float, height: float) -> tuple[tuple[LabelLine, ...], float]:
    tried = (_wrapped_to(lines, length / share, share, length, height) for share in _SHARES)
    return max(tried, key=lambda found: found[1])


def _joined(lines: tuple[LabelLine, ...]) -> tuple[LabelLine, ...]:
    """Neighbors of one size and weight on one line, for a long and low box such as that of a band."""
    groups = groupby(lines, key=lambda line: (line.size, line.bold))
    joined = []
    for (size, bold), members in groups:
        group = tuple(members)
        words = " · ".join(line.words for line in group)
        joined.append(LabelLine(words, size, bold, min(line.spare for line in group)))
    return tuple(joined)


def _wrapped_to(
    lines: tuple[LabelLine, ...], width: float, share: float, length: float, height: float
) -> tuple[tuple[LabelLine, ...], float]:
    """The lines wrapped to a width in mm at full size, and the share at which they fit the box."""
    broken = tuple(
        LabelLine(words.removesuffix(" ·"), line.size, line.bold, line.spare)
        for line in lines
        for words in wrapped(line.words, line.size, width, line.bold)
    )
    return broken, min(share, length / max(_width(broken), 0.1), height / _height(broken))


def _width(lines: tuple[LabelLine, ...]) -> float:
    return max(text_width(line.words, line.size, line.bold) for line in lines)


def _height(lines: tuple[LabelLine, ...]) -> float:
    return sum(line.size * _LEADING for line in lines) * MM_PER_POINT
