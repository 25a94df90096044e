"""``.png``: picture of all pieces."""

from collections.abc import Sequence
from pathlib import Path

from notchbook.finish import CutPiece
from notchbook.output.definition import OutputDefinition
from notchbook.output.paper_info import PaperInfo
from notchbook.output.png import write_png
from notchbook.output.tiling import Paper


def write(pieces: Sequence[CutPiece], info: PaperInfo, path: Path, paper: Paper) -> None:
    """Write the pieces; see :func:`~notchbook.output.png.write_png`."""
    write_png(pieces, info, path)


OUTPUT = OutputDefinition(".png", "Picture of all pieces", write)
