"""A list of the cut pieces as plain text, as an example of an output of your own."""

from collections.abc import Sequence
from pathlib import Path

from notchbook.finish import CutPiece
from notchbook.output import PaperInfo, write_file
from notchbook.output.definition import OutputDefinition
from notchbook.output.tiling import Paper


def write(pieces: Sequence[CutPiece], info: PaperInfo, path: Path, paper: Paper) -> None:
    """One line for each piece: number, title, panels. Whole or not at all."""
    lines = [info.heading, *(f"{piece.number}\t{piece.title}\t{piece.panels}" for piece in pieces)]
    write_file(path, ("\n".join(lines) + "\n").encode("utf-8"))


OUTPUT = OutputDefinition(".txt", "List of the cut pieces", write)
