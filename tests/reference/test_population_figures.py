"""The populations against published and recomputed figures; sources in ``population/SOURCES.md``."""

import csv
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from scipy import stats

from make_population import DROP, FOUR
from notchbook.body import MeasureSet, PopulationName
from notchbook.body.population import Expected, population
from notchbook.body.population.definitions import regressions
from notchbook.body.population.evidence import Frame
from notchbook.body.population.system import make_system
from notchbook.units import parse_length
from survey_rows import build_rows, survey_set, survey_values

FOLDER = Path(__file__).parent / "population"
TAKEN = Frame("survey", "navel", False)
NATURAL = Frame("book", "natural", False)
ENTRIES = MeasureSet.from_mm(
    "168/92/74/98", {"height": 1680.0, "bust_girth": 920.0, "waist_girth": 740.0, "hip_girth": 980.0}
)
women = population("women")


def lines(name: str) -> list[dict[str, str]]:
    with (FOLDER / name).open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def expect(key: str, measures: MeasureSet) -> Expected:
    found = women.expect(key, measures)
    assert found is not None
    return found


@pytest.mark.parametrize(
    "fact", lines("survey_facts.csv"), ids=lambda fact: f"{fact['population']}-{fact['key']}"
)
def test_means_and_deviations(fact: dict[str, str]) -> None:
    people = population("women" if fact["population"] == "women" else "men")
    system = make_system(people.model, TAKEN, (fact["key"],))
    sd = float(fact["sd"]) * 10
    # Sampling error of a mean of n is sd / sqrt(n), of a deviation sd / sqrt(2 n); three of these, and what
    # the printed figure was rounded by. Half of the whole set is in both, so this is more than enough.
    assert float(system.mean[0]) == pytest.approx(
        float(fact["mean"]) * 10, abs=3 * sd / people.size**0.5 + 0.5
    )
    spread = float(system.truth[0, 0]) ** 0.5
    assert spread == pytest.approx(sd, abs=3 * sd / (2 * people.size) ** 0.5 + 0.5)


@pytest.mark.parametrize(
    "fact", lines("survey_correlations.csv"), ids=lambda fact: f"{fact['one']}-{fact['other']}"
)
def test_correlations(fact: dict[str, str]) -> None:
    truth = make_system(women.model, TAKEN, (fact["one"], fact["other"])).truth
    found = float(truth[0, 1] / np.sqrt(truth[0, 0] * truth[1, 1]))
    # Fisher: the standard error of atanh(r) is 1 / sqrt(n - 3).
    assert np.arctanh(found) == pytest.approx(np.arctanh(float(fact["correlation"])), abs=3 / 791**0.5)


@pytest.mark.parametrize("fact", lines("survey_predictions.csv"), ids=lambda fact: fact["key"])
def test_predictions_from_four_entries(fact: dict[str, str]) -> None:
    found = expect(fact["key"], replace(ENTRIES, taken_as="survey"))
    assert found.value == pytest.approx(float(fact["value"]) * 10, abs=2.5)
    assert abs(found.value - float(fact["value"]) * 10) < 0.35 * found.sd


@pytest.mark.parametrize("fact", lines("sample_predictions.csv"), ids=lambda fact: fact["key"])
def test_what_the_survey_does_not_have_comes_from_the_sample(fact: dict[str, str]) -> None:
    found = expect(fact["key"], ENTRIES)
    scale = 1 if fact["key"] == "shoulder_slope" else 10
    # The shipped coefficients have three decimals: half of the last one on each of the four entries.
    rounding = 0.0005 * sum(entry.value for entry in ENTRIES.values.values())
    assert found.value == pytest.approx(float(fact["value"]) * scale, abs=rounding)
    assert found.sd >= float(fact["sd"]) * scale, "the scatter of the sample, and the tape's"
    assert found.sd < 1.15 * float(fact["sd"]) * scale


def test_two_populations_have_other_legs() -> None:
    """Inside leg 81.4 here and 77.0 in the sample at the same entries: whose body it is must be named."""
    leg = expect("inside_leg", ENTRIES)
    assert leg.value == pytest.approx(814, abs=3)
    assert abs(leg.value - 770) > 1.5 * leg.sd
    assert "U.S. Army survey" in women.words


def test_front_and_back_differ_as_in_the_sample() -> None:
    """Front less back 39 (SD 13), front less center front 88 (SD 8), center front less back -49 (SD 13).

    The sample's differences from their regressions, computed by us; mm. Here at the middle of the survey.
    """
    front, center, back = "front_waist_length", "center_front_length", "back_waist_length"
    four = ("height", "bust_girth", "waist_girth", "hip_girth")
    system = make_system(women.model, NATURAL, (front, center, back, *four))
    truth = system.truth
    solved = np.linalg.solve(truth[3:, 3:], truth[3:, :3])
    left = truth[:3, :3] - truth[:3, 3:] @ solved
    for one, other, mean, sd in ((0, 2, 39, 13), (0, 1, 88, 8), (1, 2, -49, 13)):
        assert system.mean[one] - system.mean[other] == pytest.approx(mean, abs=5)
        spread = float(left[one, one] + left[other, other] - 2 * left[one, other]) ** 0.5
        assert spread == pytest.approx(sd, abs=2.5)


def test_a_conditional_normal_distribution_against_scipy() -> None:
    """The density of scipy.stats along one value peaks at what is expected and bends as its SD says."""
    keys = ("inside_leg", "height", "bust_girth", "hip_girth", "calf_girth")
    system = make_system(women.model, NATURAL, keys)
    outside = stats.multivariate_normal(system.mean, system.read)
    values = {"height": 1700.0, "bust_girth": 880.0, "hip_girth": 1050.0, "calf_girth": 390.0}
    found = expect("inside_leg", MeasureSet.from_mm("x", values))

    def density(leg: float) -> float:
        return float(outside.logpdf([leg, *values.values()]))

    step = 5.0
    slope = (density(found.value + step) - density(found.value - step)) / (2 * step)
    bend = (density(found.value + step) - 2 * density(found.value) + density(found.value - step)) / step**2
    assert slope == pytest.approx(0.0, abs=1e-8)
    # The SD for a new body is a little wider, for the covariance itself comes from 794 bodies.
    assert found.sd == pytest.approx((-1 / bend) ** 0.5, rel=0.01)
    assert found.sd > (-1 / bend) ** 0.5


@pytest.mark.parametrize("name", ["women", "men"])
@pytest.mark.parametrize("key", ["neck_base_girth", "inside_leg", "thigh_girth", "back_waist_length"])
def test_expectations_against_least_squares_on_the_same_rows(name: PopulationName, key: str) -> None:
    rows = build_rows(name)
    table = np.array([[1.0, *(row[column] for column in FOUR.values())] for row in rows])
    wanted = np.array([survey_values(row, name)[key] for row in rows])
    weights, squares, *_ = np.linalg.lstsq(table, wanted, rcond=None)
    four = ("height", "bust_girth", "waist_girth", "hip_girth")
    for row in rows[:20]:
        found = population(name).expect(key, survey_set(row, name, four))
        assert found is not None
        outside = float(weights @ np.array([1.0, *(row[column] for column in FOUR.values())]))
        assert found.value == pytest.approx(outside, abs=0.6)
        # The unbiased scatter of least squares, a little wider for a body that was not among the rows.
        scatter = float(squares[0] / (len(rows) - 5)) ** 0.5
        assert found.sd == pytest.approx(scatter, rel=0.012)


def test_the_drop_to_the_navel_on_the_same_rows() -> None:
    for name in ("women", "men"):
        drops = [sum(weight * row[column] for column, weight in DROP.items()) for row in build_rows(name)]
        model = population(name).model
        assert model.mean_drop == pytest.approx(np.mean(drops), abs=0.05)
        variance = float(model.drop.weights @ model.covariance @ model.drop.weights)
        assert variance**0.5 == pytest.approx(np.std(drops, ddof=1), abs=0.05)


@pytest.mark.parametrize(
    ("row", "key"), [("under_bust", "under_bust_girth"), ("upper_chest", "upper_bust_girth")]
)
def test_the_line_through_a_published_table(row: str, key: str) -> None:
    with (FOLDER / "misses_inches.csv").open(encoding="utf-8", newline="") as stream:
        printed = {name: [parse_length(text, "in") for text in texts] for name, *texts in csv.reader(stream)}
    fit = stats.linregress(printed["bust"], printed[row])
    shipped = regressions()[key]
    assert shipped["bust"] == pytest.approx(fit.slope, abs=0.001)
    for bust, value in zip(printed["bust"], printed[row], strict=True):
        assert shipped["constant"] + shipped["bust"] * bust == pytest.approx(
            fit.intercept + fit.slope * bust, abs=0.5
        )
        found = expect(key, MeasureSet.from_mm("x", {"bust_girth": bust}))
        low, high = found.interval(0.9)
        assert low < value < high
