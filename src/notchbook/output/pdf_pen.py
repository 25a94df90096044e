"""The pen on PDF pages."""

import io
from collections.abc import Iterator
from contextlib import contextmanager
from math import ceil, floor

from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from notchbook.geometry import Box, Line, Path, Transform
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pen import MM_PER_POINT, LineStyle, Text
from notchbook.output.typeset import CAP_HEIGHT, typeset

POINTS_PER_MM = 1.0 / MM_PER_POINT
_HALO = 0.25
"""Cleared round words, as a share of the type size."""


class PdfPen:
    """Draws in mm on the page of a canvas whose units are mm (see :class:`PdfPaper`)."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas

    def stroke(self, path: Path, style: LineStyle, name: str = "") -> None:  # noqa: ARG002 - PDF keeps no names
        """Draw along a path; PDF keeps no names of lines."""
        canvas = self._canvas
        canvas.setLineWidth(style.weight * MM_PER_POINT)
        canvas.setStrokeGray(style.gray)
        canvas.setDash(list(style.dash))
        canvas.drawPath(self._path(path), stroke=1, fill=0)

    def fill(self, path: Path, gray: float) -> None:
        """Fill a closed path."""
        self._canvas.setFillGray(gray)
        self._canvas.drawPath(self._path(path), stroke=0, fill=1)

    def write(self, text: Text) -> None:
        """Write words, font by font."""
        canvas = self._canvas
        line = typeset(text.words, text.bold)
        size = text.size * MM_PER_POINT
        shift = {"left": 0.0, "center": -0.5, "right": -1.0}[text.align] * line.width * size
        canvas.saveState()
        canvas.translate(text.position.x, text.position.y)
        if text.degrees:
            canvas.rotate(text.degrees)
        if text.halo:
            margin = _HALO * size
            canvas.setFillGray(1.0)
            canvas.rect(
                shift - margin,
                -margin,
                line.width * size + 2.0 * margin,
                CAP_HEIGHT * size + 2.0 * margin,
                stroke=0,
                fill=1,
            )
        canvas.setFillGray(text.gray)
        for run in line.runs:
            canvas.setFont(run.font.name, run.scale * size)
            canvas.drawString(shift + run.x * size, run.rise * size, run.words)
        canvas.restoreState()

    def begin_group(self, name: str, motion: Transform) -> None:  # noqa: ARG002 - PDF keeps no names
        """Move what follows."""
        self._canvas.saveState()
        if motion != Transform.identity():
            self._canvas.transform(motion.a, motion.b, motion.c, motion.d, motion.e, motion.f)

    def end_group(self) -> None:
        """Back to the frame before."""
        self._canvas.restoreState()

    def place_form(self, name: str, motion: Transform) -> None:
        """Draw a form that was kept by :meth:`PdfPaper.form`."""
        self.begin_group(name, motion)
        self._canvas.doForm(name)
        self.end_group()

    def _path(self, path: Path) -> PDFPathObject:
        drawn = self._canvas.beginPath()
        drawn.moveTo(path.start.x, path.start.y)
        for segment in path.segments:
            if isinstance(segment, Line):
                drawn.lineTo(segment.end.x, segment.end.y)
            else:
                first, second, end = segment.start_handle, segment.end_handle, segment.end
                drawn.curveTo(first.x, first.y, second.x, second.y, end.x, end.y)
        if path.is_closed:
            drawn.close()
        return drawn


class PdfPaper:
    """A PDF in the making: pages in mm, printed at full size by readers that heed the wish.

    The same pages give the same bytes. No scaling and one-sided printing are asked for (ISO 32000-1,
    viewer preferences ``PrintScaling`` and ``Duplex``).
    """

    def __init__(self, info: PaperInfo, subject: str) -> None:
        self._stream = io.BytesIO()
        self._canvas = Canvas(self._stream, invariant=1, pageCompression=1, pdfVersion=(1, 7))
        self._canvas.setTitle(info.heading)
        self._canvas.setAuthor(info.maker or "Notchbook")
        self._canvas.setSubject(subject)
        self._canvas.setCreator("Notchbook")
        self._canvas.setProducer("Notchbook")
        self._canvas.setKeywords(f"revision {info.revision}" if info.revision else "")
        self._canvas.setViewerPreference("PrintScaling", "None")
        self._canvas.setViewerPreference("Duplex", "Simplex")

    @contextmanager
    def page(self, width: float, height: float, trim: Box) -> Iterator[PdfPen]:
        """A page of this size in mm; the pen's origin is the lower left corner of ``trim``.

        ``trim`` is what is meant to remain when the page is trimmed (TrimBox).
        """
        canvas = self._canvas
        canvas.setPageSize((width * POINTS_PER_MM, height * POINTS_PER_MM))
        canvas.setCropBox((0, 0, width * POINTS_PER_MM, height * POINTS_PER_MM))
        edges = (trim.min_x, trim.min_y, trim.max_x, trim.max_y)
        canvas.setTrimBox(tuple(edge * POINTS_PER_MM for edge in edges))
        canvas.scale(POINTS_PER_MM, POINTS_PER_MM)
        canvas.translate(trim.min_x, trim.min_y)
        canvas.setLineCap(0)
        canvas.setLineJoin(0)
        yield PdfPen(canvas)
        canvas.showPage()

    @contextmanager
    def form(self, name: str, box: Box) -> Iterator[PdfPen]:
        """A drawing kept once under a name and placed on pages as often as wanted; ``box`` holds it."""
        margin = 2.0
        self._canvas.beginForm(
            name,
            floor(box.min_x - margin),
            floor(box.min_y - margin),
            ceil(box.max_x + margin),
            ceil(box.max_y + margin),
        )
        yield PdfPen(self._canvas)
        self._canvas.endForm()

    @contextmanager
    def clipped(self, box: Box) -> Iterator[None]:
        """What is drawn inside is cut off at the box."""
        canvas = self._canvas
        canvas.saveState()
        frame = canvas.beginPath()
        frame.rect(box.min_x, box.min_y, box.width, box.height)
        canvas.clipPath(frame, stroke=0, fill=0)
        yield
        canvas.restoreState()

    def data(self) -> bytes:
        """The finished file."""
        self._canvas.save()
        return self._stream.getvalue()
