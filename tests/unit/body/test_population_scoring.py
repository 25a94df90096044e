"""Every value of a set against all others, one set or many."""

import math
import pickle
from dataclasses import replace

import numpy as np
import pytest
from scipy import stats

from make_population import JUDGED
from notchbook.body import Measure, MeasureSet
from notchbook.body.population import Score, population
from survey_rows import build_rows, held_back_rows, survey_set

women = population("women")
SOUND = {
    "height": 1650.0,
    "bust_girth": 930.0,
    "waist_girth": 800.0,
    "hip_girth": 1010.0,
    "wrist_girth": 155.0,
    "ankle_girth": 218.0,
    "arm_length": 565.0,
    "inside_leg": 790.0,
    "outside_leg": 1035.0,
    "back_waist_length": 385.0,
    "shoulder_length": 126.0,
    "calf_girth": 372.0,
}
SURVEY_SETS = [survey_set(row, "women") for row in build_rows("women")[:300]]


def sound(**changes: float) -> MeasureSet:
    return MeasureSet.from_mm("Ilse B. (invented)", {**SOUND, **changes})


def worst(scores: tuple[Score, ...]) -> Score:
    return max(scores, key=lambda score: abs(score.z))


def test_a_score_is_the_value_against_what_the_others_foretell() -> None:
    measures = sound(waist_girth=900.0)
    for score in women.scores(measures):
        expected = women.expect(score.key, measures)
        assert expected is not None
        assert score.expected.value == pytest.approx(expected.value, abs=1e-6)
        assert score.expected.sd == pytest.approx(expected.sd, rel=1e-9)
        assert score.z == pytest.approx((score.value - expected.value) / expected.sd, abs=1e-6)
        assert score.expected.given[:2] == expected.given[:2]


def test_a_sound_body_is_quiet_and_a_slip_is_named() -> None:
    assert abs(worst(women.scores(sound())).z) < women.look_again
    for key, typed in {
        "wrist_girth": 205.0,
        "ankle_girth": 268.0,
        "inside_leg": 970.0,
        "height": 156.0,
    }.items():
        found = worst(women.scores(sound(**{key: typed})))
        assert (found.key, abs(found.z) > women.stop) == (key, True)


def test_a_slip_of_five_centimeters_in_bust_or_waist_is_not_claimed_to_be_seen() -> None:
    for key in ("bust_girth", "waist_girth"):
        assert abs(worst(women.scores(sound(**{key: SOUND[key] + 50}))).z) < women.stop
        assert women.blind_spot(key, sound()) > 70


def test_many_sets_are_scored_as_one_by_one_whatever_they_hold() -> None:
    mixed = [
        *SURVEY_SETS[:20],
        sound(),
        MeasureSet("nothing taken"),
        replace(sound(), waist_level="lower", waist_drop=20.0),
        *SURVEY_SETS[20:25],
        replace(sound(), waist_level="lower", waist_drop=35.0),
        replace(sound(), waist_level="navel", waist_drop=50.0),
        replace(sound(), waist_level="navel"),
    ]
    for one, together in zip(mixed, women.scores_of_many(mixed), strict=True):
        alone = women.scores(one)
        assert [score.key for score in together] == [score.key for score in alone]
        assert [s.z for s in together] == pytest.approx([s.z for s in alone], abs=1e-7)


def test_what_is_left_out_is_neither_judged_nor_evidence() -> None:
    bad = sound(inside_leg=970.0)
    rest = women.scores(bad, without=("inside_leg",))
    assert "inside_leg" not in [score.key for score in rest]
    assert abs(worst(rest).z) < women.look_again


def test_sides_are_judged_each_and_estimates_are_not() -> None:
    sided = sound().with_value("arm_length", 640.0, "left")
    keys = [score.key for score in women.scores(sided)]
    assert keys.count("arm_length@left") == 1
    found = {score.key: score.z for score in women.scores(sided)}
    assert found["arm_length@left"] > 2.0 > abs(found["arm_length"])
    guessed = sound().with_value("thigh_girth", Measure(900.0, "estimated", 10.0))
    assert "thigh_girth" not in [score.key for score in women.scores(guessed)]


def test_clean_records_of_the_survey_score_like_a_normal_distribution() -> None:
    sets = [survey_set(row, "women", JUDGED) for row in held_back_rows("women")]
    z = np.array([score.z for record in women.scores_of_many(sets) for score in record])
    assert np.mean(np.abs(z) < 1.645) == pytest.approx(0.90, abs=0.02)  # the normal table
    assert abs(float(z.mean())) < 0.1


def test_a_record_of_the_survey_needs_its_label() -> None:
    """Judged as measures of this book, its sitting front length and wide back look odd."""
    unlabeled = [replace(one, taken_as="book") for one in SURVEY_SETS]
    shift = {"labeled": 0.0, "unlabeled": 0.0}
    for words, sets in (("labeled", SURVEY_SETS), ("unlabeled", unlabeled)):
        z = [s.z for record in women.scores_of_many(sets) for s in record if s.key == "across_back"]
        shift[words] = float(np.mean(z))
    assert abs(shift["labeled"]) < 0.15
    assert shift["unlabeled"] > 0.6


def test_the_distance_of_a_population_from_itself() -> None:
    squares = np.array([women.distance(one) ** 2 for one in SURVEY_SETS])
    keys = len(SURVEY_SETS[0].values)
    # Squared distances of normal records are chi square with as many degrees of freedom as measures; two of
    # these are differences of others and add nothing.
    assert float(squares.mean()) == pytest.approx(stats.chi2(keys - 2).mean(), rel=0.12)
    assert women.distance(MeasureSet("nothing taken")) == 0.0
    assert women.distance(sound(wrist_girth=400.0)) > 20


def test_wild_values_stay_finite() -> None:
    wild = women.scores(sound(bust_girth=1e300, hip_girth=0.0))
    assert all(math.isfinite(score.z) for score in wild)
    assert math.isfinite(women.distance(sound(bust_girth=1e300)))
    assert abs(worst(wild).z) > 1000


def test_a_population_can_be_sent_to_another_process() -> None:
    copy = pickle.loads(pickle.dumps(women))
    assert copy.scores(sound()) == women.scores(sound())
