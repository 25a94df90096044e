"""Estimates: what they say, what they refuse, and that they are never evidence."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.body import (
    WAIST_LEVELS,
    Measure,
    MeasureSet,
    PopulationName,
    WaistLevel,
    measure_entry,
    measure_table,
)
from notchbook.body.estimate_method import estimate_method, is_own_estimate
from notchbook.body.estimating.estimate import Estimates, NotEstimable
from notchbook.body.estimating.estimating import estimate, estimate_from, missing_keys, with_estimates
from notchbook.body.estimating.many import estimate_many
from notchbook.body.one_line import LONGEST_NAME
from notchbook.body.population import Expected, population
from notchbook.errors import InputError
from support.bodies import four_measures

KEYS = tuple(measure_table())
PEOPLE: tuple[PopulationName | None, ...] = ("women", "men", None)


def refused(measures: MeasureSet) -> str:
    with pytest.raises(InputError) as caught:
        estimate(measures)
    return caught.value.code


def test_a_set_without_population_is_asked_whose_body_it_is() -> None:
    assert refused(four_measures(None)) == "estimate-no-population"


def test_nothing_is_estimated_from_nothing_or_from_estimates() -> None:
    bare = MeasureSet("Invented", population="women")
    assert refused(bare) == "estimate-nothing-measured"
    assert refused(bare.with_value("height", Measure(1680.0, "estimated", 50.0))) == (
        "estimate-nothing-measured"
    )


def test_an_unknown_key_is_refused() -> None:
    with pytest.raises(InputError) as caught:
        estimate(four_measures(), ["hip_dept"])
    assert caught.value.code == "measure-unknown"


def test_every_measure_is_taken_estimated_or_said_not_to_be() -> None:
    measures = four_measures()
    found = estimate(measures)
    told = {*found.found, *(one.key for one in found.left_out)}
    assert told == set(missing_keys(measures)) == set(KEYS) - set(measures.values)
    assert {one.problem.code for one in found.left_out} == {"estimate-not-known"}
    assert "forward_shoulder" in {one.key for one in found.left_out}
    assert "women" in found.people
    assert "civilian" in found.people


def test_an_estimate_is_rounded_and_its_error_holds_no_less() -> None:
    measures = four_measures()
    for key, one in estimate(measures).found.items():
        expected = population("women").expect(key, measures)
        assert expected is not None
        step = 1.0 if measure_entry(key).is_length else 0.1
        assert one.value / step == pytest.approx(round(one.value / step), abs=1e-6)
        assert abs(one.value - expected.value) <= step / 2 + 1e-6
        assert 0.0 <= one.error - expected.half_width(0.9) < step + 1e-6
        assert (one.low, one.high) == (max(one.value - one.error, 0.0), one.value + one.error)


def test_what_was_measured_is_never_touched() -> None:
    measures = four_measures(hip_depth=150.0)
    filled = with_estimates(measures)
    assert all(filled.values[name] == measure for name, measure in measures.values.items())
    asked = estimate(measures, ["hip_depth", "outside_leg"])
    assert [one.problem.code for one in asked.left_out] == ["estimate-not-needed"]
    assert set(asked.found) == {"outside_leg"}


def test_estimates_are_no_evidence_for_others() -> None:
    measures = four_measures()
    lying = measures.with_value("inside_leg", Measure(990.0, "estimated", 10.0))
    now, then = estimate(lying, ["outside_leg"]), estimate(measures, ["outside_leg"])
    assert now.found == then.found
    measured = measures.with_value("inside_leg", 860.0)
    assert estimate(measured, ["outside_leg"]).found != then.found


def test_a_side_alone_is_no_whole_measure() -> None:
    measures = four_measures().with_value("hip_depth", 190.0, "left")
    filled = with_estimates(measures, ["hip_depth"])
    assert filled.values["hip_depth"].status == "estimated"
    assert filled.value("hip_depth", "left") == 190.0
    # The side that was taken is evidence for nothing else than other measures.
    assert filled.value("hip_depth", "right") == filled.values["hip_depth"].value
    both = measures.with_value("hip_depth", 205.0, "right")
    assert "hip_depth" not in estimate(both).found


def test_a_form_is_estimated_and_said_to_be_no_body() -> None:
    form = replace(four_measures(), kind="form")
    (caution,) = estimate(form).cautions
    assert "dress form" in caution.text()
    assert estimate(four_measures()).cautions == ()


def adult(people: PopulationName, *values: float) -> MeasureSet:
    """An invented adult: height, bust, waist and hip."""
    keys = ("height", "bust_girth", "waist_girth", "hip_girth")
    return replace(MeasureSet.from_mm("Invented", dict(zip(keys, values, strict=True))), population=people)


def test_nothing_is_estimated_of_a_child() -> None:
    """Heights of girls and boys: about 122 cm at seven, 138 cm at ten (WHO reference 2007, medians, from
    memory); girths invented beside them. The third is small all over though her height is an adult's."""
    for measures in (
        adult("women", 1220.0, 620.0, 560.0, 680.0),
        adult("men", 1380.0, 680.0, 620.0, 720.0),
        adult("women", 1400.0, 700.0, 600.0, 730.0),
        replace(MeasureSet.from_mm("Invented", {"height": 1220.0}), population="women"),
        replace(MeasureSet.from_mm("Invented", {"hip_girth": 600.0}), population="women"),
    ):
        assert refused(measures) == "estimate-no-children", measures
        (told,) = estimate_many([measures])
        assert isinstance(told, InputError)
        assert (told.code, "no population of children" in told.text()) == ("estimate-no-children", True)


def test_an_adult_is_never_taken_for_a_child() -> None:
    """The ends of the women's and men's size range of EN 13402-3 (bust 74 to 150, chest 78 to 150; from
    memory), small and tall: studios see them, a survey of soldiers hardly. Said where they lie outside."""
    for measures, outside in (
        (adult("women", 1450.0, 860.0, 700.0, 900.0), False),
        (adult("women", 1500.0, 760.0, 600.0, 820.0), False),
        (adult("women", 1780.0, 800.0, 600.0, 880.0), False),
        (adult("women", 1850.0, 900.0, 700.0, 950.0), False),
        (adult("women", 1650.0, 1400.0, 1300.0, 1450.0), True),
        (adult("women", 1650.0, 1500.0, 1420.0, 1600.0), True),
        (adult("men", 1620.0, 860.0, 740.0, 880.0), False),
        (adult("men", 1780.0, 1500.0, 1500.0, 1500.0), True),
    ):
        codes = [caution.code for caution in estimate(measures).cautions]
        assert codes == (["estimate-far-outside"] if outside else []), measures


def test_what_no_body_has_is_not_filled_in() -> None:
    told = estimate_from(Expected("inside_leg", 1400.0, 30.0, ("height",)), "inside_leg", population("women"))
    assert isinstance(told, NotEstimable)
    assert told.problem.code == "estimate-not-possible"


def test_measures_out_of_all_proportion_are_refused() -> None:
    """Legs that leave hardly a rise between crotch and waist: no adult has 10 mm of it."""
    assert refused(four_measures(outside_leg=1000.0, inside_leg=990.0)) == "estimate-too-far-outside"


def test_every_estimate_names_its_own_source() -> None:
    """Not of the survey: shoulder slope and others of a scanned sample, upper and under bust of a table of
    sizes (definitions.toml, regressions.toml)."""
    women = estimate(four_measures()).found
    kinds = {key: one.source.kind for key, one in women.items()}
    assert {key for key, kind in kinds.items() if kind == "table"} == {"upper_bust_girth", "under_bust_girth"}
    assert {key for key, kind in kinds.items() if kind == "sample"} == {
        "shoulder_slope", "across_chest", "front_waist_length", "center_front_length", "neck_to_bust_point",
        "bust_point_width",
    }  # fmt: skip
    assert women["shoulder_slope"].method == "from no other measure; 600 women of a published Spanish sample"
    assert "ANSUR" not in women["under_bust_girth"].method
    assert all(is_own_estimate(one.measure()) for one in women.values())
    men = estimate(four_measures("men")).found
    assert {one.source.kind for one in men.values()} == {"survey"}


def test_a_form_is_asked_for_its_trunk_alone() -> None:
    form = replace(four_measures().without("height"), kind="form")
    told = estimate(form)
    keys = {*told.found, *(one.key for one in told.left_out)}
    assert {"hip_depth", "back_waist_length", "neck_girth"} <= set(told.found)
    assert not keys & {"height", "inside_leg", "arm_length", "head_girth", "crotch_length", "weight"}
    assert "inside_leg" in estimate(replace(form, kind="chart")).found
    (asked,) = estimate(form, ["arm_length"]).left_out
    assert asked.problem.code == "estimate-not-on-form"


def test_men_are_spoken_of_in_mens_words() -> None:
    told = estimate(four_measures("men"))
    methods = " ".join(one.method for one in told.found.values())
    assert "chest girth" in methods
    assert "bust girth" not in methods
    assert "under_bust_girth" not in {one.key for one in told.left_out}
    assert "under_bust_girth" in estimate(four_measures()).found


def test_a_set_says_where_each_estimate_comes_from() -> None:
    told = with_estimates(four_measures(), ["hip_depth"]).values["hip_depth"]
    assert (told.status, told.method[:12]) == ("estimated", "from height,")
    assert told.method.endswith(f"; {population('women').size} women of ANSUR II (2012)")
    assert is_own_estimate(told)
    assert not is_own_estimate(Measure(200.0, "estimated", 10.0, "by eye"))
    assert not is_own_estimate(Measure(200.0, method=told.method))


@given(st.lists(st.sampled_from(KEYS), unique=True))
def test_the_method_is_never_too_long(keys: list[str]) -> None:
    method = estimate_method(keys, "12,345 women of ANSUR II (2012)")
    assert len(method) <= LONGEST_NAME
    assert is_own_estimate(Measure(1.0, "estimated", 1.0, method))


@given(
    st.lists(
        st.tuples(
            st.sets(st.sampled_from(("height", "bust_girth", "waist_girth", "hip_girth", "shoulder_slope"))),
            st.sampled_from(PEOPLE),
            st.sampled_from(WAIST_LEVELS),
            st.integers(0, 60),
        ),
        max_size=12,
    )
)
def test_many_bodies_at_once_give_what_each_gives_alone(
    drawn: list[tuple[set[str], PopulationName | None, WaistLevel, int]],
) -> None:
    usual = {"height": 1700.0, "bust_girth": 940.0, "waist_girth": 790.0, "hip_girth": 1000.0}
    sets = []
    for keys, people, level, more in drawn:
        values = {key: Measure(usual.get(key, 22.0) + more / 10) for key in keys}
        drop = 0.0 if level == "natural" else float(more) if level == "navel" else more + 1.0
        sets.append(MeasureSet("Invented", values, waist_level=level, waist_drop=drop, population=people))
    for measures, told in zip(sets, estimate_many(sets), strict=True):
        if isinstance(told, Estimates):
            alone = estimate(measures)
            assert list(told.found) == list(alone.found)
            for key, one in told.found.items():
                # A value half way between two steps may be rounded either way.
                assert one == replace(alone.found[key], value=one.value)
                assert one.value == pytest.approx(alone.found[key].value, abs=1.001)
            assert [one.key for one in told.left_out] == [one.key for one in alone.left_out]
            assert [one.code for one in told.cautions] == [one.code for one in alone.cautions]
        else:
            assert told.code == refused(measures)
