"""The flat of collars that no style of the rack has: flat, roll and shawl collars, hoods.

What is seen of each is a fact of the trade: a flat collar lies on the body as wide as it is cut, a roll
collar stands and falls over, a shawl is turned over its roll line, a hood goes over the head.
"""

from functools import cache
from typing import Any

import pytest
from shapely.geometry import Point as Spot
from shapely.geometry import Polygon

from notchbook.output.flat import FlatShape, FlatView, garment_flat
from notchbook.pattern import Pattern
from support.collar_steps import FRONT_EDGE, after, collared, length_of, on_stand, pattern_of
from support.traced_steps import NECK
from support.upper_patterns import drafted

NAPE, SIDE = "bodice.back/nape", "bodice.back/side_neck_point"


@cache
def style(operation: str, **parameters: Any) -> Pattern:
    return pattern_of(on_stand(operation, **parameters))


def view(pattern: Pattern, word: str) -> FlatView:
    return next(one for one in garment_flat(pattern) if one.word == word)


def collar(pattern: Pattern, word: str) -> tuple[FlatShape, FlatShape]:
    """Both halves of what is drawn last."""
    first, second = view(pattern, word).shapes[-2:]
    return first, second


def polygon(shape: FlatShape) -> Polygon:
    return Polygon([(place.x, place.y) for place in shape.fill.flattened(0.5)]).buffer(0.0)


def heights(pattern: Pattern) -> tuple[float, float]:
    """Of the nape and of the side of the neck, in the view of the back."""
    points = pattern.pieces["bodice.back"].points
    return points[NAPE].y, points[SIDE].y


@pytest.mark.parametrize("front", ["round", "pointed"])
def test_a_flat_collar_lies_on_the_body_as_wide_as_it_is_cut(front: str) -> None:
    pattern = style("flat_collar", front=front, width="60 mm")
    nape, side = heights(pattern)
    for half in collar(pattern, "back"):
        box = half.fill.bounds()
        assert box.min_y == pytest.approx(nape - 60.0, abs=0.5), "as wide behind as asked"
        assert box.max_y <= side + 1.0, "it does not stand up from the neck"
    pit = pattern.pieces["bodice.front"].points["bodice.front/neck_pit"].y
    tip = min(half.fill.bounds().min_y for half in collar(pattern, "front"))
    assert pit - 70.0 < tip < pit - 10.0, "both fronts come down below the pit of the neck"
    left, right = (polygon(half) for half in collar(pattern, "front"))
    assert left.intersection(right).area < 1.0, "they meet at the center and do not lap"


def test_a_flat_collar_on_the_fold_has_no_line_down_the_back_and_one_in_halves_has() -> None:
    whole = pattern_of(collared("flat_collar"))
    base = after(drafted("medium-92", "bodice"), "center_seam", center="bodice.back/center_back")
    halves = pattern_of(after(base, "flat_collar", neck=NECK, opens="back"))
    for pattern, is_there in ((whole, False), (halves, True)):
        places = [
            abs(path.point_at(path.length / 2.0).x)
            for half in collar(pattern, "back")
            for line in half.lines
            for path in (line,)
            for segment in path.segments
            if max(abs(segment.start.x), abs(segment.end.x)) < 0.5 and segment.length > 20.0
        ]
        assert bool(places) is is_there


def test_a_roll_collar_stands_and_falls_over_its_seam() -> None:
    pattern = style("roll_collar", stand="30 mm", fall="42 mm")
    nape, side = heights(pattern)
    for half in collar(pattern, "back"):
        box = half.fill.bounds()
        assert box.min_y == pytest.approx(nape - 12.0, abs=0.5), "the fall is 12 mm wider than the stand"
        assert box.max_y > side + 15.0
    pit = pattern.pieces["bodice.front"].points["bodice.front/neck_pit"]
    for half in collar(pattern, "front"):
        assert half.fill.bounds().min_y < pit.y - 40.0, "its points lie on the front"
        assert not polygon(half).contains(Spot(0.0, pit.y + 20.0)), "the stand runs out: the neck stays open"


def test_a_shawl_is_turned_over_its_roll_line_and_falls_behind() -> None:
    pattern = style("shawl_collar", edge=FRONT_EDGE, breaks="20 cm")
    piece = pattern.pieces["bodice.front"]
    neck = piece.points["bodice.front/side_neck_point"].y
    front = view(pattern, "front")
    buttoned = [shape for shape in front.shapes if shape.buttons]
    assert buttoned
    assert all(shape.fill.bounds().max_y <= neck + 15.0 for shape in buttoned), (
        "the body ends at its shoulder"
    )
    assert front.bounds.max_y < neck + 40.0, "nothing stands up as it is cut"
    edge = pattern.edges[f"{FRONT_EDGE}/lapel"].path
    roll = piece.line("shawl_collar.front/roll_line").path
    widest = max(
        (edge.point_at(edge.length * at / 100.0) for at in range(60)), key=lambda p: roll.nearest(p).gap
    )
    away = roll.nearest(widest).gap
    turned = [place for shape in front.shapes for place in (one.end for one in shape.fill.segments)]
    on_body = [
        place for place in turned if abs(roll.nearest(place).gap - away) < 1.0 and place.y < neck - 60.0
    ]
    assert on_body, "as wide on the body as it was cut beyond the roll line"
    nape, _ = heights(pattern)
    fall = min(half.fill.bounds().min_y for half in collar(pattern, "back"))
    assert fall == pytest.approx(nape - 15.0, abs=1.0), "45 mm of fall over 30 mm of stand"


@pytest.mark.parametrize("panels", ["two", "three"])
def test_a_hood_goes_over_the_head_and_leaves_the_face_open(panels: str) -> None:
    pattern = style("hood", panels=panels)
    face = length_of(pattern, "hood.hood/face")
    nape, side = heights(pattern)
    for word in ("front", "back"):
        top = view(pattern, word).bounds.max_y
        assert 0.85 * face < top - side < 1.05 * face
    before, behind = ([polygon(half) for half in collar(pattern, word)] for word in ("front", "back"))
    chin = side + 0.4 * face
    assert not any(half.buffer(1.0).contains(Spot(0.0, chin)) for half in before), "the face is seen"
    assert any(half.buffer(1.0).contains(Spot(0.0, nape + 0.4 * face)) for half in behind)
    lines = [line for half in collar(pattern, "back") for line in half.lines if len(line.segments) == 1]
    seams = {round(abs(line.start.x)) for line in lines if line.length > 0.5 * face}
    assert seams == ({45} if panels == "three" else {0}), "a strip of 90 mm over the head, or a seam"
