"""Gores: shares of waist, hip and hem, seams that agree, names as if all were cut at once."""

from typing import Any

import pytest

from notchbook.pattern import pattern_to_data, sewn_length, walk_seam
from notchbook.pattern.vocabulary import words_of
from notchbook.recipe import Replay
from support.skirt_judge import Judge, turns_both_ways
from support.sleeve_bodies import spoken_of
from support.yoke_skirt import FRONT, run, skirt_recipe, stopped, with_steps

WHOLE = {
    "waist": f"{FRONT}/waist",
    "waist_center": f"{FRONT}/waist_center",
    "hem": f"{FRONT}/hem",
    "hem_center": f"{FRONT}/hem_center",
}
PLAIN = run(skirt_recipe(front_darts=0))


def gores(**changes: Any) -> Replay:
    return run(with_steps(skirt_recipe(front_darts=0), ("gores", "gores", {**WHOLE, **changes})))


@pytest.mark.parametrize("number", [2, 3, 5])
def test_waist_hip_and_hem_are_divided_in_equal_shares(number: int) -> None:
    done = gores(number=number, flare="0 mm")
    for word, whole in (("waist", sewn_length(PLAIN.pattern, f"{FRONT}/waist")), ("hem", 240.0)):
        for gore in range(1, number + 1):
            length = done.pattern.edges[f"{FRONT}/{word}/gore_{gore}"].length
            assert length == pytest.approx(whole / number, abs=1e-6)
    line = PLAIN.pattern.pieces[FRONT].line(f"{FRONT}/hip_line").path.length
    parts = [
        done.pattern.pieces[f"gores.front_gore_{gore}"].line(f"{FRONT}/hip_line/gore_{gore}").path.length
        for gore in range(1, number + 1)
    ]
    assert sum(parts) == pytest.approx(line, abs=1e-6)
    areas = [done.pattern.pieces[f"gores.front_gore_{gore}"].sew_line.area() for gore in range(1, number + 1)]
    assert sum(areas) == pytest.approx(PLAIN.pattern.pieces[FRONT].sew_line.area(), abs=1e-3)


def test_the_old_names_are_groups_in_order() -> None:
    done = gores(number=3)
    assert done.pattern.groups[FRONT].members == tuple(f"gores.front_gore_{n}" for n in (1, 2, 3))
    assert done.pattern.groups[f"{FRONT}/waist"].members == tuple(
        f"{FRONT}/waist/gore_{n}" for n in (1, 2, 3)
    )
    assert done.pattern.groups[f"{FRONT}/hem"].members == tuple(f"{FRONT}/hem/gore_{n}" for n in (3, 2, 1))
    cuts = [done.pattern.pieces[f"gores.front_gore_{n}"].cut for n in (1, 2, 3)]
    assert cuts == ["fold", "pair", "pair"]
    assert not [name for name in done.pattern.index if "inner" in name]


@pytest.mark.parametrize("number", [2, 4])
def test_every_new_seam_agrees_with_its_notches_and_is_fair(number: int) -> None:
    done = gores(number=number, flare="6 cm", flare_height="25 cm")
    for seam in done.pattern.seams.values():
        walk = walk_seam(done.pattern, seam)
        assert walk.misfit == pytest.approx(0.0, abs=1e-6)
        for station in walk.stations:
            assert station.first == pytest.approx(station.second, abs=1e-6)
    judge = Judge(pattern_to_data(done.pattern))
    for gore in range(1, number + 1):
        name = f"gores.front_gore_{gore}"
        assert judge.polygon(name).is_valid
        assert not turns_both_ways(judge.edges[f"{FRONT}/hem/gore_{gore}"])
    assert [finding.code for finding in spoken_of(done) if finding.severity == "stop"] == []


def test_the_flare_is_added_at_every_new_seam_edge() -> None:
    done = gores(number=2, flare="5 cm", flare_height="30 cm")
    for gore in (1, 2):
        hem = done.pattern.edges[f"{FRONT}/hem/gore_{gore}"].path
        # The corner swings out and up a little, and the hem is a curve: close to what was asked.
        assert hem.length == pytest.approx(120.0 + 50.0, abs=2.0)
    # Above the flare nothing moved.
    plain = gores(number=2, flare="0 mm").pattern.edges["gores.front_gore_1/far_seam"].path
    flared = done.pattern.edges["gores.front_gore_1/far_seam"].path
    assert plain.length == pytest.approx(flared.length, abs=1e-6)
    for place in (10.0, 150.0, 280.0):
        assert plain.point_at(place).distance_to(flared.point_at(place)) < 1e-6


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"flare_height": "70 cm"}, "gores-flare-high"),
        ({"hem": "skirt.back/hem", "hem_center": "skirt.back/hem_center"}, "slash-between-pieces"),
        ({"waist": "skirt.back/waist", "waist_center": "skirt.back/waist_center"}, "gores-darts"),
        ({"flare_height": "0 mm"}, "amount-not-positive"),
    ],
)
def test_refusals(changes: dict[str, Any], code: str) -> None:
    recipe = with_steps(skirt_recipe(front_darts=0), ("gores", "gores", {**WHOLE, **changes}))
    assert stopped(recipe) == code


def test_names_are_made_of_the_words_of_the_house() -> None:
    for name in gores(number=3).pattern.index:
        words = name.replace(".", "/").split("/")[1:]
        assert all(words_of(word) for word in words), name


def test_beside_a_vent_the_hem_that_was_named_is_drawn() -> None:
    """The extension of a vent is hemmed too: which hem is meant is said by its name."""
    vent = ("vent", "vent", {"edge": f"{FRONT}/side_seam", "hem_end": f"{FRONT}/hem_side"})
    vented = run(with_steps(skirt_recipe(front_darts=0), vent))
    done = run(
        with_steps(
            skirt_recipe(front_darts=0), vent, ("gores", "gores", {**WHOLE, "number": 2, "flare": "4 cm"})
        )
    )
    assert done.pattern.edges["vent.front/hem"].path == vented.pattern.edges["vent.front/hem"].path
    whole = vented.pattern.edges[f"{FRONT}/hem"].length
    for gore in (1, 2):
        assert done.pattern.edges[f"{FRONT}/hem/gore_{gore}"].length == pytest.approx(
            whole / 2 + 40.0, abs=1.0
        )
