"""A style line through a double-ended dart is refused: its two halves would be darts of another kind."""

import pytest

from notchbook.app.drafting import draft_recipe
from notchbook.body import MeasureSet
from notchbook.recipe import Replay, add_step, replay

BODY = MeasureSet.from_mm(
    "hand",
    {
        "bust_girth": 920.0,
        "waist_girth": 740.0,
        "hip_girth": 980.0,
        "hip_depth": 200.0,
        "back_waist_length": 410.0,
        "front_waist_length": 446.0,
        "center_front_length": 362.0,
        "neck_base_girth": 370.0,
        "shoulder_length": 124.0,
        "scye_depth": 205.0,
        "across_back": 345.0,
        "across_chest": 325.0,
        "neck_to_bust_point": 268.0,
        "bust_point_width": 182.0,
    },
    population="women",
)
"""Invented for the test."""


def cut_at(down: str) -> Replay:
    """The hip-long bodice with its back cut across, so far below the nape and the underarm."""
    recipe = draft_recipe("bodice", BODY, {"length": "hip"})
    line = {
        "start": {"edge": "bodice.back/side_seam", "from_point": "bodice.back/hem_side", "distance": down},
        "end": {"edge": "bodice.back/center_back", "from_point": "bodice.back/hem_center", "distance": down},
    }
    return replay(add_step(recipe, "cut_style_line", {"lines": [line]}, base=BODY), BODY)


@pytest.mark.parametrize("down", ["20 cm", "16 cm"])
def test_a_line_through_the_darts_stops_the_recipe_in_words(down: str) -> None:
    stopped = cut_at(down).suspended
    assert stopped is not None
    assert stopped.error.code == "style-line-crosses"
    assert "dart" in stopped.error.text()


def test_a_line_below_the_darts_is_cut() -> None:
    done = cut_at("2 cm")
    assert done.suspended is None
    assert sum(len(piece.inner_darts) for piece in done.pattern.pieces.values()) >= 2
