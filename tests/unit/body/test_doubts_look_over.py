"""Looking over a set: what is named, what is offered, and what is left in peace."""

from dataclasses import replace

import numpy as np
import pytest

from notchbook.body import Doubt, LookedOver, Measure, MeasureSet, look_over, measure_entry
from notchbook.body.doubts.together import together
from notchbook.body.population import population
from notchbook.units import LengthStyle, Unit

VALUES = {
    "height": 1680.0, "neck_base_girth": 365.0, "shoulder_length": 123.0, "shoulder_width_back": 385.0,
    "across_back": 350.0, "bust_girth": 920.0, "waist_girth": 740.0, "hip_girth": 980.0,
    "back_waist_length": 400.0, "front_waist_length": 438.0, "center_front_length": 350.0,
    "neck_to_bust_point": 275.0, "bust_point_width": 185.0, "arm_length": 580.0, "upper_arm_girth": 285.0,
    "wrist_girth": 155.0, "hip_depth": 200.0, "knee_depth": 590.0, "outside_leg": 1048.0,
    "standing_rise": 262.0, "inside_leg": 785.0, "crotch_length": 690.0, "thigh_girth": 575.0,
    "calf_girth": 362.0, "ankle_girth": 218.0,
}  # fmt: skip
"""An invented woman who agrees with herself."""

SOUND = replace(MeasureSet.from_mm("Invented", VALUES), population="women")
CM = LengthStyle("cm")


def changed(**values: float) -> MeasureSet:
    return replace(MeasureSet.from_mm("Invented", {**VALUES, **values}), population="women")


def codes(looked: LookedOver) -> set[str]:
    return {doubt.code for doubt in looked.doubts}


def named(looked: LookedOver, code: str) -> Doubt:
    found = [doubt for doubt in looked.doubts if doubt.code == code]
    assert len(found) == 1, [doubt.code for doubt in looked.doubts]
    return found[0]


def repair(doubt: Doubt) -> tuple[str, dict[str, float]]:
    assert len(doubt.repairs) == 1, doubt.repairs
    return doubt.repairs[0].slip, {key: round(value, 1) for key, value in doubt.repairs[0].values}


def test_a_body_that_agrees_is_fine_and_nothing_is_said() -> None:
    looked = look_over(SOUND, CM)
    assert (looked.level, looked.doubts, looked.not_held) == ("fine", (), None)
    assert looked.population == "women" and "ANSUR II" in looked.population_words
    assert "not a civilian population" in looked.population_words
    assert len(looked.standings) == len(VALUES)
    assert looked.worst is not None and abs(looked.worst.z) < 2


SLIPS: list[tuple[str, float, Unit, str, float]] = [
    ("bust_girth", 920 / 2.54, "cm", "other-unit", 920),
    ("ankle_girth", 218 * 2.54, "in", "other-unit", 218),
    ("outside_leg", 1408, "cm", "swapped-digits", 1048),
    ("thigh_girth", 575 / 2.54, "mm", "other-unit", 575),
    ("inside_leg", 875, "cm", "swapped-digits", 785),
    ("height", 1860, "cm", "swapped-digits", 1680),
    ("arm_length", 480, "cm", "tape-by-ten", 580),
    ("calf_girth", 36.2, "mm", "decimal-sign", 362),
    ("thigh_girth", 287.5, "cm", "half", 575),
    ("shoulder_width_back", 192.5, "cm", "half", 385),
    ("knee_depth", 690, "cm", "tape-by-ten", 590),
]


@pytest.mark.parametrize(("key", "value", "unit", "slip", "meant"), SLIPS)
def test_a_slip_is_named_and_the_repaired_value_offered_but_not_applied(
    key: str, value: float, unit: Unit, slip: str, meant: float
) -> None:
    measures = changed(**{key: value})
    before = dict(measures.values)
    looked = look_over(measures, LengthStyle(unit))
    doubt = next(doubt for doubt in looked.doubts if doubt.suspects)
    assert doubt.suspects[0].key == key
    found = [(one.slip, dict(one.values).get(key)) for one in doubt.repairs]
    assert found and found[0][1] == pytest.approx(meant, abs=1)
    assert slip in {one for one, _ in found} or slip == "tape-by-ten"
    assert dict(measures.values) == before


def test_the_words_offer_the_repair_and_say_what_is_expected() -> None:
    doubt = look_over(changed(inside_leg=875), CM).doubts[0]
    assert "Inside leg of 87.5 cm" in doubt.problem.text()
    assert "78.5 cm would fit: were two digits swapped?" in doubt.problem.next_step()
    inches = look_over(changed(inside_leg=875), LengthStyle("in"), typed_in="cm").doubts[0]
    assert '30 7/8" would fit: were two digits swapped?' in inches.problem.next_step()


def test_a_wild_value_without_a_slip_that_explains_it_gets_no_offer() -> None:
    looked = look_over(changed(inside_leg=723.7), CM)
    doubt = named(looked, "measure-against-rest")
    assert doubt.keys == ("inside_leg",)
    assert doubt.repairs == ()
    # The contradiction by arithmetic is the same slip, and told once.
    assert codes(looked) == {"measure-against-rest"}
    assert "measures-sum" in codes(look_over(replace(changed(inside_leg=723.7), population=None), CM))


def test_two_neighboring_values_in_each_others_line_are_named_together() -> None:
    doubt = named(look_over(changed(bust_girth=740, waist_girth=920), CM), "measures-exchanged")
    assert set(doubt.keys) == {"bust_girth", "waist_girth"}
    assert repair(doubt) == ("exchanged", {"bust_girth": 920.0, "waist_girth": 740.0})


def test_one_of_two_is_said_where_the_rest_cannot_decide() -> None:
    bare = {"height": 1680.0, "bust_girth": 1120.0, "waist_girth": 740.0}
    few = replace(MeasureSet.from_mm("A", bare), population="women")
    doubt = named(look_over(few, CM), "one-of-two-unlike-rest")
    assert {one.key for one in doubt.suspects} == {"bust_girth", "waist_girth"}
    for one in doubt.suspects:
        assert one.low < one.expected < one.high
        # The range that would agree does agree.
        assert look_over(few.with_value(one.key, one.expected), CM).level == "fine"


@pytest.mark.parametrize(
    ("key", "direction"), [("back_waist_length", 1), ("outside_leg", -1), ("crotch_length", -2)]
)
def test_a_length_to_the_navel_is_asked_about_as_such(key: str, direction: int) -> None:
    # Outside: the navel lies 46 mm below the natural waist on average (women, ANSUR II); 1.3 SD more here.
    looked = look_over(changed(**{key: VALUES[key] + direction * 62}), CM)
    doubt = named(looked, "measure-to-which-waist")
    assert doubt.keys == (key,)
    assert "navel" in doubt.problem.text()
    assert doubt.suspects[0].low < VALUES[key] < doubt.suspects[0].high


def test_lengths_to_the_navel_together_are_named_together_though_none_stands_out() -> None:
    upper = {"back_waist_length": 446.0, "front_waist_length": 484.0, "center_front_length": 396.0}
    doubt = named(look_over(changed(**upper), CM), "measure-to-which-waist")
    assert set(doubt.keys) == set(upper)
    for one in doubt.suspects:
        assert one.low < VALUES[one.key] < one.high


def test_the_other_direction_is_not_asked_as_the_navel() -> None:
    assert "measure-to-which-waist" not in codes(look_over(changed(back_waist_length=340), CM))


def test_a_set_taken_to_the_navel_and_saying_so_is_fine() -> None:
    shifts = {"back_waist_length": 46, "front_waist_length": 46, "center_front_length": 46, "hip_depth": -46}
    shifts |= {"knee_depth": -46, "outside_leg": -46, "standing_rise": -46, "crotch_length": -92}
    values = {key: value + shifts.get(key, 0) for key, value in VALUES.items()}
    wrong = changed(**{**values, "waist_girth": 760})
    assert "measure-to-which-waist" in codes(look_over(wrong, CM))
    assert look_over(replace(wrong, waist_level="navel"), CM).level == "fine"


def test_three_bad_values_that_mask_each_other_are_all_named() -> None:
    looked = look_over(changed(wrist_girth=185, ankle_girth=268, arm_length=480), CM)
    assert {one.key for one in looked.suspects()} == {"wrist_girth", "ankle_girth", "arm_length"}


def test_two_values_that_hide_behind_each_other_are_found_together() -> None:
    # The crotch level taken 4 cm too low: the rise grows by what the inside leg loses.
    looked = look_over(changed(standing_rise=302, inside_leg=745), CM)
    doubt = named(looked, "measures-hide-each-other")
    assert set(doubt.keys) == {"standing_rise", "inside_leg"}
    for one in doubt.suspects:
        assert one.low < VALUES[one.key] < one.high


def test_a_good_value_that_was_suspected_first_is_cleared_by_the_bad_ones() -> None:
    # Both begin at a waist that was tied 8 cm too high; the inside leg is suspected with them at first.
    looked = look_over(changed(knee_depth=670, outside_leg=1128), CM)
    assert {one.key for one in looked.suspects()} == {"knee_depth", "outside_leg"}


def test_many_impossible_values_do_not_drag_along_what_is_expected() -> None:
    zeros = dict.fromkeys(("height", "bust_girth", "hip_girth", "inside_leg", "arm_length"), 0.5)
    looked = look_over(changed(**zeros), CM)
    assert {one.key for one in looked.suspects()} == set(zeros)
    for doubt in looked.doubts:
        for one in doubt.suspects:
            assert one.low < VALUES[one.key] < one.high


def test_a_gross_value_does_not_make_good_ones_suspicious() -> None:
    looked = look_over(changed(wrist_girth=1550), CM)
    assert [one.key for one in looked.suspects()] == ["wrist_girth"]
    assert {key for doubt in looked.doubts for key in doubt.keys} <= {"wrist_girth", "upper_arm_girth"}


def test_a_slip_on_one_side_is_named_with_its_side() -> None:
    sides = (
        SOUND.without("hip_depth").with_value("hip_depth", 200, "left").with_value("hip_depth", 20, "right")
    )
    looked = look_over(sides, CM)
    doubt = named(looked, "measure-against-rest")
    assert doubt.keys == ("hip_depth@right",)
    assert dict(doubt.repairs[0].values) == {"hip_depth@right": 200.0}
    assert {one.key for one in looked.standings} >= {"hip_depth@left", "hip_depth@right"}


def test_a_whole_set_in_inches_is_named_once_and_all_values_are_offered() -> None:
    looked = look_over(changed(**{key: value / 2.54 for key, value in VALUES.items()}), CM)
    assert codes(looked) == {"set-in-other-unit"} and looked.level == "stop"
    assert dict(looked.doubts[0].repairs[0].values) == pytest.approx(VALUES)
    assert looked.not_held is not None and looked.not_held.code == "held-unit-first"


def test_without_a_population_arithmetic_alone_speaks_and_it_says_so() -> None:
    bare = replace(changed(wrist_girth=185, outside_leg=960), population=None)
    looked = look_over(bare, CM)
    assert looked.not_held is not None and looked.not_held.code == "held-against-nobody"
    assert looked.standings == () and looked.population is None
    assert codes(looked) == {"measures-sum"}
    assert set(looked.take_twice) >= {"bust_girth", "waist_girth", "hip_girth"}


def test_one_value_alone_is_held_against_nothing() -> None:
    one = replace(MeasureSet.from_mm("A", {"hip_girth": 980}), population="women")
    looked = look_over(one, CM)
    assert looked.not_held is not None and looked.not_held.code == "held-too-few"
    empty = look_over(replace(MeasureSet("A"), population="women"), CM)
    assert empty.level == "fine" and empty.worst is None


def test_estimates_are_neither_judged_nor_evidence() -> None:
    guessed = SOUND.with_value("wrist_girth", Measure(400, "estimated", 10))
    assert "wrist_girth" not in {one.key for one in look_over(guessed, CM).standings}
    assert "wrist_girth" not in {one.key for one in look_over(guessed, CM).unseen}


def test_what_it_cannot_see_is_said_and_two_readings_are_enough() -> None:
    unseen = {one.key: one for one in look_over(SOUND, CM).unseen}
    assert "weight" not in unseen
    for key in ("bust_girth", "waist_girth"):
        # Outside: a slip of 5 cm there cannot be seen (own statistics on ANSUR II).
        assert (unseen[key].slip or 0) > 50 and unseen[key].twice
    assert (unseen["wrist_girth"].slip or 99) < 25 and not unseen["wrist_girth"].twice
    again = SOUND.with_value("bust_girth", Measure.of_readings((918, 922)))
    bust = next(one for one in look_over(again, CM).unseen if one.key == "bust_girth")
    assert bust.readings == 2 and not bust.twice


def test_a_measure_in_which_a_large_slip_stays_unseen_is_taken_twice_as_well() -> None:
    looked = look_over(SOUND, CM)
    unseen = {one.key: one for one in looked.unseen}
    for key in ("height", "arm_length"):
        assert not measure_entry(key).twice
        assert unseen[key].twice == ((unseen[key].slip or 0) > 40)
    assert "height" in looked.take_twice


def test_the_usual_range_is_not_asked_about_where_the_body_is_large_as_a_whole() -> None:
    keys = ("bust_girth", "waist_girth", "hip_girth", "thigh_girth", "calf_girth")
    bare = replace(MeasureSet.from_mm("A", dict.fromkeys(keys, 500.0)), population="women")
    common = together(population("women"), bare)
    # Outside: the longest axis of the distribution (numpy), along which all girths grow in proportion.
    sizes, axes = np.linalg.eigh(common.covariance)
    axis = axes[:, -1] * np.sign(axes[0, -1])
    values = common.mean + 4.8 * sizes[-1] ** 0.5 * axis
    large = replace(MeasureSet.from_mm("A", dict(zip(common.keys, values, strict=True))), population="women")
    assert "measure-unusual" not in codes(look_over(large, CM))
    assert "measure-unusual" in codes(look_over(replace(large, population=None), CM))


def test_a_child_of_whom_nobody_said_whose_is_known_as_a_child() -> None:
    values = {"height": 1280.0, "bust_girth": 640.0, "waist_girth": 560.0, "hip_girth": 680.0}
    looked = look_over(MeasureSet.from_mm("Invented", values), LengthStyle("cm"))
    assert looked.doubts == ()
    assert looked.not_held is not None and looked.not_held.code == "held-no-child"
