"""Leather is sewn in other words than cloth: what would burn it or leave holes is told nowhere.

Common practice, no source: a hot iron shrinks leather, the holes of pins and basting stay, its raw edges do
not fray, and a dart is trimmed and glued open because it cannot be pressed to one side.
"""

import re
from functools import cache
from typing import Any

import pytest

from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Operation
from notchbook.recipe import Replay
from support.closure_steps import BACK_OPENING, stepped
from support.edge_steps import skirt

ZIP = {"edge": "skirt.back/center_back", "from_point": "skirt.back/waist_center", "setting": "centered"}
SLIT = {"edge": "skirt.front/side_seam", "hem_end": "skirt.front/hem_side"}
PATCH = {
    "below": "skirt.front/waist",
    "down": "16 cm",
    "beside": "skirt.front/center_front",
    "inward": "5 cm",
    "width": "12 cm",
    "depth": "13 cm",
    "flap": True,
}
WELT = {
    "below": "skirt.back/waist",
    "down": "17 cm",
    "beside": "skirt.back/side_seam",
    "inward": "5 cm",
    "opening": "12 cm",
}
PARTS: tuple[tuple[str, dict[str, Any]], ...] = (
    ("zip_opening", ZIP),
    ("hem_slit", SLIT),
    ("patch_pocket", PATCH),
    ("welt_pocket", WELT),
    ("waistband", {"edges": BACK_OPENING}),
    ("belt_loops", {"edges": BACK_OPENING}),
    ("belt", {}),
)
OF_CLOTH = re.compile(r"\b(press|pressed|iron|baste|pin|neaten|neatened|fell|understitch)\b", re.IGNORECASE)


@cache
def made(hide: str | None) -> Replay:
    leather = () if hide is None else (("leather_making", {"hide": hide}),)
    done = stepped(skirt(), *PARTS, *leather)
    assert done.suspended is None, str(done.suspended)
    return done


def lines(hide: str | None) -> list[str]:
    return [line.text for line in sewing_order(made(hide).pattern).lines]


@pytest.mark.parametrize("hide", ["cow_side", "coated_cloth"])
def test_nothing_is_pressed_pinned_basted_or_neatened(hide: str) -> None:
    assert [text for text in lines(hide) if OF_CLOTH.search(text)] == []
    assert len([text for text in lines(None) if OF_CLOTH.search(text)]) > 6


def test_leather_has_the_lines_of_cloth_and_those_of_its_own() -> None:
    cloth = {line.key for line in sewing_order(made(None).pattern).lines}
    hide = [line.key for line in sewing_order(made("cow_side").pattern).lines]
    own = [key for key in hide if key not in cloth]
    assert own == hide[:3]  # they come before anything is sewn
    assert own == ["leather_making/edges_skived", "leather_making/edges_held", "leather_making/seams_glued"]
    assert cloth <= set(hide)


def test_darts_are_trimmed_and_glued_and_heat_is_tried_on_a_scrap() -> None:
    darts = [text for text in lines("cow_side") if "waist dart" in text]
    assert len(darts) == 3
    assert all(text.endswith("; trim it to 6 to 8 mm and glue its allowances open") for text in darts)
    (fused,) = (text for text in lines("cow_side") if text.startswith("Fuse"))
    assert "heat" in fused
    assert not any("heat" in text or "glue" in text for text in lines(None))


def test_a_lining_of_a_leather_garment_is_sewn_as_cloth() -> None:
    lined = stepped(
        skirt(),
        ("lining", {"pieces": ["skirt.front", "skirt.back"], "hems": ["skirt.front/hem", "skirt.back/hem"]}),
        ("leather_making", {"hide": "cow_side"}),
    )
    assert lined.suspended is None, str(lined.suspended)
    darts = [line.text for line in sewing_order(lined.pattern).lines if "dart" in line.text]
    glued = [text for text in darts if "glue" in text]
    assert len(darts) == 6 and len(glued) == 3
    assert not any("lining" in text for text in glued)
    told = [note.piece for note in lined.notes if note.code == "leather-dart"]
    assert len(told) == 3 and set(told) == {"skirt.front", "skirt.back"}


def test_what_cloth_has_pinned_is_clipped_in_leather() -> None:
    """The holes of pins stay in leather, as those of basting do (common practice, no source)."""
    texts = ("Pin the back ends of the straps at their notches.", "Slit the slashes and pin the gusset in.")
    told = {}
    for hide in (None, "cow_side"):
        orders = (
            Operation(f"strap/order_{index}", "finish", text, ("skirt.back",))
            for index, text in enumerate(texts)
        )
        lines_of = sewing_order(made(hide).pattern.with_operations(*orders)).lines
        told[hide] = tuple(line.text for line in lines_of if line.key.startswith("strap/order"))
    assert told[None] == texts
    assert told["cow_side"] == (
        "Clip the back ends of the straps at their notches.",
        "Slit the slashes and clip the gusset in.",
    )
