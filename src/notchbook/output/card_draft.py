"""The last pages of the card: in which order it is sewn, and what the pattern was drafted from, for whoever
sews, fits or grades it later."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
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

_FEWEST_ROWS: Final = 2
"""Rows of the measures that are not parted by the end of a page."""

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


@dataclass(frozen=True, slots=True)
class _Group:
    """Rows that stand on one page; ``again``: the heads of its columns, where it begins a page within its
    table."""

    rows: tuple[DraftRow, ...]
    again: tuple[DraftRow, ...] = ()

    @property
    def height(self) -> float:
        """mm that its rows take."""
        return sum(row.height for row in self.rows)


def draft_pages(info: PaperInfo, width: float, room: float) -> list[list[DraftRow]]:
    """The rows page by page, ``room`` mm each; no page where nothing is told."""
    pages: list[list[DraftRow]] = []
    left = 0.0
    told = (
        *_lines("Seams and stitches", info.stitches, width),
        *_sewing(info.sewing, width),
        *_rows(info.drafted_from, width),
    )
    for group in told:
        rows = group.rows
        if group.height > left:
            pages.append([])
            left = room
            rows = (*group.again, *rows)
        for row in rows:
            if row.height > left:  # more than a page of words in one group
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


def _headed(words: str, groups: Iterable[_Group]) -> Iterator[_Group]:
    """The groups, the first below its heading."""
    heading: tuple[DraftRow, ...] = (DraftRow((words,), is_heading=True),)
    for group in groups:
        yield replace(group, rows=(*heading, *group.again, *group.rows), again=()) if heading else group
        heading = ()


def _lines(heading: str, lines: Sequence[str], width: float) -> Iterator[_Group]:
    """The lines below their heading, one that is too long going on below."""
    return _headed(
        heading, (_Group(tuple(DraftRow((line,)) for line in wrapped(one, _TYPE, width))) for one in lines)
    )


def _sewing(lines: Sequence[str], width: float) -> Iterator[_Group]:
    """The sewing order, a line that is too long going on below its words."""
    return _headed("Sewing order", (_numbered(number, one, width) for number, one in enumerate(lines, 1)))


def _numbered(number: int, words: str, width: float) -> _Group:
    first, *more = wrapped(words, _TYPE, width * (1.0 - _REMARK))
    begun = DraftRow((f"{number}", first), (0.0, _REMARK), ("left", "left"))
    return _Group((begun, *(DraftRow((line,), (_REMARK,)) for line in more)))


def _rows(told: DraftedFrom, width: float) -> Iterator[_Group]:
    yield from _headed("Measures", _measures(told))
    yield from _lines("Drafted with", told.settings, width)
    yield from _headed("Body, ease, pattern, finished", (_ease(row, width) for row in told.eases))


def _measures(told: DraftedFrom) -> Iterator[_Group]:
    """Two measures beside each other, in two columns; at least two rows stay together."""
    half = (len(told.measures) + 1) // 2
    rows = []
    for index in range(half):
        other = told.measures[index + half] if index + half < len(told.measures) else ("", "")
        pair = (*told.measures[index], *other)
        rows.append(DraftRow(pair, _MEASURES, ("left", "left", "left", "left")))
    while rows:
        count = len(rows) if len(rows) <= _FEWEST_ROWS + 1 else _FEWEST_ROWS
        yield _Group(tuple(rows[:count]))
        rows = rows[count:]


def _ease(row: PaperEase, width: float) -> _Group:
    """A line of the table with what is said below it."""
    remarks = wrapped(row.remark, _TYPE, width * (1.0 - _REMARK)) if row.remark else ()
    rows = (_ease_row(row), *(DraftRow((line,), (_REMARK,)) for line in remarks))
    return _Group(rows, again=(_ease_row(_EASE_HEADS),))


def _ease_row(row: PaperEase) -> DraftRow:
    words = (row.name, row.body, row.ease, row.pattern, row.finished, row.usual)
    return DraftRow(words, _EASES, ("left", "right", "right", "right", "right", "right"))
