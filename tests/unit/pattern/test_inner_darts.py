"""Double-ended darts inside a piece: their mouths, and what moving, renaming, joining and cutting do."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Piece, inner_dart_width, is_open_inside, mouth_of
from notchbook.pattern.splitting import dart_crossed
from notchbook.style.lines.inside import Inside, shared_inside
from support.hand_upper import INNER_DART, hand_upper, upper_back, upper_front, with_inner_dart

FRONT = with_inner_dart(upper_front(), 24.0)
(DART,) = FRONT.inner_darts


def test_the_mouth_is_the_corner_farthest_from_the_straight_line() -> None:
    leg = Path.polyline([Point(0, 100), Point(-4, 60), Point(-12, 0), Point(0, -80)])
    along, corner = mouth_of(leg)
    assert corner == Point(-12, 0)
    assert along == pytest.approx((4**2 + 40**2) ** 0.5 + (8**2 + 60**2) ** 0.5)


def test_a_leg_without_corner_has_its_mouth_in_the_middle() -> None:
    assert mouth_of(Path.line(Point(0, 100), Point(0, -60))) == (80.0, Point(0, 20))


@given(st.floats(0.0, 60.0))
@settings(max_examples=30)
def test_the_width_is_what_was_drawn(width: float) -> None:
    front = with_inner_dart(upper_front(), width)
    assert inner_dart_width(front, front.inner_darts[0]) == pytest.approx(width, abs=1e-9)
    assert is_open_inside(front, front.inner_darts[0]) == (width > 0.01)


@given(st.floats(-180, 180), st.floats(-500, 500), st.booleans())
@settings(max_examples=30)
def test_moving_a_piece_moves_its_inner_darts(degrees: float, shift: float, reflect: bool) -> None:
    motion = Transform.rotation(degrees, Point(shift, 0.0))
    if reflect:
        motion = motion.then(Transform.reflection(Point(0, 0), Point(0, 1)))
    moved = FRONT.transformed(motion)
    assert moved.inner_darts == FRONT.inner_darts
    assert inner_dart_width(moved, DART) == pytest.approx(24.0, abs=1e-6)
    upper = moved.points[DART.upper_point]
    assert upper.distance_to(moved.line(DART.center_leg).path.start) < 1e-9
    assert upper.distance_to(motion.apply(FRONT.points[DART.upper_point])) < 1e-9


def test_renaming_reaches_every_name_of_an_inner_dart() -> None:
    renamed = FRONT.renamed(lambda name: f"{name}@left")
    (dart,) = renamed.inner_darts
    assert dart.name == f"{INNER_DART}@left"
    assert {dart.center_leg, dart.side_leg} <= {line.name for line in renamed.lines}
    assert {dart.upper_point, dart.lower_point} <= set(renamed.points)
    assert dart.name in set(renamed.names())


def test_the_pattern_knows_the_name_and_its_kind() -> None:
    upper = hand_upper()
    assert upper.index[INNER_DART] == "inner_dart"
    assert upper.carriers[INNER_DART] == "top.front"


def test_a_cut_through_an_inner_dart_is_seen_and_one_beside_it_is_not() -> None:
    through = Path.line(Point(-235, 40), Point(0, 40))
    assert dart_crossed(FRONT, through) == DART
    assert dart_crossed(FRONT, Path.line(Point(-235, 150), Point(0, 150))) is None
    assert dart_crossed(upper_back(), through) is None


def inside_of(piece: Piece) -> tuple[Inside, Inside]:
    """What of the front lies inside the outline of a piece, and the rest."""
    *stretch, last = piece.outline
    first, second, _ = shared_inside(FRONT, [stretch], [last.path.reversed()])
    return first, second


def test_a_part_keeps_the_inner_darts_that_lie_in_it() -> None:
    assert [part.inner_darts for part in inside_of(FRONT)] == [(DART,), ()]
    assert [part.inner_darts for part in inside_of(upper_back())] == [(), (DART,)]


def test_an_internal_line_is_found_by_its_name() -> None:
    assert FRONT.line(DART.side_leg).kind == "dart_leg"
    with pytest.raises(KeyError):
        replace(FRONT, lines=()).line(DART.side_leg)
