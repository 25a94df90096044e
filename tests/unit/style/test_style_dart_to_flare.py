"""A dart closed into flare: its angle and every other length are kept."""

import numpy as np
import pytest

from notchbook.pattern import closed_path, pattern_to_data, sewn_length
from support.skirt_judge import Judge, angle_between, turns_both_ways
from support.yoke_skirt import BACK, FLARE, FRONT, YOKE, run, skirt_recipe, stopped, with_steps

PLAIN = run(skirt_recipe()).pattern
FLARED = run(with_steps(skirt_recipe(), FLARE)).pattern


def dart_angle(judge: Judge, piece: str) -> float:
    ((_, first, second),) = judge.darts(piece)
    return angle_between(
        judge.edges[first][0] - judge.edges[first][-1], judge.edges[second][-1] - judge.edges[second][0]
    )


def test_every_length_is_kept_but_that_of_the_hem() -> None:
    for name, edge in FLARED.edges.items():
        if name != f"{FRONT}/hem":
            assert edge.length == pytest.approx(PLAIN.edges[name].length, abs=1e-6), name
    assert FLARED.edges[f"{FRONT}/hem"].length > PLAIN.edges[f"{FRONT}/hem"].length + 50.0
    assert sewn_length(FLARED, f"{FRONT}/waist") == pytest.approx(
        sewn_length(PLAIN, f"{FRONT}/waist"), abs=1e-6
    )


def test_the_side_seam_turns_by_the_angle_of_the_dart() -> None:
    before, after = Judge(pattern_to_data(PLAIN)), Judge(pattern_to_data(FLARED))
    side = f"{FRONT}/side_seam"
    directions = [judge.edges[side][-1] - judge.edges[side][0] for judge in (before, after)]
    turned = angle_between(*directions)
    assert turned == pytest.approx(dart_angle(before, FRONT), abs=1e-6)
    assert turned > 5.0


def test_the_waist_is_that_of_the_closed_dart() -> None:
    closed = closed_path(PLAIN, f"{FRONT}/waist")
    flared = closed_path(FLARED, f"{FRONT}/waist")
    ends = [path.start.distance_to(path.end) for path in (closed, flared)]
    assert ends[0] == pytest.approx(ends[1], abs=1e-6)
    judge = Judge(pattern_to_data(FLARED))
    # No corner is left where the dart was: both parts run on.
    assert judge.corner(FRONT, "waist_dart/center_mouth") == pytest.approx(180.0, abs=0.2)


def test_the_hem_opens_by_the_angle_and_is_one_smooth_line_square_to_its_neighbors() -> None:
    judge = Judge(pattern_to_data(FLARED))
    assert not turns_both_ways(judge.edges[f"{FRONT}/hem"])
    for point in ("hem_center", "hem_side"):
        assert judge.corner(FRONT, point) == pytest.approx(90.0, abs=0.2)
    assert judge.polygon(FRONT).is_valid
    # The slash opens at the hem by the dart's angle (radians) times its length, up to the truing.
    plain = Judge(pattern_to_data(PLAIN))
    ((_, leg, _),) = plain.darts(FRONT)
    down = plain.edges[leg][-1][1] - plain.point(FRONT, "hem_side")[1]
    opened = FLARED.edges[f"{FRONT}/hem"].length - PLAIN.edges[f"{FRONT}/hem"].length
    assert opened == pytest.approx(down * np.radians(dart_angle(plain, FRONT)), rel=0.03)


def test_the_still_edge_does_not_move_and_the_other_may_be_chosen() -> None:
    assert FLARED.edges[f"{FRONT}/center_front"].path.start == PLAIN.edges[f"{FRONT}/center_front"].path.start
    other = run(
        with_steps(skirt_recipe(), (FLARE[0], "flare", {**FLARE[2], "still": f"{FRONT}/side_seam"}))
    ).pattern
    assert other.edges[f"{FRONT}/side_seam"].path.end == PLAIN.edges[f"{FRONT}/side_seam"].path.end
    assert other.pieces[FRONT].sew_line.area() == pytest.approx(FLARED.pieces[FRONT].sew_line.area(), abs=0.5)
    for name, edge in other.edges.items():
        assert edge.length == pytest.approx(FLARED.edges[name].length, abs=1e-3), name


def test_cloth_is_added_and_none_is_lost() -> None:
    assert FLARED.pieces[FRONT].sew_line.area() > PLAIN.pieces[FRONT].sew_line.area()
    assert FLARED.pieces[BACK] == PLAIN.pieces[BACK]


def test_two_darts_of_the_back_one_after_the_other() -> None:
    steps = [
        (
            "dart_to_flare",
            word,
            {"intake": f"{BACK}/waist_dart_{word}", "hem": f"{BACK}/hem", "still": f"{BACK}/center_back"},
        )
        for word in ("center", "side")
    ]
    pattern = run(with_steps(skirt_recipe(), *steps)).pattern
    assert pattern.pieces[BACK].intakes == ()
    assert sewn_length(pattern, f"{BACK}/waist") == pytest.approx(
        sewn_length(PLAIN, f"{BACK}/waist"), abs=1e-6
    )
    assert Judge(pattern_to_data(pattern)).polygon(BACK).is_valid


def flare(**changes: str) -> tuple[str, str, dict[str, str]]:
    return (FLARE[0], "flare", {**FLARE[2], **changes})


def test_refusals() -> None:
    assert stopped(with_steps(skirt_recipe(), flare(hem=f"{BACK}/hem"))) == "flare-hem-elsewhere"
    assert stopped(with_steps(skirt_recipe(), flare(hem=f"{FRONT}/side_seam"))) == "flare-misses-hem"
    assert stopped(with_steps(skirt_recipe(), flare(still=f"{BACK}/center_back"))) == "flare-still-elsewhere"
    assert stopped(with_steps(skirt_recipe(), flare(still=f"{FRONT}/hem"))) == "flare-still-elsewhere"
    assert stopped(with_steps(skirt_recipe(), flare(intake=f"{FRONT}/hem"))) == "name-lost"
    # After the yoke the hem is on another piece than the dart.
    assert (
        stopped(with_steps(skirt_recipe(), YOKE, flare(still=f"{FRONT}/center_front/above")))
        == "flare-hem-elsewhere"
    )
