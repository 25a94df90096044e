"""All pieces of a style at full size on one big sheet, for a wide printer."""

from collections.abc import Sequence
from pathlib import Path as FilePath

from notchbook.errors import OutputError
from notchbook.finish import CutPiece
from notchbook.geometry import Box, Path, Point, Transform
from notchbook.output import line_styles as style
from notchbook.output.draw_piece import draw_piece
from notchbook.output.draw_squares import SQUARE_CM, SQUARE_INCH, draw_square
from notchbook.output.files import write_file
from notchbook.output.label_tag import with_tags
from notchbook.output.layout import Sheet, lay_out
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pdf_pen import PdfPaper
from notchbook.output.pen import Pen, Text
from notchbook.output.tiling import OVERLAP, tile_count
from notchbook.output.typeset import shortened

LONGEST_PAGE = 5000.0
"""mm. Pages above 200 in (5080 mm) are beyond PDF's limit (ISO 32000-1, annex C), and few readers heed the
way round it, so a longer sheet becomes several pages."""

EDGE = 10.0
"""mm of free paper round the sheet, which wide printers need."""

HEAD = SQUARE_INCH + 14.0
"""mm above the pieces: what it is, and the squares to measure."""


def write_sheet_pdf(
    pieces: Sequence[CutPiece], info: PaperInfo, path: FilePath | str, width: float | None = None
) -> Sheet:
    """Write the sheet and return how the pieces lie on it; ``width`` (mm) is that of the roll.

    OutputError as :func:`~notchbook.output.files.write_file`, and ``output-no-pieces``,
    ``output-too-wide`` when a piece is wider than the roll.
    """
    data, sheet = sheet_pdf(pieces, info, width)
    write_file(path, data)
    return sheet


def sheet_pdf(pieces: Sequence[CutPiece], info: PaperInfo, width: float | None = None) -> tuple[bytes, Sheet]:
    """The sheet as PDF bytes, and how the pieces lie on it."""
    if not pieces:
        raise OutputError("output-no-pieces", style=info.heading)
    pieces = with_tags(pieces, info)
    sheet = lay_out(pieces, width=None if width is None else width - 2.0 * EDGE)
    page_width = max(sheet.width, 2.0 * SQUARE_INCH + 20.0) + 2.0 * EDGE
    limit = LONGEST_PAGE if width is None else min(width, LONGEST_PAGE)
    if page_width > limit:
        raise OutputError("output-too-wide", wanted=page_width, width=limit)
    made = PdfPaper(info, "Pattern on one sheet, to be printed at 100 %")
    for index, placement in enumerate(sheet.placements):
        with made.form(f"piece{index + 1}", placement.piece.drawn_bounds()) as pen:
            draw_piece(pen, placement.piece, info)
    for top, height in _stretches(sheet.height + HEAD):
        _draw_page(made, sheet, info, (page_width, top, height))
    return made.data(), sheet


def _stretches(total: float) -> list[tuple[float, float]]:
    """The top (mm from the top of the whole) and the height of each page, one overlapping the next."""
    most = LONGEST_PAGE - 2.0 * EDGE
    count = tile_count(total, most)
    step = most - OVERLAP
    return [(index * step, min(most, total - index * step)) for index in range(count)]


def _draw_page(made: PdfPaper, sheet: Sheet, info: PaperInfo, place: tuple[float, float, float]) -> None:
    page_width, top, height = place
    trim = Box(EDGE, EDGE, page_width - EDGE, EDGE + height)
    lift = Transform.translation(0.0, height - (sheet.height + HEAD) + top)
    with made.page(page_width, height + 2.0 * EDGE, trim) as pen:
        if top == 0.0:
            _draw_head(pen, info, trim.width, height)
        else:
            line = Path.line(Point(0.0, height - OVERLAP), Point(trim.width, height - OVERLAP))
            pen.stroke(line, style.OVERLAP)
        with made.clipped(Box(0.0, 0.0, trim.width, height)):
            for index, placement in enumerate(sheet.placements):
                pen.place_form(f"piece{index + 1}", placement.motion.then(lift))


def _draw_head(pen: Pen, info: PaperInfo, width: float, height: float) -> None:
    right = width - SQUARE_INCH - 0.5
    draw_square(pen, Point(right, height - SQUARE_INCH - 0.5), SQUARE_INCH, "4 in")
    draw_square(pen, Point(right - SQUARE_CM - 6.0, height - SQUARE_CM - 0.5), SQUARE_CM, "10 cm")
    room = right - SQUARE_CM - 12.0
    lines = (
        (info.heading, 24.0, True),
        (info.issue, 13.0, False),
        ("; ".join(info.material(key) for key in info.materials), 11.0, False),
        ("Print at 100 %.", 13.0, True),
        (info.estimate_note, 11.0, False),
    )
    place = Point(0.0, height)
    for words, size, bold in lines:
        if words and room > 20.0:
            place = place - Point(0.0, size * 0.48)
            pen.write(Text(shortened(words, size, room, bold), place, size, bold))
