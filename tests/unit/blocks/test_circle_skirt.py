"""The circle skirt: closed forms on the finished outline, panels, what it refuses and what it says."""

from math import pi
from typing import Any

import numpy as np
import pytest

from notchbook.app.examining import examine, subject_of
from notchbook.body import MeasureSet
from notchbook.checks import closures
from notchbook.pattern import Finding, Severity, pattern_to_data
from support.joined_blocks import drafted, stopped
from support.round_skirt_judge import RingWanted, RoundJudge, circle_closures
from support.skirt_judge import moved_end
from support.yoke_skirt import body

EN_88 = body(720.0, 960.0, 205.0)
CHILD, PLUS = body(540.0, 600.0, 130.0), body(1120.0, 1320.0, 215.0)
STOUT, DROP_35 = body(1200.0, 1080.0, 200.0), body(650.0, 1000.0, 205.0)
SHARES = {"full": 1.0, "three_quarter": 0.75, "half": 0.5, "quarter": 0.25}


def notes(measures: MeasureSet, **parameters: Any) -> dict[str, Finding]:
    return {note.code: note for note in drafted("circle_skirt", measures, **parameters).notes}


@pytest.mark.parametrize("panels", ["two", "three", "four"])
@pytest.mark.parametrize("fullness", SHARES)
def test_waist_hem_area_and_corners_come_out(fullness: str, panels: str) -> None:
    done = drafted("circle_skirt", EN_88, fullness=fullness, panels=panels)
    wanted = RingWanted(735.0, SHARES[fullness], 600.0)
    assert [one.name for one in circle_closures(pattern_to_data(done.pattern), wanted) if not one.holds] == []
    assert [one.name for one in closures(subject_of(done)) if not one.agrees] == []
    assert examine(done).findings == done.notes


@pytest.mark.parametrize("fullness", ["three_quarter", "half", "quarter"])
def test_a_skirt_in_one_piece_comes_out_too(fullness: str) -> None:
    done = drafted("circle_skirt", EN_88, fullness=fullness, panels="one")
    wanted = RingWanted(735.0, SHARES[fullness], 600.0)
    assert [one.name for one in circle_closures(pattern_to_data(done.pattern), wanted) if not one.holds] == []
    assert [one.name for one in closures(subject_of(done)) if not one.agrees] == []
    assert examine(done).findings == done.notes
    assert list(done.pattern.pieces) == ["circle_skirt.skirt"]
    assert "circle_skirt/center_back" in done.pattern.seams


def test_a_fault_in_the_waist_is_caught_by_both_judges() -> None:
    done = drafted("circle_skirt", EN_88)
    data = moved_end(pattern_to_data(done.pattern), "circle_skirt.front/waist", 0.0, 0.3)
    found = [one.name for one in circle_closures(data, RingWanted(735.0, 0.5, 600.0)) if not one.holds]
    assert "waist" in found


def test_the_waist_is_true_to_a_thousandth_of_a_millimeter() -> None:
    # Outside: the length of an arc is radius times angle; numpy's chords measure what was drawn.
    for share in (0.05, 0.37, 1.0, 1.7):
        judge = RoundJudge(
            pattern_to_data(drafted("circle_skirt", EN_88, own_share=share, panels="four").pattern)
        )
        assert judge.whole("waist") == pytest.approx(735.0, abs=1e-3)
        assert judge.whole("hem") == pytest.approx(735.0 + 2.0 * pi * share * 600.0, abs=5e-3)


@pytest.mark.parametrize(
    ("panels", "pieces", "seams"),
    [
        ("one", {"skirt": "fold"}, {"center_back"}),
        ("two", {"front": "fold", "back": "fold"}, {"side_seam"}),
        ("three", {"front": "fold", "back": "pair"}, {"side_seam", "center_back"}),
        ("four", {"front": "pair", "back": "pair"}, {"side_seam", "center_front", "center_back"}),
    ],
)
def test_panels_are_cut_and_sewn_as_they_say(panels: str, pieces: dict[str, str], seams: set[str]) -> None:
    pattern = drafted("circle_skirt", EN_88, panels=panels).pattern
    assert {name.split(".")[1]: piece.cut for name, piece in pattern.pieces.items()} == pieces
    assert {name.split("/")[1] for name in pattern.seams} == seams


def test_a_piece_that_meets_itself_is_refused_and_four_panels_are_not() -> None:
    assert stopped("circle_skirt", EN_88, fullness="full", panels="one") == "circle-piece-meets-itself"
    assert stopped("circle_skirt", EN_88, own_share=2.0) == "circle-piece-meets-itself"
    double = drafted("circle_skirt", EN_88, own_share=2.0, panels="four")
    assert [one.name for one in closures(subject_of(double)) if not one.agrees] == []


def test_refusals_say_what_is_wrong() -> None:
    assert stopped("circle_skirt", EN_88, waist_stretch="-1 cm") == "circle-stretch-negative"
    assert stopped("circle_skirt", EN_88, waist_ease="-80 cm") == "skirt-waist-nothing"
    assert stopped("circle_skirt", EN_88, length="0 cm") == "amount-not-positive"
    assert stopped("circle_skirt", MeasureSet.from_mm("B", {"hip_girth": 900.0})) == "measure-missing"


def test_the_hip_safe_share_of_the_reference_body() -> None:
    # Closed form, published with its figures: waist 690, hip 970 with ease, hip depth 206 gives .216.
    found = notes(body(690.0, 970.0, 206.0), waist_ease="0 mm", hip_ease="0 mm", own_share=0.2)
    (cure,) = found["skirt-level-does-not-close"].cures
    assert (cure.step, cure.parameter) == ("circle_skirt", "own_share")
    assert cure.value == pytest.approx(0.216, abs=0.0011)


def test_the_least_share_passes_the_hip_and_a_smaller_one_does_not() -> None:
    tight = notes(EN_88, own_share=0.2)["skirt-level-tight"]
    assert tight.severity is Severity.LOOK
    (cure,) = tight.cures
    assert not {"skirt-level-tight", "skirt-level-does-not-close"} & set(notes(EN_88, own_share=cure.value))
    assert "skirt-level-tight" in notes(EN_88, own_share=cure.value - 0.002)
    assert notes(EN_88, own_share=0.1)["skirt-level-does-not-close"].severity is Severity.STOP


def test_a_belly_and_a_high_hip_are_looked_at_too() -> None:
    full = MeasureSet.from_mm("B", {"waist_girth": 900.0, "belly_girth": 1100.0, "belly_depth": 60.0})
    assert "skirt-level-does-not-close" in notes(full, fullness="quarter")
    high = body(720.0, 960.0, 205.0, top_hip_girth=930.0)
    assert "skirt-level-does-not-close" in notes(high, fullness="quarter")


def test_without_the_hip_it_is_drafted_and_said() -> None:
    waist_only = MeasureSet.from_mm("B", {"waist_girth": 720.0})
    assert "skirt-hip-not-looked-at" in notes(waist_only)
    assert "skirt-hip-not-looked-at" not in notes(EN_88)


def test_a_waist_without_an_opening_must_pass_the_hip() -> None:
    stuck = notes(EN_88, opening="none")["waist-does-not-pass-hip"]
    assert (stuck.measured, stuck.wanted, stuck.severity) == (735.0, 960.0, Severity.STOP)
    (cure,) = stuck.cures
    assert cure.added
    assert cure.value == 225.0
    assert "waist-does-not-pass-hip" not in notes(EN_88, opening="none", waist_ease="240 mm")


def test_a_waist_that_stretches_is_drafted_smaller_and_said() -> None:
    done = drafted("circle_skirt", EN_88, waist_stretch="2 cm")
    judge = RoundJudge(pattern_to_data(done.pattern))
    assert judge.whole("waist") == pytest.approx(715.0, abs=1e-3)
    assert [note.measured for note in done.notes if note.code == "waist-drafted-smaller"] == [20.0]


def test_bias_wide_cloth_and_the_floor_are_said() -> None:
    assert "bias-hangs-out" in notes(EN_88, fullness="full")
    assert "bias-hangs-out" not in notes(EN_88, fullness="quarter")
    wide = notes(EN_88, fullness="half", length="85 cm", panels="two")
    assert "piece-wider-than-cloth" in wide
    assert wide["piece-wider-than-cloth"].cures[0].value == "four"
    assert "piece-wider-than-cloth" not in notes(EN_88, fullness="half", length="85 cm", panels="four")
    assert "skirt-on-the-floor" in notes(EN_88, length="130 cm")


def test_the_width_that_is_said_is_that_of_the_piece_as_it_lies() -> None:
    done = drafted("circle_skirt", EN_88, own_share=0.6, length="90 cm", panels="two")
    (said, _) = [note.measured for note in done.notes if note.code == "piece-wider-than-cloth"]
    points = np.concatenate(
        [edge for name, edge in RoundJudge(pattern_to_data(done.pattern)).edges.items() if ".front/" in name]
    )
    assert said == pytest.approx(2.0 * np.ptp(points[:, 0]), abs=0.1)


@pytest.mark.parametrize("panels", ["one", "two", "three", "four"])
def test_two_sides_meet(panels: str) -> None:
    uneven = EN_88.with_value("waist_girth", 700.0, "left").with_value("hip_depth", 195.0, "left")
    done = drafted("circle_skirt", uneven, panels=panels)
    assert [one.name for one in closures(subject_of(done)) if not one.agrees] == []
    waist = next(promise for promise in done.expectations if promise.measure == "waist_girth")
    assert waist.wanted == pytest.approx((735.0 + 715.0) / 2.0)


@pytest.mark.parametrize(
    "measures",
    [CHILD, PLUS, STOUT, DROP_35],
    ids=["child", "plus", "waist over hip", "drop 35"],
)
def test_every_body_comes_out(measures: MeasureSet) -> None:
    done = drafted("circle_skirt", measures, length="40 cm")
    wanted = RingWanted(measures.value("waist_girth") + 15.0, 0.5, 400.0)
    assert [one.name for one in circle_closures(pattern_to_data(done.pattern), wanted) if not one.holds] == []
