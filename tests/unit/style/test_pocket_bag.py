"""Pocket bags: sewn to the opening that they stand behind, alike on both sides."""

from typing import Any

import pytest

from notchbook.app.examining import examine
from notchbook.pattern import walk_seam
from support.edge_steps import applied, area, changed, misfits, refusal, skirt, trousers
from support.pockets import IN_SEAM, new_findings
from support.traced_steps import POCKET


def test_the_bags_are_sewn_to_the_opening_and_to_each_other() -> None:
    done = applied(skirt(), "pocket_bag", **POCKET)
    pattern = done.pattern
    for side in ("front", "back"):
        opening = pattern.edges[f"skirt.{side}/side_seam/opening"]
        assert opening.length == pytest.approx(160.0)
        assert pattern.edges[f"skirt.{side}/side_seam/above"].length == pytest.approx(50.0)
        assert pattern.edges[f"pocket_bag.{side}/opening"].path == opening.path
        assert area(pattern.pieces[f"pocket_bag.{side}"]) > 25_000.0
        assert pattern.pieces[f"pocket_bag.{side}"].cut == "pair"
    found = misfits(pattern)
    assert {f"pocket_bag/{word}" for word in ("front_opening", "back_opening", "bag", "upper")} <= set(found)
    assert found == pytest.approx(dict.fromkeys(found, 0.0), abs=0.1)
    assert [one.code for one in examine(done).findings if one.severity == "stop"] == []


def test_the_side_seam_is_one_name_still_and_the_opening_is_notched_on_both_sides() -> None:
    pattern = changed(skirt(), "pocket_bag", **POCKET)
    assert pattern.groups["skirt.front/side_seam"].members[1] == "skirt.front/side_seam/opening"
    walk = walk_seam(pattern, pattern.seams["skirt/side_seam"])
    stations = {one.notch: one for one in walk.stations}
    top, end = stations["opening_top_notch"], stations["opening_end_notch"]
    assert (top.first, top.second) == pytest.approx((50.0, 50.0))
    assert (end.first, end.second) == pytest.approx((210.0, 210.0))


@pytest.mark.parametrize(("depth", "width"), [("22 cm", "12 cm"), ("30 cm", "17 cm")])
def test_the_bag_is_as_deep_and_wide_as_asked(depth: str, width: str) -> None:
    pattern = changed(skirt(), "pocket_bag", **POCKET, depth=depth, width=width)
    bag = pattern.pieces["pocket_bag.front"]
    top = bag.points["pocket_bag.front/bag_top"]
    assert top.y - bag.bounds.min_y == pytest.approx(10.0 * float(depth.split()[0]), abs=1.0)
    reach = bag.bounds.max_x - top.x if bag.bounds.max_x - top.x > 50.0 else top.x - bag.bounds.min_x
    assert 0.75 * 10.0 * float(width.split()[0]) < reach < 1.1 * 10.0 * float(width.split()[0])


def test_bags_behind_openings_of_different_shapes_lie_on_each_other() -> None:
    """The side seams of trousers bend differently in front and behind."""
    done = applied(trousers(), "pocket_bag", **IN_SEAM)
    assert abs(misfits(done.pattern)["pocket_bag/bag"]) < 0.5
    assert misfits(done.pattern)["pocket_bag/upper"] == pytest.approx(0.0, abs=1e-6)
    assert new_findings(trousers(), done) == []


EDGES, FREE = ("opening", "upper", "edge", "lower"), "neatened_edge"


def test_strips_of_the_cloth_lie_on_the_bags_along_the_opening() -> None:
    done = applied(skirt(), "pocket_bag", **POCKET, facing="4 cm")
    assert new_findings(skirt(), done) == []
    for side in ("front", "back"):
        strip, bag = (done.pattern.pieces[f"pocket_bag.{side}{word}"] for word in ("_facing", ""))
        assert strip.edge(f"{strip.name}/opening").path == bag.edge(f"{bag.name}/opening").path
        assert area(strip) == pytest.approx(160.0 * 40.0, rel=0.05)
        assert strip.instructions[0].material == "self"
        assert f"{bag.name}/facing_line" in {line.name for line in bag.lines}
        # Caught in the seams with its bag, and free along the line on which it is stitched down.
        given = {word: done.pattern.allowances[f"{strip.name}/{word}"].allowance_class for word in EDGES}
        assert given == {"opening": "side", "upper": "pocket_bag", "edge": FREE, "lower": FREE}


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("pocket-facing-wide", {"facing": "16 cm"}),
        ("pocket-bag-past-edge", {"depth": "60 cm"}),
        ("pocket-bag-past-edge", {"width": "40 cm"}),
        ("pocket-too-shallow", {"depth": "16 cm"}),
        ("pocket-past-edge", {"distance": "60 cm"}),
        (
            "pocket-no-seam",
            {
                "edges": [
                    {"edge": "skirt.front/side_seam", "upper_end": "skirt.front/waist_side"},
                    {"edge": "skirt.back/center_back", "upper_end": "skirt.back/waist_center"},
                ]
            },
        ),
        ("amount-not-positive", {"width": "0 cm"}),
        (
            "end-lost",
            {"edges": [{**POCKET["edges"][0], "upper_end": "skirt.front/waist_center"}, POCKET["edges"][1]]},
        ),
    ],
)
def test_pockets_that_cannot_be_are_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(skirt(), "pocket_bag", **{**POCKET, **changes}) == code
