"""Computes the size charts that are shipped: src/notchbook/body/charts/tables/women.json and men.json.

The sizes step by the bust or chest classes of EN 13402-3, at one stated height. Every other measure is the
mean of the people of the survey who have this bust and this height, rounded to 1 mm, with the half width
within which nine of ten of them lie. No maker's chart was looked at.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import Final

from house import ROOT
from notchbook.body import Measure, MeasureSet, PopulationName, measure_entry
from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.chart_files import chart_json
from notchbook.body.charts.en13402 import SizeClass, size_classes
from notchbook.body.population import Population, population

TABLES: Final = ROOT / "src" / "notchbook" / "body" / "charts" / "tables"

HEIGHTS: Final[dict[PopulationName, float]] = {"women": 1680.0, "men": 1800.0}
"""mm. Women: what German size tables call normal height (second-hand); men: the center of a class of body
height near the mean of younger men (our choice)."""

GRADE: Final = "computed; class limits second-hand and from memory"

LEFT_OUT: Final = ("weight",)
"""No pattern is drafted from it."""

RARE: Final = 2.58
"""Standard deviations beyond which fewer than one in a hundred lie."""


def computed_chart(name: PopulationName) -> SizeChart:
    """The chart of a population."""
    people, height = population(name), HEIGHTS[name]
    classes = size_classes(name, "bust_girth")
    keys = [key for key in people.keys if key not in (*LEFT_OUT, "height", "bust_girth")]
    sizes: list[MeasureSet] = []
    margins: dict[str, dict[str, float]] = {}
    for one in classes:
        given = MeasureSet.from_mm("given", {"height": height, "bust_girth": one.center}, "chart")
        found = {key: expected for key in keys if (expected := people.expect(key, given)) is not None}
        values = {key: Measure(_rounded(key, expected.value), "chart") for key, expected in found.items()}
        sizes.append(MeasureSet(one.label, {**given.values, **values}, "chart", label_size=one.label))
        margins[one.label] = {key: _rounded(key, expected.half_width()) for key, expected in found.items()}
    return SizeChart(
        name=f"Computed sizes, {name}",
        sizes=tuple(sizes),
        population=name,
        source=f"Mean of {people.words}, at a height of {height / 10:g} cm and the center of each class of "
        f"{'bust' if name == 'women' else 'chest'} girth of EN 13402-3; natural waist",
        grade=GRADE,
        status="computed",
        note=_note(people, height, classes),
        margins=margins,
    )


def _note(people: Population, height: float, classes: tuple[SizeClass, ...]) -> str:
    """What a reader must know: no maker's chart, and which sizes hardly anybody in the survey has."""
    at_height = people.expect("bust_girth", MeasureSet.from_mm("height", {"height": height}))
    if at_height is None:
        raise ValueError(f"the population of {people.name} does not know the bust girth")
    low, high = (at_height.value + sign * RARE * at_height.sd for sign in (-1, 1))
    rare = [one.label for one in classes if not low <= one.center <= high]
    rarely = f" Fewer than one in a hundred of them have the sizes {', '.join(rare)}: drawn on, not seen."
    return (
        "Not the chart of any maker. Lengths follow from height, hardly from girths; at another height they "
        "differ. All else is the mean for the bust and height alone, so waist and hip grow less from size to "
        f"size than in charts of the trade, which let all girths step alike.{rarely if rare else ''}"
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
