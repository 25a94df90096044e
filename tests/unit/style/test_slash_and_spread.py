"""Slash and spread on a real skirt: what opens, what stays, what is told."""

from typing import Any

import pytest

from notchbook.checks.measured import dense
from notchbook.checks.rules.no_bump import slack
from notchbook.pattern import Pattern, pattern_to_data, sewn_length, walk_seam
from notchbook.recipe import Replay
from support.fullness import HEM_UP, spread_step
from support.skirt_judge import Judge, angle_between, turns_both_ways
from support.yoke_skirt import BACK, FRONT, WAISTBAND, YOKE, run, skirt_recipe, stopped, with_steps

PLAIN = run(skirt_recipe(front_darts=0)).pattern


def spread(**changes: Any) -> Replay:
    return run(with_steps(skirt_recipe(front_darts=0), spread_step(**changes)))


def told(done: Replay) -> list[str]:
    return [note.code for note in done.notes if note.check == "slash_and_spread"]


def lengths(pattern: Pattern) -> dict[str, float]:
    return {edge.name: edge.length for edge in pattern.pieces[FRONT].outline}


def test_flare_opens_the_hem_and_leaves_the_seams_alone() -> None:
    before, after = lengths(PLAIN), lengths(spread(number=5, opens="3 cm").pattern)
    assert list(before) == list(after), "no name changes"
    for word in ("side_seam", "center_front"):
        assert after[f"{FRONT}/{word}"] == pytest.approx(before[f"{FRONT}/{word}"], abs=1e-6)
    # Truing takes a little off the hem; the hinged waist keeps its length.
    assert after[f"{FRONT}/hem"] - before[f"{FRONT}/hem"] == pytest.approx(150.0, abs=0.5)
    assert after[f"{FRONT}/waist"] == pytest.approx(before[f"{FRONT}/waist"], abs=1e-6)


def test_both_edges_are_one_fair_line_square_to_their_neighbors() -> None:
    pattern = spread(number=7, opens="3 cm").pattern
    judge, plain = Judge(pattern_to_data(pattern)), Judge(pattern_to_data(PLAIN))
    for word in ("hem", "waist"):
        assert not turns_both_ways(judge.edges[f"{FRONT}/{word}"])
        bump = slack(dense(pattern.edges[f"{FRONT}/{word}"].path))
        assert bump is None or bump.depth < 0.05
    for point in ("hem_center", "hem_side", "waist_side", "waist_center"):
        assert judge.corner(FRONT, point) == pytest.approx(plain.corner(FRONT, point), abs=0.05), point
    assert judge.polygon(FRONT).is_valid


def test_an_angle_turns_the_side_seam_by_it() -> None:
    pattern = spread(number=4, angle=12.0).pattern
    sides = [
        found.edges[f"{FRONT}/side_seam"].path.end - found.edges[f"{FRONT}/side_seam"].path.start
        for found in (PLAIN, pattern)
    ]
    turned = abs(sides[0].direction() - sides[1].direction())
    # The hinges give way by hundredths of a millimeter so that the waist keeps its length.
    assert turned == pytest.approx(12.0, abs=0.02)


def test_parallel_fullness_keeps_the_levels_level() -> None:
    pattern = spread(number=4, opens="25 mm", across_opens="25 mm", across_taken_up="gather").pattern
    line = pattern.pieces[FRONT].line(f"{FRONT}/hip_line").path
    assert line.start.y == pytest.approx(line.end.y, abs=1e-6)
    assert line.length == pytest.approx(
        PLAIN.pieces[FRONT].line(f"{FRONT}/hip_line").path.length + 100.0, abs=1e-3
    )


def test_what_is_gathered_again_is_as_long_as_before_when_sewn() -> None:
    done = spread(number=4, opens="3 cm", across_opens="2 cm", across_taken_up="gather", from_distance="4 cm")
    waist = f"{FRONT}/waist"
    assert done.pattern.groups[waist].members == (f"{waist}/near", f"{waist}/gathered")
    assert sewn_length(done.pattern, waist) == pytest.approx(sewn_length(PLAIN, waist), abs=1e-9)
    (gather,) = done.pattern.pieces[FRONT].intakes
    assert (gather.kind, gather.edge) == ("gather", f"{waist}/gathered")
    assert gather.amount == pytest.approx(80.0, abs=0.5)


def test_slashes_at_places_of_their_own_open_each_as_it_says() -> None:
    places = [
        {"distance": "6 cm"},
        {"distance": "12 cm", "opens": "5 cm"},
        {"distance": "15 cm", "across_distance": "11 cm"},
    ]
    after = lengths(spread(places=places, opens="1 cm").pattern)
    assert after[f"{FRONT}/hem"] - lengths(PLAIN)[f"{FRONT}/hem"] == pytest.approx(70.0, abs=0.5)


def test_a_seam_put_out_of_true_is_told_until_it_is_taken_up() -> None:
    steps = (
        YOKE,
        (
            "slash_and_spread",
            "full",
            {
                "edge": "yoke.front_below/style_line",
                "from_point": "yoke.front_below/center_front_end",
                "across": f"{FRONT}/hem",
                "across_point": f"{FRONT}/hem_center",
                "number": 6,
                "opens": "2 cm",
                "across_opens": "2 cm",
            },
        ),
    )
    loose = run(with_steps(skirt_recipe(), *steps))
    seam = loose.pattern.seams["yoke/front_style_line"]
    assert [note.code for note in loose.notes if note.check == "slash_and_spread"] == [
        "fullness-not-taken-up"
    ]
    assert walk_seam(loose.pattern, seam).misfit == pytest.approx(120.0, abs=0.5)
    taken = (steps[0], (*steps[1][:2], {**steps[1][2], "taken_up": "gather"}))
    full = run(with_steps(skirt_recipe(), *taken))
    assert walk_seam(full.pattern, seam).misfit == pytest.approx(0.0, abs=1e-6)
    assert told(full) == []


def test_notches_stay_on_their_cloth() -> None:
    notch = ("zip_opening", "zip", {"edge": f"{BACK}/center_back", "from_point": f"{BACK}/waist_center"})
    across = {
        "edge": f"{BACK}/center_back",
        "from_point": f"{BACK}/hem_center",
        "across": f"{BACK}/side_seam",
        "across_point": f"{BACK}/hem_side",
        "places": [
            {"distance": "30 cm", "across_distance": "30 cm", "opens": "3 cm", "across_opens": "3 cm"}
        ],
    }
    plain = skirt_recipe(back_darts=0)
    before = run(with_steps(plain, notch)).pattern
    after = run(with_steps(plain, notch, ("slash_and_spread", "longer", across))).pattern
    hips = [found.notches["skirt.back/hip_notch"].place for found in (before, after)]
    assert hips[0].from_point == hips[1].from_point == f"{BACK}/waist_side"
    assert hips[0].amount == pytest.approx(hips[1].amount, abs=0.01)
    counted_up = {
        **across,
        "edge": f"{BACK}/side_seam",
        "from_point": f"{BACK}/waist_side",
        "across": f"{BACK}/center_back",
        "across_point": f"{BACK}/waist_center",
        "places": [
            {"distance": "10 cm", "across_distance": "10 cm", "opens": "3 cm", "across_opens": "3 cm"}
        ],
    }
    above = run(with_steps(plain, notch, ("slash_and_spread", "longer", counted_up))).pattern
    assert above.notches["skirt.back/hip_notch"].place.amount == pytest.approx(hips[0].amount + 30.0, abs=0.5)


def test_nothing_opened_changes_nothing() -> None:
    assert pattern_to_data(spread(opens="0 mm").pattern) == pattern_to_data(PLAIN)


def test_a_waistband_still_meets_the_waist_of_a_flared_front() -> None:
    done = run(with_steps(skirt_recipe(front_darts=0), spread_step(number=9, opens="2 cm"), WAISTBAND))
    for seam in done.pattern.seams.values():
        assert abs(walk_seam(done.pattern, seam).misfit) < 0.5, seam.name


def test_darts_go_with_their_strips() -> None:
    pattern = run(with_steps(skirt_recipe(front_darts=1), spread_step(number=5, opens="3 cm"))).pattern
    judge = Judge(pattern_to_data(pattern))
    plain = Judge(pattern_to_data(run(skirt_recipe(front_darts=1)).pattern))
    for found in (judge, plain):
        ((_, first, second),) = found.darts(FRONT)
        assert found.length(first) == pytest.approx(found.length(second), abs=1e-6)
    angles = []
    for found in (judge, plain):
        ((_, first, second),) = found.darts(FRONT)
        legs = found.edges[first], found.edges[second]
        angles.append(angle_between(legs[0][0] - legs[0][-1], legs[1][-1] - legs[1][0]))
    assert angles[0] == pytest.approx(angles[1], abs=1e-6)


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"across_point": f"{FRONT}/waist_side"}, "slash-ends-opposed"),
        ({"across": f"{BACK}/waist", "across_point": f"{BACK}/waist_center"}, "slash-between-pieces"),
        ({"from_distance": "10 cm", "to_distance": "5 cm"}, "slash-bounds"),
        ({"to_distance": "200 cm"}, "slash-bounds"),
        ({"places": [{"distance": "8 cm"}, {"distance": "6 cm"}]}, "slash-order"),
        ({"places": [{"distance": "0.05 mm"}]}, "cut-at-end"),
        ({"number": 1, "opens": "80 cm"}, "slash-opens-too-far"),
        ({"opens": "-1 cm"}, "amount-not-positive"),
        ({"edge": f"{FRONT}/brim"}, "name-lost"),
        (
            {
                "places": [
                    {"distance": "8 cm", "across_distance": "15 cm"},
                    {"distance": "16 cm", "across_distance": "5 cm"},
                ]
            },
            "slashes-cross",
        ),
    ],
)
def test_refusals(changes: dict[str, Any], code: str) -> None:
    assert stopped(with_steps(skirt_recipe(front_darts=0), spread_step(**changes))) == code


def test_along_the_grain_a_slash_must_meet_the_edge_across() -> None:
    sideways = {
        **HEM_UP,
        "edge": f"{FRONT}/center_front",
        "from_point": f"{FRONT}/hem_center",
        "across": f"{FRONT}/side_seam",
        "across_point": f"{FRONT}/hem_side",
        "run": "grain",
    }
    recipe = with_steps(skirt_recipe(front_darts=0), ("slash_and_spread", "spread", sideways))
    assert stopped(recipe) == "slash-misses-edge"


def test_a_slash_through_a_dart_is_refused() -> None:
    # On the far side of a dart 90 mm from the center, and on its near side at its point.
    through = spread_step(places=[{"distance": "1 cm", "across_distance": "9.3 cm"}])
    assert stopped(with_steps(skirt_recipe(front_darts=1), through)) == "slash-leaves-piece"
    assert stopped(with_steps(skirt_recipe(front_darts=0), through)) == ""
