"""Computes the size charts that are shipped: src/notchbook/body/charts/tables/women.json and men.json.

The sizes step by the bust or chest classes of EN 13402-3, at one stated height. Waist and hip have equal
standing with the bust: each stands as many standard deviations from its mean at this height as the bust
does (the reduced major axis of textbook statistics, not a regression), since the girths of a size chart
step together. Every other measure is the mean of the people of the survey who have this height, bust, waist
and hip. All is rounded to 1 mm. No maker's chart was looked at, and nothing is tuned toward one.
"""

from __future__ import annotations

import argparse
import sys
from dataclasses import replace
from pathlib import Path
from statistics import NormalDist
from typing import Final

from house import ROOT
from notchbook.body import Measure, MeasureSet, PopulationName, measure_entry
from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.chart_files import chart_json
from notchbook.body.charts.en13402 import SizeClass, size_classes
from notchbook.body.population import Expected, Population, population

TABLES: Final = ROOT / "src" / "notchbook" / "body" / "charts" / "tables"

HEIGHTS: Final[dict[PopulationName, float]] = {"women": 1680.0, "men": 1800.0}
"""mm. Women: what German size tables call normal height (second-hand); men: the center of a class of body
height near the mean of younger men (our choice)."""

BESIDE_THE_TRADE: Final[dict[PopulationName, str]] = {
    "women": "Waists are soldiers' and much larger than in charts of the trade: by 3 to 7 cm from 84 to 104, "
    "by 8 to 12 above; hips lie within 2 cm of theirs from 84 on.",
    "men": "A soldier's chest is large for the rest of him: from 88 to 120 waists are 3 to 9 cm and hips 3 "
    "to 10 cm smaller than in German size tables.",
}
"""How the girths lie to those of EN 13402-3 (women, from memory) and of German tables (second-hand); the
figures for each size are in tests/reference/test_chart_figures.py."""

CAVEATS: Final[dict[PopulationName, str]] = {
    "women": "U.S. Army women (ANSUR II, 2012), not civilians: waists are 3 to 7 cm above trade charts, "
    "more above size 104; a chart of your own is better.",
    "men": "U.S. Army men (ANSUR II, 2012), not civilians: waists and hips are 3 to 10 cm below German trade "
    "charts; a chart of your own is better.",
}
"""What is said beside every size that was found, in one sentence; the figures as in BESIDE_THE_TRADE."""

GRADE: Final = "computed; class limits second-hand and from memory"

STEPPING: Final = "bust_girth"
"""The girth by which the sizes step; the chest of men."""

STANDING_ALIKE: Final = ("waist_girth", "hip_girth")
"""The main girths that step with it."""

LEFT_OUT: Final = ("weight",)
"""No pattern is drafted from it."""

RARE: Final = 0.01
"""Share of people; a class that fewer have is drawn on and not seen."""

NINE_OF_TEN: Final = 0.9


def computed_chart(name: PopulationName) -> SizeChart:
    """The chart of a population."""
    people, height = population(name), HEIGHTS[name]
    classes = size_classes(name, STEPPING)
    sizes: list[MeasureSet] = []
    margins: dict[str, dict[str, float]] = {}
    for one in classes:
        size, margins[one.label] = _size(people, height, one)
        sizes.append(size)
    return SizeChart(
        name=f"Computed sizes, {name}",
        sizes=tuple(sizes),
        population=name,
        source=f"{_bust(name).capitalize()}, waist and hip girth of equal standing among {people.words}, at "
        f"a height of {height / 10:g} cm and the center of each class of {_bust(name)} girth of EN 13402-3; "
        "all else their mean at these; natural waist",
        grade=GRADE,
        status="computed",
        caveat=CAVEATS[name],
        note=_note(people, height, classes),
        margins=margins,
    )


def _size(people: Population, height: float, one: SizeClass) -> tuple[MeasureSet, dict[str, float]]:
    """A size and its margins: of waist and hip at this height and bust, of all else at all main girths."""
    at_height = MeasureSet.from_mm("height", {"height": height}, "chart")
    at_bust = at_height.with_value(STEPPING, Measure(one.center, "chart"))
    standing = standing_of(one.center, _expected(people, STEPPING, at_height))
    size, margins = at_bust, {}
    for key in STANDING_ALIKE:
        girth = _expected(people, key, at_height)
        value = _rounded(key, girth.value + standing * girth.sd)
        size = size.with_value(key, Measure(value, "chart"))
        margins[key] = _rounded(key, half_width_about(value, _expected(people, key, at_bust)))
    given = size
    for key in people.keys:
        if key not in given.values and key not in LEFT_OUT:
            expected = _expected(people, key, given)
            size = size.with_value(key, Measure(_rounded(key, expected.value), "chart"))
            margins[key] = _rounded(key, expected.half_width())
    return replace(size, name=one.label, kind="chart", label_size=one.label), margins


def standing_of(value: float, expected: Expected) -> float:
    """How many standard deviations a value lies above what is expected (below 0: under it)."""
    return (value - expected.value) / expected.sd


def half_width_about(value: float, expected: Expected) -> float:
    """The half width about ``value``, which need not be their mean, within which nine of ten lie."""
    people = NormalDist(expected.value, expected.sd)
    low, high = 0.0, abs(value - expected.value) + 2.0 * expected.half_width(NINE_OF_TEN)
    for _ in range(60):
        half = (low + high) / 2.0
        within = people.cdf(value + half) - people.cdf(value - half)
        low, high = (low, half) if within > NINE_OF_TEN else (half, high)
    return high


def _expected(people: Population, key: str, given: MeasureSet) -> Expected:
    found = people.expect(key, given)
    if found is None:
        raise ValueError(f"the population of {people.name} does not know {key}")
    return found


def _bust(name: PopulationName) -> str:
    return "bust" if name == "women" else "chest"


def _note(people: Population, height: float, classes: tuple[SizeClass, ...]) -> str:
    """What a reader must know: no maker's chart, whose girths these are, and which sizes are rare."""
    at_height = _expected(people, STEPPING, MeasureSet.from_mm("height", {"height": height}))
    busts = NormalDist(at_height.value, at_height.sd)
    rare = [one.label for one in classes if busts.cdf(one.high) - busts.cdf(one.low) < RARE]
    rarely = f" Fewer than one in a hundred of them have the sizes {', '.join(rare)}: drawn on, not seen."
    bust = _bust(people.name)
    return (
        f"Not the chart of any maker. A size is as far from the average in waist and hip as in {bust}; "
        f"lengths follow from the height and differ at another. {BESIDE_THE_TRADE[people.name]} ± of waist "
        f"and hip: nine of ten with this height and {bust}; of all else: nine of ten with this height, "
        f"{bust}, waist and hip.{rarely if rare else ''}"
    )


def _rounded(key: str, value: float) -> float:
    """To 1 mm, or a tenth of a degree."""
    return round(value, 0 if measure_entry(key).is_length else 1)


def texts() -> dict[Path, str]:
    """The files and what stands in them."""
    return {TABLES / f"{name}.json": chart_json(computed_chart(name)) for name in HEIGHTS}


def out_of_date() -> list[Path]:
    """Files that do not hold what would be computed now."""
    return [
        path
        for path, text in texts().items()
        if not path.is_file() or path.read_text(encoding="utf-8") != text
    ]


def main(words: list[str]) -> int:
    """Write the charts, or with --check only say which are out of date; the exit code."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--check", action="store_true", help="write nothing; exit with 1 if one would change")
    if parser.parse_args(words).check:
        old = out_of_date()
        for path in old:
            print(f"out of date: {path.relative_to(ROOT)}")
        return 1 if old else 0
    for path, text in texts().items():
        path.write_text(text, encoding="utf-8", newline="\n")
        print(f"written: {path.relative_to(ROOT)}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
