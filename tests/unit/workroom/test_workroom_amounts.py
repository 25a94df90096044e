"""Amounts between recipe and fields: what is shown is what was kept, whatever the unit."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.body import notation_names
from notchbook.errors import InputError
from notchbook.recipe import definition
from notchbook.units import Amount, parse_amount
from notchbook.workroom.asked.amounts import amount_words, typed, written
from notchbook.workroom.reader import Reader

FORM = definition("waistband").parameters.model_json_schema()
LINE = definition("cut_style_line").parameters.model_json_schema()

lengths = st.floats(0.0, 2000.0).map(lambda mm: Amount.plain(mm).text)
units = st.sampled_from(["cm", "mm", "in"])


@given(lengths, units)
def test_what_was_only_shown_is_never_changed(kept: str, unit: Any) -> None:
    reader = Reader(unit)
    shown = written(FORM, {"depth": kept}, reader)
    assert typed(FORM, shown, {"depth": kept}, reader) == {"depth": kept}


@given(lengths, units)
def test_what_is_shown_means_what_was_kept_to_half_a_step(kept: str, unit: Any) -> None:
    reader = Reader(unit)

    def mm(text: str) -> float:
        return parse_amount(text, "mm", notation_names()).evaluate(lambda _key: 0.0)

    half = {"cm": 0.005, "mm": 0.0005, "in": 25.4 / 32}[unit] * 1.000001
    assert abs(mm(amount_words(kept, reader)) - mm(kept)) <= half


def test_a_fraction_of_a_measure_keeps_its_measure() -> None:
    assert amount_words("1/4 hip + 10 mm", Reader("cm")) == "1/4 hip + 1 cm"
    assert amount_words("1/4 hip - 25.4 mm", Reader("in")) == '1/4 hip - 1"'
    assert amount_words("2/3 hip_depth", Reader("cm")) == "2/3 hip depth"
    assert typed(FORM, {"depth": "2/3 hip depth"}, {}, Reader("cm")) == {"depth": "2/3 hip_depth"}


def test_an_amount_deep_in_a_list_is_found() -> None:
    place = {"edge": "skirt.front/hem", "from_point": "skirt.front/hem_side", "distance": "100 mm"}
    kept = {"lines": [{"start": place, "end": place, "start_angle": 0.0}]}
    shown = written(LINE, kept, Reader("in"))
    assert shown["lines"][0]["start"]["distance"] == '3 15/16"'
    shown["lines"][0]["end"]["distance"] = "4"
    read = typed(LINE, shown, kept, Reader("in"))
    assert read["lines"][0]["start"]["distance"] == "100 mm"
    assert read["lines"][0]["end"]["distance"] == "4 in"


def test_an_empty_field_that_may_be_empty_is_nothing() -> None:
    place = {"edge": "a.b/c", "from_point": "a.b/d", "distance": "", "fraction": "1/2"}
    read = typed(LINE, {"lines": [{"start": place}]}, {}, Reader("cm"))
    assert read["lines"][0]["start"]["distance"] is None
    assert read["lines"][0]["start"]["fraction"] == 0.5


def test_what_cannot_be_read_is_refused() -> None:
    with pytest.raises(InputError) as refused:
        typed(FORM, {"depth": "thick"}, {}, Reader("cm"))
    assert refused.value.code == "amount-unknown-measure"
