"""Godets and tiers: pieces that follow the edges they are sewn to."""

import math
from typing import Any

import pytest
from shapely.geometry import Polygon

from notchbook.pattern import Pattern, walk_seam
from notchbook.recipe import Replay
from support.sleeve_bodies import spoken_of
from support.yoke_skirt import BACK, FLARE, FRONT, LONGER, run, skirt_recipe, stopped, with_steps

SIDES = [
    {"edge": f"{FRONT}/side_seam", "hem_end": f"{FRONT}/hem_side"},
    {"edge": f"{BACK}/side_seam", "hem_end": f"{BACK}/hem_side"},
]
CENTER = [{"edge": f"{BACK}/center_back", "hem_end": f"{BACK}/hem_center"}]
EDGES = [
    {"edge": f"{FRONT}/hem", "center": f"{FRONT}/hem_center"},
    {"edge": f"{BACK}/hem", "center": f"{BACK}/hem_center"},
]


def godet(sides: list[dict[str, str]] = SIDES, **changes: Any) -> tuple[str, str, dict[str, Any]]:
    return ("godet", "godet", {"sides": sides, **changes})


def tiers(**changes: Any) -> tuple[str, str, dict[str, Any]]:
    return ("tiers", "tiers", {"edges": EDGES, **changes})


def misfits(pattern: Pattern) -> float:
    return max(abs(walk_seam(pattern, seam).misfit) for seam in pattern.seams.values())


def stops(done: Replay) -> list[str]:
    return [finding.code for finding in spoken_of(done) if finding.severity == "stop"]


def test_a_godet_is_a_sector_as_high_as_the_seam_is_open() -> None:
    """A sector of a circle from plane geometry: hem = radius times angle, area = half of radius times hem."""
    done = run(with_steps(skirt_recipe(), godet(height="30 cm", angle=60.0)))
    piece = done.pattern.pieces["godet.godet"]
    assert piece.edge("godet.godet/hem").length == pytest.approx(300.0 * math.radians(60.0), abs=0.01)
    for word in ("first_seam", "second_seam"):
        assert piece.edge(f"godet.godet/{word}").length == pytest.approx(300.0, abs=1e-9)
    area = Polygon([(p.x, p.y) for p in piece.sew_line.flattened(0.0005)]).area
    assert area == pytest.approx(300.0**2 * math.radians(60.0) / 2.0, rel=3e-5)
    assert piece.cut == "pair"
    assert misfits(done.pattern) < 1e-6
    assert stops(done) == []


def test_its_hem_may_be_given_instead_of_its_angle() -> None:
    done = run(with_steps(skirt_recipe(), godet(CENTER, height="20 cm", hem_length="35 cm")))
    piece = done.pattern.pieces["godet.godet"]
    assert piece.edge("godet.godet/hem").length == pytest.approx(350.0, abs=1e-2)
    assert piece.cut == "single"
    assert done.pattern.seams["skirt/center_back"].first[0].edge == f"{BACK}/center_back/seam"
    assert misfits(done.pattern) < 1e-6
    assert stops(done) == []


def test_the_seam_above_stays_sewn_and_the_old_edge_is_a_group() -> None:
    done = run(with_steps(skirt_recipe(), godet()))
    for panel in (FRONT, BACK):
        members = done.pattern.groups[f"{panel}/side_seam"].members
        assert set(members) == {f"{panel}/side_seam/seam", f"{panel}/side_seam/godet"}
    walk = walk_seam(done.pattern, done.pattern.seams["skirt/side_seam"])
    assert [station.notch for station in walk.stations] == ["hip_notch"]
    whole = run(skirt_recipe()).pattern.edges[f"{BACK}/side_seam"].length
    assert walk.first == pytest.approx(whole - 250.0, abs=0.01)


def test_a_godet_follows_a_step_that_comes_later() -> None:
    recipe = with_steps(skirt_recipe(), godet(height="3/4 hip_depth"), LONGER)
    done = run(recipe)
    assert misfits(done.pattern) < 1e-6
    assert done.pattern.edges["godet.godet/first_seam"].length == pytest.approx(154.5, abs=1e-6)


@pytest.mark.parametrize(
    ("step", "code"),
    [
        (godet(height="70 cm"), "place-beyond-edge"),
        (godet(hem_length="90 cm"), "godet-too-wide"),
        (
            godet([SIDES[0], {"edge": f"{BACK}/hem", "hem_end": f"{BACK}/hem_side"}], height="30 cm"),
            "place-beyond-edge",
        ),
        (godet(height="0 cm"), "amount-not-positive"),
    ],
)
def test_refusals_of_godets(step: tuple[str, str, dict[str, Any]], code: str) -> None:
    assert stopped(with_steps(skirt_recipe(), step)) == code


def test_tiers_grow_as_in_the_worked_example() -> None:
    """Common practice: 72, 108, 162 cm at one and a half times each; here in the proportion of this hem."""
    done = run(with_steps(skirt_recipe(), tiers(number=3)))
    lengths = [done.pattern.edges[f"tiers.front_tier_{n}/upper"].length for n in (1, 2, 3)]
    assert lengths == pytest.approx([240.0 * 108 / 72, 240.0 * 162 / 72, 240.0 * 243 / 72], abs=1e-9)


def test_each_tier_is_gathered_to_the_one_above_and_sewn_at_the_side() -> None:
    done = run(with_steps(skirt_recipe(), tiers(number=3, ratio=2.0)))
    assert misfits(done.pattern) < 1e-6
    for panel in ("front", "back"):
        for number in (1, 2, 3):
            walk = walk_seam(done.pattern, done.pattern.seams[f"tiers/{panel}_tier_{number}"])
            (station,) = walk.stations
            assert station.first == pytest.approx(station.second, abs=1e-6)
    assert {"tiers/side_seam_tier_1", "tiers/back_tier_3_center"} <= set(done.pattern.seams)
    assert done.pattern.pieces["tiers.front_tier_1"].cut == "fold"
    assert stops(done) == []


def test_tiers_follow_the_edge_that_they_hang_from() -> None:
    done = run(with_steps(skirt_recipe(front_darts=1), tiers(number=1), FLARE))
    hem = done.pattern.edges[f"{FRONT}/hem"]
    assert hem.length > 300.0
    assert hem.kind == "seam"
    assert done.pattern.edges["tiers.front_tier_1/upper"].length == pytest.approx(1.5 * hem.length, abs=1e-9)
    assert misfits(done.pattern) < 1e-6


def test_tiers_as_long_as_the_edge_have_no_gathers() -> None:
    done = run(with_steps(skirt_recipe(), tiers(number=1, ratio=1.0)))
    assert done.pattern.pieces["tiers.front_tier_1"].intakes == ()
    assert misfits(done.pattern) < 1e-6


def test_tiers_need_the_center_end_of_their_edge() -> None:
    wrong = ("tiers", "tiers", {"edges": [{"edge": f"{FRONT}/hem", "center": f"{FRONT}/waist_center"}]})
    assert stopped(with_steps(skirt_recipe(), wrong)) == "end-lost"
