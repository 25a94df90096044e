"""Where the hem lies: by its word, by the knee, by the height, or by a length of its own."""

import tomllib
from importlib.resources import files

import pytest

from notchbook.blocks.joined.lengths import SkirtLength, hem_length
from notchbook.body import MeasureSet
from notchbook.errors import InputError
from notchbook.recipe import StepContext


def context(**measures: float) -> StepContext:
    body = MeasureSet.from_mm("Body", {"back_waist_length": 400.0, **measures})
    return StepContext(body, "dress", "dress-1")


def test_the_knee_as_measured() -> None:
    found = hem_length(context(knee_depth=580.0, height=1680.0), "knee", None)
    assert (found.length, found.is_assumed) == (580.0, False)


def test_without_a_knee_the_height_tells_and_is_said() -> None:
    found = hem_length(context(height=1680.0), "knee", None)
    # Surveyed women: 500 to 690 from waist to knee (ANSUR II, 0.5 to 99.5 %).
    assert 500.0 < found.length < 690.0
    assert found.is_assumed


def test_without_a_height_the_back_tells() -> None:
    found = hem_length(context(), "knee", None)
    assert found.is_assumed
    assert found.length == pytest.approx(568.0)


def test_words_lie_in_order_down_the_leg() -> None:
    words: tuple[SkirtLength, ...] = ("thigh", "knee", "mid_calf", "ankle")
    lengths = [hem_length(context(knee_depth=580.0), word, None).length for word in words]
    assert lengths == sorted(lengths)
    assert len(set(lengths)) == 4


def test_a_length_of_its_own_goes_before_the_word() -> None:
    assert hem_length(context(), "ankle", "55 cm").length == 550.0
    with pytest.raises(InputError):
        hem_length(context(), "ankle", "0 cm")


def test_every_row_says_where_it_is_from() -> None:
    text = (files("notchbook.blocks.joined") / "lengths.toml").read_text(encoding="utf-8")
    rows = [row for group in tomllib.loads(text).values() for row in group.values()]
    assert all(row["source"] and row["grade"] for row in rows)
