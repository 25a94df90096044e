"""A hem that moves along edges beside it that lean or bend, against closed forms of circles and triangles."""

from math import asin, cos, degrees, pi, radians, sin

import pytest

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import Edge, Piece
from notchbook.style.edges.hem_moves import hem_runs, moved_hem

WIDE, HIGH = 300.0, 200.0


def piece(right: Path, left: Path, *, corner: float = 0.5) -> Piece:
    """A piece with its hem below, ``right`` running up from it and ``left`` down to it; the hem in two."""
    middle = left.end.lerp(right.start, corner)
    outline = (
        Edge("a.a/hem", Path.line(left.end, middle), "a.a/left", "a.a/middle", "hem"),
        Edge("a.a/vent_hem", Path.line(middle, right.start), "a.a/middle", "a.a/right", "hem"),
        Edge("a.a/right_seam", right, "a.a/right", "a.a/top_right"),
        Edge("a.a/top", Path.line(right.end, left.start), "a.a/top_right", "a.a/top_left", "plain"),
        Edge("a.a/left_seam", left, "a.a/top_left", "a.a/left"),
    )
    return Piece("a.a", "A", outline)


def leaning(angle: float) -> Piece:
    """Both seams straight, wider toward the top by this angle, degrees."""
    aside = HIGH * sin(radians(angle)) / cos(radians(angle))
    right = Path.line(Point(WIDE, 0.0), Point(WIDE + aside, HIGH))
    return piece(right, Path.line(Point(-aside, HIGH), Point(0.0, 0.0)))


def rounded(radius: float) -> Piece:
    """Both seams arcs that leave the hem square and turn outward above it."""
    turn = asin(HIGH / radius)
    reach = radius * (1.0 - cos(turn))
    right = Path.of(curve_between(Point(WIDE, 0.0), 90.0, Point(WIDE + reach, HIGH), 90.0 - degrees(turn)))
    left = Path.of(curve_between(Point(-reach, HIGH), degrees(turn) - 90.0, Point(0.0, 0.0), -90.0))
    return piece(right, left)


def both(shape: Piece) -> tuple[str, ...]:
    return hem_runs(shape, ["a.a/hem"])[0]


@pytest.mark.parametrize("angle", [-20.0, 0.0, 7.0, 35.0])
@pytest.mark.parametrize("amount", [-60.0, 45.0])
def test_a_straight_seam_grows_by_the_amount_over_the_cosine_of_its_lean(angle: float, amount: float) -> None:
    shape = leaning(angle)
    moved = moved_hem(shape, both(shape), amount)
    for seam in ("a.a/right_seam", "a.a/left_seam"):
        grown = moved.piece.edge(seam).length - shape.edge(seam).length
        assert grown == pytest.approx(amount / cos(radians(angle)), abs=1e-6)
    assert moved.piece.edge("a.a/hem").path.start.y == pytest.approx(-amount, abs=1e-9)
    assert moved.rises == {}


def test_the_hem_turns_with_a_seam_that_is_an_arc() -> None:
    """The corner stays square, so that the tip of the bend lies on the radius at R + half of the bend."""
    radius, amount, half = 400.0, 50.0, 40.0
    shape = rounded(radius)
    moved = moved_hem(shape, both(shape), -amount)
    turn = asin(amount / (radius + half))
    for seam in ("a.a/right_seam", "a.a/left_seam"):
        cut = shape.edge(seam).length - moved.piece.edge(seam).length
        assert cut == pytest.approx(radius * turn, abs=0.05)
        assert moved.rises[seam] == pytest.approx(radius * (asin(amount / radius) - turn), abs=0.05)
    up, hem = moved.piece.edge("a.a/right_seam").path, moved.piece.edge("a.a/vent_hem").path
    corner = hem.tangent_at(hem.length).direction() - up.tangent_at(0.0).direction()
    assert corner == pytest.approx(-90.0, abs=0.01)
    middle = moved.piece.edge("a.a/hem").path.end
    assert (middle.x, middle.y) == pytest.approx((WIDE / 2.0, amount), abs=1e-6)
    # A hem that was only cut straight across would be off square by the turn of the seam.
    assert degrees(asin(amount / radius)) > 7.0


def test_hems_that_run_on_move_together_and_part_where_they_met() -> None:
    shape = leaning(0.0)
    assert hem_runs(shape, ["a.a/vent_hem", "a.a/hem"]) == (("a.a/hem", "a.a/vent_hem"),)
    assert hem_runs(shape, ["a.a/top"]) == (("a.a/top",),)
    moved = moved_hem(shape, both(shape), 30.0).piece
    assert moved.edge("a.a/hem").path.end == Point(WIDE / 2.0, -30.0)
    assert moved.sew_line.area() - shape.sew_line.area() == pytest.approx(30.0 * WIDE)


def test_a_seam_that_turns_away_within_the_bend_is_refused() -> None:
    with pytest.raises(StepRefused) as caught:
        shape = rounded(205.0)
        moved_hem(shape, both(shape), -170.0)
    assert caught.value.code == "hem-not-square"
    assert asin(170.0 / 205.0) > pi / 4.0
