"""The pieces as SVG, in mm, every line an exact line or cubic."""

from collections.abc import Sequence
from pathlib import Path as FilePath

from notchbook.errors import OutputError
from notchbook.finish import CutPiece
from notchbook.output.draw_piece import draw_piece
from notchbook.output.files import write_file
from notchbook.output.label_tag import with_tags
from notchbook.output.layout import lay_out
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pen import group
from notchbook.output.svg_pen import SvgPen


def write_svg(pieces: Sequence[CutPiece], info: PaperInfo, path: FilePath | str) -> FilePath:
    """Write the pieces as one SVG file. OutputError as for files, and ``output-no-pieces``."""
    return write_file(path, svg_of(pieces, info).encode("utf-8"))


def svg_of(pieces: Sequence[CutPiece], info: PaperInfo) -> str:
    """The pieces on one sheet as SVG text.

    Each piece is a group whose id is the piece's name; in it each sew line has the name of its edge as
    id, and the cut line that of the piece with ``/cut_line``.
    """
    if not pieces:
        raise OutputError("output-no-pieces", style=info.heading)
    sheet = lay_out(with_tags(pieces, info))
    pen = SvgPen(sheet.height)
    for placement in sheet.placements:
        with group(pen, placement.piece.name, placement.motion):
            draw_piece(pen, placement.piece, info)
    return pen.document(sheet.width, info.heading, info.issue)
