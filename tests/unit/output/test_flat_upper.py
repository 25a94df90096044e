"""The flat of shirts and jackets: yokes end at the shoulder, falls lie over stands, lapels turn over."""

import math
from functools import cache

import pytest
from shapely import LineString, Polygon, union_all
from shapely import Point as Spot

from lower_sheets import lower_bodies
from notchbook.app.rack.styles import rack
from notchbook.geometry import Path, Point
from notchbook.output.flat import FlatView, garment_flat
from notchbook.output.flat.joined import center_x
from notchbook.output.flat.laid import laid_places, laying
from notchbook.pattern import Pattern
from notchbook.recipe import replay

RECIPES = {style.stem: style.recipe for style in rack()}


@cache
def _pattern(style: str) -> Pattern:
    return replay(RECIPES[style], dict(lower_bodies())["medium-92"]).pattern


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
    cuff = front.shapes[4]  # after the back of the collar and the two halves of sleeves
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


@pytest.mark.parametrize("style", ["work_shirt", "bias_slip"])
def test_a_front_with_a_bust_dart_at_its_side_has_its_underarm_level_with_the_back(style: str) -> None:
    """The dart closed, the two side seams are of one length from hem to underarm (facts of the trade); open,
    the front's underarm would lie higher by the mouth of the dart, about 25 mm."""
    levels = []
    for view in _views(style).values():
        bodies = [shape for shape in view.shapes if shape.fill.bounds().height > 300.0]
        body = max(bodies, key=lambda shape: shape.fill.bounds().width)
        places = [one.end for one in body.fill.segments]
        hem = min(place.y for place in places)
        outer = max(abs(place.x) for place in places if place.y > hem + 250.0)
        side = [place.y for place in places if abs(place.x) > outer - 12.0 and place.y > hem + 250.0]
        levels.append(max(side) - hem)
    assert levels[0] == pytest.approx(levels[1], abs=12.0)


@pytest.mark.parametrize("word", ["front", "back"])
def test_a_skirt_meets_the_panels_of_its_bodice_all_along_the_waist(word: str) -> None:
    """It is laid to the whole run of panels: no paper is seen between them, and little lies double."""
    polygons = [
        Polygon([(one.end.x, one.end.y) for one in shape.fill.segments]).buffer(0.3)
        for shape in _views("princess_dress")[word].shapes
    ]
    together = union_all(polygons)
    assert isinstance(together, Polygon)
    assert len(together.interiors) == 0
    assert sum(one.area for one in polygons) - together.area < 0.01 * together.area


@pytest.mark.parametrize("style", ["tailored_jacket", "work_shirt", "gathered_blouse"])
def test_the_back_of_a_collar_is_seen_inside_the_neck(style: str) -> None:
    """A collar goes round the neck (facts of the trade): from the front there is cloth beside the center,
    10 mm below the height of its upper corners."""
    front = _views(style)["front"]
    inside = Spot(1.0, front.bounds.max_y - 10.0)
    covered = [
        shape
        for shape in front.shapes
        if Polygon([(one.end.x, one.end.y) for one in shape.fill.segments]).buffer(0.0).contains(inside)
    ]
    assert len(covered) == 1
    assert covered[0].fill.bounds().height < 80.0, "it ends at the neck seam of the back"


def test_gathers_show_as_lines_from_their_edge() -> None:
    """The blouse is gathered at its front shoulders and at its back neck, and nowhere else on the body."""
    for view in _views("gathered_blouse").values():
        short = [
            line
            for shape in view.shapes
            for line in shape.fine
            if 15.0 < line.length < 40.0 and abs(line.start.y - line.end.y) > 5.0
        ]
        assert len(short) > 10
        assert all(max(line.start.y, line.end.y) > view.bounds.max_y - 130.0 for line in short)


def test_a_straight_side_is_drawn_along_the_bend_that_closed_darts_give_it() -> None:
    """A stretch of 100 mm that is laid as an arc 20 mm deep, as a side beside a waist dart."""
    side = Path.line(Point(0.0, 0.0), Point(0.0, 100.0))
    places = laid_places(side, lambda at: Point(at.x - at.y * (100.0 - at.y) / 125.0, at.y), 0.2)
    drawn = LineString([(place.x, place.y) for place in places])
    off = max(drawn.distance(Spot(-y * (100.0 - y) / 125.0, y)) for y in range(101))
    assert off < 0.5, "a flat is drawn at a tenth of its size"
    assert len(laid_places(side, lambda at: at + Point(5.0, 0.0), 0.2)) == 2, (
        "what stays straight has its ends"
    )


@pytest.mark.parametrize("style", ["work_shirt", "bias_slip"])
def test_the_side_above_a_bust_dart_does_not_lean_in_against_the_side_below(style: str) -> None:
    """Sewn, the two are one line (the pattern turns less than 3 degrees there); a flat may be 12 off."""
    pattern = _pattern(style)
    (dart,) = {name for name in pattern.intakes if "bust_dart" in name and not name.endswith("@left")}
    piece = next(one for one in pattern.pieces.values() if any(dart == own.name for own in one.intakes))
    laid = laying(piece, center_x(piece))
    legs = [piece.edge(leg) for leg in (piece.intake(dart).first_leg, piece.intake(dart).second_leg)]
    above, below = piece.edge_before(legs[0].name).path, piece.edge_after(legs[1].name).path
    up = laid(above.end) - laid(above.start)
    down = laid(below.flattened(0.2)[1]) - laid(below.start)
    assert abs(math.degrees(math.atan2(up.x * down.y - up.y * down.x, up.dot(down)))) < 12.0
