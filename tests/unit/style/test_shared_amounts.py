"""Amounts reckoned from a measure that differs left and right: at a fold both sides move alike."""

import pytest

from notchbook.recipe import Recipe, add_step, replay
from notchbook.recipe.style_figure import StyleFigure
from notchbook.style.edges import figures
from support.edge_steps import levels
from support.yoke_skirt import BACK, FORM_A, FRONT, skirt_recipe

SIDED = FORM_A.with_value("hip_depth", 206.0, "right").with_value("hip_depth", 198.0, "left")


def stepped(operation: str, **parameters: object) -> Recipe:
    return add_step(skirt_recipe(), operation, parameters, base=FORM_A)


@pytest.mark.parametrize(
    "recipe",
    [
        stepped("change_length", hems=[f"{FRONT}/hem", f"{BACK}/hem"], amount="1/5 hip_depth"),
        stepped(
            "change_length",
            amount="1/5 hip_depth",
            levels=levels(
                "skirt", "side_seam", "hem_side", "20 cm", {"front": "center_front", "back": "center_back"}
            ),
        ),
        stepped(
            "curve_hem",
            hems=[
                {"edge": f"{piece}/hem", "from_point": f"{piece}/hem_center", "start": "1/5 hip_depth"}
                for piece in (FRONT, BACK)
            ],
        ),
    ],
    ids=["hem", "level", "curve"],
)
def test_both_sides_meet_at_the_fold(recipe: Recipe) -> None:
    run = replay(recipe, SIDED)
    assert run.left is not None, "the sides were to be drafted apart"
    assert run.suspended is None, run.suspended.error


def test_every_figure_says_where_it_comes_from() -> None:
    found = [one for one in vars(figures).values() if isinstance(one, StyleFigure)]
    assert len(found) > 8
    for figure in found:
        assert figure.meaning
        assert figure.source
        assert figure.grade in ("standard", "handbook", "memory", "common practice", "own judgment")
        if figure.source == "no source":
            assert figure.grade in ("common practice", "own judgment")
