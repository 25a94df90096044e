"""The drop of the waist: looked over like a value of its own, and never the reason to doubt all others."""

from dataclasses import replace
from pathlib import Path

import pytest

from notchbook.app.bodies.repair_edits import RepairMeasures
from notchbook.app.bodies.set_edits import SetWaistLevel
from notchbook.body import MeasureSet, check_consistent, look_over, read_measures
from notchbook.body.doubts.slips.waist_taken import NAVEL_DROP
from notchbook.body.doubts.waist_drops import refuse_impossible_drop
from notchbook.body.measure_table import measure_entry
from notchbook.body.population import population
from notchbook.body.population.evidence import Frame
from notchbook.body.population.system import make_system
from notchbook.body.waist_drop import DROP_KEY, MOST_DROP, MOST_USUAL_DROP, value_entry
from notchbook.errors import InputError
from notchbook.units import LengthStyle

KEYS = (
    "height", "bust_girth", "waist_girth", "hip_girth", "back_waist_length", "center_front_length",
    "hip_depth", "knee_depth", "outside_leg", "inside_leg", "crotch_length", "arm_length",
)  # fmt: skip
CM = LengthStyle("cm")


def navel(drop: float) -> MeasureSet:
    """The middle of the women, all lengths to the navel, which is said to lie so many mm low."""
    middle = make_system(population("women").model, Frame("book", "navel", False), KEYS).mean.tolist()
    bare = MeasureSet.from_mm("Invented", dict(zip(KEYS, middle, strict=True)))
    return replace(bare, population="women", waist_level="navel", waist_drop=drop)


def codes(measures: MeasureSet) -> dict[str, str]:
    return {doubt.code: doubt.level for doubt in check_consistent(measures, CM)}


def test_the_limits_hold_what_navels_do() -> None:
    # Outside: mean and SD of the drop to the navel, computed from ANSUR II; 99.7 % lie within three SD.
    for mean, deviation in NAVEL_DROP.values():
        assert mean + 3 * deviation <= MOST_USUAL_DROP < MOST_DROP
    # A waist lies above the crotch: no usual rise is shorter than the largest drop that is possible.
    assert measure_entry("sitting_rise").usual[0] >= MOST_DROP


@pytest.mark.parametrize(
    ("drop", "code"),
    [
        (100.0, ""),
        (100.5, "waist-drop-unusual"),
        (200.0, "waist-drop-unusual"),
        (200.5, "waist-drop-impossible"),
    ],
)
def test_a_drop_is_asked_about_beyond_what_is_usual_and_stopped_beyond_what_is_possible(
    drop: float, code: str
) -> None:
    bare = MeasureSet.from_mm("A", {"hip_girth": 980.0})
    for level in ("lower", "navel"):
        found = codes(replace(bare, waist_level=level, waist_drop=drop))
        assert list(found) == ([code] if code else [])
    if code == "waist-drop-impossible":
        with pytest.raises(InputError, match=code):
            refuse_impossible_drop(drop, CM)
    else:
        refuse_impossible_drop(drop, CM)


def test_millimeters_in_a_file_in_centimeters_name_the_drop_and_no_length() -> None:
    looked = look_over(navel(460.0), CM)
    assert [(doubt.level, doubt.code) for doubt in looked.doubts] == [("stop", "waist-drop-impossible")]
    assert dict(looked.doubts[0].repairs[0].values) == {DROP_KEY: 46.0}
    said = looked.doubts[0].problem
    assert "46.0 cm" in said.text() and "4.6 cm would be usual: were millimeters typed" in said.next_step()


@pytest.mark.parametrize("drop", [115.0, 4.6])
def test_a_possible_drop_that_fits_no_length_is_the_one_that_is_named(drop: float) -> None:
    looked = look_over(navel(drop), CM)
    assert {one.key for doubt in looked.doubts for one in doubt.suspects} == {DROP_KEY}
    suspect = looked.doubts[0].suspects[0]
    mean, deviation = NAVEL_DROP["women"]
    assert abs(suspect.expected - mean) < deviation and suspect.low < mean < suspect.high
    assert "Waist drop of" in looked.doubts[0].problem.text()
    assert look_over(navel(46.0), CM).level == "fine"


def test_inches_multiplied_once_too_often_are_offered_for_the_drop() -> None:
    doubt = look_over(navel(46 * 2.54), CM).doubts[0]
    assert {key for repair in doubt.repairs for key, _ in repair.values} == {DROP_KEY}
    assert any(value == pytest.approx(46.0) for repair in doubt.repairs for _, value in repair.values)


def test_what_is_offered_for_the_drop_can_be_taken() -> None:
    mended = RepairMeasures({DROP_KEY: 46.0}).apply(navel(460.0))
    assert mended == navel(46.0)
    with pytest.raises(InputError, match="waist-drop-impossible"):
        RepairMeasures({DROP_KEY: 460.0}).apply(navel(46.0))


def test_nobody_can_type_or_read_an_impossible_drop(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="waist-drop-impossible"):
        SetWaistLevel("lower", "cm", "46").apply(navel(46.0))
    assert SetWaistLevel("lower", "cm", "4.6").apply(navel(0.0)).waist_drop == 46.0
    file = tmp_path / "one.csv"
    file.write_text("measure,value\nunit,cm\nwaist_level,navel\nwaist_drop,46\nhip_girth,98\n", "utf-8")
    with pytest.raises(InputError, match="waist-drop-impossible"):
        read_measures(file)
    assert read_measures(file, as_typed=True).waist_drop == 460.0


def test_no_words_expect_what_no_body_has() -> None:
    # A weight and a few girths at the far ends of what is possible pull every expectation with them.
    wild = replace(
        MeasureSet.from_mm("A", {"weight": 60.0, "bust_girth": 400.0, "hip_girth": 450.0, "height": 1700.0}),
        population="women",
    )
    looked = look_over(wild, CM)
    told = [(one.key, one.expected) for one in looked.standings]
    told += [(one.key, one.expected) for doubt in looked.doubts for one in doubt.suspects]
    assert told
    for key, expected in told:
        low, high = value_entry(key).possible
        assert low <= expected <= high
