"""``.pdf``: pattern on sheets to print and tape together."""

from collections.abc import Sequence
from pathlib import Path

from notchbook.finish import CutPiece
from notchbook.output.definition import OutputDefinition
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pdf_tiles import write_tiled_pdf
from notchbook.output.tiling import Paper


def write(pieces: Sequence[CutPiece], info: PaperInfo, path: Path, paper: Paper) -> None:
    """Write the pieces; see :func:`~notchbook.output.pdf_tiles.write_tiled_pdf`."""
    write_tiled_pdf(pieces, info, path, paper)


OUTPUT = OutputDefinition(".pdf", "Pattern on sheets to print and tape together", write)
