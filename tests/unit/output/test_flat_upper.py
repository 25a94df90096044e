"""The flat of shirts and jackets: yokes end at the shoulder, falls lie over stands, lapels turn over."""

from functools import cache
from pathlib import Path

import pytest

from lower_sheets import lower_bodies
from notchbook.output.flat import FlatView, garment_flat
from notchbook.pattern import Pattern
from notchbook.recipe import recipe_from_json, replay

RECIPES = Path(__file__).parents[3] / "docs" / "styles" / "recipes"


@cache
def _pattern(style: str) -> Pattern:
    text = (RECIPES / f"{style}.json").read_text(encoding="utf-8")
    return replay(recipe_from_json(text), dict(lower_bodies())["medium-92"]).pattern


@cache
def _views(style: str) -> dict[str, FlatView]:
    return {view.word: view for view in garment_flat(_pattern(style))}


def test_a_yoke_shows_in_both_views_up_to_the_shoulder() -> None:
    yoke = _pattern("work_shirt").pieces["yoke.yoke"]
    neck, tip = (yoke.points[f"torso.back/{word}"] for word in ("side_neck_point", "shoulder_point"))
    shoulder = neck.distance_to(tip)
    for view in _views("work_shirt").values():
        ends = [
            line
            for shape in view.shapes
            for line in shape.lines
            if line.length == pytest.approx(shoulder, abs=0.5) and len(line.segments) == 1
        ]
        assert len(ends) == 2, "one shoulder line on each side"


def test_the_fall_of_a_shirt_collar_lies_over_the_neck_seam() -> None:
    pattern, back = _pattern("work_shirt"), _views("work_shirt")["back"]
    fall = back.shapes[-1].fill.bounds()
    nape = pattern.pieces["yoke.yoke"].points["torso.back/nape"].y
    assert fall.min_y == pytest.approx(nape - 11.6, abs=0.1), "wider than its stand by 10 mm and the turn"


def test_a_sleeve_ends_in_its_cuff() -> None:
    front = _views("work_shirt")["front"]
    cuff = front.shapes[2]  # after the two halves of sleeves
    sides = sorted({round(segment.start.distance_to(segment.end), 1) for segment in cuff.fill.segments})
    assert sides == [pytest.approx(60.0, abs=0.2), pytest.approx(105.0, abs=1.0)], "half of 21 cm, 6 cm deep"


def test_a_lapel_is_turned_over_its_roll_line() -> None:
    pattern, front = _pattern("tailored_jacket"), _views("tailored_jacket")["front"]
    piece = pattern.pieces["bodice.front"]
    lap = piece.points["collar.front/lapel_tip"]
    assert lap.x > 50.0, "in the flat piece the tip lies beyond the center"
    whole = [shape for shape in front.shapes if shape.buttons]
    for shape in whole:
        assert abs(shape.fill.bounds().max_y - piece.points["bodice.front/side_neck_point"].y) < 1.0
    roll = piece.line("collar.front/roll_line").path
    away = roll.nearest(lap).gap
    tips = [place for shape in front.shapes for place in (one.end for one in shape.fill.segments)]
    turned = [place for place in tips if abs(place.x) > abs(lap.x) and abs(place.y - lap.y) < 60.0]
    assert turned, "the tip lies on the body"
    assert min(abs(roll.nearest(place).gap - away) for place in turned) < 1.0
