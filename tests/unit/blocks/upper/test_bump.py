"""A bump of an armhole against closed forms of circles, and against dense polylines in numpy."""

from dataclasses import replace
from math import copysign, cos, degrees, radians, sin

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.blocks.upper import draft_bodice
from notchbook.blocks.upper.bump import bump
from notchbook.geometry import Path, Point, curve_between
from support.upper_given import WOMAN
from support.upper_judge import polyline

WINDOW = 10.0


def arcs(*parts: tuple[float, float]) -> Path:
    """Circles one after another that turn left: each a radius, mm, and how far it turns, degrees."""
    place, way, found = Point(0.0, 0.0), -90.0, []
    # A cubic strays from its circle the farther it turns: each goes an eighth of the way.
    for radius, turn in ((radius, turn / 8.0) for radius, turn in parts for _ in range(8)):
        bend = copysign(radius, turn)
        center = Point(place.x - bend * sin(radians(way)), place.y + bend * cos(radians(way)))
        end = way + turn
        after = Point(center.x + bend * sin(radians(end)), center.y - bend * cos(radians(end)))
        found.append(curve_between(place, way, after, end))
        place, way = after, end
    return Path(tuple(found))


def turning(radius: float) -> float:
    """What a circle turns over the window, degrees: arc over radius."""
    return degrees(WINDOW / radius)


@given(st.floats(30.0, 60.0), st.floats(90.0, 200.0), st.floats(20.0, 60.0))
def test_between_two_circles_a_slacker_one_is_a_bump_by_what_it_turns_less(
    first: float, slacker: float, last: float
) -> None:
    found = bump(arcs((first, 100.0), (slacker, 25.0), (last, 60.0)))
    assert found == pytest.approx(min(turning(first), turning(last)) - turning(slacker), abs=0.1)


@pytest.mark.parametrize("parts", [((50.0, 90.0),), ((120.0, 40.0), (60.0, 30.0), (30.0, 60.0))])
def test_what_grows_rounder_all_the_way_has_no_bump(parts: tuple[tuple[float, float], ...]) -> None:
    assert bump(arcs(*parts)) < 0.05


def test_round_places_that_turn_to_different_sides_make_no_bump() -> None:
    line = arcs((60.0, 70.0), (60.0, -60.0), (60.0, 60.0))
    assert bump(line) < 0.1


def test_the_hook_at_the_tip_is_left_out() -> None:
    """The first quarter may be round once more."""
    assert bump(arcs((20.0, 40.0), (200.0, 20.0), (60.0, 60.0))) < 0.05
    assert bump(arcs((200.0, 20.0), (20.0, 80.0), (200.0, 10.0), (30.0, 60.0))) > 5.0


def by_polyline(armhole: Path) -> float:
    """The same from a dense polyline: headings of its steps a millimeter apart, from the underarm."""
    points = polyline(armhole)[::-1]
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    places = np.arange(int(0.75 * along[-1]) + 1.0)
    even = np.column_stack([np.interp(places, along, points[:, axis]) for axis in (0, 1)])
    steps = np.diff(even, axis=0)
    ways = np.degrees(np.unwrap(np.arctan2(steps[:, 1], steps[:, 0])))
    turns = np.abs(ways[10:] - ways[:-10])
    depths = [min(turns[: at + 1].max(), turns[at:].max()) - turns[at] for at in range(len(turns))]
    return float(max(depths))


@pytest.mark.parametrize("chest", [300.0, 310.0, 325.0, 340.0])
@pytest.mark.parametrize("shoulder", [120.0, 130.0, 138.0])
def test_an_armhole_is_judged_as_its_polyline(shoulder: float, chest: float) -> None:
    half = draft_bodice(replace(WOMAN, shoulder=shoulder, across_chest=chest))
    for armhole in (half.front.armhole, half.back.armhole):
        assert bump(armhole) == pytest.approx(by_polyline(armhole), abs=0.1)
