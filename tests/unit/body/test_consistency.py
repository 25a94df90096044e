"""Doubts about a set of measures: each rule can find something, and none cries wolf."""

import pytest

from notchbook.body import MeasureSet, check_consistent, likely_slips, measure_entry, refuse_inconsistent
from notchbook.errors import InputError
from notchbook.units import LengthStyle

SOUND = {
    "height": 1680.0, "head_girth": 560.0, "neck_girth": 330.0, "neck_base_girth": 370.0,
    "shoulder_length": 130.0, "shoulder_slope": 22.0, "shoulder_width_back": 390.0,
    "front_bust_arc": 500.0, "front_waist_arc": 390.0, "front_hip_arc": 470.0,
    "bust_girth": 920.0, "under_bust_girth": 780.0, "waist_girth": 740.0, "belly_girth": 850.0,
    "hip_girth": 980.0, "back_waist_length": 405.0, "front_waist_length": 430.0,
    "neck_to_bust_point": 270.0, "bust_point_width": 190.0, "scye_depth": 205.0,
    "nape_to_wrist": 790.0, "upper_arm_girth": 285.0, "wrist_girth": 158.0, "hand_girth": 205.0,
    "arm_length": 585.0, "elbow_length": 335.0, "hip_depth": 205.0, "knee_depth": 590.0,
    "outside_leg": 1050.0, "standing_rise": 265.0, "inside_leg": 785.0, "crotch_length": 680.0,
    "front_crotch_length": 310.0, "back_crotch_length": 370.0, "thigh_girth": 580.0,
    "knee_girth": 370.0, "calf_girth": 360.0, "ankle_girth": 225.0, "heel_girth": 315.0, "weight": 64.0,
}  # fmt: skip
"""An invented body that agrees with itself."""


def body(**changes: float) -> MeasureSet:
    return MeasureSet.from_mm("Invented", {**SOUND, **changes})


def codes(measures: MeasureSet, level: str) -> set[str]:
    return {doubt.code for doubt in check_consistent(measures) if doubt.level == level}


def test_a_sound_body_raises_no_doubt() -> None:
    assert check_consistent(body()) == ()
    refuse_inconsistent(body())


ORDER_STOPS = [
    ("outside_leg", "height"),
    ("inside_leg", "outside_leg"),
    ("hip_depth", "knee_depth"),
    ("knee_depth", "outside_leg"),
    ("elbow_length", "arm_length"),
    ("arm_length", "nape_to_wrist"),
    ("front_bust_arc", "bust_girth"),
    ("front_waist_arc", "waist_girth"),
    ("front_hip_arc", "hip_girth"),
    ("bust_point_width", "front_bust_arc"),
    ("neck_to_bust_point", "front_waist_length"),
    ("scye_depth", "back_waist_length"),
    ("front_crotch_length", "crotch_length"),
    ("back_crotch_length", "crotch_length"),
    ("ankle_girth", "calf_girth"),
    ("wrist_girth", "upper_arm_girth"),
    ("shoulder_length", "shoulder_width_back"),
]
ORDER_CHECKS = [
    ("hip_depth", "standing_rise"),
    ("neck_girth", "neck_base_girth"),
    ("under_bust_girth", "bust_girth"),
    ("waist_girth", "belly_girth"),
    ("knee_girth", "thigh_girth"),
    ("ankle_girth", "heel_girth"),
    ("wrist_girth", "hand_girth"),
]


@pytest.mark.parametrize(("smaller", "larger"), ORDER_STOPS + ORDER_CHECKS)
def test_a_pair_in_the_wrong_order_is_found(smaller: str, larger: str) -> None:
    measures = MeasureSet.from_mm("Invented", {smaller: SOUND[larger] + 1, larger: SOUND[larger]})
    level = "stop" if (smaller, larger) in ORDER_STOPS else "check"
    found = [doubt for doubt in check_consistent(measures) if doubt.code == "measures-disagree"]
    assert [(doubt.level, doubt.keys) for doubt in found] == [(level, (smaller, larger))]
    assert measure_entry(smaller).label in found[0].problem.text()


def test_equal_values_stop_where_one_is_a_part_of_the_other_and_pass_elsewhere() -> None:
    for smaller, larger in ORDER_STOPS + ORDER_CHECKS:
        same = SOUND[larger]
        measures = MeasureSet.from_mm("Invented", {smaller: same, larger: same})
        found = [doubt for doubt in check_consistent(measures) if doubt.code == "measures-disagree"]
        assert bool(found) == ((smaller, larger) in ORDER_STOPS), (smaller, larger)


def test_a_hip_far_below_the_waist_stops() -> None:
    assert "hip-too-small" in codes(body(waist_girth=1000, hip_girth=699, front_hip_arc=300), "stop")
    assert "hip-too-small" not in codes(body(waist_girth=1000, hip_girth=701, front_hip_arc=300), "stop")
    with pytest.raises(InputError, match="hip-too-small"):
        refuse_inconsistent(body(waist_girth=1000, hip_girth=699, front_hip_arc=300))


def test_a_waist_over_the_hip_is_asked_about_and_passes() -> None:
    measures = body(waist_girth=1000, hip_girth=980, belly_girth=1050, front_waist_arc=520)
    assert codes(measures, "check") == {"waist-over-hip"}
    refuse_inconsistent(measures)


def test_parts_that_do_not_make_the_whole_are_asked_about() -> None:
    assert codes(body(back_crotch_length=391), "check") == {"measures-sum"}
    assert codes(body(back_crotch_length=390), "check") == set()
    assert codes(body(standing_rise=290), "check") == {"measures-sum"}


def test_each_side_is_judged_on_its_own() -> None:
    measures = body().with_value("hip_depth", 600, "left")
    found = [doubt for doubt in check_consistent(measures) if doubt.code == "measures-disagree"]
    assert ("hip_depth@left", "knee_depth@left") in {doubt.keys for doubt in found}
    assert all("right" not in doubt.problem.text() for doubt in found)


def test_impossible_values_stop_and_come_first() -> None:
    doubts = check_consistent(body(waist_girth=70, height=2000))
    assert [doubt.level for doubt in doubts] == sorted((doubt.level for doubt in doubts), reverse=True)
    assert doubts[0].code == "measure-impossible"
    assert "70.0 cm would be usual" in doubts[0].problem.next_step()
    assert "measure-unusual" in {doubt.code for doubt in doubts}


def test_limits_belong_to_the_possible() -> None:
    low, high = measure_entry("waist_girth").possible
    for value in (low, high):
        assert "measure-impossible" not in codes(MeasureSet.from_mm("A", {"waist_girth": value}), "stop")
    for value in (low - 0.1, high + 0.1):
        assert "measure-impossible" in codes(MeasureSet.from_mm("A", {"waist_girth": value}), "stop")


def test_angles_and_weights_are_judged_in_their_own_units() -> None:
    found = check_consistent(body(shoulder_slope=60, weight=500))
    words = " ".join(doubt.problem.text() for doubt in found if doubt.level == "stop")
    assert "60.0°" in words
    assert "500.0 kg" in words


def test_what_was_probably_meant_is_offered_in_the_unit_of_the_typist() -> None:
    hip = measure_entry("hip_girth")
    assert [round(slip.value) for slip in likely_slips(hip, 370, "cm")] == [940]
    assert [slip.value for slip in likely_slips(hip, 9530, "cm")] == [953]
    assert [slip.value for slip in likely_slips(hip, 95.3, "mm")] == [953]
    assert [round(slip.value) for slip in likely_slips(hip, 98 * 25.4, "in")] == [980]
    assert [round(slip.value) for slip in likely_slips(hip, 980 * 25.4, "in")] == [980]
    assert likely_slips(hip, 960, "cm") == ()
    assert likely_slips(measure_entry("weight"), 640, "cm") == ()
    found = check_consistent(MeasureSet.from_mm("A", {"hip_girth": 2489.2}), LengthStyle("in"))
    assert "were centimeters typed where inches are wanted?" in found[0].problem.next_step()


def test_a_slip_of_five_centimeters_in_the_bust_is_not_claimed_to_be_seen() -> None:
    """It cannot be told from a body (own statistics on the ANSUR II survey): measure twice instead."""
    for change in (-50, 50):
        assert check_consistent(body(bust_girth=920 + change)) == ()


def test_the_words_of_a_doubt_use_the_readers_unit() -> None:
    doubt = check_consistent(body(waist_girth=1000, hip_girth=980, belly_girth=1050, front_waist_arc=520))[0]
    assert "100.0 cm" in doubt.problem.text(LengthStyle("cm").text)
    assert '39 3/8"' in doubt.problem.text(LengthStyle("in").text)
