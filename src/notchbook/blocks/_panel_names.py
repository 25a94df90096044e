"""How the pieces of a block of front and back are called, alone or as a part of a longer garment."""

from dataclasses import dataclass

from notchbook.pattern import part_name, piece_name


@dataclass(frozen=True, slots=True)
class PanelNames:
    """The names of the panels of one block: ``bodice.front``, or with a part ``dress.bodice_front``."""

    slug: str
    part: str = ""

    def piece(self, which: str) -> str:
        """The piece of a panel, ``which`` being front or back."""
        return piece_name(self.slug, f"{self.part}_{which}" if self.part else which)

    def at(self, which: str, *words: str) -> str:
        """The name of what these words say on a panel."""
        return part_name(self.piece(which), *words)

    def whole(self, word: str) -> str:
        """The name of a seam or a promise of the whole block."""
        return part_name(self.slug, word)

    @property
    def side_seam(self) -> str:
        """The name of the side seam; a block of two parts has one of each."""
        return self.whole(f"{self.part}_side_seam" if self.part else "side_seam")

    def title(self, which: str) -> str:
        """What is written on the piece."""
        return f"{self.part} {which}".strip().capitalize()
