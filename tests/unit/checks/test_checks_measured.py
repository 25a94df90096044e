"""The checks' own measuring, judged by outside libraries and by facts of geometry."""

from math import atan2, cos, degrees, radians, sin, tan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from svgpathtools import CubicBezier

from notchbook.checks.corners import corner, inside_angle
from notchbook.checks.limits import LIMITS, Limits
from notchbook.checks.measured import (
    bend,
    end_direction,
    length,
    place_along,
    start_direction,
    wrapped,
)
from notchbook.errors import InputError
from notchbook.geometry import Cubic, Line, Path, Point
from notchbook.pattern import Edge
from support.hand_skirt import FRONT_DART, hand_skirt

coordinates = st.floats(-400.0, 400.0, allow_nan=False)
points = st.builds(Point, coordinates, coordinates)


@settings(max_examples=60, deadline=None)
@given(points, points, points, points)
def test_lengths_agree_with_svgpathtools(a: Point, b: Point, c: Point, d: Point) -> None:
    judge = CubicBezier(*(complex(p.x, p.y) for p in (a, b, c, d))).length(error=1e-6)
    assert length(Path.of(Cubic(a, b, c, d))) == pytest.approx(judge, abs=0.02)


def test_a_hip_curve_is_measured_to_a_thousandth() -> None:
    """An armhole-like quarter turn: the hardest edge that a skirt or bodice has."""
    handles = (Point(0, 0), Point(0, 110), Point(90, 200), Point(200, 200))
    judge = CubicBezier(*(complex(p.x, p.y) for p in handles)).length(error=1e-9)
    assert length(Path.of(Cubic(*handles))) == pytest.approx(judge, abs=0.001)


@pytest.mark.parametrize("way", [-170.0, -90.0, -12.0, 0.0, 33.0, 90.0, 168.0, 180.0])
@pytest.mark.parametrize("turn", [-40.0, 0.0, 40.0])
def test_directions_at_the_ends_of_an_arc(way: float, turn: float) -> None:
    """An arc of 100 mm that leaves at ``way`` and turns; the tangent of an arc is known exactly."""
    half = radians(turn) / 2
    chord = 100.0 if turn == 0 else 100.0 * sin(half) / half
    handle = 100.0 / 3 if turn == 0 else 4 / 3 * tan(half / 2) * (100.0 / (2 * half))

    def unit(angle: float) -> Point:
        return Point(cos(radians(angle)), sin(radians(angle)))

    end = unit(way + turn / 2) * chord
    arc = Path.of(Cubic(Point(0, 0), unit(way) * handle, end - unit(way + turn) * handle, end))
    assert abs(wrapped(start_direction(arc) - way)) < 0.01
    assert abs(wrapped(end_direction(arc) - way - turn)) < 0.01


def test_a_handle_of_no_length_still_has_a_direction() -> None:
    start, end = Point(0, 0), Point(100, 0)
    path = Path.of(Cubic(start, start, Point(60, 40), end))
    assert start_direction(path) == pytest.approx(degrees(atan2(40, 60)), abs=1.0)


@given(st.floats(0.0, 1.0), st.floats(-8.0, 8.0))
@settings(max_examples=50, deadline=None)
def test_places_along_a_line_are_found_from_beside_it(share: float, off: float) -> None:
    path = Path.of(Line(Point(0, 0), Point(30, 40)), Line(Point(30, 40), Point(90, 120)))
    place = Point(0, 0).lerp(Point(90, 120), share) + Point(-0.8, 0.6) * off
    distance, gap = place_along(path, place)
    assert distance == pytest.approx(share * 150.0, abs=1e-6)
    assert gap == pytest.approx(abs(off), abs=1e-6)


def test_the_bend_of_a_half_circle_is_its_radius() -> None:
    half = Path.polyline([Point(cos(radians(a)), sin(radians(a))) * 50.0 for a in range(0, 181)])
    stray, place = bend(half)
    assert stray == pytest.approx(50.0, abs=1e-9)
    assert place.distance_to(Point(0, 50)) < 1e-9


def test_the_angle_inside_a_corner() -> None:
    def edge(name: str, start: Point, end: Point) -> Edge:
        return Edge(name, Path.line(start, end), "a", "b")

    right, up = edge("r", Point(0, 0), Point(10, 0)), edge("u", Point(10, 0), Point(10, 10))
    out = edge("o", Point(10, 0), Point(20, 10))
    down = edge("d", Point(10, 0), Point(10, -10))
    assert inside_angle(right, up) == pytest.approx(90.0)
    assert inside_angle(right, out) == pytest.approx(135.0)
    assert inside_angle(right, down) == pytest.approx(270.0)


def test_corners_pass_over_a_dart_at_the_end_of_an_edge() -> None:
    """Beside the dart the waist is square to both legs: with the dart closed it runs straight on."""
    front = hand_skirt().pieces["skirt.front"]
    found = corner(front, front.edge("skirt.front/waist/center_side"), "end")
    assert found.degrees == pytest.approx(180.0, abs=0.05)
    assert found.neighbor.name == "skirt.front/waist/side_side"
    assert found.position.distance_to(FRONT_DART.first_mouth) < 1e-9


def test_every_limit_has_its_reason_source_and_grade() -> None:
    from dataclasses import fields

    for item in fields(Limits):
        assert item.metadata["reason"].endswith(".")
        assert item.metadata["unit"] in ("mm", "deg", "share")
        assert item.metadata["grade"] in (
            "standard",
            "handbook",
            "memory",
            "common practice",
            "house",
            "own judgment",
        )
        assert item.metadata["source"]


def test_limits_change_by_name_only() -> None:
    assert LIMITS.with_changes({"kink": 2}).kink == 2
    with pytest.raises(InputError, match="limit-unknown"):
        LIMITS.with_changes({"kinks": 2.0})
    with pytest.raises(InputError, match="limit-unusable"):
        LIMITS.with_changes({"kink": -0.1})
