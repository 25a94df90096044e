"""How the sleeve is sewn: its seams, the notches that hold the ease in its place, its allowances."""

import math
from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.shapes import SleeveHalf
from notchbook.blocks.sleeve_pieces.sewn_armhole import BALANCE, SewnArmhole
from notchbook.pattern import (
    Allowance,
    EdgeUse,
    Notch,
    Pattern,
    Place,
    Seam,
    part_name,
    piece_name,
)

Which = Literal["front", "back"]

EASE_NOTCH = "ease_notch"
"""The last word of the notches at which the ease ends before the shoulder seam."""

_FLAT_HEM = 0.0011
"""1/mm; a hem 25 mm deep on a stronger curve is by 2.75 % shorter at its raw edge (own judgment: just under
the 3 % from which the house warns)."""


def sleeve_seams(slug: str, armhole: SewnArmhole, given: SleeveGiven, half: SleeveHalf) -> tuple[Seam, ...]:
    """Front and back of the armhole, each walked from the underarm with its ease; the underarm seam."""
    sleeve = piece_name(slug, "sleeve")
    is_eased = half.elbow_dart is None and given.back_ease > 0.0
    elbow = half.back_seam[0].length - half.front_seam.length if is_eased else 0.0
    return (
        _armhole_seam(slug, armhole, "front", given.cap_ease * given.front_ease_share),
        _armhole_seam(slug, armhole, "back", given.cap_ease * (1.0 - given.front_ease_share)),
        Seam(
            part_name(slug, "sleeve_seam"),
            first=(EdgeUse(part_name(sleeve, "front_seam"), part_name(sleeve, "underarm_front")),),
            second=(EdgeUse(part_name(sleeve, "back_seam"), part_name(sleeve, "underarm_back")),),
            ease=elbow,
            allowance_class="side",
            ease_between=("upper_elbow_notch", "lower_elbow_notch") if elbow > 0.0 else None,
        ),
    )


def _armhole_seam(slug: str, armhole: SewnArmhole, which: Which, ease: float) -> Seam:
    sleeve = piece_name(slug, "sleeve")
    piece = armhole.front_piece if which == "front" else armhole.back_piece
    return Seam(
        part_name(slug, f"{which}_armhole"),
        first=(EdgeUse(part_name(piece, "armhole"), part_name(piece, "underarm")),),
        second=(EdgeUse(part_name(sleeve, f"cap_{which}"), part_name(sleeve, f"underarm_{which}")),),
        ease=ease,
        allowance_class="armhole",
        ease_between=(BALANCE, EASE_NOTCH) if ease > 0.0 else None,
    )


def sleeve_cut_data(
    pattern: Pattern, slug: str, given: SleeveGiven, half: SleeveHalf, armhole: SewnArmhole
) -> Pattern:
    """Allowances, and every notch with its mate on the other side of its seam."""
    sleeve = piece_name(slug, "sleeve")
    notches = [
        *_armhole_notches(slug, "front", given, half, armhole),
        *_armhole_notches(slug, "back", given, half, armhole),
        *_elbow_notches(slug, given, half),
        _shoulder_notch(sleeve),
    ]
    return pattern.with_notches(*notches).with_allowances(
        {
            part_name(sleeve, "cap_front"): Allowance("armhole"),
            part_name(sleeve, "cap_back"): Allowance("armhole"),
            part_name(sleeve, "hem"): Allowance(_hem_class(half)),
        }
    )


def _hem_class(half: SleeveHalf) -> str:
    """A hem that curves much is turned narrower: else its raw edge would have to be stretched."""
    turn = abs(
        half.hem.tangent_at(half.hem.length).direction() - half.hem.tangent_at(0.0, "after").direction()
    )
    return "hem_sleeve" if math.radians(turn) <= _FLAT_HEM * half.hem_girth else "hem_sleeve_tapered"


def _armhole_notches(
    slug: str, which: Which, given: SleeveGiven, half: SleeveHalf, armhole: SewnArmhole
) -> Iterator[Notch]:
    """The balance notch of bodice and cap, and where there is ease the notch at which it ends."""
    seam = part_name(slug, f"{which}_armhole")
    sleeve = piece_name(slug, "sleeve")
    is_front = which == "front"
    piece = armhole.front_piece if is_front else armhole.back_piece
    cap, underarm = part_name(sleeve, f"cap_{which}"), part_name(sleeve, f"underarm_{which}")
    own = armhole.front_notch if is_front else armhole.back_notch
    distance = half.front_notch if is_front else half.back_notch
    yield replace(own, seam=seam)
    yield Notch(
        part_name(cap, BALANCE), Place(cap, underarm, distance), kind=own.kind, seam=seam, purpose="armhole"
    )
    if given.cap_ease <= 0.0:
        return
    path = given.armhole.front if is_front else given.armhole.back
    end = half.front_ease_end if is_front else half.back_ease_end
    hole, start = part_name(piece, "armhole"), part_name(piece, "underarm")
    place = Place(hole, start, path.length - figure("ease.free_at_crown"))
    yield Notch(part_name(seam, EASE_NOTCH), place, seam=seam, purpose="end of ease")
    yield Notch(part_name(cap, EASE_NOTCH), Place(cap, underarm, end), seam=seam, purpose="end of ease")


def _shoulder_notch(sleeve: str) -> Notch:
    """Where the cap meets the shoulder seam, which seldom is its highest point."""
    place = Place(part_name(sleeve, "cap_front"), part_name(sleeve, "cap_top"), 0.0)
    return Notch(part_name(sleeve, "shoulder_notch"), place, purpose="shoulder seam")


def _elbow_notches(slug: str, given: SleeveGiven, half: SleeveHalf) -> Iterator[Notch]:
    """Where the ease at the elbow begins and ends; none without ease."""
    if half.elbow_dart is not None or given.back_ease <= 0.0 or half.elbow_down is None:
        return
    sleeve, seam = piece_name(slug, "sleeve"), part_name(slug, "sleeve_seam")
    reach = figure("below.bend_reach")
    for word, way, eased in (
        ("upper_elbow_notch", -reach, 0.0),
        ("lower_elbow_notch", reach, given.back_ease),
    ):
        for which, longer in (("front", 0.0), ("back", eased)):
            edge, start = part_name(sleeve, f"{which}_seam"), part_name(sleeve, f"underarm_{which}")
            place = Place(edge, start, half.elbow_down + way + longer)
            yield Notch(part_name(edge, word), place, seam=seam, purpose="elbow ease")
