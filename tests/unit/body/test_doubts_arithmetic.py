"""Cross-checks by arithmetic: each can find something, and keeps silent on a body that is so."""

from dataclasses import replace

import pytest

from notchbook.body import Doubt, Measure, MeasureSet, check_consistent, measure_table
from notchbook.units import LengthStyle

SOUND = {
    "bust_girth": 920.0, "waist_girth": 740.0, "hip_girth": 980.0, "front_bust_arc": 490.0,
    "front_waist_arc": 390.0, "front_hip_arc": 470.0, "neck_base_girth": 370.0, "shoulder_length": 128.0,
    "shoulder_width_back": 390.0, "shoulder_slope": 23.0, "back_waist_length": 405.0,
    "shoulder_point_to_center_waist": 424.0, "front_waist_length": 442.0, "center_front_length": 352.0,
    "arm_length": 585.0, "nape_to_wrist": 795.0, "trunk_loop": 1590.0, "crotch_length": 680.0,
    "front_crotch_length": 305.0, "back_crotch_length": 375.0, "outside_leg": 1050.0, "inside_leg": 785.0,
    "standing_rise": 265.0, "sitting_rise": 272.0,
}  # fmt: skip
"""An invented body that agrees with itself."""


def body(**changes: float) -> MeasureSet:
    return MeasureSet.from_mm("Invented", {**SOUND, **changes})


def only(*keys: str, **changes: float) -> MeasureSet:
    values = {**{key: SOUND[key] for key in keys}, **changes}
    return MeasureSet.from_mm("Invented", values)


def found(measures: MeasureSet, code: str) -> list[Doubt]:
    return [doubt for doubt in check_consistent(measures) if doubt.code == code]


def test_a_body_that_agrees_raises_no_doubt() -> None:
    assert check_consistent(body()) == ()


PARTS = [
    # key, the others, least and most that pass (mm), reckoned by hand from the table of the rule
    ("front_bust_arc", ("bust_girth",), 414, 598),
    ("front_waist_arc", ("waist_girth",), 310.8, 458.8),
    ("front_hip_arc", ("hip_girth",), 392, 588),
    ("nape_to_wrist", ("shoulder_width_back", "arm_length"), 740, 880),
    ("trunk_loop", ("front_waist_length", "back_waist_length", "crotch_length"), 1487, 1707),
    ("sitting_rise", ("standing_rise",), 235, 315),
    ("sitting_rise", ("outside_leg", "inside_leg"), 220, 325),
    ("back_crotch_length", ("crotch_length",), 299.2, 476),
    ("front_crotch_length", ("crotch_length",), 204, 380.8),
]


@pytest.mark.parametrize(("key", "others", "least", "most"), PARTS)
def test_a_measure_outside_what_its_parts_let_expect_is_asked_about(
    key: str, others: tuple[str, ...], least: float, most: float
) -> None:
    for value, asked in ((least - 1, True), (least + 1, False), (most - 1, False), (most + 1, True)):
        doubts = found(only(*others, **{key: value}), "measures-unlike-parts")
        assert bool(doubts) == asked, value
        assert all(doubt.level == "check" and key in doubt.keys for doubt in doubts)


def test_the_shoulders_and_the_neck_make_the_width() -> None:
    # Outside: circumference over pi is the diameter of a circle; 370 / pi = 117.8.
    straight = 2 * 128 + 117.8
    for value, asked in ((straight - 62, True), (straight - 58, False), (straight + 72, True)):
        doubts = found(
            only("shoulder_length", "neck_base_girth", shoulder_width_back=value), "measures-unlike-parts"
        )
        assert bool(doubts) == asked


def test_the_diagonal_checks_the_slope() -> None:
    keys = ("shoulder_width_back", "back_waist_length", "shoulder_length", "shoulder_slope")
    good = only(*keys, shoulder_point_to_center_waist=424)
    assert not found(good, "measures-unlike-parts")
    wrong = found(good.with_value("shoulder_point_to_center_waist", 470), "measures-unlike-parts")
    assert wrong and "slope" in wrong[0].problem.next_step()


def test_records_of_a_survey_are_not_held_against_our_ways_of_measuring() -> None:
    wrong = body(nape_to_wrist=950, center_front_length=300)
    assert found(wrong, "measures-unlike-parts") and found(wrong, "waists-apart")
    theirs = replace(wrong, taken_as="survey", waist_level="navel")
    assert not found(theirs, "measures-unlike-parts") and not found(theirs, "waists-apart")


@pytest.mark.parametrize(
    ("longer", "shorter", "mean", "deviation"),
    [
        # Source of the figures: own statistics of a published sample of 600 women.
        ("front_waist_length", "back_waist_length", 39, 13),
        ("front_waist_length", "center_front_length", 88, 8),
        ("back_waist_length", "center_front_length", 49, 13),
    ],
)
def test_front_and_back_must_end_at_one_waist(
    longer: str, shorter: str, mean: float, deviation: float
) -> None:
    for off, asked in ((0, False), (2.5, False), (-2.5, False), (2.7, True), (-2.7, True)):
        values = {longer: 400 + mean + off * deviation, shorter: 400.0}
        women = replace(MeasureSet.from_mm("Invented", values), population="women")
        assert bool(found(women, "waists-apart")) == asked, off
        assert not found(replace(women, population="men"), "waists-apart")
    # A back taken to the navel, 46 mm lower (ANSUR II), beside a front to the natural waist: 3.5 SD.
    navel = only(front_waist_length=440, back_waist_length=401 + 46.0)
    assert found(replace(navel, population="women"), "waists-apart")


def test_a_flat_bust_passes_where_nobody_said_whose_measures_these_are() -> None:
    flat = only(front_waist_length=400, back_waist_length=405)
    assert not found(flat, "waists-apart")
    assert found(replace(flat, population="women"), "waists-apart")


def test_left_and_right_far_apart_are_asked_about_and_never_stop() -> None:
    level = body().with_value("outside_leg", 1062, "left")
    assert not found(level, "sides-apart")
    apart = found(body().with_value("outside_leg", 1082, "left"), "sides-apart")
    assert [doubt.level for doubt in apart] == ["check"]
    assert apart[0].keys == ("outside_leg", "outside_leg@left")
    arm = MeasureSet.from_mm("A", {"upper_arm_girth@left": 290, "upper_arm_girth@right": 312})
    assert found(arm, "sides-apart")
    assert not found(arm.with_value("upper_arm_girth", 309, "right"), "sides-apart")
    slope = MeasureSet.from_mm("A", {"shoulder_slope@left": 20, "shoulder_slope@right": 25.5})
    assert found(slope, "sides-apart")


def test_swapped_digits_on_one_side_are_offered_and_a_body_that_is_so_gets_no_offer() -> None:
    slipped = MeasureSet.from_mm("A", {"hip_depth@left": 193, "hip_depth@right": 139})
    repairs = found(slipped, "sides-apart")[0].repairs
    assert {repair.slip for repair in repairs} == {"swapped-digits"}
    assert {repair.values for repair in repairs} >= {(("hip_depth@right", 193.0),)}
    so = MeasureSet.from_mm("A", {"hip_depth@left": 187, "hip_depth@right": 204})
    assert found(so, "sides-apart")[0].repairs == ()


def test_readings_apart_are_asked_about_beyond_the_repeat_of_the_tape() -> None:
    for key, entry in measure_table().items():
        if not entry.is_length:
            continue
        middle = (entry.usual[0] + entry.usual[1]) / 2
        for spread, asked in ((entry.repeat - 0.5, False), (entry.repeat + 0.5, True)):
            taken = Measure.of_readings((middle, middle + spread))
            assert bool(found(MeasureSet("A", {key: taken}), "readings-apart")) == asked, key


def test_the_repeat_of_the_tape_is_that_of_the_trade() -> None:
    # Common practice, no source: 1 cm for a girth, half a centimeter for a length.
    assert measure_table()["bust_girth"].repeat == 10
    assert measure_table()["back_waist_length"].repeat == 5


def test_the_words_use_the_readers_unit() -> None:
    doubt = found(body().with_value("outside_leg", 1082, "left"), "sides-apart")[0]
    assert "108.2 cm" in doubt.problem.text()
    inches = check_consistent(body().with_value("outside_leg", 1082, "left"), LengthStyle("in"))
    assert any('42 5/8"' in one.problem.text() for one in inches)
