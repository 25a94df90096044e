"""A loose bodice is longer at the shoulder, as its back is wider; an older recipe keeps its lines."""

from functools import cache
from typing import get_args

import pytest

from notchbook.app.drafting import draft, draft_recipe
from notchbook.app.eases.ease_rows import ease_table
from notchbook.blocks.bodice_pieces.eases import Silhouette, Wearer, ease_row, layer_row, usual_eases
from notchbook.body import MeasureSet
from notchbook.body.charts import shipped_chart
from notchbook.pattern import Severity, pattern_to_data
from notchbook.recipe import Recipe, Replay, recipe_from_data, recipe_to_data, replay
from support.jackets import measures_of

SIZES = {size.name.rsplit(" ", 1)[-1]: size for size in shipped_chart("women").sizes}
BLOCKS = ("bodice", "torso", "dress")


@cache
def loose(size: str, longer: str = "") -> Replay:
    asked = {"silhouette": "loose", "length": "hip"}
    return draft("bodice", SIZES[size], {**asked, "shoulder_longer": longer} if longer else asked)


def gave_way_by_much(run: Replay) -> list[str | None]:
    """The lines on which a measure gave way by so much that it is to be looked at."""
    notes = run.states[-1].notes
    return [one.where for one in notes if (one.code, one.severity) == ("measure-gave-way", Severity.LOOK)]


@pytest.mark.parametrize("wearer", get_args(Wearer))
def test_the_shoulder_goes_out_by_half_of_what_the_whole_back_does(wearer: Wearer) -> None:
    """Common practice, no source: the shoulder of a loose shirt falls a little over the shoulder point. The
    width across the back goes out by half of its ease on each side, and the shoulder with it."""
    loose_back, fitted_back = (ease_row(wearer, one, "across_back").value for one in ("loose", "fitted"))
    row = layer_row(wearer, "loose", "shoulder_longer")
    assert row.value == (loose_back - fitted_back) / 2.0
    assert row.least <= row.value <= row.most


@pytest.mark.parametrize("silhouette", ["close", "fitted", "semi_fitted"])
def test_what_lies_on_the_body_keeps_the_shoulder_as_measured(silhouette: Silhouette) -> None:
    assert layer_row("women", silhouette, "shoulder_longer").value == 0.0


def test_a_loose_garment_is_neither_raised_nor_lowered_at_the_neck() -> None:
    assert layer_row("women", "loose", "shoulder_raised").value == 0.0
    assert layer_row("women", "loose", "neck_lowered").value == 0.0


def test_the_longer_shoulder_is_stated_with_the_other_eases_and_drafted() -> None:
    (stated,) = [one for one in usual_eases() if (one.wearer, one.of) == ("women", "shoulder length")][:1]
    assert (stated.silhouette, stated.parameter, stated.drafted) == ("loose", "shoulder_longer", 14.0)
    (row,) = [row for row in ease_table(loose("92")) if row.measure == "shoulder_length"]
    assert row.ease == pytest.approx(14.0, abs=0.01)


@pytest.mark.parametrize("size", SIZES)
def test_no_size_of_the_chart_is_told_that_a_measure_gave_way(size: str) -> None:
    """The sizes are computed, so that none of their measures can be a slip."""
    assert gave_way_by_much(loose(size)) == []


def test_a_shoulder_as_measured_beside_a_loose_back_is_told() -> None:
    assert [bool(gave_way_by_much(loose(size, "0 mm"))) for size in ("92", "116", "128")] == [
        False,
        True,
        True,
    ]


def older(block: str, silhouette: str, longer: str | None = None) -> Recipe:
    """A recipe of version 2, which left the shoulder of every silhouette on the body as measured."""
    recipe = draft_recipe(block, measures_of("medium-92"), {"silhouette": silhouette})
    data = recipe_to_data(recipe)
    data["steps"][0]["version"] = 2
    data["steps"][0]["parameters"]["shoulder_longer"] = longer
    return recipe_from_data(data)


@pytest.mark.parametrize(
    ("silhouette", "longer", "now"),
    [("loose", None, "0 mm"), ("loose", "2 cm", "2 cm"), ("fitted", None, None), ("jacket", None, None)],
)
@pytest.mark.parametrize("block", BLOCKS)
def test_an_older_recipe_keeps_its_shoulder(
    block: str, silhouette: str, longer: str | None, now: str | None
) -> None:
    assert older(block, silhouette, longer).steps[0].parameters["shoulder_longer"] == now


@pytest.mark.parametrize("block", BLOCKS)
def test_an_older_loose_recipe_keeps_its_lines(block: str) -> None:
    measures: MeasureSet = measures_of("medium-92")
    stored = replay(older(block, "loose"), measures)
    asked = {"silhouette": "loose", "shoulder_longer": "0 mm"}
    as_measured = replay(draft_recipe(block, measures, asked), measures)
    anew = replay(draft_recipe(block, measures, {"silhouette": "loose"}), measures)
    assert pattern_to_data(stored.pattern) == pattern_to_data(as_measured.pattern)
    assert pattern_to_data(stored.pattern) != pattern_to_data(anew.pattern)
