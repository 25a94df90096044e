"""Any two sets are compared, sized and padded, or refused in words; and what must hold whatever they are."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.body import Measure, MeasureSet, WaistLevel, measure_entry, measure_table
from notchbook.body.charts import compare_sets, nearest_size, padding_plan, shipped_chart, size_position
from notchbook.errors import NotchbookError

WOMEN = shipped_chart("women")
KEYS = ("bust_girth", "waist_girth", "hip_girth", "front_bust_arc", "hip_depth", "shoulder_length", "height")


@st.composite
def measures(draw: st.DrawFn) -> Measure:
    """A measured or estimated value of any size."""
    value = draw(st.floats(0.0, 3000.0))
    return Measure(value, "estimated", draw(st.floats(0.0, 500.0))) if draw(st.booleans()) else Measure(value)


@st.composite
def sets(draw: st.DrawFn, sided: bool = True) -> MeasureSet:
    """A set of any of the measures that comparing and padding look at, at any waist level."""
    names = list(KEYS)
    if sided:
        names += [f"{key}@{side}" for key in KEYS if measure_entry(key).sided for side in ("left", "right")]
    level: WaistLevel = draw(st.sampled_from(("natural", "lower", "navel")))
    drop = draw(st.floats(1.0, 80.0)) if level == "lower" else 0.0
    values = draw(st.dictionaries(st.sampled_from(names), measures(), max_size=8))
    return MeasureSet("Any", values, "form", level, drop)


@given(sets(), sets())
def test_any_two_sets_are_compared_or_refused_in_words(one: MeasureSet, other: MeasureSet) -> None:
    for act in (
        lambda: compare_sets(one, other, WOMEN),
        lambda: nearest_size(one, WOMEN, "skirt"),
        lambda: padding_plan(one, other),
    ):
        try:
            act()
        except NotchbookError as error:
            assert error.text()


@given(sets(sided=False), sets(sided=False))
def test_the_other_way_round_only_the_sign_changes(one: MeasureSet, other: MeasureSet) -> None:
    if one.waist_level != other.waist_level or one.waist_drop != other.waist_drop:
        return
    there, back = compare_sets(one, other), compare_sets(other, one)
    assert [row.difference for row in there.rows] == [-row.difference for row in back.rows]
    assert [row.beyond for row in there.rows] == [row.beyond for row in back.rows]


@given(st.sampled_from(("bust_girth", "waist_girth", "hip_girth")), st.floats(500.0, 1500.0))
def test_a_place_among_the_sizes_leads_back_to_the_value(key: str, value: float) -> None:
    """Interpolating the row at the place (numpy) gives the value again, inside the chart."""
    row = [float(cell) for cell in WOMEN.row(key) if cell is not None]
    position = size_position(WOMEN, key, value)
    assert position is not None
    inside = row[0] <= value <= row[-1]
    assert inside == (not position.beyond)
    if inside:
        assert np.interp(position.place, range(len(row)), row) == pytest.approx(value)


@given(sets(), sets())
def test_a_padded_level_ends_within_a_layer_below_and_3_mm_above(one: MeasureSet, other: MeasureSet) -> None:
    try:
        plan = padding_plan(one, other, 4.0)
    except NotchbookError:
        return
    for level in plan.levels:
        if level.fit == "pad":
            assert -3.0 - 1e-6 <= level.left_over < 4.0 * math.pi + 1e-6
            assert level.reached == pytest.approx(
                level.form + 4.0 * math.pi * (level.front_layers + level.back_layers)
            )
            assert math.pi * (level.front + level.back) == pytest.approx(level.difference)
            assert min(level.front, level.back, level.front_layers, level.back_layers) >= 0
        else:
            assert level.reached == level.form


def test_the_keys_of_this_file_are_measures() -> None:
    assert set(KEYS) <= set(measure_table())
