"""What holds for a population whatever was measured."""

import math

from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.body import Measure, MeasureSet, measure_entry
from notchbook.body.measure_set import WaistLevel
from notchbook.body.population import Population, population

PEOPLE = st.sampled_from([population("women"), population("men")])


@st.composite
def sets(draw: st.DrawFn) -> MeasureSet:
    keys = draw(st.lists(st.sampled_from(population("women").keys), max_size=12, unique=True))
    values = {}
    for key in keys:
        low, high = measure_entry(key).possible
        values[key] = Measure(draw(st.floats(low, high)))
    level: WaistLevel = draw(st.sampled_from(["natural", "lower", "navel"]))
    drop = {"natural": st.just(0.0), "lower": st.floats(1.0, 200.0), "navel": st.floats(0.0, 200.0)}[level]
    return MeasureSet("drawn", values, waist_level=level, waist_drop=draw(drop))


@settings(max_examples=60, deadline=None)
@given(PEOPLE, sets())
def test_every_value_gets_a_finite_score(people: Population, measures: MeasureSet) -> None:
    scores = people.scores(measures)
    assert {score.key for score in scores} == set(measures.values) & set(people.keys)
    for score in scores:
        assert math.isfinite(score.z)
        assert score.expected.sd > 0
        assert score.key not in score.expected.given
    assert math.isfinite(people.distance(measures))


@settings(max_examples=60, deadline=None)
@given(PEOPLE, sets(), st.data())
def test_more_evidence_never_makes_less_sure(
    people: Population, measures: MeasureSet, data: st.DataObject
) -> None:
    wanted = data.draw(st.sampled_from(people.keys))
    left_out = data.draw(st.sampled_from(people.keys))
    more = people.expect(wanted, measures)
    fewer = people.expect(wanted, measures, without=(left_out,))
    assert more is not None
    assert fewer is not None
    # One part in a thousand: with one value more the covariance is itself a little less sure.
    assert more.sd <= fewer.sd * 1.002


@settings(max_examples=60, deadline=None)
@given(PEOPLE, sets(), st.data())
def test_no_measure_that_is_taken_next_makes_less_sure(
    people: Population, measures: MeasureSet, data: st.DataObject
) -> None:
    wanted = data.draw(st.lists(st.sampled_from(people.keys), min_size=1, max_size=5, unique=True))
    for gain in people.gain(measures, people.keys, dict.fromkeys(wanted, 1.0)):
        assert 0.0 <= gain.share <= 1.0 + 1e-9
        assert gain.after <= gain.before * (1 + 1e-9)
        assert gain.key not in measures.values


@settings(max_examples=40, deadline=None)
@given(PEOPLE, sets(), st.floats(0.05, 0.9))
def test_a_blind_spot_is_a_length(people: Population, measures: MeasureSet, chance: float) -> None:
    for key in people.keys[:5]:
        spot = people.blind_spot(key, measures, chance)
        assert math.isfinite(spot)
        assert spot > 0
