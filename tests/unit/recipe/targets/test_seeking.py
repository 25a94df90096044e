"""Seeking values of functions that may be refused: closed forms, limits, turning points, several at once."""

import math

import pytest

from notchbook.geometry import Path, Point
from notchbook.geometry.solve_between import Accuracies, Place, seek_zero
from notchbook.geometry.solve_together import solve_together
from notchbook.pattern.piece import Edge, InternalLine, Piece
from notchbook.pattern.width_at_level import width_at_level

EXACT = Accuracies(1e-9, 1e-4, 1e-4)


def square_root_of(wanted: float, at: float) -> float | None:
    return None if at < 0.0 else math.sqrt(at) - wanted


def test_a_root_is_found_outward_from_the_start() -> None:
    found = seek_zero(lambda at: square_root_of(3.0, at), Place(1.0, -2.0), 0.5, (-100.0, 100.0), EXACT)
    assert found.root == pytest.approx(9.0, abs=1e-8)


def test_the_last_place_with_a_value_is_an_end_of_the_range() -> None:
    found = seek_zero(lambda at: square_root_of(-3.0, at), Place(1.0, 4.0), 0.5, (-100.0, 100.0), EXACT)
    assert found.root is None
    assert found.low.at == pytest.approx(0.0, abs=1e-4) and found.high.at == 100.0
    assert found.most.value == pytest.approx(13.0) and found.least.at == pytest.approx(0.0, abs=1e-4)
    assert found.below is not None and -1e-4 <= found.below < 0.0 and found.above is None


def test_where_the_value_leads_away_the_limit_is_not_sought() -> None:
    asked: list[float] = []

    def line(at: float) -> float | None:
        asked.append(at)
        return at - 500.0 if -20.0 <= at <= 100.0 else None

    found = seek_zero(line, Place(0.0, -500.0), 1.0, (-300.0, 3000.0), Accuracies(1e-7, 1e-2, 0.5))
    assert found.root is None and found.high.at == pytest.approx(100.0, abs=0.5)
    below = [at for at in asked if at < 0.0]
    assert len(below) <= 4 and found.low.at == min(at for at in below if at >= -20.0)
    assert found.below == min(below)


def test_a_root_just_before_the_limit_is_found_though_the_value_leads_away_at_first() -> None:
    # Away from 0 up to -4, then back: the root at -16 (by hand) lies between two bold steps, beside the end.
    def tent(at: float) -> float | None:
        return None if at < -16.5 else 12.0 - abs(at + 4.0) if at <= 0.0 else None

    found = seek_zero(tent, Place(0.0, 8.0), 1.0, (-300.0, 300.0), Accuracies(1e-7, 1e-2, 0.5))
    assert found.root == pytest.approx(-16.0, abs=1e-6)


def test_a_value_that_turns_before_it_comes_to_zero_is_not_passed_over() -> None:
    # A parabola with roots at 2.9 and 3.1: sampled coarsely it never changes its sign.
    found = seek_zero(lambda at: (at - 3.0) ** 2 - 0.01, Place(0.0, 8.99), 1.0, (-50.0, 50.0), EXACT)
    assert found.root is not None and abs(abs(found.root - 3.0) - 0.1) < 1e-6


def test_a_turning_point_above_zero_is_the_nearest_of_the_range() -> None:
    found = seek_zero(lambda at: (at - 3.0) ** 2 + 0.5, Place(0.0, 9.5), 1.0, (-50.0, 50.0), EXACT)
    assert found.root is None and found.least.value == pytest.approx(0.5, abs=1e-6)


def asked_of(wanted: float) -> tuple[list[float], float | None]:
    """The places asked for, and the root, of a line that ends at 271.3: told to 0.5, found to 0.01."""
    places: list[float] = []

    def line(at: float) -> float | None:
        places.append(at)
        return at - wanted if at <= 271.3 else None

    accuracies = Accuracies(1e-7, 1e-2, 0.5)
    return places, seek_zero(line, Place(10.0, 10.0 - wanted), 1.0, (0.0, 3000.0), accuracies).root


def test_a_limit_is_found_exactly_only_where_the_wish_may_lie_beside_it() -> None:
    far, root = asked_of(5000.0)
    assert root is None
    near, root = asked_of(271.29)
    assert root == pytest.approx(271.29, abs=1e-6)
    assert len(far) < 20
    assert min(abs(at - 271.3) for at in near) < 0.02 <= 0.02 + min(abs(at - 271.3) for at in far)


def test_several_values_are_solved_at_once() -> None:
    # A circle and a line: x = y = 3 on the side of the start (by hand).
    found = solve_together(
        lambda at: (at[0] ** 2 + at[1] ** 2 - 18.0, at[0] - at[1]), (1.0, 5.0), (0.01, 0.01), 1e-9
    )
    assert found.is_solved and found.place == pytest.approx((3.0, 3.0))


def test_values_that_move_only_together_are_said_to_be_bound() -> None:
    found = solve_together(
        lambda at: (at[0] + at[1] - 1.0, 2.0 * (at[0] + at[1]) - 5.0), (0.0, 0.0), (0.01, 0.01), 1e-9
    )
    assert not found.is_solved and found.is_bound


def test_a_refused_step_is_shortened_not_taken() -> None:
    found = solve_together(
        lambda at: None if at[0] > 2.0 else (math.exp(at[0]) - 7.0, at[1] - 1.0),
        (0.0, 0.0),
        (0.01, 0.01),
        1e-9,
    )
    assert found.is_solved and found.place == pytest.approx((math.log(7.0), 1.0))


def test_the_width_at_a_level_leaves_out_what_an_open_dart_takes() -> None:
    """A rectangle 200 wide with a dart 40 wide and 100 deep from its upper edge: by similar triangles."""
    corners = [(0, 0), (200, 0), (200, 300), (120, 300), (100, 200), (80, 300), (0, 300)]
    points = [Point(float(x), float(y)) for x, y in corners]
    names = [f"a.front/corner_{index}" for index in range(len(points))]
    outline = tuple(
        Edge(
            f"a.front/edge_{index}",
            Path.line(points[index], points[(index + 1) % len(points)]),
            names[index],
            names[(index + 1) % len(points)],
        )
        for index in range(len(points))
    )
    line = InternalLine("a.front/level", Path.line(Point(0.0, 300.0), Point(200.0, 300.0)))
    piece = Piece("a.front", "Front", outline, lines=(line,))
    assert width_at_level(piece, line, 50.0) == pytest.approx(200.0 - 20.0)
    assert width_at_level(piece, line, 99.9) == pytest.approx(200.0 - 0.04)
    assert width_at_level(piece, line, 150.0) == pytest.approx(200.0)
