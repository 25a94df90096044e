"""The drawn figures against means of the survey ANSUR II (2012): heights of levels, breadths, depths."""

import csv
import re
import tomllib
from pathlib import Path
from statistics import fmean
from typing import Literal

import pytest

from notchbook.body.figure.figure_data import BodyView, body_views, figure_data
from notchbook.body.figure.tape_ways import place_on

FIGURES = Path(__file__).parent / "figure" / "ansur_means.toml"
SURVEY = Path(__file__).parents[2] / "data" / "survey" / "ansur"
MEANS: dict[str, dict[str, float]] = tomllib.loads(FIGURES.read_text(encoding="utf-8"))
POPULATIONS: tuple[Literal["women", "men"], ...] = ("women", "men")


def view_of(population: Literal["women", "men"], name: str) -> BodyView:
    return next(view for view in body_views(population) if view.name == name)


def told_height(words: str, means: dict[str, float]) -> float:
    """The height that the words say: a column, ``a - b`` or ``(a + b) / 2``."""
    if found := re.fullmatch(r"\((\w+) \+ (\w+)\) / 2", words):
        return (means[found[1]] + means[found[2]]) / 2
    first, _, taken_off = words.partition(" - ")
    return means[first] - (means[taken_off] if taken_off else 0.0)


def across(view: BodyView, one: str, other: str) -> float:
    """Level distance of two places, mm of the body."""
    return abs(place_on(view, one).x - place_on(view, other).x)


@pytest.mark.parametrize("population", POPULATIONS)
def test_the_figures_of_the_reference_are_those_of_the_survey(population: str) -> None:
    with (SURVEY / f"{population}.csv").open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    shared = set(MEANS[population]) & set(rows[0])
    assert len(shared) >= 7
    for column in shared:
        mean = fmean(float(row[column]) for row in rows)
        assert mean == pytest.approx(MEANS[population][column], abs=0.06), column


@pytest.mark.parametrize("population", POPULATIONS)
def test_heights_of_levels_are_the_means_they_are_said_to_be(population: Literal["women", "men"]) -> None:
    """Within 3 % wanted; those with a column are within 1 mm, since they are the means, rounded."""
    checked = 0
    for level, words in figure_data(population)["heights"].items():
        if any(column in words["from"] for column in MEANS[population]):
            assert words["mm"] == pytest.approx(told_height(words["from"], MEANS[population]), abs=1.0), level
            checked += 1
    assert checked >= 12


@pytest.mark.parametrize("population", POPULATIONS)
@pytest.mark.parametrize(
    ("view", "one", "other", "column"),
    [
        ("front", "-shoulder point", "shoulder point", "biacromialbreadth"),
        ("front", "-side:navel", "side:navel", "waistbreadth"),
        ("front", "-side:hip", "side:hip", "hipbreadth"),
        ("front", "-head:forehead", "head:forehead", "headbreadth"),
        ("side", "back:bust", "chest:bust", "chestdepth"),
        ("side", "back:navel", "chest:navel", "waistdepth"),
        ("side", "back:hip", "chest:hip", "buttockdepth"),
    ],
)
def test_breadths_and_depths_are_true(
    population: Literal["women", "men"], view: str, one: str, other: str, column: str
) -> None:
    drawn = across(view_of(population, view), one, other)
    assert drawn == pytest.approx(MEANS[population][column], rel=0.03)


@pytest.mark.parametrize("population", POPULATIONS)
def test_sitting_figure_has_the_sitting_height_and_knee_of_the_survey(
    population: Literal["women", "men"],
) -> None:
    means = MEANS[population]
    view = view_of(population, "sitting")
    crown = view.strokes["face"].bounds().max_y
    seat = view.points["seat"].y
    assert seat == pytest.approx(means["poplitealheight"], rel=0.01)
    assert crown - seat == pytest.approx(means["sittingheight"], rel=0.01)
    knee = view.strokes["thigh top"].bounds().max_x
    assert knee - view.strokes["back"].bounds().min_x == pytest.approx(means["buttockkneelength"], rel=0.03)


def test_women_and_men_differ_as_the_survey_says() -> None:
    """A figure scaled from the other would pass heights alone: shoulders over hips tell them apart."""
    shares = []
    for population in POPULATIONS:
        front = view_of(population, "front")
        shares.append(
            across(front, "-shoulder point", "shoulder point") / across(front, "-side:hip", "side:hip")
        )
    wanted = [MEANS[name]["biacromialbreadth"] / MEANS[name]["hipbreadth"] for name in POPULATIONS]
    assert shares == pytest.approx(wanted, rel=0.03)
    assert shares[1] > 1.1 * shares[0]
