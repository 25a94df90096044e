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


CHILD = {"waist_girth": 540.0, "hip_girth": 630.0, "hip_depth": 130.0}


@pytest.mark.parametrize("block", ["skirt", "gored_skirt", "circle_skirt"])
@pytest.mark.parametrize(
    ("more", "length"),
    [({"knee_depth": 418.0}, 42), ({"outside_leg": 705.0}, 39), ({"height": 1160.0}, 41)],
)
def test_a_skirt_of_a_child_ends_at_the_knee(block: str, more: dict[str, float], length: int) -> None:
    child = MeasureSet.from_mm("Test", {**CHILD, **more})
    settled = add_step(Recipe("Test"), block, {}, base=child).steps[0].parameters["length"]
    assert settled == f"{length} cm"
    chosen = add_step(Recipe("Test"), block, {"length": "60 cm"}, base=child).steps[0].parameters["length"]
    assert chosen == "60 cm", "what was chosen stays"


@pytest.mark.parametrize("block", ["skirt", "gored_skirt", "circle_skirt"])
@pytest.mark.parametrize("more", [{}, {"knee_depth": 570.0}, {"height": 1600.0}])
def test_a_skirt_of_a_grown_body_has_its_usual_length(block: str, more: dict[str, float]) -> None:
    body = MeasureSet.from_mm("Test", {**NEEDED, **more})
    assert add_step(Recipe("Test"), block, {}, base=body).steps[0].parameters["length"] == "60 cm"


def test_the_share_of_the_knee_is_that_of_the_survey() -> None:
    """ANSUR II, women (data/survey/ansur/SOURCE.md): from the waist to the middle of the kneecap."""
    with WOMEN.open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    waists = [(float(row["tenthribheight"]) + float(row["iliocristaleheight"])) / 2.0 for row in rows]
    ways = [waist - float(row["kneeheightmidpatella"]) for waist, row in zip(waists, rows, strict=True)]
    of_leg = sum(way / waist for way, waist in zip(ways, waists, strict=True)) / len(ways)
    of_stature = sum(way / float(row["stature"]) for way, row in zip(ways, rows, strict=True)) / len(ways)
    assert skirt_figure("length.knee_outside_leg") == pytest.approx(of_leg, abs=0.005)
    assert skirt_figure("length.knee_height") == pytest.approx(of_stature, abs=0.005)
