"""The flat of an opening: the side with the holes lies on top, a facing cut on is turned in; bands and loops.

Women's fronts close right over left, men's left over right (from memory); ``over`` says which.
"""

from functools import cache

import pytest
from shapely.geometry import Polygon

from notchbook.output.flat import FlatView, garment_flat
from notchbook.pattern import Pattern
from support.closure_steps import FLY_WAIST, STAND, stepped
from support.edge_steps import bodice, skirt, trousers

STAND_WIDTH = 15.0
"""mm: as wide as the button of 15 mm, the default of the stand."""


@cache
def _closed(over: str) -> Pattern:
    stand = {**STAND, "over": over, "button": "15 mm", "width": f"{STAND_WIDTH} mm", "number": 5}
    return stepped(bodice(), ("button_stand", stand)).pattern


def _front(pattern: Pattern) -> FlatView:
    return next(view for view in garment_flat(pattern) if view.word == "front")


@pytest.mark.parametrize(("over", "sign"), [("right", -1.0), ("left", 1.0)])
def test_the_side_that_laps_is_drawn_last_with_its_edge_beyond_the_center(over: str, sign: float) -> None:
    """Seen from the front the wearer's right is on the left of the picture."""
    under, top = _front(_closed(over)).shapes[-2:]
    assert Polygon([(p.x, p.y) for p in top.fill.flattened(1.0)]).centroid.x * sign > 0.0
    beyond = max(-sign * place.x for place in top.fill.flattened(1.0))
    assert beyond == pytest.approx(STAND_WIDTH, abs=0.3), "the stand, and no facing beyond its fold"
    assert min(sign * place.x for place in under.fill.flattened(1.0)) < 0.0


@pytest.mark.parametrize(("over", "sign"), [("right", -1.0), ("left", 1.0)])
def test_holes_and_buttons_are_on_the_side_that_laps(over: str, sign: float) -> None:
    under, top = _front(_closed(over)).shapes[-2:]
    assert (len(under.buttons), len(top.buttons)) == (0, 5)
    level = [path for path in top.fine if abs(path.start.y - path.end.y) < 0.1 and path.length < 30.0]
    assert len(level) == 5
    assert all(path.point_at(path.length / 2.0).x * sign > 0.0 for path in level)
    assert len(under.fine) == len(top.fine) - 5


def test_the_fold_of_a_facing_is_the_edge_of_the_front_and_drawn_firm() -> None:
    top = _front(_closed("right")).shapes[-1]
    upright = [path for path in (*top.lines, *top.fine) if abs(path.start.x - path.end.x) < 0.1]
    longest = max(upright, key=lambda path: path.length)
    assert longest in top.lines
    assert longest.start.x == pytest.approx(STAND_WIDTH, abs=0.3)


def test_a_band_does_not_peak_at_the_center_back() -> None:
    """On the body the seat seam stands upright and the waist crosses it square: no more than 2 mm rise over
    the 20 mm beside it (own judgment: what is seen as a point)."""
    band = {"edges": FLY_WAIST, "depth": "40 mm", "cut_in": "two"}
    views = garment_flat(stepped(trousers(), ("waistband", band)).pattern)
    strip = next(view for view in views if view.word == "back").shapes[-1]
    upper = strip.lines[1]
    places = upper.flattened(0.2)
    center = min(places, key=lambda place: abs(place.x))
    beside = min(places, key=lambda place: abs(abs(place.x) - 20.0))
    assert abs(center.x) < 2.0
    assert abs(center.y - beside.y) < 2.0


def test_belt_loops_stand_on_the_band() -> None:
    """Two on each side and one at the center back: five are seen."""
    band = {"edges": FLY_WAIST, "depth": "40 mm", "cut_in": "two"}
    loops = {"edges": FLY_WAIST, "each_side": 2}
    done = stepped(trousers(), ("belt_loops", loops), ("waistband", band)).pattern
    found: set[tuple[float, float]] = set()
    for view in garment_flat(done):
        for shape in view.shapes:
            box = shape.fill.bounds()
            if box.width == pytest.approx(10.0, abs=0.5):
                assert box.height == pytest.approx(43.0, abs=3.0), "over the band, 3 mm beyond it"
                found.add((view.word == "back", round(box.center.x)))
    assert len(found) == 5


ZIP = {
    "edge": "skirt.back/center_back",
    "from_point": "skirt.back/waist_center",
    "length": "20 cm",
}


def _zip_stitches(setting: dict[str, str]) -> list[bool]:
    """Whether each line of stitches beside the center back lies on the right of the picture."""
    views = garment_flat(stepped(skirt(), ("zip_opening", ZIP | setting)).pattern)
    back = next(view for view in views if view.word == "back")
    stitched = [path for shape in back.shapes for path in shape.fine if abs(path.end.x) < 1.0]
    return sorted(path.start.x > 0.0 for path in stitched)


@pytest.mark.parametrize(("laps", "is_right"), [("left", False), ("right", True)])
def test_the_stitches_of_a_lapped_zip_show_on_the_side_that_laps(laps: str, is_right: bool) -> None:
    """Seen from the back the wearer's left is on the left of the picture; the other edge is sewn below."""
    assert _zip_stitches({"setting": "lapped", "laps": laps}) == [is_right]


def test_the_stitches_of_a_centered_zip_show_on_both_sides() -> None:
    assert _zip_stitches({"setting": "centered"}) == [False, True]
