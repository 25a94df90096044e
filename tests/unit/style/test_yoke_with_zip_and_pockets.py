"""A skirt with a yoke: its zip passes the yoke seam, its pockets open below it, and its darts are gone."""

from functools import cache

import pytest

from lower_sheets import lower_bodies
from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.checks.openings import openings
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Severity
from notchbook.recipe import Replay
from support.closure_steps import stepped
from support.edge_steps import applied, skirt
from support.yoke_skirt import place as at_place

POCKET = {
    "distance": "13 cm",
    "opening": "15 cm",
    "edges": [
        {"edge": f"skirt.{word}/side_seam", "upper_end": f"skirt.{word}/waist_side"}
        for word in ("front", "back")
    ],
}
WAIST = [
    {"edge": "skirt.back/waist", "starts_at": "skirt.back/waist_center"},
    {"edge": "skirt.front/waist", "starts_at": "skirt.front/waist_side"},
]


@cache
def yoke(body: str = "medium-92") -> Replay:
    """The skirt of a body with one dart in each panel, both closed into a yoke."""
    drafted = draft("skirt", dict(lower_bodies())[body], {"front_darts": 1, "back_darts": 1})
    line = {
        word: {
            "start": at_place(f"skirt.{word}/side_seam", f"skirt.{word}/waist_side", "11 cm"),
            "end": at_place(f"skirt.{word}/center_{word}", f"skirt.{word}/waist_center", "13 cm"),
            "darts": [{"intake": f"skirt.{word}/waist_dart"}],
        }
        for word in ("front", "back")
    }
    return stepped(drafted, ("cut_style_line", {"lines": list(line.values())}))


def zipped(length: str) -> Replay:
    """The yoke skirt with a lapped zip so long, its waist faced."""
    told = {
        "edge": "skirt.back/center_back",
        "from_point": "skirt.back/waist_center",
        "length": length,
        "setting": "lapped",
    }
    return stepped(yoke(), ("zip_opening", told), ("facing", {"edges": WAIST}))


@pytest.mark.parametrize("length", (80.0, 200.0))
def test_a_zip_counts_with_its_whole_length_though_it_passes_a_seam(length: float) -> None:
    """Both edges of the zip part: it adds twice its length to the waist (plain geometry). The yoke ends 13 cm
    below the waist."""
    found = next(one for one in openings(zipped(f"{length} mm").pattern) if one.kind == "waist")
    assert found.zips == pytest.approx(2.0 * length)


def test_a_zip_too_short_for_the_hips_is_told_and_a_long_one_is_not() -> None:
    codes = {
        length: {one.code for one in examine(zipped(length), cut=False).findings}
        for length in ("8 cm", "20 cm")
    }
    assert "opening-under-hips" in codes["8 cm"]
    assert "opening-under-hips" not in codes["20 cm"]


def test_bags_are_called_after_the_panel_in_which_they_open() -> None:
    pattern = applied(yoke(), "pocket_bag", slug="hip_pocket", **POCKET).pattern
    assert {name for name in pattern.pieces if name.startswith("hip_pocket")} == {
        "hip_pocket.front_below",
        "hip_pocket.back_below",
    }


def test_bags_are_sewn_to_flat_panels_whatever_their_step_is_called() -> None:
    """Common practice, no source: the opening of a pocket is sewn before the side seam, its bags after it."""
    pattern = applied(yoke(), "pocket_bag", slug="hip_pocket", **POCKET).pattern
    keys = [line.key for line in sewing_order(pattern).lines]
    wanted = [
        "hip_pocket/front_below_opening",
        "hip_pocket/back_below_opening",
        "hip_pocket/opening_left_open",
        "skirt/side_seam",
        "hip_pocket/bag",
    ]
    assert [key for key in keys if key in wanted] == wanted


def test_a_dart_too_wide_is_not_told_once_a_yoke_took_it_in() -> None:
    wide = draft("skirt", dict(lower_bodies())["small-80"], {"front_darts": 1, "back_darts": 1})
    assert "dart-wide" in {one.code for one in examine(wide, cut=False).findings}
    opened = {"edge": "skirt.back/center_back", "from_point": "skirt.back/waist_center"}
    kept = stepped(wide, ("zip_opening", opened))
    assert "dart-wide" in {one.code for one in examine(kept, cut=False).findings}
    assert "dart-wide" not in {one.code for one in examine(yoke("small-80"), cut=False).findings}


def test_a_waistband_is_folded_and_stitched_after_both_halves_are_sewn_on() -> None:
    lines = sewing_order(stepped(skirt(), ("waistband", {"edges": WAIST})).pattern).lines
    keys = [line.key for line in lines]
    wanted = ["waistband/waist_right", "waistband/band_turned", "waistband/band_stitched"]
    assert [key for key in keys if key in wanted] == wanted
    sewn_on = next(line.at for line in lines if line.key == "waistband/waist_right")
    assert {"waistband.band/lower/right", "waistband.band/lower/left"} <= set(sewn_on)


def test_what_is_eased_into_a_waistband_is_told_of_both_halves_together() -> None:
    pattern = stepped(skirt(), ("waistband", {"edges": WAIST, "ease": "12 mm"})).pattern
    (line,) = [one for one in sewing_order(pattern).lines if one.key == "waistband/waist_right"]
    halves = [pattern.seams[f"waistband/waist_{side}"].ease for side in ("right", "left")]
    assert line.how == "eased in"
    assert line.amount == pytest.approx(sum(map(abs, halves)))
    assert line.amount == pytest.approx(12.0)


def test_a_style_with_zip_and_pockets_is_not_stopped() -> None:
    done = applied(zipped("20 cm"), "pocket_bag", slug="hip_pocket", **POCKET)
    found = examine(done).findings
    assert [one.code for one in found if one.severity is Severity.STOP] == []
