"""The measure sheet on paper: the figure with numbered tapes, and for each measure a line to write on."""

from collections.abc import Collection, Sequence
from pathlib import Path as FilePath
from typing import Literal, get_args

from notchbook.body import MeasureSet, PopulationName
from notchbook.body.figure import body_views
from notchbook.errors import InputError
from notchbook.geometry import Box
from notchbook.output.files import write_file
from notchbook.output.measure_sheet_page import (
    FOOT,
    GAP,
    HEAD,
    LATER_HEAD,
    LINE,
    SheetField,
    SheetHead,
    draw_figures,
    draw_foot,
    draw_head,
    draw_later_head,
    draw_row,
)
from notchbook.output.measure_sheet_rows import SheetRow, sheet_rows
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pdf_pen import PdfPaper, PdfPen
from notchbook.units import LengthStyle

SheetPaper = Literal["a4", "letter"]

_PAGES: dict[SheetPaper, tuple[float, float]] = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
_MARGIN = 12.0
_LEAST_FIGURE = 120.0
"""mm of height below which the numbers of the tapes would crowd on the figures. Set by eye."""

_LEVELS = {"natural": "", "lower": "lower by", "navel": "navel"}
"""The natural waist is left blank: a set has it too when nobody said where the tape was tied."""


def write_measure_sheet(
    path: FilePath | str,
    measures: MeasureSet | None = None,
    population: PopulationName = "women",
    paper: SheetPaper = "a4",
    lengths: LengthStyle | None = None,
    keys: Collection[str] | None = None,
) -> None:
    """Write the sheet; as :func:`measure_sheet_pdf`, and OutputError as ``write_file``."""
    write_file(path, measure_sheet_pdf(measures, population, paper, lengths, keys))


def measure_sheet_pdf(
    measures: MeasureSet | None = None,
    population: PopulationName = "women",
    paper: SheetPaper = "a4",
    lengths: LengthStyle | None = None,
    keys: Collection[str] | None = None,
) -> bytes:
    """The sheet as PDF bytes: blank, or with the values of a set as they were taken.

    ``population`` chooses the figure and the words. Values stand as they were read; estimates are marked.
    With ``keys`` it is a short sheet: these measures and their tapes alone, on one page where they fit.
    InputError ``paper-unknown``, ``figure-unknown``.
    """
    if paper not in get_args(SheetPaper):
        raise InputError("paper-unknown", given=paper, known=get_args(SheetPaper))
    style = lengths or LengthStyle()
    views = body_views(population)
    head = _head(measures, style)
    page_width, page_height = _PAGES[paper]
    trim = Box(_MARGIN, _MARGIN, page_width - _MARGIN, page_height - _MARGIN)
    rows = sheet_rows(measures, style, population, keys)
    pages = _paged(rows, trim.height)
    tapes = {row.key for row in rows}
    made = PdfPaper(PaperInfo("", f"Measure sheet {head.name}".strip()), "Measure sheet")
    for index, columns in enumerate(pages):
        with made.page(page_width, page_height, trim) as pen:
            if index == 0:
                draw_head(pen, head, trim.width, trim.height)
                low = FOOT + _tallest(columns) + 2.0
                draw_figures(pen, views, trim.width, low, trim.height - HEAD - low, tapes)
                _draw_columns(pen, columns, FOOT + _tallest(columns), trim.width)
            else:
                draw_later_head(pen, head, trim.width, trim.height)
                _draw_columns(pen, columns, trim.height - LATER_HEAD, trim.width)
            draw_foot(pen, (index + 1, len(pages)), trim.width)
    return made.data()


Columns = tuple[Sequence[SheetRow], Sequence[SheetRow]]


def _paged(rows: Sequence[SheetRow], height: float) -> list[Columns]:
    """One page where the figures above leave room; else the last page as full as it can be and the rest
    under the figures of the first."""
    half = (sum(len(row.boxes) for row in rows) + 1) // 2
    second, first = _taken_from_end(rows, half)
    if _tallest((first, second)) <= height - HEAD - FOOT - _LEAST_FIGURE:
        return [(first, second)]
    most = int((height - LATER_HEAD - FOOT) / LINE)
    right, rest = _taken_from_end(rows, most)
    left, rest = _taken_from_end(rest, most)
    half = (sum(len(row.boxes) for row in rest) + 1) // 2
    second, first = _taken_from_end(rest, half)
    return [(first, second), (left, right)]


def _taken_from_end(rows: Sequence[SheetRow], lines: int) -> tuple[Sequence[SheetRow], Sequence[SheetRow]]:
    """As many of the last rows as have ``lines`` lines of boxes at most, and the rows before them."""
    start = len(rows)
    used = 0
    while start > 0 and used + len(rows[start - 1].boxes) <= lines:
        start -= 1
        used += len(rows[start].boxes)
    return rows[start:], rows[:start]


def _tallest(columns: Columns) -> float:
    return LINE * max(sum(len(row.boxes) for row in column) for column in columns)


def _draw_columns(pen: PdfPen, columns: Columns, top: float, width: float) -> None:
    column_width = (width - GAP) / 2.0
    for place, rows in enumerate(columns):
        below = top
        for row in rows:
            draw_row(pen, row, place * (column_width + GAP), below, column_width)
            below -= LINE * len(row.boxes)


def _head(measures: MeasureSet | None, style: LengthStyle) -> SheetHead:
    if measures is None:
        date = by = garment = heel = level = name = ""
    else:
        taken = measures.circumstances
        date, by, garment = taken.taken_on, taken.taken_by, taken.undergarment
        heel = style.text(taken.heel) if taken.heel else ""
        level = _LEVELS[measures.waist_level]
        if measures.waist_drop:
            level = f"{level} {style.text(measures.waist_drop)}"
        name = measures.name
    return SheetHead(
        name,
        (
            (
                SheetField("date", date, 0.3),
                SheetField("measured by", by, 0.5),
                SheetField("unit", style.unit, 0.2),
            ),
            (
                SheetField("undergarment", garment, 0.34),
                SheetField("heel", heel, 0.22),
                SheetField("waist: natural, lower by, navel?", level, 0.44),
            ),
        ),
        style.unit,
    )
