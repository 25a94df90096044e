"""Dart angles, points drawn back, and the edge trued across the closed dart."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.blocks.bodice_pieces.dart_point import dart_angle, dart_intake, drawn_back, shortened, trued
from notchbook.blocks.bodice_pieces.panel import Opening
from notchbook.geometry import Path, Point, Transform, direction
from support.skirt_judge import angle_between, length, polyline


def test_the_angle_of_a_dart_is_the_same_on_longer_legs() -> None:
    # Source: trade arithmetic: 35 mm on legs of 200 mm is 10.0396 degrees; on 240 mm that is 42.00 mm.
    angle = dart_angle(35.0, 200.0)
    assert angle == pytest.approx(10.0396, abs=5e-5)
    assert dart_intake(angle, 240.0) == pytest.approx(42.0, abs=5e-4)


def test_a_point_is_drawn_back_along_the_middle_and_never_by_more_than_its_share() -> None:
    opening = Opening("bust_dart", Point(100.0, -20.0), Point(0.0, 0.0), Point(100.0, 20.0))
    short = shortened(opening, 25.0)
    assert (short.point.x, short.point.y) == pytest.approx((25.0, 0.0))
    assert short.point.distance_to(short.first) == pytest.approx(short.point.distance_to(short.second))
    assert drawn_back(25.0, opening.leg) == 25.0
    assert drawn_back(60.0, opening.leg) == pytest.approx(0.3 * opening.leg)


EDGES = st.tuples(
    st.floats(2.0, 30.0),  # angle of the dart at the bust point
    st.floats(90.0, 260.0),  # legs
    st.floats(5.0, 60.0),  # drawn back
    st.floats(70.0, 110.0),  # direction of the edge against the leg
    st.floats(40.0, 120.0),  # length of each part
)


@given(EDGES)
def test_with_the_dart_closed_the_trued_edge_runs_on(
    case: tuple[float, float, float, float, float],
) -> None:
    angle, leg, by, way, part = case
    first = direction(-angle / 2.0) * leg
    before = Path.line(first - direction(way - angle / 2.0) * part, first)
    onward = Path.line(first, first + direction(way - angle / 2.0) * part)
    after = onward.transformed(Transform.rotation(angle, Point(0.0, 0.0)))
    short = shortened(Opening("bust_dart", first, Point(0.0, 0.0), after.start), drawn_back(by, leg))
    one, opening, two = trued(before, short, after)
    lines = [polyline(path.to_data()) for path in (one, two)]
    # Closed by other code: the second part turned about the drawn point so that the legs lie together.
    tip = np.array([opening.point.x, opening.point.y])
    legs = [lines[0][-1] - tip, lines[1][0] - tip]
    assert np.linalg.norm(legs[0]) == pytest.approx(np.linalg.norm(legs[1]), abs=1e-9)
    turn = np.arctan2(legs[0][1], legs[0][0]) - np.arctan2(legs[1][1], legs[1][0])
    closing = np.array([[np.cos(turn), -np.sin(turn)], [np.sin(turn), np.cos(turn)]])
    closed = (lines[1] - tip) @ closing.T + tip
    assert angle_between(lines[0][-1] - lines[0][-2], closed[1] - closed[0]) < 0.6
    # Truing costs next to no length, and the far ends stay.
    assert length(lines[0]) + length(lines[1]) == pytest.approx(2.0 * part, abs=0.06)
    assert np.allclose(lines[0][0], [before.start.x, before.start.y], atol=1e-9)
    assert np.allclose(lines[1][-1], [after.end.x, after.end.y], atol=1e-9)


def test_without_truing_the_edge_would_dip() -> None:
    """The test above can fail: the parts as they come from opening do not run on."""
    first = direction(-10.0) * 120.0
    before = Path.line(first - direction(80.0) * 60.0, first)
    after = Path.line(first, first + direction(80.0) * 60.0).transformed(
        Transform.rotation(20.0, Point(0.0, 0.0))
    )
    short = shortened(Opening("bust_dart", first, Point(0.0, 0.0), after.start), 30.0)
    tip = short.point
    turn = (short.first - tip).direction() - (short.second - tip).direction()
    closed = after.transformed(Transform.rotation(turn, tip))
    assert abs(before.tangent_at(60.0).direction() - closed.tangent_at(0.0).direction()) > 5.0
