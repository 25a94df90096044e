"""The tiled PDF: full-size pieces on A4 or Letter, to be taped together."""

from collections.abc import Sequence
from pathlib import Path as FilePath

from notchbook.errors import InputError, OutputError
from notchbook.finish import CutPiece
from notchbook.geometry import Box, Transform
from notchbook.output.draw_piece import draw_piece
from notchbook.output.draw_tile import draw_tile_frame, draw_tile_ground
from notchbook.output.files import write_file
from notchbook.output.first_sheet import draw_first_sheet
from notchbook.output.label_on_tile import on_one_tile
from notchbook.output.label_tag import with_tags
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pdf_pen import PdfPaper
from notchbook.output.tiling import FORMATS, Paper, Tile, Tiling, best_tiling

MOST_TILES = 400
"""More sheets than anyone tapes; a sheet so large is a slip in a measure (common sense, no source)."""


def write_tiled_pdf(
    pieces: Sequence[CutPiece], info: PaperInfo, path: FilePath | str, paper: Paper = "both"
) -> Tiling:
    """Write the tiled PDF and return how it was tiled. ``both`` prints on A4 and on Letter.

    Full size: nothing is scaled. OutputError as :func:`~notchbook.output.files.write_file`, and
    ``output-no-pieces``, ``output-too-many-tiles``; InputError ``paper-unknown``.
    """
    data, tiling = tiled_pdf(pieces, info, paper)
    write_file(path, data)
    return tiling


def tiled_pdf(pieces: Sequence[CutPiece], info: PaperInfo, paper: Paper = "both") -> tuple[bytes, Tiling]:
    """The tiled PDF as bytes, and how it was tiled. The same pieces give the same bytes."""
    if paper not in FORMATS:
        raise InputError("paper-unknown", given=paper, known=tuple(FORMATS))
    if not pieces:
        raise OutputError("output-no-pieces", style=info.heading)
    pieces = with_tags(pieces, info)
    tiling = best_tiling(pieces, FORMATS[paper])
    if len(tiling.tiles) > MOST_TILES:
        raise OutputError("output-too-many-tiles", count=len(tiling.tiles), most=MOST_TILES)
    made = PdfPaper(info, f"Pattern on {tiling.paper.name}, to be printed at 100 % and taped together")
    for index, placement in enumerate(tiling.sheet.placements):
        with made.form(_form_name(index), placement.piece.drawn_bounds()) as pen:
            draw_piece(pen, on_one_tile(placement, tiling, info), info)
    with made.page(tiling.paper.page_width, tiling.paper.page_height, _frame_on_page(tiling)) as pen:
        draw_first_sheet(pen, pieces, info, tiling)
    for tile in tiling.printed:
        _draw_tile(made, tile, tiling, info)
    return made.data(), tiling


def _draw_tile(made: PdfPaper, tile: Tile, tiling: Tiling, info: PaperInfo) -> None:
    paper = tiling.paper
    frame = Box(0.0, 0.0, paper.frame_width, paper.frame_height)
    onto = Transform.translation(-tile.frame.min_x, -tile.frame.min_y)
    with made.page(paper.page_width, paper.page_height, _frame_on_page(tiling)) as pen:
        draw_tile_ground(pen, tile, tiling)
        with made.clipped(frame):
            for index, placement in enumerate(tiling.sheet.placements):
                if placement.box.is_near(tile.frame):
                    pen.place_form(_form_name(index), placement.motion.then(onto))
        draw_tile_frame(pen, tile, tiling, info)


def _frame_on_page(tiling: Tiling) -> Box:
    side, below = tiling.paper.margins
    return Box(side, below, side + tiling.paper.frame_width, below + tiling.paper.frame_height)


def _form_name(index: int) -> str:
    return f"piece{index + 1}"
