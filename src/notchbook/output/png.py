"""Pictures: pages of our own PDF, rendered. There is no second way of drawing."""

import io
from collections.abc import Sequence
from pathlib import Path as FilePath

import pypdfium2

from notchbook.errors import OutputError
from notchbook.finish import CutPiece
from notchbook.output.files import write_file
from notchbook.output.paper_info import PaperInfo
from notchbook.output.picture import picture_pdf

_MOST_PIXELS = 100_000_000


def rendered(pdf: bytes, page: int = 0, dots_per_inch: float = 100.0) -> bytes:
    """One page of a PDF (counted from 0) as PNG. OutputError ``picture-too-large``."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        sheet = document[page]
        scale = dots_per_inch / 72.0
        width, height = sheet.get_size()
        if width * height * scale * scale > _MOST_PIXELS:
            raise OutputError("picture-too-large", width=round(width * scale), height=round(height * scale))
        picture = sheet.render(scale=scale, grayscale=True).to_pil()
        stream = io.BytesIO()
        picture.save(stream, format="PNG", optimize=True, dpi=(dots_per_inch, dots_per_inch))
        return stream.getvalue()
    finally:
        document.close()


def write_png(
    pieces: Sequence[CutPiece], info: PaperInfo, path: FilePath | str, dots_per_inch: float = 100.0
) -> FilePath:
    """Write a picture of all pieces, 1200 dots wide. OutputError as for files and for :func:`rendered`."""
    return write_file(path, rendered(picture_pdf(pieces, info), 0, dots_per_inch))
