"""What the label of a piece says, line by line."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from notchbook.finish import CutPiece
from notchbook.finish.allowance_words import edge_words
from notchbook.output.paper_info import PaperInfo


@dataclass(frozen=True, slots=True)
class LabelLine:
    """One line: its words, type size in points at full size, weight, and how early it may be left out
    where room is short (0: never; larger goes first)."""

    words: str
    size: float
    bold: bool
    spare: int


def label_lines(piece: CutPiece, info: PaperInfo) -> tuple[LabelLine, ...]:
    """Style, piece and number, size, quantity in each material, allowances, revision and date; and the sign
    of a pattern that rests on estimates, which is never left out.

    The order and content of a piece label as hung patterns carry it: style number, piece name, size,
    quantity, then number of pieces, material, odd seam widths, revision, date, maker (trade handbooks).
    """
    count = unbroken(f"{piece.number} of {piece.of}")
    issue = (info.revision and f"rev. {info.revision}", info.date, info.maker)
    lines = [
        LabelLine(info.heading, 14.0, False, 0),
        LabelLine(f"{piece.title}  {count}", 26.0, True, 0),
        LabelLine(info.size_words, 16.0, True, 2),
        LabelLine(info.estimate_sign, 16.0, True, 0),
        *(
            LabelLine(f"{info.material(quantity.material)}: {kept_together(quantity.text)}", 16.0, True, 0)
            for quantity in piece.quantities
        ),
        LabelLine(allowance_words(piece, info), 10.0, False, 3),
        LabelLine(" · ".join(part for part in issue if part), 10.0, False, 1),
    ]
    return tuple(line for line in lines if line.words)


def allowance_words(piece: CutPiece, info: PaperInfo) -> str:
    """The widths of allowance: the one that most of the edge has, then those that differ, by class."""
    lengths: dict[float, float] = {}
    for edge in piece.edges:
        if edge.kind not in ("fold", "hem") and edge.width > 0.0:
            lengths[edge.width] = lengths.get(edge.width, 0.0) + edge.sew.length
    if not lengths:
        return "no seam allowance"
    usual = max(lengths, key=lambda width: (lengths[width], -width))
    parts = [("seam allowance", usual), *_others(piece, usual)]
    return ", ".join(_width_words(words, width, info) for words, width in parts)


_WITHOUT: Final[Mapping[str, str]] = {
    "bound edge": "no allowance where it is bound",
    "neatened edge": "no allowance where it is neatened",
    "seam allowance": "no seam allowance",
}
"""What is said of an edge without allowance where "at the" and its class would read badly."""


def _width_words(words: str, width: float, info: PaperInfo) -> str:
    if width > 0.0:
        return f"{words} {unbroken(info.lengths.text(width))}"
    return _WITHOUT.get(words, f"no allowance at the {words}")


def kept_together(quantity: str) -> str:
    """The words of a quantity, broken after the comma only."""
    return ", ".join(unbroken(part) for part in quantity.split(", "))


def unbroken(words: str) -> str:
    """The words with spaces at which a line is not broken."""
    return words.replace(" ", "\N{NO-BREAK SPACE}")


def _others(piece: CutPiece, usual: float) -> Iterable[tuple[str, float]]:
    """Each class of allowance that has not the usual width; hems always, and last."""
    found: dict[tuple[str, float], None] = {}
    for edge in sorted(piece.edges, key=lambda edge: edge.kind == "hem"):
        if edge.kind == "hem":
            found["hem", edge.width] = None
        elif edge.kind != "fold" and edge.width != usual:
            found[edge_words(edge.allowance_class), edge.width] = None
    return found
