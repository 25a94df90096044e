"""A measure and a set of measures."""

import math
import pickle

import pytest

from notchbook.body import Measure, MeasureSet
from notchbook.errors import InputError, NotchbookError


def body(**values: float) -> MeasureSet:
    """An invented body with these values in mm."""
    return MeasureSet.from_mm("Invented", values)


@pytest.mark.parametrize("value", [math.nan, math.inf, -1.0])
def test_a_value_that_is_no_measure_is_refused(value: float) -> None:
    with pytest.raises(InputError, match="measure-not-usable"):
        Measure(value)
    with pytest.raises(InputError, match="measure-not-usable"):
        Measure(100, "estimated", value)


def test_estimates_and_only_estimates_have_an_error() -> None:
    assert Measure(100, "estimated", 12).error == 12.0
    with pytest.raises(InputError, match="measure-error-missing"):
        Measure(100, "estimated")
    with pytest.raises(InputError, match="measure-error-unwanted"):
        Measure(100, "measured", 12)
    with pytest.raises(InputError, match="measure-choice"):
        Measure(100, "guessed")  # type: ignore[arg-type]  # the wrong word is the test


def test_notes_are_one_clean_line() -> None:
    assert Measure(1, note=" over\n the  higher hip ").note == "over the higher hip"
    with pytest.raises(InputError, match="text-not-plain"):
        Measure(1, note="a\x07b")
    with pytest.raises(InputError, match="text-not-plain"):
        Measure(1, by="\ud800")
    with pytest.raises(InputError, match="text-too-long"):
        Measure(1, method="x" * 121)


def test_values_are_found_and_missing_ones_are_named() -> None:
    measures = body(waist_girth=740, hip_girth=980)
    assert measures.value("waist_girth") == 740.0
    assert measures.find("hip_depth") is None
    with pytest.raises(InputError) as refusal:
        measures.value("hip_depth")
    assert refusal.value.code == "measure-missing"
    assert "hip_depth" in refusal.value.text()
    with pytest.raises(InputError) as several:
        measures.require(("waist_girth", "hip_depth", "height"))
    assert several.value.facts["keys"] == ("hip_depth", "height")
    measures.require(("waist_girth",))
    with pytest.raises(InputError, match="measure-unknown"):
        measures.find("hip_dept")


def test_the_other_side_takes_the_plain_value() -> None:
    measures = body(hip_depth=200, hip_girth=980).with_value("hip_depth", 190, "left")
    assert measures.value("hip_depth", "left") == 190.0
    assert measures.value("hip_depth", "right") == 200.0
    assert measures.value("hip_depth") == 200.0
    assert measures.sides_differ()
    assert measures.sides_differ(["hip_depth"])
    assert not measures.sides_differ(["hip_girth"])
    assert not measures.sides_differ([])


def test_two_sides_without_a_plain_value_give_their_mean_for_both() -> None:
    measures = (
        MeasureSet("Invented").with_value("hip_girth", 980, "left").with_value("hip_girth", 1000, "right")
    )
    # Half the girth of each side: 490 + 500 is the girth of the body.
    assert measures.value("hip_girth") == 990.0
    estimated = measures.with_value("hip_girth", Measure(980, "estimated", 20), "left")
    assert estimated.get("hip_girth").status == "estimated"
    assert estimated.get("hip_girth").error == 20.0
    chart = measures.with_value("hip_girth", Measure(980, "chart"), "left")
    assert chart.get("hip_girth").status == "chart"


def test_one_side_alone_leaves_the_other_missing() -> None:
    measures = MeasureSet("Invented").with_value("hip_depth", 190, "left")
    assert not measures.has("hip_depth")
    with pytest.raises(InputError, match="hip_depth@right"):
        measures.value("hip_depth", "right")
    with pytest.raises(InputError, match="measure-missing"):
        measures.value("hip_depth")
    with pytest.raises(InputError) as both_missing:
        measures.value("arm_length", "right")
    assert both_missing.value.facts["keys"] == ("arm_length",), "no side where both are missing alike"
    assert "--" not in both_missing.value.next_step(), "a page has no options of a command"
    with pytest.raises(InputError, match="measure-not-sided"):
        measures.with_value("height", 1700, "left")


def test_equal_sides_do_not_differ() -> None:
    same = body(hip_depth=200).with_value("hip_depth", Measure(200, note="taken on this side"), "left")
    assert not same.sides_differ()
    assert MeasureSet("Invented").with_value("hip_depth", 190, "left").sides_differ()


def test_the_order_is_that_of_the_table_whatever_was_given_first() -> None:
    first = MeasureSet.from_mm("A", {"hip_depth@right": 1, "hip_girth": 2, "hip_depth": 3, "height": 4})
    second = MeasureSet.from_mm("A", {"height": 4, "hip_depth": 3, "hip_girth": 2, "hip_depth@right": 1})
    assert list(first.values) == ["height", "hip_girth", "hip_depth", "hip_depth@right"]
    assert list(first.values) == list(second.values)
    assert first == second
    assert hash(first) == hash(second)
    assert first.measure_keys() == ("height", "hip_girth", "hip_depth")
    assert first != second.with_value("height", 5)


def test_a_set_is_frozen_and_can_be_sent_to_another_process() -> None:
    measures = body(hip_depth=200).with_value("hip_depth", Measure(190, note="higher"), "left")
    assert pickle.loads(pickle.dumps(measures)) == measures
    with pytest.raises(AttributeError):
        measures.name = "Other"  # type: ignore[misc]  # writing is the test
    with pytest.raises(TypeError):
        measures.values["hip_depth"] = Measure(1)  # type: ignore[index]  # writing is the test


def test_a_set_does_not_change_with_the_table_it_was_made_from() -> None:
    values = {"hip_depth": Measure(200)}
    measures = MeasureSet("Invented", values)
    values["hip_depth"] = Measure(1)
    assert measures.value("hip_depth") == 200.0


def test_a_value_can_be_taken_out() -> None:
    measures = body(hip_depth=200).with_value("hip_depth", 190, "left")
    assert not measures.without("hip_depth", "left").sides_differ()
    assert measures.without("hip_depth").value("hip_depth", "left") == 190.0


@pytest.mark.parametrize(
    ("words", "code"),
    [
        ({"name": " "}, "measures-name"),
        ({"name": "x" * 121}, "text-too-long"),
        ({"kind": "ghost"}, "measure-choice"),
        ({"waist_level": "high"}, "measure-choice"),
        ({"rise_method": "lying"}, "measure-choice"),
        ({"waist_level": "lower"}, "waist-level"),
        ({"waist_drop": 40.0}, "waist-level"),
        ({"waist_level": "lower", "waist_drop": -1.0}, "measure-not-usable"),
        ({"values": {"hip_dept": Measure(1)}}, "measure-unknown"),
    ],
)
def test_a_set_that_says_something_wrong_is_refused(words: dict[str, object], code: str) -> None:
    with pytest.raises(NotchbookError) as refusal:
        MeasureSet(**{"name": "Invented", **words})  # type: ignore[arg-type]  # the wrong word is the test
    assert refusal.value.code == code
    assert refusal.value.text()
