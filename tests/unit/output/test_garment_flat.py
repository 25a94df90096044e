"""The flat of a garment: its pieces lie beside each other, and it is alike on both sides."""

import pytest
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from notchbook.geometry import Path, Point
from notchbook.output.flat import FlatShape, FlatView, garment_flat
from notchbook.output.flat.laid import laying
from notchbook.output.flat.leg import drawn_round_leg
from notchbook.pattern import Pattern, sewn_length
from support.closure_steps import FLY, FLY_WAIST, stepped
from support.edge_steps import bodice, skirt, trousers
from support.hand_skirt import BACK_WIDTH, FRONT_WIDTH, hand_skirt
from support.hand_suit import SIDE, hand_suit
from support.hand_trousers import hand_trousers
from support.lower_patterns import drafted_lower
from support.yoke_skirt import drafted, run, skirt_recipe, with_steps, yoke_recipe

WAIST = (
    {"edge": "skirt.back/waist", "starts_at": "skirt.back/waist_center"},
    {"edge": "skirt.front/waist", "starts_at": "skirt.front/waist_side"},
)


def _corners(shape: FlatShape) -> list[Point]:
    return [shape.fill.start, *(segment.end for segment in shape.fill.segments)][:-1]


def _polygon(shape: FlatShape) -> BaseGeometry:
    return Polygon([(place.x, place.y) for place in _corners(shape)]).buffer(0.0)


def _view(pattern: Pattern, word: str) -> FlatView:
    return next(view for view in garment_flat(pattern) if view.word == word)


@pytest.mark.parametrize(("word", "width"), [("front", FRONT_WIDTH), ("back", BACK_WIDTH)])
def test_a_half_and_its_reflection_make_the_view(word: str, width: float) -> None:
    """The widths are those of the drawing by hand, at the hip."""
    box = _view(hand_skirt(), word).bounds
    assert box.width == pytest.approx(2.0 * width, abs=0.1)
    assert box.min_x == pytest.approx(-box.max_x, abs=1e-6)


def test_a_band_lies_outside_the_waist_by_its_finished_width() -> None:
    plain = drafted()
    banded = run(
        with_steps(skirt_recipe(), ("waistband", "band", {"edges": WAIST, "depth": "40 mm"}))
    ).pattern
    for word in ("front", "back"):
        before, after = _view(plain, word).bounds, _view(banded, word).bounds
        assert 30.0 < after.max_y - before.max_y <= 40.0, "its ends lean inward with the side"
        ends = [line for shape in _view(banded, word).shapes[-2:] for line in shape.lines[2:]]
        assert [end.length for end in ends] == pytest.approx([40.0, 40.0], abs=0.5)
        assert after.min_y == pytest.approx(before.min_y, abs=1.0)


def test_no_leg_of_trousers_passes_the_center() -> None:
    for view in garment_flat(hand_trousers()):
        right, left = view.shapes[0], view.shapes[1]
        sides = [sum(place.x for place in _corners(shape)) > 0.0 for shape in (right, left)]
        assert sides[0] != sides[1]
        for shape, positive in zip((right, left), sides, strict=True):
            inward = min((place.x if positive else -place.x) for place in _corners(shape))
            assert inward >= -1.0


def test_neighbors_along_a_style_line_meet() -> None:
    """The bent panel's seam lies on its mate: no paper is seen between them and little lies double."""
    view = _view(run(yoke_recipe()).pattern, "front")
    polygons = [
        Polygon([(place.x, place.y) for place in _corners(shape)]).buffer(0.0) for shape in view.shapes
    ]
    together: BaseGeometry = polygons[0]
    for one in polygons[1:]:
        together = together.union(one)
    assert together.geom_type == "Polygon"
    double = sum(one.area for one in polygons) - together.area
    assert double < 0.05 * together.area, "the flared part below lies a little over the yoke"


def test_every_line_of_a_view_has_its_reflection() -> None:
    shape, mate = _view(hand_skirt(), "front").shapes
    for place, other in zip(_corners(shape), _corners(mate), strict=True):
        assert (-place.x, place.y) == pytest.approx((other.x, other.y))


def test_a_suit_without_legs_is_drawn_as_it_is() -> None:
    """It has a crotch and no waist: nothing is pressed toward its side."""
    widths = {view.word: view.bounds.width for view in garment_flat(hand_suit())}
    assert widths == pytest.approx({"front": 2.0 * SIDE.x, "back": 2.0 * SIDE.x}, abs=1.0)


@pytest.mark.parametrize(("over", "sign"), [("left", 1.0), ("right", -1.0)])
def test_the_stitches_of_a_fly_show_on_the_side_that_laps_alone(over: str, sign: float) -> None:
    """Seen from the front the wearer's left is on the right of the picture."""
    view = _view(stepped(trousers(), ("fly", {**FLY, "over": over})).pattern, "front")
    fine = [path for shape in view.shapes for path in shape.fine]
    stitched = [path for path in fine if abs(path.end.x) < 1.0]
    assert [path.start.x * sign > 0.0 for path in stitched] == [True]


def test_a_band_on_a_waist_that_peaks_meets_itself_at_the_center_back() -> None:
    """Square to a slanted waist the upper edges of the two sides would lie apart."""
    band = {"edges": FLY_WAIST, "depth": "40 mm", "cut_in": "two"}
    view = _view(stepped(trousers(), ("waistband", band)).pattern, "back")
    for strip in view.shapes[-2:]:
        at_center = [place.y for place in _corners(strip) if abs(place.x) < 2.0]
        assert max(at_center) - min(at_center) == pytest.approx(40.0, abs=4.0)


def test_the_crease_shows_in_front_alone() -> None:
    longest = {
        view.word: max(path.length for shape in view.shapes for path in shape.fine)
        for view in garment_flat(trousers().pattern)
    }
    assert longest["front"] > 800.0
    assert longest["back"] < 200.0, "only the darts"


def test_the_crease_is_one_straight_line() -> None:
    """It is pressed (common practice, no source); from the waist to the fork the leg is drawn pressed toward
    the side, which bent it by centimeters."""
    creases = [
        path
        for shape in _view(trousers().pattern, "front").shapes
        for path in shape.fine
        if path.length > 800.0
    ]
    assert len(creases) == 2
    for path in creases:
        chord = Path.line(path.start, path.end)
        places = [segment.end for segment in path.segments]
        assert max(chord.nearest(place).gap for place in places) < 0.5


def _outline(pattern: Pattern, word: str) -> list[Point]:
    """The places of the first shape of a view."""
    return _corners(_view(pattern, word).shapes[0])


@pytest.mark.parametrize("word", ["front", "back"])
def test_a_waist_is_as_wide_as_it_is_sewn(word: str) -> None:
    """Darts are drawn closed: half of the view's waist is the sewn waist of the piece, shorter by less than
    2 % as its arc rises toward the side."""
    pattern = skirt().pattern
    side = pattern.pieces[f"skirt.{word}"].points[f"skirt.{word}/waist_side"]
    sewn = sewn_length(pattern, f"skirt.{word}/waist")
    assert abs(side.x) > 1.04 * sewn, "on paper the darts lie open"
    corners = [place for place in _outline(pattern, word) if abs(place.x) > 0.5 * sewn]
    highest = max(corners, key=lambda place: place.y)
    assert abs(highest.x) == pytest.approx(sewn, rel=0.02)


def test_the_legs_of_a_closed_dart_lie_on_each_other() -> None:
    for piece in (skirt().pattern.pieces["skirt.back"], bodice().pattern.pieces["bodice.front"]):
        laid = laying(piece, 0.0)
        darts = [intake for intake in piece.intakes if intake.kind == "dart"]
        assert darts
        for dart in darts:
            first, second = piece.edge(dart.first_leg).path, piece.edge(dart.second_leg).path.reversed()
            for share in (0.0, 0.25, 0.5, 0.75, 1.0):
                places = [laid(leg.point_at(share * leg.length)) for leg in (first, second)]
                assert places[0].distance_to(places[1]) < 0.5, "a picture drawn at about a tenth"


def test_the_leg_of_a_suit_falls_from_its_side() -> None:
    """Worn, a hollow leg opening lies round the thigh: in the view it rises nowhere much above its side end,
    where the piece on paper stands off like a wing."""
    piece = drafted_lower("bodysuit").pattern.pieces["bodysuit.front"]
    leg = piece.edge("bodysuit.front/leg_opening").path
    side = max((leg.start, leg.end), key=lambda place: place.y)
    on_paper = [place.y - side.y for place in leg.flattened(0.5)]
    drawn = drawn_round_leg(piece, lambda place: place)
    in_view = [drawn(place).y - side.y for place in leg.flattened(0.5)]
    assert max(on_paper) > 10.0
    assert max(in_view) < 4.0
