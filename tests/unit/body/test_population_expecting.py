"""What a population expects of a measure, and at which waist."""

import math
from dataclasses import replace
from typing import Any

import pytest

from notchbook.body import Measure, MeasureSet, measure_entry, measure_table
from notchbook.body.population import Expected, Population, definitions, population, populations

FOUR = {"height": 1680.0, "bust_girth": 920.0, "waist_girth": 740.0, "hip_girth": 980.0}
EXACT = 1e-6

women, men = populations()


def body(values: dict[str, float] = FOUR, **words: Any) -> MeasureSet:
    return replace(MeasureSet.from_mm("Mara T. (invented)", values), **words)


def expect(key: str, measures: MeasureSet, people: Population = women) -> Expected:
    found = people.expect(key, measures)
    assert found is not None
    return found


def test_a_population_says_who_they_are_and_who_they_are_not() -> None:
    for people in (women, men):
        assert str(people.size) in people.words
        assert "ANSUR II (2012)" in people.words
        assert "not a civilian population" in people.words
        assert 2.3 < people.look_again < 3.0 < people.stop < 4.5


def test_every_key_is_a_measure_and_says_where_it_comes_from() -> None:
    for people in (women, men):
        assert set(people.keys) <= set(measure_table())
        for key in people.keys:
            one = definitions(people.name)[key]
            assert one.source
            assert one.grade
            assert one.doubt > 0 or one.offset == 0 or one.regression, f"{key}: an offset without doubt"


def test_what_has_no_source_is_not_expected() -> None:
    assert women.expect("armscye_girth", body()) is None
    assert women.expect("across_chest", body()) is not None
    assert men.expect("across_chest", body()) is None


def test_the_measure_itself_and_what_is_left_out_are_no_evidence() -> None:
    known = body({**FOUR, "inside_leg": 700.0})
    assert expect("inside_leg", known) == expect("inside_leg", body())
    without = women.expect("inside_leg", known, without=("height",))
    assert without is not None
    assert "height" not in without.given
    assert without.sd > expect("inside_leg", known).sd


def test_estimates_are_no_evidence() -> None:
    guessed = body().with_value("inside_leg", Measure(900.0, "estimated", 40.0))
    assert expect("outside_leg", guessed) == expect("outside_leg", body())
    charted = body().with_value("inside_leg", Measure(900.0, "chart"))
    assert expect("outside_leg", charted).value > expect("outside_leg", body()).value + 20


def test_strongest_evidence_comes_first_and_useless_evidence_is_not_named() -> None:
    assert expect("inside_leg", body()).given[0] == "height"
    assert expect("thigh_girth", body()).given[0] == "hip_girth"
    assert expect("shoulder_slope", body()).given == ()
    assert expect("wrist_girth", MeasureSet("nobody")).given == ()


def test_intervals() -> None:
    one = Expected("height", 1700.0, 10.0)
    assert one.half_width(0.95) == pytest.approx(19.6, abs=0.01)  # the normal table: 1.96 SD
    assert one.interval(0.9) == pytest.approx((1683.55, 1716.45), abs=0.01)  # 1.645 SD
    assert Expected("belly_depth", 5.0, 10.0).interval()[0] == 0.0


@pytest.mark.parametrize("key", [key for key in women.keys if key != "waist_girth"])
def test_a_lower_waist_moves_what_is_expected_by_the_shift_of_the_measure(key: str) -> None:
    bare = {"height": 1680.0, "hip_girth": 980.0}
    natural = expect(key, body({k: v for k, v in bare.items() if k != key}))
    lower = expect(key, body({k: v for k, v in bare.items() if k != key}, waist_level="lower", waist_drop=30))
    assert lower.value - natural.value == pytest.approx(30 * measure_entry(key).waist_shift, abs=EXACT)
    assert lower.sd == pytest.approx(natural.sd, abs=EXACT)


def test_one_body_told_at_two_waists_foretells_the_same() -> None:
    at_waist = {"outside_leg": 1050.0, "back_waist_length": 400.0, "hip_depth": 200.0, "crotch_length": 680.0}
    lower = {key: value + 25 * measure_entry(key).waist_shift for key, value in at_waist.items()}
    one = expect("height", body(at_waist))
    other = expect("height", body(lower, waist_level="lower", waist_drop=25))
    assert other.value == pytest.approx(one.value, abs=EXACT)
    assert other.sd == pytest.approx(one.sd, abs=EXACT)


def test_the_waist_girth_goes_over_to_that_at_the_navel() -> None:
    bare = {"hip_girth": 980.0}
    navel = expect("waist_girth", body(bare, waist_level="navel")).value
    drop = women.model.mean_drop
    assert expect("waist_girth", body(bare)).value == pytest.approx(navel - 20, abs=EXACT)
    half = expect("waist_girth", body(bare, waist_level="lower", waist_drop=drop / 2)).value
    assert half == pytest.approx(navel - 10, abs=EXACT)
    deep = expect("waist_girth", body(bare, waist_level="lower", waist_drop=10 * drop)).value
    assert deep == pytest.approx(navel + 20, abs=EXACT), "it grows no further below twice the drop"


def test_a_known_navel_is_worth_more_than_an_unknown_one() -> None:
    unknown = expect("outside_leg", body(waist_level="navel"))
    known = expect("outside_leg", body(waist_level="navel", waist_drop=75.0))
    assert known.value < unknown.value - 5, "a navel farther down lies nearer the floor"
    assert known.sd < unknown.sd


def test_the_navel_lies_below_the_natural_waist() -> None:
    # Women 46 (SD 17), men 35 (SD 19): computed from all rows of ANSUR II, natural waist as in ISO 8559-1.
    for people, mean in ((women, 46), (men, 35)):
        height = {"height": 1700.0}
        fall = expect("outside_leg", body(height), people).value
        fall -= expect("outside_leg", body(height, waist_level="navel"), people).value
        assert fall == pytest.approx(mean, abs=4)


def test_parts_and_wholes_are_expected_to_fit() -> None:
    frames: tuple[dict[str, Any], ...] = (
        {},
        {"waist_level": "navel"},
        {"waist_level": "lower", "waist_drop": 20.0},
    )
    for words in frames:
        told = {key: expect(key, body(FOUR, **words)).value for key in women.keys if key not in FOUR}
        assert told["outside_leg"] - told["inside_leg"] == pytest.approx(told["standing_rise"], abs=EXACT)
        parts = told["front_crotch_length"] + told["back_crotch_length"]
        assert parts == pytest.approx(told["crotch_length"], abs=EXACT)
        assert told["sitting_rise"] - told["standing_rise"] == pytest.approx(10.5, abs=EXACT)


def test_the_surveys_own_way_has_no_offsets_and_its_waist_at_the_navel() -> None:
    alone = {"height": 1680.0}
    taken = body(alone, taken_as="survey")
    navel = body(alone, waist_level="navel")
    off = {key: expect(key, navel).value - expect(key, taken).value for key in ("arm_length", "across_back")}
    assert off == pytest.approx({"arm_length": 20.0, "across_back": -35.0}, abs=0.2)
    assert expect("across_back", taken).sd < expect("across_back", navel).sd
    assert expect("outside_leg", taken).value == pytest.approx(expect("outside_leg", navel).value, abs=0.5)
    assert women.expect("sitting_rise", taken) is None, "the survey took no such measure"


def test_only_one_side_was_taken() -> None:
    sided = MeasureSet("one arm (invented)", {"arm_length@left": Measure(600.0)})
    plain = MeasureSet("both arms (invented)", {"arm_length": Measure(600.0)})
    assert expect("height", sided) == expect("height", plain)


def test_populations_are_made_once_and_unlike() -> None:
    assert population("women") is women
    assert expect("height", MeasureSet("nobody"), men).value > expect("height", MeasureSet("nobody")).value
    assert all(math.isfinite(expect(key, body()).sd) for key in women.keys)
