"""The strokes of a pattern on sheets, drawn by a general PDF library alone: no words, nothing laid out."""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import dataclass, field

from reportlab.pdfgen.canvas import Canvas

from notchbook.finish import CutPiece
from notchbook.geometry import Cubic, Path, Transform
from notchbook.output.draw_piece import draw_piece
from notchbook.output.label_on_tile import on_one_tile
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pdf_tiles import tiled_pdf
from notchbook.output.pen import MM_PER_POINT, LineStyle, Text

Numbers = tuple[float, ...]


@dataclass
class StrokeRecorder:
    """A pen that keeps strokes and leaves out all else."""

    strokes: list[tuple[Path, LineStyle]] = field(default_factory=list)

    def stroke(self, path: Path, style: LineStyle, name: str = "") -> None:  # noqa: ARG002 - PDF keeps no names
        """Keep the stroke."""
        self.strokes.append((path, style))

    def fill(self, path: Path, gray: float) -> None:
        """Left out: arrow heads."""

    def write(self, text: Text) -> None:
        """Left out: words."""

    def begin_group(self, name: str, motion: Transform) -> None:
        """Nothing: a piece is drawn in its own frame."""

    def end_group(self) -> None:
        """Nothing."""


@dataclass(frozen=True, slots=True)
class RecordedPattern:
    """The strokes of each piece as numbers, in mm, and where each sheet shows which piece.

    A stroke is the weight and dash of its line, its start, and the numbers of each segment: two of a line,
    six of a curve. A sheet lists the piece and the six numbers of its motion.
    """

    size: tuple[float, float]
    pieces: tuple[tuple[tuple[LineStyle, tuple[Numbers, ...]], ...], ...]
    sheets: tuple[tuple[tuple[int, Numbers], ...], ...]

    @property
    def strokes(self) -> int:
        """How many strokes all pieces have, each drawn once."""
        return sum(map(len, self.pieces))

    @staticmethod
    def of(pieces: Sequence[CutPiece], info: PaperInfo) -> RecordedPattern:
        """What the house draws of the pieces on its tiles."""
        _, tiling = tiled_pdf(pieces, info)
        placements = tiling.sheet.placements
        drawn = []
        for placement in placements:
            pen = StrokeRecorder()
            draw_piece(pen, on_one_tile(placement, tiling, info), info)
            drawn.append(tuple((style, _numbers(path)) for path, style in pen.strokes))
        sheets = []
        for tile in tiling.printed:
            onto = Transform.translation(-tile.frame.min_x, -tile.frame.min_y)
            shown = [
                (index, _motion(placement.motion.then(onto)))
                for index, placement in enumerate(placements)
                if placement.box.is_near(tile.frame)
            ]
            sheets.append(tuple(shown))
        paper = tiling.paper
        return RecordedPattern((paper.page_width, paper.page_height), tuple(drawn), tuple(sheets))


def _motion(motion: Transform) -> Numbers:
    return (motion.a, motion.b, motion.c, motion.d, motion.e, motion.f)


def _numbers(path: Path) -> tuple[Numbers, ...]:
    found: list[Numbers] = [(path.start.x, path.start.y)]
    for one in path.segments:
        points = (one.start_handle, one.end_handle, one.end) if isinstance(one, Cubic) else (one.end,)
        found.append(tuple(number for point in points for number in (point.x, point.y)))
    return tuple(found)


def plain_pdf(recorded: RecordedPattern) -> bytes:
    """The strokes written with reportlab, each piece kept once as a form and placed on its sheets."""
    stream = io.BytesIO()
    canvas = Canvas(stream, invariant=1, pageCompression=1)
    width, height = recorded.size
    for index, strokes in enumerate(recorded.pieces):
        canvas.beginForm(f"piece{index}", -5000, -5000, 5000, 5000)
        for style, numbers in strokes:
            _draw(canvas, style, numbers)
        canvas.endForm()
    for shown in recorded.sheets:
        canvas.setPageSize((width / MM_PER_POINT, height / MM_PER_POINT))
        canvas.scale(1.0 / MM_PER_POINT, 1.0 / MM_PER_POINT)
        for index, motion in shown:
            canvas.saveState()
            canvas.transform(*motion)
            canvas.doForm(f"piece{index}")
            canvas.restoreState()
        canvas.showPage()
    canvas.save()
    return stream.getvalue()


def _draw(canvas: Canvas, style: LineStyle, numbers: Sequence[Numbers]) -> None:
    canvas.setLineWidth(style.weight * MM_PER_POINT)
    canvas.setStrokeGray(style.gray)
    canvas.setDash(list(style.dash))
    drawn = canvas.beginPath()
    drawn.moveTo(*numbers[0])
    for row in numbers[1:]:
        (drawn.lineTo if len(row) == 2 else drawn.curveTo)(*row)
    canvas.drawPath(drawn, stroke=1, fill=0)
