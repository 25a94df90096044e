"""The cutter's must on paper: A4 or Letter, as many pages as it needs."""

from collections.abc import Sequence
from pathlib import Path as FilePath
from typing import Literal

from notchbook.errors import InputError, OutputError
from notchbook.finish import CutPiece
from notchbook.geometry import Box, Point
from notchbook.output.card import CutterCard, card_of
from notchbook.output.card_check import compare_card
from notchbook.output.card_draft import draft_pages, draw_draft_page
from notchbook.output.card_page import (
    BAND,
    FOOT,
    HEAD,
    LATER_HEAD,
    PICTURE,
    SKETCH,
    Block,
    CardPlan,
    draw_block,
    draw_foot,
    draw_head,
    draw_later_head,
    draw_tail,
    tail_height,
)
from notchbook.output.files import write_file
from notchbook.output.flat import FlatView, draw_flat
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pdf_pen import PdfPaper
from notchbook.output.pen import Pen
from notchbook.output.small_piece import upright

CardPaper = Literal["a4", "letter"]

_PAGES: dict[CardPaper, tuple[float, float]] = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
_MARGIN = 14.0


def write_card_pdf(
    pieces: Sequence[CutPiece],
    info: PaperInfo,
    path: FilePath | str,
    paper: CardPaper = "a4",
    flat: Sequence[FlatView] = (),
) -> CutterCard:
    """Write the cutter's must and return what it says; ``flat`` is the sketch below its head.

    OutputError as :func:`~notchbook.output.files.write_file`, ``output-no-pieces``, and
    ``card-disagrees`` should the card not agree with the pieces; InputError ``paper-unknown``.
    """
    data, card = card_pdf(pieces, info, paper, flat)
    write_file(path, data)
    return card


def card_pdf(
    pieces: Sequence[CutPiece],
    info: PaperInfo,
    paper: CardPaper = "a4",
    flat: Sequence[FlatView] = (),
) -> tuple[bytes, CutterCard]:
    """The cutter's must as PDF bytes, and what it says."""
    if paper not in _PAGES:
        raise InputError("paper-unknown", given=paper, known=tuple(_PAGES))
    if not pieces:
        raise OutputError("output-no-pieces", style=info.heading)
    card = card_of(pieces, info)
    disagreements = compare_card(card, pieces)
    if disagreements:
        raise OutputError("card-disagrees", first=disagreements[0].message, count=len(disagreements))
    page_width, page_height = _PAGES[paper]
    trim = Box(_MARGIN, _MARGIN, page_width - _MARGIN, page_height - _MARGIN)
    plan = _planned(pieces, card, info, trim, SKETCH if flat else 0.0)
    by_name = {piece.name: piece for piece in pieces}
    made = PdfPaper(info, "Cutter's must")
    pages = _paged(card, plan, tail_height(info, plan))
    drafted = draft_pages(info, plan.width, plan.height - LATER_HEAD - FOOT)
    count = len(pages) + len(drafted)
    for index, blocks in enumerate(pages):
        with made.page(page_width, page_height, trim) as pen:
            place = draw_later_head(pen, info, plan) if index else draw_head(pen, card, info, plan)
            if flat and index == 0:
                place = _draw_sketch(pen, flat, place, plan)
            for block in blocks:
                place = draw_block(pen, block, place, plan, by_name)
            if index == len(pages) - 1:
                draw_tail(pen, info, place, plan)
            draw_foot(pen, card, (index + 1, count), plan)
    for index, rows in enumerate(drafted, start=len(pages)):
        with made.page(page_width, page_height, trim) as pen:
            draw_draft_page(pen, rows, draw_later_head(pen, info, plan), plan.width)
            draw_foot(pen, card, (index + 1, count), plan)
    return made.data(), card


def _draw_sketch(pen: Pen, flat: Sequence[FlatView], top: float, plan: CardPlan) -> float:
    """Front and back below the head; returns the y below them."""
    low = top - SKETCH
    draw_flat(pen, flat, Point(0.0, low + 4.0), Point(plan.width, top - 2.0))
    return low


def _planned(
    pieces: Sequence[CutPiece], card: CutterCard, info: PaperInfo, trim: Box, sketch: float
) -> CardPlan:
    """Rows as high as the page allows, within reason, so that a small card stays on one page."""
    rows = sum(len(group.rows) for group in card.groups)
    plan = CardPlan(trim.width, trim.height, 18.0, 1.0, sketch)
    room = trim.height - HEAD - sketch - tail_height(info, plan) - FOOT - BAND * len(card.groups)
    row = min(30.0, max(17.0, room / max(rows, 1)))
    boxes = [upright(piece).box for piece in pieces]
    scale = min(min(PICTURE / box.width for box in boxes), min((row - 5.0) / box.height for box in boxes))
    return CardPlan(trim.width, trim.height, row, scale, sketch)


def _paged(card: CutterCard, plan: CardPlan, tail: float) -> list[list[Block]]:
    """The bands and rows page by page; a band never stands alone at the foot of a page."""
    pages: list[list[Block]] = [[]]
    room = plan.height - HEAD - plan.sketch - FOOT
    for group in card.groups:
        if room < BAND + plan.row:
            pages.append([])
            room = plan.height - LATER_HEAD - FOOT
        pages[-1].append(Block(group))
        room -= BAND
        for row in group.rows:
            if room < plan.row:
                pages.append([Block(group, goes_on=True)])
                room = plan.height - LATER_HEAD - FOOT - BAND
            pages[-1].append(Block(group, row))
            room -= plan.row
    if room < tail:
        pages.append([])
    return pages
