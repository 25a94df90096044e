"""Darts that end on a style line or cross it: closed where they open, and no cloth gained or lost.

Outside: numpy and shapely measure the stored data. That a yoke takes the darts in and keeps the waist is a
fact of the trade (common practice); the dart's angle is kept when it closes (plane geometry).
"""

import numpy as np
import pytest

from notchbook.app.examining import examine
from notchbook.pattern import Severity, sewn_length, walk_seam
from notchbook.recipe import Replay
from support.skirt_judge import Points
from support.style_lines import (
    BACK,
    EMPIRE,
    FRONT,
    SKIRT_BACK,
    SKIRT_FRONT,
    WOMAN,
    bodice_with,
    code,
    good,
    hip_yoke,
    judge,
    place,
    skirt_with,
)
from support.yoke_skirt import FORM_A

PLAIN = good(skirt_with(measures=FORM_A))
YOKE = skirt_with(("cut_style_line", "yoke", hip_yoke()), measures=FORM_A)
RESTS = skirt_with(("cut_style_line", "yoke", hip_yoke("stays", "6 cm", "7 cm")), measures=FORM_A)


def waist(panel: str) -> float:
    return sewn_length(PLAIN, f"{panel}/waist")


@pytest.mark.parametrize("done", [YOKE, RESTS], ids=["none", "stays"])
def test_the_waist_keeps_its_length_and_the_yoke_has_no_dart(done: Replay) -> None:
    pattern = good(done)
    for panel, word in ((SKIRT_FRONT, "front"), (SKIRT_BACK, "back")):
        yoke = pattern.pieces[f"yoke.{word}_above"]
        assert yoke.intakes == ()
        assert sewn_length(pattern, f"{panel}/waist") == pytest.approx(waist(panel), abs=0.01)
        measured = judge(pattern).length(*judge(pattern).named(yoke.name, "waist"))
        on_yoke = [edge.name for edge in yoke.outline if "/waist/" in edge.name]
        assert judge(pattern).length(*on_yoke) == pytest.approx(waist(panel), abs=0.01)
        assert measured == 0.0  # the waist keeps its old names


def test_both_sides_of_the_yoke_seam_are_equally_long_and_fair() -> None:
    for done in (YOKE, RESTS):
        pattern = good(done)
        for word in ("front", "back"):
            walk = walk_seam(pattern, pattern.seams[f"yoke/{word}_style_line"])
            assert walk.misfit == pytest.approx(0.0, abs=0.01)
            assert all(abs((stop.first or 0.0) - (stop.second or 0.0)) < 0.01 for stop in walk.stations)
        worst = [f for f in examine(done, cut=False).findings if f.severity is not Severity.NOTE]
        assert [finding.code for finding in worst] == []


def test_the_names_of_closed_darts_are_accounted_for() -> None:
    pattern = good(YOKE)
    dart = f"{SKIRT_FRONT}/waist_dart"
    for gone in (dart, f"{dart}/center_leg", f"{dart}/side_leg", f"{dart}/point"):
        assert gone not in pattern.index
        assert pattern.fates[gone].kind == "removed"
        assert pattern.fates[gone].by == "cut_style_line-1"
    mouths = [f"{dart}/center_mouth", f"{dart}/side_mouth"]
    (living,) = [mouth for mouth in mouths if mouth in pattern.index]
    (merged,) = [mouth for mouth in mouths if mouth not in pattern.index]
    assert pattern.fates[merged].into == (living,)


def test_the_rest_of_a_dart_opens_from_the_line_under_its_old_name() -> None:
    pattern = good(RESTS)
    below = pattern.pieces["yoke.back_below"]
    assert {dart.name for dart in below.intakes} == {
        f"{SKIRT_BACK}/waist_dart_center",
        f"{SKIRT_BACK}/waist_dart_side",
    }
    assert all(dart.mouth == "yoke.back_below/style_line" for dart in below.intakes)
    assert pattern.groups["yoke.back_below/style_line"].members == tuple(
        f"yoke.back_below/style_line/{role}" for role in ("side", "middle", "center")
    )


def test_the_rest_keeps_the_angle_of_the_dart_and_its_legs_are_even() -> None:
    before, after = judge(PLAIN), judge(good(RESTS))
    for panel in (SKIRT_FRONT, SKIRT_BACK):
        for name, first, second in before.darts(panel):
            old = _angle(before.edges[first], before.edges[second])
            assert _angle(after.edges[first], after.edges[second]) == pytest.approx(old, abs=1e-6), name
            assert after.length(first) == pytest.approx(after.length(second), abs=1e-6)
            assert after.length(first) < before.length(first)


def _angle(first: Points, second: Points) -> float:
    one, two = first[0] - first[-1], second[-1] - second[0]
    return float(np.degrees(np.arccos(one @ two / np.linalg.norm(one) / np.linalg.norm(two))))


def test_a_rest_costs_no_cloth() -> None:
    """Closing is rigid: both parts together have the area of the piece, but for trued corners at the
    waist."""
    before, after = judge(PLAIN), judge(good(RESTS))
    for panel, word in ((SKIRT_FRONT, "front"), (SKIRT_BACK, "back")):
        parts = [after.polygon(f"yoke.{word}_{role}") for role in ("above", "below")]
        assert all(part.is_valid for part in parts)
        assert sum(part.area for part in parts) == pytest.approx(before.polygon(panel).area, abs=25.0)


def test_the_side_seam_stays_true_and_smooth_across_the_yoke() -> None:
    pattern = good(YOKE)
    walk = walk_seam(pattern, pattern.seams["skirt/side_seam"])
    assert walk.misfit == pytest.approx(0.0, abs=0.01)
    assert [stop.notch for stop in walk.stations] == ["hip_notch"]
    assert pattern.groups[f"{SKIRT_FRONT}/side_seam"].members == (
        f"{SKIRT_FRONT}/side_seam/above",
        f"{SKIRT_FRONT}/side_seam/below",
    )


def test_what_keeps_its_grain_lies_still() -> None:
    """A fold always does; on a pair the end that is told."""
    for keeps in ("start", "end"):
        told = hip_yoke()
        for line in told["lines"]:
            line["keeps_grain"] = keeps
        pattern = good(skirt_with(("cut_style_line", "yoke", told), measures=FORM_A))
        center = pattern.edges[f"{SKIRT_FRONT}/center_front/above"].path
        assert center.start.x == pytest.approx(0.0, abs=1e-9)
        assert center.end.x == pytest.approx(0.0, abs=1e-9)
        back = pattern.edges[f"{SKIRT_BACK}/center_back/above"].path
        assert (abs(back.start.x - back.end.x) < 1e-9) is (keeps == "end")


def test_a_seam_under_the_bust_closes_the_darts_below_and_leaves_them_above() -> None:
    done = bodice_with(("cut_style_line", "empire", EMPIRE))
    pattern = good(done)
    assert pattern.pieces["empire.front_below"].intakes == ()
    assert [dart.name for dart in pattern.pieces["empire.front_above"].intakes] == [
        f"{FRONT}/waist_dart",
        f"{FRONT}/bust_dart",
    ]
    plain = good(bodice_with())
    for panel in (FRONT, BACK):
        wanted = sewn_length(plain, f"{panel}/waist")
        assert sewn_length(pattern, f"{panel}/waist") == pytest.approx(wanted, abs=0.01)
    assert [f.code for f in examine(done, cut=False).findings if f.severity is Severity.STOP] == []


def test_a_back_yoke_takes_the_shoulder_dart_in() -> None:
    line = {
        "start": place(f"{BACK}/armhole", f"{BACK}/shoulder_point", 0.5),
        "end": place(f"{BACK}/center_back", f"{BACK}/nape", "12 cm"),
        "darts": [{"intake": f"{BACK}/shoulder_dart"}],
        "shape": "even",
    }
    done = bodice_with(("cut_style_line", "yoke", {"lines": [line]}))
    pattern = good(done)
    assert pattern.pieces["yoke.back_above"].intakes == ()
    assert len(pattern.pieces["yoke.back_below"].intakes) == 2
    assert walk_seam(pattern, pattern.seams["bodice/shoulder"]).misfit == pytest.approx(0.0, abs=0.1)
    assert not {"edge-wavers", "edge-bumpy", "edge-kinked"} & {
        finding.code for finding in examine(done, cut=False).findings
    }


def _yoke_dart(**dart: str) -> str:
    line = {**hip_yoke()["lines"][0], "darts": [dart]}
    return code(skirt_with(("cut_style_line", "yoke", {"lines": [line]}), measures=FORM_A))


def test_darts_that_cannot_be_closed_at_the_line_are_refused() -> None:
    assert _yoke_dart(intake=f"{SKIRT_BACK}/waist_dart_side") == "dart-on-other-piece"
    assert _yoke_dart(intake=f"{SKIRT_FRONT}/waist_dart", rest="stays") == "dart-not-crossed"
    assert _yoke_dart(intake=f"{SKIRT_FRONT}/side_seam") == "name-lost"
    beside = {
        "start": place(
            f"{SKIRT_FRONT}/waist", f"{SKIRT_FRONT}/waist_side", "4 cm", part=f"{SKIRT_FRONT}/waist/side"
        ),
        "end": place(f"{SKIRT_FRONT}/side_seam", f"{SKIRT_FRONT}/waist_side", "40 cm"),
        "darts": [{"intake": f"{SKIRT_FRONT}/waist_dart"}],
    }
    assert code(skirt_with(("cut_style_line", "yoke", {"lines": [beside]}), measures=FORM_A)) == (
        "dart-misses-line"
    )


def test_a_dart_that_is_not_told_and_lies_in_the_way_is_lost() -> None:
    told = hip_yoke("none", "6 cm", "7 cm")
    told["lines"][1]["darts"] = told["lines"][1]["darts"][:1]
    stopped = skirt_with(("cut_style_line", "yoke", told), measures=FORM_A)
    assert code(stopped) == "style-line-crosses"
    assert list(stopped.pattern.pieces) == [SKIRT_FRONT, SKIRT_BACK]


def test_a_line_across_darts_of_both_sides_is_refused() -> None:
    """A level line through the waist darts and the shoulder dart of a back: they open on both sides."""
    line = {
        "start": place(f"{BACK}/armhole", f"{BACK}/shoulder_point", "15 mm"),
        "end": place(f"{BACK}/center_back", f"{BACK}/nape", "5 cm"),
        "shape": "straight",
        "darts": [
            {"intake": f"{BACK}/shoulder_dart", "rest": "stays"},
            {"intake": f"{BACK}/waist_dart_center", "rest": "stays"},
        ],
    }
    stopped = bodice_with(("cut_style_line", "yoke", {"lines": [line]}), measures=WOMAN)
    assert code(stopped) == "darts-on-both-sides"


def test_a_yoke_takes_an_eased_shoulder_with_it() -> None:
    eased = ("convert_dart", "eased", {"darts": [f"{BACK}/shoulder_dart"], "into": "ease", "beside": "3 cm"})
    line = {
        "start": place(f"{BACK}/armhole", f"{BACK}/shoulder_point", "8 cm"),
        "end": place(f"{BACK}/center_back", f"{BACK}/nape", "10 cm"),
    }
    pattern = good(bodice_with(eased, ("cut_style_line", "yoke", {"lines": [line]})))
    assert [one.name for one in pattern.pieces["yoke.back_above"].intakes] == [f"{BACK}/shoulder_dart"]
    assert f"{BACK}/shoulder_dart" not in [one.name for one in pattern.pieces["yoke.back_below"].intakes]
