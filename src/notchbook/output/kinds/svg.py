"""``.svg``: drawing in mm."""

from collections.abc import Sequence
from pathlib import Path

from notchbook.finish import CutPiece
from notchbook.output.definition import OutputDefinition
from notchbook.output.paper_info import PaperInfo
from notchbook.output.svg import write_svg
from notchbook.output.tiling import Paper


def write(pieces: Sequence[CutPiece], info: PaperInfo, path: Path, paper: Paper) -> None:
    """Write the pieces; see :func:`~notchbook.output.svg.write_svg`."""
    write_svg(pieces, info, path)


OUTPUT = OutputDefinition(".svg", "Drawing in mm", write)
