"""Edits of measures as data: readings and their median, and what is said of the set as a whole."""

import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.app.bodies.body_edits import (
    AddReading,
    BodyEdit,
    ClearReading,
    NoteMeasure,
    NoteSet,
    RenameBody,
    SetCircumstances,
    SetKind,
    SetMeasure,
    SetPopulation,
    SetReading,
    SetRiseMethod,
    SetWaistLevel,
    readings_of,
)
from notchbook.body import Circumstances, Measure, MeasureSet
from notchbook.errors import InputError

BODY = MeasureSet.from_mm("Client A", {"bust_girth": 940.0})


def applied(*edits: BodyEdit, to: MeasureSet = BODY) -> MeasureSet:
    for edit in edits:
        to = edit.apply(to)
    return to


def refusal(edit: BodyEdit, to: MeasureSet = BODY) -> str:
    with pytest.raises(InputError) as caught:
        edit.apply(to)
    return caught.value.code


def test_a_second_reading_gives_the_mean_and_a_third_the_middle() -> None:
    twice = applied(AddReading("bust_girth", "95", "cm"))
    assert twice.values["bust_girth"] == Measure(945.0, readings=(940.0, 950.0))
    thrice = applied(AddReading("bust_girth", "104", "cm"), to=twice)
    assert thrice.values["bust_girth"].value == 950.0, "one slip of the tape does no harm"


def test_the_first_reading_is_the_measure() -> None:
    taken = applied(AddReading("waist_girth", "28 1/2", "in"))
    assert taken.values["waist_girth"] == Measure(28.5 * 25.4)
    assert taken == applied(SetReading("waist_girth", 0, "28 1/2", "in"))


def test_a_reading_is_typed_anew_and_taken_out() -> None:
    twice = applied(SetReading("bust_girth", 1, "95", "cm"))
    assert twice.values["bust_girth"].readings == (940.0, 950.0)
    other = applied(SetReading("bust_girth", 0, "94.6", "cm"), to=twice)
    assert other.values["bust_girth"].readings == (946.0, 950.0)
    once = applied(ClearReading("bust_girth", 0), to=twice)
    assert once.values["bust_girth"] == Measure(950.0)
    assert "bust_girth" not in applied(ClearReading("bust_girth", 0), to=once).values


def test_a_reading_that_is_not_there_is_refused() -> None:
    assert refusal(SetReading("bust_girth", 2, "95", "cm")) == "reading-missing"
    assert refusal(SetReading("bust_girth", -1, "95", "cm")) == "reading-missing"
    assert refusal(ClearReading("waist_girth", 0)) == "reading-missing"


@pytest.mark.parametrize("text", ["", "wide", "94 kg", "nan"])
def test_a_reading_is_read_as_a_measure_is(text: str) -> None:
    assert refusal(AddReading("bust_girth", text, "cm")) == refusal(SetMeasure("bust_girth", text, "cm"))
    assert refusal(AddReading("bust_girth", "9.4", "cm")) == "measure-impossible"


def test_an_estimate_is_no_reading() -> None:
    guessed = BODY.with_value("bust_girth", Measure(930.0, "estimated", 20.0, note="by eye"))
    taken = applied(AddReading("bust_girth", "94", "cm"), to=guessed)
    assert taken.values["bust_girth"] == Measure(940.0, note="by eye")
    assert readings_of(guessed.values["bust_girth"]) == readings_of(None) == ()


def test_what_stands_beside_a_measure_stays_with_its_readings() -> None:
    noted = BODY.with_value("bust_girth", Measure(940.0, method="over a bra", by="Ines", note="breathes in"))
    measure = applied(AddReading("bust_girth", "95", "cm"), to=noted).values["bust_girth"]
    assert (measure.method, measure.by, measure.note) == ("over a bra", "Ines", "breathes in")


def test_a_measure_typed_anew_has_no_old_readings() -> None:
    twice = applied(AddReading("bust_girth", "95", "cm"))
    assert applied(SetMeasure("bust_girth", "96", "cm"), to=twice).values["bust_girth"] == Measure(960.0)


def test_a_measure_that_becomes_an_estimate_loses_its_readings() -> None:
    twice = applied(AddReading("bust_girth", "95", "cm"))
    guessed = applied(NoteMeasure("bust_girth", "cm", "moved", "2"), to=twice)
    assert guessed.values["bust_girth"] == Measure(945.0, "estimated", 20.0, note="moved")


def test_sides_have_readings_of_their_own() -> None:
    twice = applied(AddReading("hip_depth", "20", "cm", "left"), AddReading("hip_depth", "21", "cm", "left"))
    assert twice.values["hip_depth@left"].readings == (200.0, 210.0)
    assert twice.find("hip_depth", "right") is None


@given(st.lists(st.integers(60, 160), min_size=1, max_size=7))
def test_the_value_is_the_median_of_what_the_tape_said(readings: list[int]) -> None:
    """Against Python's own statistics module."""
    taken = applied(*(AddReading("waist_girth", str(one), "cm") for one in readings))
    assert taken.value("waist_girth") == pytest.approx(10 * statistics.median(readings))
    assert readings_of(taken.values["waist_girth"]) == tuple(10.0 * one for one in readings)


def test_circumstances_one_by_one() -> None:
    said = applied(
        SetCircumstances("cm", taken_on=" 2026-03-02 "),
        SetCircumstances("cm", taken_by="Ines", undergarment="soft bra"),
        SetCircumstances("in", heel="2"),
    )
    assert said.circumstances == Circumstances("2026-03-02", "Ines", "soft bra", 50.8)
    assert applied(SetCircumstances("cm", taken_on="", heel=""), to=said).circumstances == Circumstances(
        "", "Ines", "soft bra", 0.0
    )
    assert refusal(SetCircumstances("cm", taken_on="2026-02-30")) == "date-unreadable"
    assert refusal(SetCircumstances("cm", heel="high")) == "number-text"


def test_the_waist_and_its_drop_go_together() -> None:
    lower = applied(SetWaistLevel("lower", "cm", "3,5"))
    assert (lower.waist_level, lower.waist_drop) == ("lower", 35.0)
    assert applied(SetWaistLevel("natural", "cm", "3"), to=lower).waist_drop == 0.0
    assert applied(SetWaistLevel("navel", "cm")).drop_below_natural == 40.0
    assert refusal(SetWaistLevel("lower", "cm")) == "waist-level"


def test_what_is_said_of_the_set_as_a_whole() -> None:
    said = applied(
        SetPopulation("women"),
        SetRiseMethod("sitting"),
        SetKind("form", "40"),
        NoteSet("padded"),
        RenameBody("Form A"),
    )
    assert (said.population, said.rise_method, said.kind, said.label_size) == (
        "women",
        "sitting",
        "form",
        "40",
    )
    assert (said.note, said.name) == ("padded", "Form A")
    assert applied(SetKind("body"), to=said).label_size == "40", "what is not said stays"
    cleared = applied(SetPopulation(None), SetRiseMethod(None), to=said)
    assert (cleared.population, cleared.rise_method) == (None, None)
    assert refusal(RenameBody("  ")) == "measures-name"
