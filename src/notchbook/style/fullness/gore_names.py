"""Names of gores: cut off one after the other from the side, called as if all had been cut at once."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.pattern import EdgeUse, Notch, Pattern, Seam, frozen_map

INNER = "inner"
"""Role of what is left at the center while gores are still cut off it."""


@dataclass(frozen=True, slots=True)
class GoreNames:
    """Renames what the cuts of the step ``slug`` made of the piece ``word`` into ``number`` gores.

    The first gore lies at the center. A gore's ``near_seam`` is nearer to the center than its ``far_seam``.
    """

    slug: str
    word: str
    number: int

    def of(self, name: str) -> str:
        """The name under which a thing is known when all gores are cut."""
        return self._of_piece(name) or self._of_seam(name) or self._of_part(name)

    def _of_piece(self, name: str) -> str:
        owner = rf"{self.slug}\.{self.word}(?P<inner>(?:_{INNER})*)(?:_gore_(?P<gore>\d+))?"
        found = re.fullmatch(rf"{owner}(?P<rest>/.*)?", name)
        if found is None or not (found["inner"] or found["gore"]):
            return ""
        cuts = found["inner"].count(INNER)
        gore = int(found["gore"]) if found["gore"] else self.number - cuts
        side = "near" if found["gore"] else "far"
        seam = gore - 1 if found["gore"] else gore
        rest = (found["rest"] or "").replace(f"_{INNER}", "")
        rest = rest.replace("/style_line", f"/{side}_seam")
        rest = rest.replace("/balance_notch", f"/gore_seam_{seam}_notch")
        rest = re.sub(r"^/(?!near_|far_)(.*_end)$", rf"/{side}_\1", rest)
        return f"{self.slug}.{self.word}_gore_{gore}{rest}"

    def _of_seam(self, name: str) -> str:
        found = re.fullmatch(rf"{self.slug}/{self.word}((?:_{INNER})*)_style_line", name)
        if found is None:
            return ""
        return f"{self.slug}/{self.word}_gore_seam_{self.number - 1 - found[1].count(INNER)}"

    def _of_part(self, name: str) -> str:
        flat = re.sub(rf"(?:/{INNER})+(/gore_\d+)", r"\1", name)
        return re.sub(rf"(?:/{INNER})+(?=$|@)", "/gore_1", flat)

    def in_pattern(self, pattern: Pattern) -> Pattern:
        """The pattern with every name passed through."""
        seams = [self._seam(seam) for seam in pattern.seams.values()]
        notches = [self._notch(notch) for notch in pattern.notches.values()]
        pieces = [
            piece.renamed(lambda name: self.of(name) if name else name) for piece in pattern.pieces.values()
        ]
        return replace(
            pattern,
            pieces=frozen_map({piece.name: piece for piece in pieces}),
            seams=frozen_map({seam.name: seam for seam in seams}),
            notches=frozen_map({notch.name: notch for notch in notches}),
        )

    def _seam(self, seam: Seam) -> Seam:
        first, second = (
            tuple(EdgeUse(self.of(use.edge), self.of(use.starts_at), use.side) for use in run)
            for run in (seam.first, seam.second)
        )
        return replace(seam, name=self.of(seam.name), first=first, second=second)

    def _notch(self, notch: Notch) -> Notch:
        place = replace(
            notch.place, edge=self.of(notch.place.edge), from_point=self.of(notch.place.from_point)
        )
        seam = None if notch.seam is None else self.of(notch.seam)
        return replace(notch, name=self.of(notch.name), place=place, seam=seam)

    def splits(self, splits: Mapping[str, tuple[str, ...]]) -> dict[str, tuple[str, ...]]:
        """What the cuts divided one after the other, as divided at once, in order."""
        made = {part for parts in splits.values() for part in parts}
        return {
            name: tuple(self.of(part) for part in self._flat(name, splits))
            for name in splits
            if name not in made
        }

    def _flat(self, name: str, splits: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
        if name not in splits:
            return (name,)
        return tuple(part for child in splits[name] for part in self._flat(child, splits))
