"""Papers and files made from cut pieces: tiled and one-sheet PDF, SVG, PNG, the cutter's must.

Every drawing goes through one pen (:class:`~notchbook.output.pen.Pen`); pictures are the PDF, rendered.
Import the writer that is needed from its module (``notchbook.output.pdf_tiles`` and so on): each
loads its own libraries. Here stand only the things that all of them share.
"""

from notchbook.output.files import write_file
from notchbook.output.paper_info import PaperInfo

__all__ = ["PaperInfo", "write_file"]
