"""Which gores a skirt of four to twelve has on one side of the wearer, and how they are called.

Gores are named by where they lie, from the center front to the center back: a skirt of any number has a
``center_front`` and a ``center_back``, and the others between them in this order.
"""

from dataclasses import dataclass, replace
from typing import Literal

CenterOf = Literal["gore", "seam"]
"""Whether a gore lies over a center, or a seam."""

GORE_WORDS: dict[int, tuple[str, ...]] = {
    2: ("center_front", "center_back"),
    3: ("center_front", "side", "center_back"),
    4: ("center_front", "side_front", "side_back", "center_back"),
    5: ("center_front", "side_front", "side", "side_back", "center_back"),
    6: ("center_front", "middle_front", "side_front", "side_back", "middle_back", "center_back"),
    7: ("center_front", "middle_front", "side_front", "side", "side_back", "middle_back", "center_back"),
}
"""The words of so many gores on one side, those on a fold included, from front to back."""


@dataclass(frozen=True, slots=True)
class GorePlace:
    """One gore: its word, the words of its edges toward the center front and the center back, and how many
    of its halves lie on one side of the wearer (1: it lies over that center). ``has_seam`` is a straight seam
    down its middle, where it lies over a center and the skirt opens there."""

    word: str
    front_edge: str
    back_edge: str
    halves: int
    has_seam: bool = False

    @property
    def is_over_center(self) -> bool:
        """Whether the wearer's center runs down its middle, so that half of it is drawn."""
        return self.halves == 1

    @property
    def title(self) -> str:
        """What is written on the piece."""
        return self.word.replace("_", " ").capitalize()


def center_back_of(gores: int, center_front: CenterOf) -> CenterOf:
    """What lies over the center back: as in front with an even number of gores, else the other."""
    if gores % 2 == 0:
        return center_front
    return "seam" if center_front == "gore" else "gore"


def gore_places(gores: int, center_front: CenterOf, *, back_seam: bool) -> tuple[GorePlace, ...]:
    """The gores of one side, front to back; ``back_seam``: one over the center back is seamed there."""
    center_back = center_back_of(gores, center_front)
    ends = (1 if center_front == "gore" else 2, 1 if center_back == "gore" else 2)
    between = (gores - sum(ends)) // 2
    halves = (ends[0], *(2 for _ in range(between)), ends[1])
    edges = _seam_words(gores, halves)
    words = GORE_WORDS[len(halves)]
    places = tuple(
        GorePlace(word, edges[index][1], edges[index + 1][0], halves[index])
        for index, word in enumerate(words)
    )
    if back_seam and places[-1].is_over_center:
        return (*places[:-1], replace(places[-1], has_seam=True))
    return places


def _seam_words(gores: int, halves: tuple[int, ...]) -> list[tuple[str, str]]:
    """For each boundary from front to back the words of its edges: of the gore before it and after it."""
    found = [("center_front", "center_front")]
    passed = 0
    for count in halves[:-1]:
        passed += count
        found.append(("side_seam", "side_seam") if 2 * passed == gores else ("back_seam", "front_seam"))
    return [*found, ("center_back", "center_back")]
