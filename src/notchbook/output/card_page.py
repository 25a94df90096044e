"""Drawing one page of the cutter's must."""

from dataclasses import dataclass

from notchbook.finish import CutPiece
from notchbook.geometry import Path, Point
from notchbook.output import line_styles as style
from notchbook.output.card import CAUTIONS, CardGroup, CardRow, CutterCard
from notchbook.output.label_lines import kept_together
from notchbook.output.paper_info import PaperInfo, PaperTrim
from notchbook.output.pen import MM_PER_POINT, Pen, Text, rectangle
from notchbook.output.small_piece import draw_small
from notchbook.output.typeset import fitting_size, shortened, text_width, wrapped
from notchbook.units import counted

HEAD = 42.0
LATER_HEAD = 14.0
BAND = 8.0
FOOT = 8.0
"""Heights of the head of the first and of later pages, of a material's band, and of the foot; mm."""

SKETCH = 52.0
"""Height of the sketch of the garment, mm."""

PICTURE = 30.0
"""Width of the column of piece drawings, mm."""

_COLUMNS = (2.0, 12.0, 46.0, 96.0, 134.0)
"""Left edges of number, drawing, name, quantity, remark; mm."""

_APART = 5.0
"""mm between the words of one column and the next: nearer, two bold columns read as one."""


@dataclass(frozen=True, slots=True)
class CardPlan:
    """The sizes of one card, mm: type area, row height, the scale of the piece drawings, height of the
    sketch below the head."""

    width: float
    height: float
    row: float
    scale: float
    sketch: float = 0.0


@dataclass(frozen=True, slots=True)
class Block:
    """A material's band (``row`` None; ``goes_on`` from the page before) or one of its rows."""

    group: CardGroup
    row: CardRow | None = None
    goes_on: bool = False


def draw_later_head(pen: Pen, info: PaperInfo, plan: CardPlan) -> float:
    """The one line above later pages; returns the y below it."""
    top, width = plan.height, plan.width
    words = shortened(f"{info.heading} · {info.issue}", 11.0, width, True)
    pen.write(Text(words, Point(0.0, top - 6.0), 11.0, True))
    pen.stroke(Path.line(Point(0.0, top - 10.0), Point(width, top - 10.0)), style.RULE)
    return top - LATER_HEAD


def draw_head(pen: Pen, card: CutterCard, info: PaperInfo, plan: CardPlan) -> float:
    """Style, revision, date and the few facts; returns the y below it."""
    top, width = plan.height, plan.width
    revision = info.revision
    revision_width = text_width(revision, 26.0, True)
    room = width - revision_width - 14.0
    size = fitting_size(info.heading, 24.0, 13.0, room, True)
    pen.write(Text(shortened(info.heading, size, room, True), Point(0.0, top - 9.0), size, True))
    if revision:
        pen.write(Text("rev.", Point(width - revision_width - 2.0, top - 9.0), 11.0, align="right"))
        pen.write(Text(revision, Point(width, top - 9.0), 26.0, True, align="right"))
    said = " · ".join(
        part for part in ("cutter’s must", info.estimate_sign, info.size_words, info.maker) if part
    )
    pen.write(Text(shortened(said, 11.0, width - 45.0), Point(0.0, top - 16.5), 11.0))
    pen.write(Text(info.date, Point(width, top - 16.5), 11.0, align="right"))
    pen.stroke(Path.line(Point(0.0, top - 21.0), Point(width, top - 21.0)), style.RULE)
    column = width / len(card.facts)
    for index, (name, value) in enumerate(card.facts):
        x = index * column
        pen.write(Text(name, Point(x, top - 27.0), 8.5, gray=0.35))
        for line, words in enumerate(wrapped(value, 11.0, column - _APART, True)[:2]):
            pen.write(Text(words, Point(x, top - 32.5 - 4.6 * line), 11.0, True))
    return top - HEAD


def draw_block(pen: Pen, block: Block, top: float, plan: CardPlan, by_name: dict[str, CutPiece]) -> float:
    """A band or a row below ``top``; returns the y below it."""
    if block.row is None:
        _draw_band(pen, block, top, plan)
        return top - BAND
    _draw_row(pen, block.row, by_name[block.row.piece], top, plan)
    return top - plan.row


def _draw_band(pen: Pen, block: Block, top: float, plan: CardPlan) -> None:
    group = block.group
    low = top - BAND
    pen.fill(rectangle(Point(0.0, low), Point(plan.width, top)), 0.93)
    pen.stroke(Path.line(Point(0.0, low), Point(plan.width, low)), style.SQUARE)
    count = f"{counted(len(group.rows), 'piece')}, {counted(group.panels, 'panel')}"
    count_width = text_width(count, 11.0)
    heading = f"{group.heading}, continued" if block.goes_on else group.heading
    room = plan.width - count_width - 10.0
    pen.write(Text(shortened(heading, 12.0, room, True), Point(2.0, low + 2.6), 12.0, True))
    pen.write(Text(count, Point(plan.width - 2.0, low + 2.6), 11.0, align="right"))


def _draw_row(pen: Pen, row: CardRow, piece: CutPiece, top: float, plan: CardPlan) -> None:
    number, picture, name, quantity, remark = _COLUMNS
    middle = top - plan.row / 2.0
    base = middle - 1.9
    pen.write(Text(str(row.number), Point(number, base), 16.0, True))
    draw_small(pen, piece, Point(picture + PICTURE / 2.0, middle), plan.scale)
    _column(pen, row.title, (name, quantity - _APART), middle, 15.0, bold=True, most=2)
    _column(pen, kept_together(row.quantity), (quantity, remark - _APART), middle, 13.0, bold=True, most=2)
    _column(pen, row.remark, (remark, plan.width), middle, 9.0, bold=False, most=4)
    low = top - plan.row
    pen.stroke(Path.line(Point(0.0, low), Point(plan.width, low)), style.HAIR)


def _column(
    pen: Pen, words: str, span: tuple[float, float], middle: float, size: float, *, bold: bool, most: int
) -> None:
    """Words wrapped between two x, centered on a height; too many lines are cut with an ellipsis."""
    if not words:
        return
    width = span[1] - span[0]
    lines = list(wrapped(words, size, width, bold))
    if len(lines) > most:
        lines = [*lines[: most - 1], shortened(" ".join(lines[most - 1 :]), size, width, bold)]
    step = size * MM_PER_POINT * 1.2
    base = middle + step * (len(lines) - 1) / 2.0 - size * MM_PER_POINT * 0.33
    for index, line in enumerate(lines):
        pen.write(Text(line, Point(span[0], base - step * index), size, bold))


def _tail_lines(info: PaperInfo, plan: CardPlan) -> list[tuple[str, tuple[str, ...]]]:
    blocks = [("Notes", info.all_notes), ("Take care", CAUTIONS)]
    widths = _tail_widths(info, plan)
    return [
        (name, tuple(line for words in said for line in wrapped(words, 9.0, max(width - 4.0, 30.0))))
        for (name, said), width in zip(blocks, widths, strict=True)
    ]


def _tail_widths(info: PaperInfo, plan: CardPlan) -> tuple[float, float]:
    notes = plan.width * 0.4 if info.all_notes else 0.0
    return notes, plan.width - notes


def tail_height(info: PaperInfo, plan: CardPlan) -> float:
    """The height of trims, notes and cautions, mm."""
    return _trims_height(info, plan) + 12.0 + 4.2 * max(len(lines) for _, lines in _tail_lines(info, plan))


def draw_tail(pen: Pen, info: PaperInfo, top: float, plan: CardPlan) -> None:
    """Trims, notes and cautions below ``top``."""
    _draw_trims(pen, info, top, plan)
    top -= _trims_height(info, plan)
    x = 0.0
    for (name, lines), width in zip(_tail_lines(info, plan), _tail_widths(info, plan), strict=True):
        if width and lines:
            pen.write(Text(name, Point(x, top - 7.0), 10.0, True))
            end = plan.width if x + width >= plan.width else x + width - 4.0
            pen.stroke(Path.line(Point(x, top - 8.6), Point(end, top - 8.6)), style.SQUARE)
            for index, line in enumerate(lines):
                pen.write(Text(line, Point(x, top - 13.0 - 4.2 * index), 9.0))
        x += width


_TRIM = 6.0
"""Height of the line of one trim, mm."""


_TRIM_LINE = 4.2
"""Height of each further line that the rest of it takes."""


def _trims_height(info: PaperInfo, plan: CardPlan) -> float:
    heights = (_trim_height(trim, plan) for trim in info.trims)
    return BAND + sum(heights) + 2.0 if info.trims else 0.0


def _trim_height(trim: PaperTrim, plan: CardPlan) -> float:
    return _TRIM + _TRIM_LINE * max(len(_told(trim, plan)[1]) - 1, 0)


def _told(trim: PaperTrim, plan: CardPlan) -> tuple[str, tuple[str, ...], float]:
    """What and how much, the lines of the rest of it, and where these begin, mm from the left."""
    cut = shortened(trim.cut, 11.0, plan.width * 0.6, True)
    x = max(2.0 + text_width(cut, 11.0, True) + 4.0, _COLUMNS[3])
    return cut, wrapped(trim.remark, 9.0, plan.width - x), x


def _draw_trims(pen: Pen, info: PaperInfo, top: float, plan: CardPlan) -> None:
    """Each trim below a band of their own: what and how much in bold, then the rest of it."""
    if not info.trims:
        return
    low = top - BAND
    pen.fill(rectangle(Point(0.0, low), Point(plan.width, top)), 0.93)
    pen.stroke(Path.line(Point(0.0, low), Point(plan.width, low)), style.SQUARE)
    pen.write(Text("trims", Point(2.0, low + 2.6), 12.0, True))
    top = low
    for trim in info.trims:
        base = top - _TRIM + 1.4
        cut, lines, x = _told(trim, plan)
        pen.write(Text(cut, Point(2.0, base), 11.0, True))
        for index, line in enumerate(lines):
            pen.write(Text(line, Point(x, base - _TRIM_LINE * index), 9.0))
        top -= _trim_height(trim, plan)


def draw_foot(pen: Pen, card: CutterCard, page: tuple[int, int], plan: CardPlan) -> None:
    """That the card agrees with the pieces, the signature, and the page (number, of how many)."""
    pen.stroke(Path.line(Point(0.0, 5.5), Point(plan.width, 5.5)), style.SQUARE)
    count = card.piece_count
    agreed = f"agrees with the pieces: {count} of {count}, {counted(card.panels, 'panel')} to cut"
    pen.write(Text(agreed, Point(0.0, 1.0), 9.0))
    pen.write(Text("patternmaker ______________", Point(plan.width - 24.0, 1.0), 9.0, align="right"))
    if page[1] > 1:
        pen.write(Text(f"page {page[0]} of {page[1]}", Point(plan.width, 1.0), 9.0, align="right"))
