"""A skirt that would lie on the floor is told; one that does not is not."""

import csv
from pathlib import Path

import pytest

from notchbook.blocks.skirts.figures import skirt_figure
from notchbook.body import MeasureSet
from notchbook.recipe import Recipe, add_step, replay

WOMEN = Path(__file__).parents[3] / "data" / "survey" / "ansur" / "women.csv"
NEEDED = {"waist_girth": 720.0, "hip_girth": 980.0, "hip_depth": 205.0}


def _codes(length: str, **more: float) -> list[str]:
    body = MeasureSet.from_mm("Test", {**NEEDED, **more})
    run = replay(add_step(Recipe("Test"), "skirt", {"length": length}, base=body), body)
    assert run.suspended is None
    return [note.code for note in run.notes]


@pytest.mark.parametrize("more", [{}, {"height": 1680.0}, {"outside_leg": 1040.0}])
def test_a_slip_of_a_digit_is_told(more: dict[str, float]) -> None:
    assert "skirt-on-the-floor" in _codes("600 cm", **more)
    assert "skirt-on-the-floor" not in _codes("60 cm", **more)


def test_the_measured_way_to_the_floor_goes_before_the_height() -> None:
    assert "skirt-on-the-floor" in _codes("100 cm", outside_leg=990.0, height=1900.0)
    assert "skirt-on-the-floor" not in _codes("100 cm", outside_leg=1010.0, height=1400.0)


def test_the_share_of_stature_is_that_of_the_survey() -> None:
    """ANSUR II, women: midway of tenth rib and hip bone over stature (data/survey/ansur/SOURCE.md)."""
    with WOMEN.open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    shares = [
        (float(row["tenthribheight"]) + float(row["iliocristaleheight"])) / 2.0 / float(row["stature"])
        for row in rows
    ]
    assert sum(shares) / len(shares) == pytest.approx(skirt_figure("length.waist_height"), abs=0.01)
    assert max(share * float(row["stature"]) for share, row in zip(shares, rows, strict=True)) == (
        pytest.approx(skirt_figure("length.tall_waist"), abs=60.0)
    )
