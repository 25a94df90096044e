"""Lines of the sewing order that whole styles ask for: inner necks, bindings that meet, hems, bands, gathers.

What must come before what is common practice, no source: a binding is folded over before another is sewn over
its end; a collar's inner layer is sewn to the lining or stitched down once, never both; a band is folded
before it is sewn on. The styles are those of the rack, which are invented.
"""

from dataclasses import replace
from functools import cache

import pytest

from lower_sheets import lower_bodies
from notchbook.app.rack.styles import rack
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Allowance, Pattern
from notchbook.recipe import replay
from support.hand_skirt import hand_skirt

RECIPES = {style.stem: style.recipe for style in rack()}


@cache
def pattern(style: str) -> Pattern:
    return replay(RECIPES[style], dict(lower_bodies())["medium-92"]).pattern


def texts(of: Pattern) -> dict[str, str]:
    return {line.key: line.text for line in sewing_order(of).lines}


def without(of: Pattern, *operations: str) -> Pattern:
    kept = {name: one for name, one in of.operations.items() if name not in operations}
    return replace(of, operations=kept)


def in_order(of: Pattern, *keys: str) -> bool:
    found = list(texts(of))
    places = [found.index(key) for key in keys]
    return places == sorted(places) and not sewing_order(of).waiting


def test_the_upper_collar_of_a_lined_jacket_is_sewn_to_the_lining_and_both_to_the_neck() -> None:
    jacket = pattern("tailored_jacket")
    said = texts(jacket)
    assert said["collar/upper_neck"] == "Sew the upper collar to the back lining: neck"
    laid = "Lay the neck seam of the back lining on that of the back and sew their allowances together"
    assert said["lining/back_neck"] == laid
    assert in_order(jacket, "collar/neck", "collar/upper_neck", "collar/turned", "lining/back_neck")
    assert in_order(jacket, "lining/shoulder", "collar/upper_neck")


def test_without_a_lining_at_the_neck_it_is_stitched_down_over_the_neck_seam() -> None:
    jacket = pattern("tailored_jacket").with_seams(without=["lining/back_neck"])
    assert "collar/closed" not in texts(pattern("tailored_jacket"))
    assert "collar/upper_neck" not in texts(jacket)
    assert texts(jacket)["collar/closed"].startswith("Clip the upper collar at the shoulder")
    assert in_order(jacket, "collar/neck", "collar/turned", "collar/closed")


def test_an_undercollar_is_closed_before_it_is_sewn_to_the_gorge() -> None:
    assert in_order(pattern("tailored_jacket"), "collar/center_back", "collar/gorge", "collar/neck")


@pytest.mark.parametrize(
    ("style", "closed"), [("work_shirt", "collar/closed"), ("gathered_blouse", "collar/turned")]
)
def test_what_is_stitched_down_over_the_neck_seam_is_not_sewn_to_it_before(style: str, closed: str) -> None:
    made = pattern(style)
    assert "collar/inner_stand_neck" not in texts(made)
    assert in_order(made, "collar/neck", closed)
    edges = next(line.at for line in sewing_order(made).lines if line.key == closed)
    assert "collar.inner_stand" in edges
    left = texts(without(made, closed))["collar/inner_stand_neck"]
    assert left.startswith("Sew the inner"), "nothing else closes it then"


def test_a_binding_is_folded_over_before_another_is_sewn_over_its_end() -> None:
    slip = pattern("bias_slip")
    assert in_order(slip, "front_binding/bound", "front_binding/folded", "back_binding/bound")
    assert not in_order(without(slip, "back_binding/folded"), "front_binding/folded", "back_binding/bound")


def test_a_band_is_closed_and_folded_before_it_is_stretched_on() -> None:
    said = texts(pattern("stretch_dress"))
    assert said["neckband/band_end"] == "Close the neck band: ends"
    folded = "Fold the neck band along its line, wrong sides together, and sew it to the front and back: neck"
    assert said["neckband/neck"] == folded
    band = pattern("stretch_dress").pieces["neckband.band"]
    single = pattern("stretch_dress").with_pieces(replace(band, lines=()))
    assert texts(single)["neckband/neck"] == "Sew the neck band to the front and back: neck"
    assert texts(pattern("tailored_jacket"))["collar/center_back"].startswith("Sew the undercollar, left to")


def test_gathers_are_told_by_the_edge_in_which_they_lie() -> None:
    said = texts(pattern("gathered_blouse"))
    assert said["moved.front/bust_dart"] == "Run gathering threads along the shoulder of the front"
    assert said["back_gathers.back/neck_gather"] == "Run gathering threads along the neck of the back"


def test_an_edge_that_was_given_a_hem_is_turned_up() -> None:
    """A shell that ends at the waist."""
    assert texts(pattern("darted_shell"))["bodice.front/hem_line"] == "Turn up the hem of the front and back"
    skirt = hand_skirt().with_seams(without=["skirt/side_seam"])
    for word, is_there in (("hem", True), ("hem_slit", False), ("side", False)):
        given = skirt.with_allowances({"skirt.front/side_seam": Allowance(word)})
        hems = [line.at for line in sewing_order(given).lines if line.key == "skirt.front/hem_line"]
        assert any("skirt.front/side_seam" in at for at in hems) is is_there


def test_the_hems_of_facing_and_lining_are_felled_and_a_skirt_lining_hangs() -> None:
    said = texts(pattern("tailored_jacket"))
    assert said["collar.facing/hem_line"].endswith("and fell it to the hem of the garment")
    for key, what in (("lining.front/hem_line", "garment"), ("lining.top_sleeve/hem_line", "sleeve")):
        assert f"fell it to the hem of the {what}, with" in said[key]
    assert said["bodice.front/hem_line"] == "Turn up the hem of the front and back"
    skirt = texts(pattern("leather_mini_skirt"))
    assert "fell" not in skirt["lining.front_center/hem_line"]


@pytest.mark.parametrize("style", ["gathered_blouse", "work_shirt"])
def test_the_upper_ends_of_a_facing_lie_in_the_neck_seam_of_a_collar(style: str) -> None:
    """Common practice, no source: only where nothing is sewn to the neck are they closed before."""
    made = pattern(style)
    assert texts(made)["stand/facing_folded"].endswith("sew their lower ends along the hem, and turn.")
    necks = [name for name, seam in made.seams.items() if seam.allowance_class == "neckline"]
    bare = texts(made.with_seams(without=necks))["stand/facing_folded"]
    assert bare.endswith("sew their lower ends along the hem, sew their upper ends, and turn.")
