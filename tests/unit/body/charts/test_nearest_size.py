"""The nearest size of a chart, and where single measures stand among the sizes."""

from dataclasses import replace

import pytest

from notchbook.body import Measure, MeasureSet
from notchbook.body.charts import (
    Garment,
    SizeChart,
    nearest_size,
    set_cell,
    set_row,
    shipped_chart,
    size_position,
)
from notchbook.errors import InputError
from support.charts import EVEN_ROWS, even_chart, published

INCH = 25.4


@pytest.mark.parametrize("size", even_chart().sizes, ids=lambda size: size.label_size)
def test_each_size_is_its_own_nearest(size: MeasureSet) -> None:
    found = nearest_size(size, even_chart())
    assert (found.size, found.distance) == (size.label_size, 0.0)
    assert all(not one.beyond for one in found.deviations)
    assert found.remarks == ()


def test_the_position_between_two_sizes() -> None:
    """ASTM D5585-11e1, straight: bust 38 3/4 in. at 12 and 40 3/8 at 14; two tenths of the way is 39.075."""
    position = size_position(published("astm_straight"), "bust_girth", 39.075 * INCH)
    assert position is not None
    assert position.number == "12.4"
    assert position.words == "between 12 and 14, nearer 12"
    assert position.share == pytest.approx(0.2)


def test_below_and_above_the_chart() -> None:
    chart = even_chart()
    below, above = (size_position(chart, "bust_girth", value) for value in (780.0, 1100.0))
    assert below is not None
    assert above is not None
    assert (below.words, below.by, below.place) == ("below 34", 20.0, -0.5)
    assert (above.words, above.by, above.place) == ("above 46", 60.0, 7.5)
    assert below.number == ""


def test_labels_that_are_no_numbers_have_no_number_between() -> None:
    chart = SizeChart(
        "L",
        tuple(
            replace(size, label_size=text)
            for size, text in zip(even_chart(3).sizes, ("S", "M", "L"), strict=True)
        ),
    )
    position = size_position(chart, "bust_girth", 850.0)
    assert position is not None
    assert (position.number, position.words) == ("", "between M and L, nearer M")


def test_an_empty_cell_is_passed_over() -> None:
    chart = set_cell(even_chart(), "38", "bust_girth", None)
    position = size_position(chart, "bust_girth", 880.0)
    assert position is not None
    assert (position.lower, position.upper, position.place) == ("36", "40", 2.0)
    assert position.number == "38.0"


def test_rows_that_tell_nothing() -> None:
    flat = set_row(even_chart(), "height", [1680.0] * 7)
    assert size_position(flat, "height", 1700.0) is None
    assert size_position(even_chart(), "back_waist_length", 404.0) is not None
    slow = set_row(even_chart(), "back_waist_length", [400 + at for at in range(7)])
    assert size_position(slow, "back_waist_length", 404.0) is None
    assert size_position(set_row(slow, "hip_girth", [900, 890, 1, 2, 3, 4, 5]), "hip_girth", 900.0) is None


def body(bust: float, waist: float, hip: float) -> MeasureSet:
    """A form that lies so many steps of the even chart above its first size."""
    steps = {"bust_girth": bust, "waist_girth": waist, "hip_girth": hip}
    return MeasureSet.from_mm(
        "Form", {key: EVEN_ROWS[key][0] + steps[key] * EVEN_ROWS[key][1] for key in steps}
    )


@pytest.mark.parametrize(
    ("garment", "size"),
    [("top", "36"), ("skirt", "42"), ("trousers", "42")],
)
def test_the_garment_decides_which_measures_count(garment: Garment, size: str) -> None:
    """Bust of 36, waist and hip of 42: a top is a 36 by its bust, a skirt a 42 (primary dimensions of
    ISO 8559-2, from memory)."""
    form = body(1, 4, 1 if garment == "top" else 4)
    assert nearest_size(form, even_chart(), garment).size == size


def test_the_distance_is_the_weighted_root_mean_square() -> None:
    """Worked by hand: steps off 38 are bust -1, waist +1, hip 0 with weights 1, 1/2, 1/2."""
    found = nearest_size(body(1, 3, 2), even_chart())
    assert found.decided_by == ("bust_girth", "waist_girth", "hip_girth")
    assert found.size == "38"
    assert found.distance == pytest.approx(((1 * 1 + 0.5 * 1) / 2) ** 0.5)
    assert found.runner_up == "36"


def test_the_label_of_a_form_is_not_looked_at() -> None:
    form = replace(body(4, 4, 4), label_size="34")
    assert nearest_size(form, even_chart()).size == "42"


def test_what_deviates_is_told_in_mm() -> None:
    found = nearest_size(body(2, 2, 3), even_chart())
    hip = next(one for one in found.deviations if one.key == "hip_girth")
    assert (hip.difference, hip.beyond) == (35.0, True)
    waist = next(one for one in found.deviations if one.key == "waist_girth")
    assert not waist.beyond


def test_what_is_not_known_is_told() -> None:
    form = MeasureSet.from_mm("Form", {"bust_girth": 880.0})
    found = nearest_size(form, even_chart())
    assert (found.size, found.absent) == ("38", ("waist_girth", "hip_girth"))


def test_a_waist_at_another_level_does_not_count_and_lengths_are_moved() -> None:
    low = replace(body(2, 6, 2), waist_level="lower", waist_drop=30.0)
    low = low.with_value("back_waist_length", 436.0)
    found = nearest_size(low, even_chart())
    assert (found.size, found.distance) == ("38", 0.0)
    assert found.absent == ("waist_girth",)
    back = next(one for one in found.deviations if one.key == "back_waist_length")
    assert (back.value, back.difference) == (406.0, 0.0)
    assert [remark.code for remark in found.remarks] == ["compare-waist-levels"]


def test_estimates_and_values_beyond_the_chart_weaken_the_answer() -> None:
    form = body(-1, 2, 2).with_value("waist_girth", Measure(720.0, "estimated", 40.0))
    codes = {remark.code for remark in nearest_size(form, even_chart()).remarks}
    assert codes == {"compare-estimated", "chart-beyond"}


def test_nothing_to_compare_is_refused() -> None:
    with pytest.raises(InputError, match="chart-nothing-to-compare"):
        nearest_size(MeasureSet.from_mm("Arm", {"wrist_girth": 160.0}), even_chart())
    with pytest.raises(InputError, match="chart-empty"):
        nearest_size(body(1, 1, 1), SizeChart("New"))


def test_margins_of_a_computed_chart_are_passed_on() -> None:
    chart = shipped_chart("women")
    found = nearest_size(chart.size("92"), chart)
    assert {one.key: one.margin for one in found.deviations}["waist_girth"] == chart.margin(
        "92", "waist_girth"
    )
