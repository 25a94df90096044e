"""What an output is: a kind of file that cut pieces can be written to."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from notchbook.finish import CutPiece
from notchbook.output.paper_info import PaperInfo
from notchbook.output.tiling import Paper

Writer = Callable[[Sequence[CutPiece], PaperInfo, Path, Paper], None]
"""Writes the pieces with the head of the papers to a path, whole or not at all; kinds without pages take
no notice of the paper."""


@dataclass(frozen=True, slots=True)
class OutputDefinition:
    """One kind of file. ``suffix`` is the ending that asks for it, with its dot."""

    suffix: str
    title: str
    write: Writer
