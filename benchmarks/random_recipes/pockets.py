"""Proposals for pockets, and for making in leather."""

from __future__ import annotations

from typing import Final

from random_recipes.families import Parameters, Proposer
from random_recipes.look import Look

_HIDES: Final = ("lamb", "pig", "cow_side", "coated_cloth")
_BOTTOMS: Final = ("square", "round", "pointed", "cut")


def _placed(look: Look) -> Parameters | None:
    """Somewhere on a piece, from its upper edge and its center or side."""
    upper = look.one("waist", "shoulder", "neck")
    beside = None if upper is None else look.beside(upper, "center_front", "center_back", "side_seam")
    if upper is None or beside is None:
        return None
    down, inward = look.mm(80, 200), look.mm(20, 80)
    angle = look.chance.choice((0, 0, -8, 12))
    return {"below": upper.name, "down": down, "beside": beside.name, "inward": inward, "angle": angle}


def patch_pocket(look: Look) -> Parameters | None:
    """A pocket laid on."""
    at = _placed(look)
    if at is None:
        return None
    shape = {"bottom": look.chance.choice(_BOTTOMS), "flap": look.chance.random() < 0.3}
    return {**at, **shape, "width": look.mm(90, 150), "depth": look.mm(100, 170)}


def slant_pocket(look: Look) -> Parameters | None:
    """An opening from waist to side."""
    waist = look.one("waist")
    side = None if waist is None else look.beside(waist, "side_seam")
    if waist is None or side is None:
        return None
    sizes = {"along_waist": look.mm(25, 50), "down_side": look.mm(80, 180), "bag_width": look.mm(110, 140)}
    return {"waist": waist.name, "side": side.name, **sizes, "bow": look.mm(0, 15)}


def welt_pocket(look: Look) -> Parameters | None:
    """A slit with welts."""
    at = _placed(look)
    if at is None:
        return None
    welts = look.chance.choice(("single", "double"))
    return {**at, "welts": welts, "opening": look.mm(90, 150), "bag_depth": look.mm(100, 180)}


def leather_making(look: Look) -> Parameters | None:
    """All of it in leather."""
    return {"hide": look.chance.choice(_HIDES)}


POCKETS: dict[str, Proposer] = {
    "leather_making": leather_making,
    "patch_pocket": patch_pocket,
    "slant_pocket": slant_pocket,
    "welt_pocket": welt_pocket,
}
