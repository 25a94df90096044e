"""The cutter's must: what it says. Made from the cut pieces, never typed beside them."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.finish import CutPiece
from notchbook.output.label_lines import allowance_words, unbroken
from notchbook.output.paper_info import PaperInfo
from notchbook.units import counted

CAUTIONS = (
    "Rotary cutter: cut away from your body and close the blade after each stroke.",
    "Drill and awl: clamp the plies, keep hands clear. Iron: switch it off when you leave it.",
    "Count pins and needles back.",
    "These are the usual cautions; local rules and licensed practice come first.",
)
"""The usual cautions of a cutting room (common practice, no source)."""

WHOLE_FUSIBLE = "cut by the whole piece, allowance and all, glue side up"
"""Said of every piece of fusible: it is cut by the same paper as the cloth, so neither by half (to the fold
of a band) nor short of the seams. Under a cloth that lies face up, its glue faces up."""


@dataclass(frozen=True, slots=True)
class CardRow:
    """One piece in one material: its number, name, quantity in words, panels and remarks."""

    number: int
    piece: str
    title: str
    quantity: str
    panels: int
    remark: str


@dataclass(frozen=True, slots=True)
class CardGroup:
    """All pieces of one material, in the order of their numbers."""

    material: str
    heading: str
    rows: tuple[CardRow, ...]

    @property
    def panels(self) -> int:
        """Panels of cloth to be cut in this material."""
        return sum(row.panels for row in self.rows)


@dataclass(frozen=True, slots=True)
class CutterCard:
    """A cutter's must: groups by material, self first."""

    groups: tuple[CardGroup, ...]
    piece_count: int
    facts: tuple[tuple[str, str], ...]

    @property
    def panels(self) -> int:
        """Panels of cloth to be cut in all materials."""
        return sum(group.panels for group in self.groups)


def card_of(pieces: Sequence[CutPiece], info: PaperInfo) -> CutterCard:
    """The cutter's must of these pieces."""
    materials: dict[str, list[CardRow]] = {}
    for piece in pieces:
        for quantity in piece.quantities:
            told, remark = quantity.text, _remark(piece, info, quantity.material)
            row = CardRow(piece.number, piece.name, piece.title, told, quantity.panels, remark)
            materials.setdefault(quantity.material, []).append(row)
    names = sorted(materials, key=lambda name: (name != "self", list(materials).index(name)))
    groups = tuple(CardGroup(name, info.material(name), tuple(materials[name])) for name in names)
    panels = sum(group.panels for group in groups)
    facts = (
        ("pieces", counted(len(pieces), "piece")),
        ("to cut", f"{counted(panels, 'panel')} in {unbroken(counted(len(groups), 'material'))}"),
        ("half pieces", _supply_words(pieces)),
        ("direction", "one way" if any(piece.grain.one_way for piece in pieces) else "either way"),
    )
    return CutterCard(groups, len(pieces), facts)


def _supply_words(pieces: Sequence[CutPiece]) -> str:
    supplied = {piece.supplied for piece in pieces}
    if "on fold" in supplied:
        return "laid on the fold"
    return "supplied whole" if "whole" in supplied else "none"


def _remark(piece: CutPiece, info: PaperInfo, material: str) -> str:
    """Allowances, notches that are not slit, drill holes; how fusible is cut, which has no holes."""
    if material == "fusible":
        return WHOLE_FUSIBLE
    words = [allowance_words(piece, info)]
    marked = sum(1 for notch in piece.notches if notch.depth == 0.0)
    if marked:
        words.append(f"{marked} notches marked, not slit" if marked > 1 else "1 notch marked, not slit")
    if piece.drills:
        words.append(unbroken(counted(len(piece.drills), "drill hole")))
    return "; ".join(word for word in words if word)
