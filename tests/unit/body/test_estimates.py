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
from notchbook.body.estimating.estimate import Estimates
from notchbook.body.estimating.estimating import estimate, missing_keys, with_estimates
from notchbook.body.estimating.many import estimate_many
from notchbook.body.one_line import LONGEST_NAME
from notchbook.body.population import population
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


def test_a_body_far_outside_of_the_population_is_told() -> None:
    small = MeasureSet.from_mm("Invented child", {"height": 1200.0, "hip_girth": 660.0})
    child = replace(small, population="women")
    assert [caution.code for caution in estimate(child).cautions] == ["estimate-far-outside"]
    (told,) = estimate_many([child])
    assert isinstance(told, Estimates)
    assert [caution.code for caution in told.cautions] == ["estimate-far-outside"]


def test_what_no_body_has_is_not_filled_in() -> None:
    child = replace(MeasureSet.from_mm("Invented", {"height": 450.0, "hip_girth": 300.0}), population="women")
    problems = {one.problem.code for one in estimate(child).left_out}
    assert "estimate-not-possible" in problems


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
