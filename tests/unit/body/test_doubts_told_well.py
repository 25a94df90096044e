"""What a doubt says: once, truly, about the right thing."""

from dataclasses import replace

import pytest

from notchbook.body import Doubt, LookedOver, Measure, MeasureSet, check_consistent, look_over
from notchbook.units import LengthStyle

CM = LengthStyle("cm")
USUAL = {
    "height": 168.0, "neck_base_girth": 36.5, "shoulder_length": 12.3, "upper_bust_girth": 90.0,
    "bust_girth": 92.0, "waist_girth": 74.0, "hip_girth": 98.0, "arm_length": 57.0, "nape_to_wrist": 80.0,
    "wrist_girth": 15.5, "back_waist_length": 40.0, "inside_leg": 78.5, "thigh_girth": 57.5,
}  # fmt: skip
"""An invented woman, cm."""


def woman(values: dict[str, float]) -> MeasureSet:
    return replace(MeasureSet.from_mm("A", {key: 10 * cm for key, cm in values.items()}), population="women")


def looked(**changes: float) -> LookedOver:
    return look_over(woman({**USUAL, **changes}), CM)


def about(found: LookedOver, key: str) -> Doubt:
    (doubt,) = [doubt for doubt in found.doubts if key in {one.key for one in doubt.suspects}]
    return doubt


def test_the_usual_woman_is_fine() -> None:
    assert looked().level == "fine"


def test_against_all_the_rest_is_said_where_it_is_true_and_else_from_what_it_is_judged() -> None:
    alone = about(looked(wrist_girth=24), "wrist_girth").problem.text()
    assert "stands against all the rest:" in alone
    two = looked(wrist_girth=24, neck_base_girth=50)
    said = about(two, "wrist_girth").problem.text()
    assert "the rest, judged without neck base girth:" in said
    few = woman({"height": 168.0, "wrist_girth": 24.0})
    (doubt,) = look_over(few, CM).doubts
    assert "all the rest" not in doubt.problem.text()


def test_a_doubt_that_rests_on_one_value_names_it() -> None:
    found = look_over(woman({"height": 168.0, "bust_girth": 36.0, "hip_girth": 240.0}), CM)
    words = [doubt.problem.text() for doubt in found.doubts]
    assert any("judged by height alone" in one for one in words), words


def test_one_slip_is_one_message() -> None:
    exchanged = looked(thigh_girth=37.5, knee_girth=57.5)
    assert [doubt.code for doubt in exchanged.doubts] == ["measures-exchanged"]
    outside_of_usual = looked(wrist_girth=24)
    assert [doubt.code for doubt in outside_of_usual.doubts] == ["measure-against-rest"]


def test_a_contradiction_that_the_named_value_does_not_explain_is_told_beside_it() -> None:
    found = looked(wrist_girth=24, outside_leg=105, standing_rise=20)
    assert "measures-sum" in {doubt.code for doubt in found.doubts} | {
        doubt.code for doubt in check_consistent(woman({**USUAL, "outside_leg": 105, "standing_rise": 20}))
    }
    assert {one.key for one in found.suspects()} >= {"wrist_girth"}


def test_a_side_is_judged_as_harshly_as_a_value_and_asked_about_as_the_other_has_it() -> None:
    sides = woman({**USUAL, "hip_depth@left": 20, "hip_depth@right": 30})
    found = look_over(sides, CM)
    doubt = about(found, "hip_depth@right")
    assert doubt.level == "stop"
    assert "30.0 cm for 20.0 cm, as on the other side?" in doubt.problem.next_step()
    assert "sides-apart" not in {one.code for one in found.doubts}


def test_a_large_belly_stops_nothing_and_is_asked_about() -> None:
    belly = {"height": 165.0, "bust_girth": 104.0, "waist_girth": 108.0, "hip_girth": 102.0}
    for more in (
        {},
        {"under_bust_girth": 96.0},
        {"thigh_girth": 60.0, "wrist_girth": 16.5, "arm_length": 57.0},
    ):
        found = look_over(woman({**belly, **more}), CM)
        assert found.level == "check"
        assert any("A belly? Then it is right." in doubt.problem.next_step() for doubt in found.doubts)
    # A waist that no body has is no belly.
    assert look_over(woman({**belly, "waist_girth": 188.0}), CM).level == "stop"


def test_a_full_bust_over_a_small_under_bust_stops_nothing_and_is_asked_about() -> None:
    full = {
        "height": 165.0,
        "bust_girth": 108.0,
        "under_bust_girth": 78.0,
        "waist_girth": 76.0,
        "hip_girth": 100.0,
    }
    found = look_over(woman(full), CM)
    assert found.level == "check"
    assert any("A full bust? Then it is right." in doubt.problem.next_step() for doubt in found.doubts)
    assert look_over(woman({**full, "bust_girth": 180.0}), CM).level == "stop"


@pytest.mark.parametrize("key", ["under_bust_girth", "upper_bust_girth"])
def test_what_a_size_table_says_never_stops(key: str) -> None:
    found = looked(**{key: 118.0})
    assert found.level == "check"
    assert about(found, key).level == "check"


@pytest.mark.parametrize(
    ("key", "value", "neighbor"),
    [
        ("neck_base_girth", 32.3, "neck girth"),
        ("hip_girth", 86.0, "top hip girth"),
        ("arm_length", 80.0, "nape to wrist"),
        ("nape_to_wrist", 57.0, "arm length"),
    ],
)
def test_a_neighbor_that_was_taken_instead_is_asked_about(key: str, value: float, neighbor: str) -> None:
    words = about(looked(**{key: value}), key).problem.next_step()
    assert f"Was the {neighbor} taken?" in words


def test_no_neighbor_is_asked_about_where_it_would_not_fit() -> None:
    words = about(looked(neck_base_girth=50.0), "neck_base_girth").problem.next_step()
    assert "taken?" not in words


def test_zero_is_no_measure_and_judges_nothing() -> None:
    found = looked(hip_girth=0.0)
    (doubt,) = found.doubts
    assert (doubt.code, doubt.level) == ("measure-zero", "stop")
    assert "Leave it empty" in doubt.problem.next_step()


def test_a_number_is_said_as_it_was_typed() -> None:
    assert "2.05 cm" in about(looked(wrist_girth=2.05), "wrist_girth").problem.text()
    bare = replace(woman({"wrist_girth": 2.05}), population=None)
    (doubt,) = check_consistent(bare)
    assert "Wrist girth of 2.05 cm is not possible" in doubt.problem.text()


def test_labels_within_a_sentence_are_small() -> None:
    found = looked(thigh_girth=37.5, knee_girth=57.5)
    assert "and knee girth of" in found.doubts[0].problem.text()
    order = check_consistent(woman({"inside_leg": 106.0, "outside_leg": 80.0}))
    assert any("not less than outside leg" in doubt.problem.text() for doubt in order)


def test_estimates_are_neither_unusual_nor_apart_from_their_side() -> None:
    guessed = woman(USUAL).with_value("elbow_girth", Measure(700, "estimated", 20))
    assert "measure-unusual" not in {doubt.code for doubt in check_consistent(guessed)}
    sides = woman({"hip_depth@left": 20.0}).with_value("hip_depth", Measure(300, "estimated", 20), "right")
    assert "sides-apart" not in {doubt.code for doubt in check_consistent(sides)}
