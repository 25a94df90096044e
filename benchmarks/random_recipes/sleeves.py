"""Proposals for the shapes of sleeves, for plackets and cuffs."""

from __future__ import annotations

from typing import Final

from random_recipes.families import Parameters, Proposer
from random_recipes.look import Look

_FULLNESS: Final = ("light", "standard", "full")


def _has_sleeve(look: Look) -> bool:
    return "sleeve.sleeve" in look.pattern.pieces


def puff_sleeve(look: Look) -> Parameters | None:
    """Gathered at cap or hem or both."""
    if not _has_sleeve(look):
        return None
    opens, hem = look.chance.choice(("cap", "hem", "both")), look.chance.choice(("band", "elastic", "plain"))
    fullness = look.chance.choice(_FULLNESS)
    return {"opens": opens, "hem": hem, "fullness": fullness, "cap_height": look.mm(10, 50)}


def bishop_sleeve(look: Look) -> Parameters | None:
    """Gathered to a cuff."""
    if not _has_sleeve(look):
        return None
    return {"fullness": look.chance.choice(_FULLNESS), "drop": look.mm(0, 35)}


def bell_sleeve(look: Look) -> Parameters | None:
    """Flared at its hem."""
    return {"flare": look.mm(60, 300)} if _has_sleeve(look) else None


def leg_of_mutton_sleeve(look: Look) -> Parameters | None:
    """Full above the elbow."""
    return {"opens": look.mm(120, 300), "cap_height": look.mm(10, 50)} if _has_sleeve(look) else None


def cap_sleeve(look: Look) -> Parameters | None:
    """Ending on its cap."""
    return {"length": look.mm(60, 120)} if _has_sleeve(look) else None


def two_piece_sleeve(look: Look) -> Parameters | None:
    """A top and an under sleeve."""
    if not _has_sleeve(look):
        return None
    return {"forearm_shift": look.mm(20, 30), "hind_arm_shift": look.mm(10, 25), "bend": look.mm(5, 30)}


def raglan_sleeve(look: Look) -> Parameters | None:
    """The sleeve with the shoulders of its bodice."""
    if not _has_sleeve(look):
        return None
    shoulder = look.chance.choice(("seam", "dart"))
    return {"shoulder": shoulder, "front_neck": look.mm(20, 45), "back_neck": look.mm(15, 30)}


def kimono_sleeve(look: Look) -> Parameters | None:
    """A sleeve cut on, with a gusset now and then."""
    armhole = look.one("armhole")
    if armhole is None or _has_sleeve(look):
        return None
    asked: Parameters = {
        "bodice": armhole.home.split(".")[0],
        "angle": look.chance.choice((0, 5, 10, 20, 30)),
    }
    if look.chance.random() < 0.4:
        return {**asked, "depth": look.mm(20, 50), "gusset": look.mm(80, 110)}
    return {**asked, "depth": look.mm(40, 130)} if look.chance.random() < 0.5 else asked


def sleeve_placket(look: Look) -> Parameters | None:
    """A slit at the wrist, bound or with a tower."""
    if not _has_sleeve(look):
        return None
    kind, place = look.chance.choice(("bound", "tower")), round(look.chance.uniform(0.15, 0.4), 2)
    return {"kind": kind, "length": look.mm(60, 150), "place": place}


def cuff(look: Look) -> Parameters | None:
    """A cuff, straight or shaped."""
    if not _has_sleeve(look):
        return None
    shape, buttons = look.chance.choice(("straight", "shaped")), look.chance.randint(1, 2)
    return {"shape": shape, "depth": look.mm(35, 90), "buttons": buttons, "narrower": look.mm(0, 20)}


SLEEVES: dict[str, Proposer] = {
    "bell_sleeve": bell_sleeve,
    "bishop_sleeve": bishop_sleeve,
    "cap_sleeve": cap_sleeve,
    "cuff": cuff,
    "kimono_sleeve": kimono_sleeve,
    "leg_of_mutton_sleeve": leg_of_mutton_sleeve,
    "puff_sleeve": puff_sleeve,
    "raglan_sleeve": raglan_sleeve,
    "sleeve_placket": sleeve_placket,
    "two_piece_sleeve": two_piece_sleeve,
}
