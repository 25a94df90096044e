"""The families in which blocks are chosen: upper, skirts, trousers, stretch."""

from typing import Final, Literal

BlockFamily = Literal["upper", "skirts", "trousers", "stretch", "others"]

FAMILIES: Final[dict[BlockFamily, tuple[str, ...]]] = {
    "upper": ("bodice", "torso", "dress", "sleeve"),
    "skirts": ("skirt", "gored_skirt", "circle_skirt"),
    "trousers": ("trousers",),
    "stretch": ("stretch_torso", "bodysuit", "leggings"),
}
"""The blocks of each family, the plainest first."""


def family_of(block: str) -> BlockFamily:
    """The family of a block; ``others`` for one that none names, such as that of a plugin."""
    return next((family for family, blocks in FAMILIES.items() if block in blocks), "others")


def family_place(block: str) -> tuple[int, int, str]:
    """Where a block comes when all are shown by family."""
    family = family_of(block)
    if family == "others":
        return (len(FAMILIES), 0, block)
    return (list(FAMILIES).index(family), FAMILIES[family].index(block), block)
