"""Two sets of measures side by side."""

from dataclasses import replace

import pytest

from notchbook.body import Measure, MeasureSet
from notchbook.body.charts import compare_sets
from support.charts import even_chart

FORM = MeasureSet.from_mm(
    "Form", {"bust_girth": 880.0, "waist_girth": 700.0, "hip_depth": 200.0, "wrist_girth": 160.0}
)
CLIENT = MeasureSet.from_mm(
    "Client", {"bust_girth": 920.0, "waist_girth": 708.0, "hip_depth": 206.0, "height": 1680.0}
)


def test_differences_and_what_is_absent() -> None:
    compared = compare_sets(FORM, CLIENT, even_chart())
    rows = {row.key: row for row in compared.rows}
    assert {key: row.difference for key, row in rows.items()} == {
        "bust_girth": 40.0,
        "waist_girth": 8.0,
        "hip_depth": 6.0,
    }
    assert compared.only_first == ("wrist_girth",)
    assert compared.only_second == ("height",)
    assert rows["bust_girth"].steps == pytest.approx(1.0)
    assert rows["hip_depth"].steps is None


def test_a_tape_differs_by_a_centimeter_on_a_girth_and_half_on_a_length() -> None:
    """Repeat tolerance: 1 cm a girth, 0.5 cm a length (common practice, no source)."""
    rows = {row.key: row.beyond for row in compare_sets(FORM, CLIENT).rows}
    assert rows == {"bust_girth": True, "waist_girth": False, "hip_depth": True}
    assert [row.key for row in compare_sets(FORM, CLIENT).differing] == ["bust_girth", "hip_depth"]


def test_the_other_way_round_only_the_signs_change() -> None:
    there, back = compare_sets(FORM, CLIENT), compare_sets(CLIENT, FORM)
    assert [-row.difference for row in there.rows] == [row.difference for row in back.rows]
    assert (there.only_first, there.only_second) == (back.only_second, back.only_first)


def test_an_estimate_widens_what_counts_as_the_same() -> None:
    client = CLIENT.with_value("bust_girth", Measure(920.0, "estimated", 60.0))
    row = next(row for row in compare_sets(FORM, client).rows if row.key == "bust_girth")
    assert (row.tolerance, row.beyond) == (60.0, False)


def test_sides_are_compared_where_they_differ() -> None:
    crooked = CLIENT.with_value("hip_depth", 190.0, "left")
    rows = {row.key: row.difference for row in compare_sets(FORM, crooked).rows}
    assert rows["hip_depth@left"] == -10.0
    assert rows["hip_depth@right"] == 6.0
    assert "hip_depth" not in rows


def test_a_navel_is_brought_to_the_natural_waist() -> None:
    """With the waist 46 mm lower the hip depth is 46 mm shorter; the girth is another measure."""
    low = replace(CLIENT, waist_level="navel", waist_drop=46.0)
    compared = compare_sets(FORM, low)
    rows = {row.key: row for row in compared.rows}
    assert rows["hip_depth"].second.value == 252.0
    assert rows["hip_depth"].moved
    assert not rows["bust_girth"].moved
    assert "waist_girth" not in rows
    assert "waist_girth" not in (*compared.only_first, *compared.only_second)
    assert [remark.code for remark in compared.remarks] == ["compare-waist-levels"]


def test_two_navels_are_compared_as_they_are() -> None:
    one, other = (
        replace(each, waist_level="navel", waist_drop=drop) for each, drop in ((FORM, 30.0), (CLIENT, 50.0))
    )
    compared = compare_sets(one, other)
    assert compared.remarks == ()
    assert [row.key for row in compared.rows if row.moved] == []


def test_methods_that_differ_are_told() -> None:
    one = FORM.with_value("bust_girth", Measure(880.0, method="over a bra"))
    other = CLIENT.with_value("bust_girth", Measure(900.0, method="over a shirt"))
    assert [remark.code for remark in compare_sets(one, other).remarks] == ["compare-methods"]
    sitting, standing = replace(FORM, rise_method="sitting"), replace(CLIENT, rise_method="standing")
    assert [remark.code for remark in compare_sets(sitting, standing).remarks] == ["compare-rise-methods"]


def test_a_remark_says_which_set_was_moved_and_how_far() -> None:
    low = replace(CLIENT, waist_level="lower", waist_drop=20.0)
    (remark,) = compare_sets(FORM, low).remarks
    assert "lengths of Client are moved to a waist 20.0 mm higher" in remark.problem.text()
    (remark,) = compare_sets(low, FORM).remarks
    assert "lengths of Form are moved to a waist 20.0 mm lower" in remark.problem.text()
