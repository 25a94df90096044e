"""The last pages of the card: in which order it is sewn, and what the pattern was drafted from, for whoever
sews, fits or grades it later."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from notchbook.geometry import Path, Point
from notchbook.output import line_styles as style
from notchbook.output.paper_info import DraftedFrom, PaperEase, PaperInfo
from notchbook.output.pen import Align, Pen, Text
from notchbook.output.typeset import shortened, wrapped

_TYPE: Final = 9.0
_ROW: Final = 4.9
_HEADING: Final = 9.0
"""Heights of a row and of a heading with the space above it, mm."""

_MEASURES: Final = (0.0, 0.31, 0.5, 0.81)
"""Left edges of name, value, name, value, as shares of the width."""

_EASES: Final = (0.0, 0.47, 0.585, 0.7, 0.815, 1.0)
"""Left edge of the name, then right edges of the numbers, as shares of the width."""

_REMARK: Final = 0.04
"""Left edge of what is said below a row, as a share of the width."""

_FEWEST_CELLS: Final = 3
"""A row of fewer cells is a sentence, with its number perhaps: it may run to the edge."""

_EASE_HEADS: Final = PaperEase("", "body", "ease", "pattern", "finished", "usual ease")


@dataclass(frozen=True, slots=True)
class DraftRow:
    """One row: its words, each at a share of the width, and whether it is a heading."""

    words: tuple[str, ...]
    places: tuple[float, ...] = (0.0,)
    aligns: tuple[Align, ...] = ("left",)
    is_heading: bool = False

    @property
    def height(self) -> float:
        """mm that the row takes."""
        return _HEADING if self.is_heading else _ROW


def draft_pages(info: PaperInfo, width: float, room: float) -> list[list[DraftRow]]:
    """The rows page by page, ``room`` mm each; no page where nothing is told."""
    pages: list[list[DraftRow]] = []
    left = 0.0
    for row in (*_sewing(info.sewing, width), *_rows(info.drafted_from, width)):
        least = row.height + (_ROW if row.is_heading else 0.0)
        if least > left:
            pages.append([])
            left = room
        pages[-1].append(row)
        left -= row.height
    return pages


def draw_draft_page(pen: Pen, rows: Sequence[DraftRow], top: float, width: float) -> None:
    """The rows of one page below ``top``."""
    for row in rows:
        base = top - row.height + 1.4
        size = 11.0 if row.is_heading else _TYPE
        for words, place, align in zip(row.words, row.places, row.aligns, strict=True):
            most = width * (1.0 - place) if len(row.words) < _FEWEST_CELLS else width * 0.3
            text = shortened(words, size, most, row.is_heading)
            pen.write(Text(text, Point(place * width, base), size, row.is_heading, align=align))
        if row.is_heading:
            low = top - row.height
            pen.stroke(Path.line(Point(0.0, low), Point(width, low)), style.SQUARE)
        top -= row.height


def _sewing(lines: Sequence[str], width: float) -> Iterator[DraftRow]:
    """The sewing order, a line that is too long going on below its words."""
    if not lines:
        return
    yield DraftRow(("Sewing order",), is_heading=True)
    for number, words in enumerate(lines, start=1):
        first, *more = wrapped(words, _TYPE, width * (1.0 - _REMARK))
        yield DraftRow((f"{number}", first), (0.0, _REMARK), ("left", "left"))
        yield from (DraftRow((line,), (_REMARK,)) for line in more)


def _rows(told: DraftedFrom, width: float) -> Iterator[DraftRow]:
    if told.measures:
        yield DraftRow(("Measures",), is_heading=True)
        half = (len(told.measures) + 1) // 2
        for index in range(half):
            other = told.measures[index + half] if index + half < len(told.measures) else ("", "")
            pair = (*told.measures[index], *other)
            yield DraftRow(pair, _MEASURES, ("left", "left", "left", "left"))
    if told.settings:
        yield DraftRow(("Drafted with",), is_heading=True)
        for words in told.settings:
            yield from (DraftRow((line,)) for line in wrapped(words, _TYPE, width))
    if told.eases:
        yield DraftRow(("Body, ease, pattern, finished",), is_heading=True)
        for row in (_EASE_HEADS, *told.eases):
            yield _ease_row(row)
            for line in wrapped(row.remark, _TYPE, width * (1.0 - _REMARK)) if row.remark else ():
                yield DraftRow((line,), (_REMARK,))


def _ease_row(row: PaperEase) -> DraftRow:
    words = (row.name, row.body, row.ease, row.pattern, row.finished, row.usual)
    return DraftRow(words, _EASES, ("left", "right", "right", "right", "right", "right"))
