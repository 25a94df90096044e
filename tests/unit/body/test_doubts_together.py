"""The common distribution of a set, against scipy's multivariate normal distribution."""

import itertools
from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import multivariate_normal

from notchbook.body import MeasureSet, WaistLevel
from notchbook.body.doubts.together import Together, together
from notchbook.body.noticed_slip import noticed_slip
from notchbook.body.population import population
from notchbook.body.population.model import Array
from notchbook.body.population.system import widening
from notchbook.body.waist_drop import DROP_KEY

VALUES = {
    "height": 1680.0, "bust_girth": 900.0, "waist_girth": 760.0, "hip_girth": 990.0,
    "back_waist_length": 440.0, "arm_length": 560.0, "wrist_girth": 165.0, "outside_leg": 1040.0,
    "standing_rise": 250.0, "inside_leg": 800.0,
}  # fmt: skip
WOMEN = population("women")
SET = replace(MeasureSet.from_mm("Invented", VALUES), population="women")


def whole() -> Together:
    return together(WOMEN, SET)


def density(one: Together, values: Array | None = None) -> float:
    given = one.values if values is None else values
    return float(multivariate_normal(one.mean, one.covariance).logpdf(given))


@pytest.mark.parametrize("level", ["natural", "lower", "navel"])
def test_standings_are_the_scores_of_the_population(level: WaistLevel) -> None:
    measures = replace(SET, waist_level=level, waist_drop=30.0 if level != "natural" else 0.0)
    standings = together(WOMEN, measures).standings()
    scores = WOMEN.scores(measures)
    drop = [DROP_KEY] if level == "navel" else []
    assert [*(score.key for score in scores), *drop] == list(standings)
    for score in scores:
        assert standings[score.key].z == pytest.approx(score.z, abs=1e-6)
        assert standings[score.key].expected == pytest.approx(score.expected.value, abs=1e-6)


def test_a_value_left_out_is_judged_by_the_rest_and_judges_nothing() -> None:
    one = whole()
    standings = one.standings(["back_waist_length"])
    assert standings["back_waist_length"].z == pytest.approx(one.standings()["back_waist_length"].z)
    rest = together(WOMEN, SET.without("back_waist_length")).standings()
    for key, standing in rest.items():
        assert standings[key].z == pytest.approx(standing.z)


def test_leaving_out_the_worst_saves_its_squared_deviation() -> None:
    # Outside: the squared Mahalanobis distance follows from scipy's density.
    one = whole()
    constant = multivariate_normal(one.mean, one.covariance).logpdf(one.mean)
    distance = -2 * (density(one) - constant)
    for key in one.keys:
        rest = one.keeping([key])
        middle = multivariate_normal(rest.mean, rest.covariance)
        kept = -2 * (middle.logpdf(rest.values) - middle.logpdf(rest.mean))
        saved = one.standings()[key].z ** 2 * widening(one.bodies, len(one.keys) - 1)
        assert distance - kept == pytest.approx(saved, abs=1e-6)


def test_the_gain_of_a_change_is_the_change_of_the_density() -> None:
    one = whole()
    changed = one.values.copy()
    changed[one.keys.index("bust_girth")] = 760
    changed[one.keys.index("waist_girth")] = 900
    gain = one.gain_of({"bust_girth": 760, "waist_girth": 900})
    assert gain == pytest.approx(density(one, changed) - density(one))


def test_the_gain_of_an_unknown_shift_is_that_of_the_shifted_distribution() -> None:
    one = whole()
    way = np.array([{"outside_leg": -1.0, "standing_rise": -1.0}.get(key, 0.0) for key in one.keys])
    shifted = multivariate_normal(one.mean + 46 * way, one.covariance + 17.0**2 * np.outer(way, way))
    expected = float(shifted.logpdf(one.values)) - density(one)
    gain = one.gain_of_shift({"outside_leg": -1.0, "standing_rise": -1.0}, 46, 17)
    assert gain == pytest.approx(expected)


def test_the_best_pair_is_the_best_of_all_pairs() -> None:
    one = whole()
    distance = float(one.off @ one.precision @ one.off)
    saved = {}
    for pair in itertools.combinations(one.keys, 2):
        rest = one.keeping(pair)
        saved[pair] = distance - float(rest.off @ rest.precision @ rest.off)
    found = one.best_pair()
    assert found is not None
    best = max(saved, key=lambda pair: saved[pair])
    assert set(found[0]) == set(best)
    assert found[1] == pytest.approx(saved[best])
    assert together(WOMEN, MeasureSet.from_mm("A", {"height": 1680, "hip_girth": 980})).best_pair() is None


def test_what_is_noticed_with_even_chance_is_what_the_population_says() -> None:
    one = whole()
    for key in ("bust_girth", "wrist_girth"):
        slip = noticed_slip(WOMEN.look_again) * one.standings()[key].sd
        assert slip == pytest.approx(WOMEN.blind_spot(key, SET), rel=1e-6)
