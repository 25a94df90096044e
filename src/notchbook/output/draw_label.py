"""The label of a piece, set to the room that finishing found for it; never in a type too small to read."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from notchbook.finish import CutPiece, LabelBox
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

LEAST_NAME, LEAST_TYPE = 6.5, 5.5
"""Points: no name of a piece, and no other words of a label, are smaller. Under 6 points print is read with
effort (common practice); numbers and short words are still read at 5.5. Own judgment."""

_SMALL_NAME, _SMALL_TYPE = 10.0, 8.0
"""Points: full size of name and other lines where room is so short that all shall be nearly alike."""


@dataclass(frozen=True, slots=True)
class LabelWords:
    """The lines inside the piece and the share of their type size; the lines that stand beside it, at their
    full size, where it has no room for them."""

    inside: tuple[LabelLine, ...]
    share: float
    beside: tuple[LabelLine, ...] = ()

    @property
    def size(self) -> tuple[float, float]:
        """The length along the grain and the height, mm, that the lines inside take."""
        length, height = lines_size(self.inside)
        return length * self.share, height * self.share


def label_words(piece: CutPiece, info: PaperInfo) -> LabelWords:
    """All that the label says in its box, in small type where needed; else number and name there, or the
    number alone, or nothing, and everything beside the piece. A box that is not clear would hide the grain or
    the lines of a strip: nothing stands there."""
    box = piece.label
    lines = label_lines(piece, info)
    small = _small(lines)
    if not box.is_clear:
        return LabelWords((), 1.0, small)
    for tried, least in ((lines, _LEAST_SHARE), (small, LEAST_TYPE / _SMALL_TYPE)):
        found, share = fitted(tried, box.length, box.height, least)
        if _is_readable(found, share):
            return LabelWords(found, share)
    for words in (f"{piece.number} {piece.title}", str(piece.number)):
        found, share = fitted((LabelLine(words, _SMALL_NAME, True, 0),), box.length, box.height)
        if _is_readable(found, share) and not any(_breaks_word(line.words, words) for line in found):
            return LabelWords(found, share, small)
    return LabelWords((), 1.0, small)


def _small(lines: tuple[LabelLine, ...]) -> tuple[LabelLine, ...]:
    name = max(line.size for line in lines)
    return tuple(
        replace(line, size=_SMALL_NAME) if line.size == name else replace(line, size=_SMALL_TYPE, bold=False)
        for line in lines
    )


def _is_readable(lines: tuple[LabelLine, ...], share: float) -> bool:
    sizes = [line.size * share for line in lines]
    return max(sizes) >= LEAST_NAME - 1e-6 and min(sizes) >= LEAST_TYPE - 1e-6


def _breaks_word(line: str, words: str) -> bool:
    """Whether a line of these words ends inside a word: then the room is none for them."""
    return any(part not in words.split(" ") for part in line.split(" "))


def draw_label(pen: Pen, piece: CutPiece, info: PaperInfo) -> None:
    """Write the label along the grain, centered in its box, as far as it has room there."""
    told = label_words(piece, info)
    write_lines(pen, told.inside, told.share, piece.label)


def write_lines(pen: Pen, lines: Sequence[LabelLine], share: float, box: LabelBox) -> None:
    """The lines at this share of their type size, centered in the box."""
    along = Point(1.0, 0.0).rotated(box.degrees)
    down = -along.perpendicular()
    height = _height(lines) * share
    place = box.center - along * (_width(lines) * share / 2.0) - down * (height / 2.0)
    for line in lines:
        size = line.size * share
        place = place + down * (size * MM_PER_POINT)
        pen.write(Text(line.words, place, size, line.bold, box.degrees))
        place = place + down * (size * (_LEADING - 1.0) * MM_PER_POINT)


def lines_size(lines: Sequence[LabelLine]) -> tuple[float, float]:
    """The length and the height, mm, of lines at their full type size."""
    return _width(lines), _height(lines)


def label_size(piece: CutPiece, info: PaperInfo) -> tuple[float, float]:
    """The length along the grain and the height, mm, that the words of a label take in their box."""
    return label_words(piece, info).size


def fitted(
    lines: tuple[LabelLine, ...], length: float, height: float, least: float = _LEAST_SHARE
) -> tuple[tuple[LabelLine, ...], float]:
    """The lines that fit a box (mm) and the share of their type size; long ones are wrapped first, lines
    of less weight left out before the share falls below the ``least``."""
    kept = lines
    while True:
        best = _best(kept, length, height)
        joined = _best(_joined(kept), length, height)
        if joined[1] > _WORTH_JOINING * best[1]:
            best = joined
        spare = max((line.spare for line in kept), default=0)
        if best[1] >= least or spare == 0:
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


def _width(lines: Sequence[LabelLine]) -> float:
    return max((text_width(line.words, line.size, line.bold) for line in lines), default=0.0)


def _height(lines: Sequence[LabelLine]) -> float:
    return sum(line.size * _LEADING for line in lines) * MM_PER_POINT
