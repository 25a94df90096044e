"""What a draft asks about its measures: a child is not told eight times that it is no adult."""

import pytest

from notchbook.app.drafting import draft
from notchbook.app.needs.drafted_doubts import doubts_of_draft
from notchbook.body import MeasureSet, PopulationName
from notchbook.units import LengthStyle

CM = LengthStyle("cm")

CHILD = {
    "height": 1400.0, "neck_base_girth": 315.0, "shoulder_length": 104.0, "shoulder_slope": 22.0,
    "bust_girth": 710.0, "waist_girth": 610.0, "back_waist_length": 330.0, "scye_depth": 170.0,
    "across_back": 292.0, "across_chest": 272.0,
}  # fmt: skip
"""An invented child of ten; every one of these lies below what most adults have or near it."""


def child(population: PopulationName | None = None, **changes: float) -> MeasureSet:
    return MeasureSet.from_mm("Invented", {**CHILD, **changes}, population=population)


@pytest.mark.parametrize("population", [None, "women", "men"])
def test_a_child_has_one_note_and_no_alarm(population: PopulationName | None) -> None:
    told = doubts_of_draft(draft("bodice", child(population), {"wearer": "children"}), CM)
    assert told.doubts == ()
    assert told.note is not None and told.note.code == "ranges-of-adults-left-out"


def test_a_set_of_nobody_that_is_small_in_several_is_told_once() -> None:
    run = draft("skirt", child(height=1500.0, hip_girth=760.0, hip_depth=170.0))
    told = doubts_of_draft(run, CM)
    assert told.doubts == ()
    assert told.note is not None and told.note.code == "smaller-than-adults"
    assert "hip girth" in told.note.text()


ADULT = {"height": 1680.0, "bust_girth": 920.0, "waist_girth": 740.0, "hip_girth": 980.0, "hip_depth": 200.0}


def test_one_value_out_of_its_range_is_still_asked_about() -> None:
    small = draft("skirt", MeasureSet.from_mm("Invented", {**ADULT, "height": 1410.0}))
    assert [doubt.code for doubt in doubts_of_draft(small, CM).doubts] == ["measure-unusual"]
    named = {**CHILD, "height": 1500.0, "hip_girth": 760.0, "hip_depth": 170.0}
    woman = draft("skirt", MeasureSet.from_mm("Invented", named, population="women"))
    assert len(doubts_of_draft(woman, CM).doubts) > 1


def test_what_is_large_is_never_a_child_s() -> None:
    large = {**ADULT, "waist_girth": 1340.0, "hip_girth": 1400.0}
    told = doubts_of_draft(draft("skirt", MeasureSet.from_mm("Invented", large)), CM)
    assert len(told.doubts) == 2 and told.note is None


def test_a_usual_body_is_asked_nothing() -> None:
    told = doubts_of_draft(draft("skirt", MeasureSet.from_mm("Invented", ADULT)), CM)
    assert (told.doubts, told.note) == ((), None)
