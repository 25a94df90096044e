"""Facings and linings at a zip: open where the garment is. Facts of plain handling, no source: what is closed
behind a zip lets nobody in."""

from typing import Any

import pytest

from notchbook.checks import Subject, load_check
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Pattern
from notchbook.recipe import Replay
from support.closure_steps import FLY, FLY_WAIST, stepped
from support.edge_steps import refusal, skirt, trousers

CENTER = {"edge": "skirt.back/center_back", "from_point": "skirt.back/waist_center"}
SIDE = {"edge": "skirt.front/side_seam", "from_point": "skirt.front/waist_side"}
WAIST = [
    {"edge": "skirt.front/waist", "starts_at": "skirt.front/waist_center"},
    {"edge": "skirt.back/waist", "starts_at": "skirt.back/waist_side"},
]


def zipped(edge: dict[str, str], **more: Any) -> Replay:
    return stepped(skirt(), ("zip_opening", {"length": "18 cm", "setting": "centered", **edge, **more}))


def faced(run: Replay) -> Pattern:
    return stepped(run, ("facing", {"edges": WAIST})).pattern


def lined(run: Replay) -> Pattern:
    return stepped(run, ("lining", {"pieces": ["skirt.front", "skirt.back"]})).pattern


def between(pattern: Pattern) -> set[str]:
    """The seams of the facing with itself."""
    own = {name for name, carrier in pattern.carriers.items() if carrier.startswith("facing.")}
    return {
        seam.name
        for seam in pattern.seams.values()
        if all(use.edge in own for use in (*seam.first, *seam.second))
    }


def behind_zips(pattern: Pattern) -> list[str]:
    return [found.code for found in load_check("opened-at-zips").run(Subject(pattern))]


def keys(pattern: Pattern) -> list[str]:
    return [line.key for line in sewing_order(pattern).lines]


@pytest.mark.parametrize(
    ("at", "left"),
    [(CENTER, {"facing/side_seam"}), (SIDE, {"facing/back_center_back"})],
    ids=["center", "side"],
)
def test_a_facing_is_open_at_the_zip_and_closed_elsewhere(at: dict[str, str], left: set[str]) -> None:
    assert between(faced(skirt())) == {"facing/side_seam", "facing/back_center_back"}
    pattern = faced(zipped(at))
    assert between(pattern) == left
    assert behind_zips(pattern) == []


def test_a_zip_that_opens_from_below_leaves_the_facing_closed() -> None:
    below = zipped({"edge": "skirt.back/center_back", "from_point": "skirt.back/hem_center"})
    assert between(faced(below)) == {"facing/side_seam", "facing/back_center_back"}


def test_its_ends_are_sewn_to_the_tape_once_zip_and_facing_are_in() -> None:
    """And when the facing is understitched, which the ends hinder once they are sewn down (common practice,
    no source)."""
    order = keys(faced(zipped(CENTER)))
    before = ("zip_opening/zip", "facing/front_waist", "facing/front_waist/trimmed")
    assert order.index("facing/zip_ends") > max(map(order.index, before))
    assert "facing/zip_ends" not in keys(faced(skirt()))


def test_a_facing_in_one_piece_does_not_lie_across_a_zip() -> None:
    assert stepped(skirt(), ("facing", {"edges": WAIST, "joined": True})).suspended is None
    assert refusal(zipped(SIDE), "facing", edges=WAIST, joined=True) == "facing-not-sewn"


def test_a_facing_made_before_its_zip_is_seen() -> None:
    """The seam of its ends, put back by hand."""
    closed = faced(skirt()).seams["facing/back_center_back"]
    assert behind_zips(faced(zipped(CENTER)).with_seams(closed)) == ["closed-behind-zip"]


def test_a_lining_has_the_notch_of_the_zip_and_none_of_its_stitches() -> None:
    pattern = lined(zipped(CENTER))
    kinds = {line.kind for line in pattern.pieces["skirt.back"].lines}
    assert "stitch_line" in kinds
    assert "stitch_line" not in {line.kind for line in pattern.pieces["lining.back"].lines}
    stops = {one.place.edge: one.place.amount for one in pattern.notches.values() if "zip" in one.purpose}
    assert stops == {"skirt.back/center_back": 180.0, "lining.back/center_back": 180.0}


def test_a_fly_opens_the_facing_that_was_made_before_it() -> None:
    run = stepped(trousers(), ("facing", {"edges": FLY_WAIST}), ("fly", FLY))
    assert between(run.pattern) == {"facing/side_seam", "facing/back_crotch_seam"}
    assert behind_zips(run.pattern) == []
    order = keys(run.pattern)
    assert order.index("fly/zip_ends") > max(order.index("fly/zip_closed"), order.index("facing/front_waist"))
    assert "fly/zip_ends" not in keys(stepped(trousers(), ("fly", FLY)).pattern)


def test_a_lining_is_caught_at_the_zip_after_both_are_sewn() -> None:
    order = keys(lined(zipped(CENTER)))
    before = ("zip_opening/zip", "lining/center_back", "lining/side_seam")
    assert order.index("lining/zip_edges") > max(map(order.index, before))
    assert "lining/zip_edges" not in keys(lined(skirt()))


@pytest.mark.parametrize("name", ["pleat", "raised", "sleeve_raised", "shorter"])
def test_a_lining_refuses_less_than_nothing(name: str) -> None:
    asked = {
        "pieces": ["skirt.front", "skirt.back"],
        "hems": ["skirt.front/hem", "skirt.back/hem"],
        name: "-1 mm",
    }
    assert refusal(skirt(), "lining", **asked) == "amount-negative"
