"""The comparison that tests of other parts use can fail, and says why."""

import pytest

from notchbook.geometry import Path, Point, assert_paths_close, greatest_gap
from support.geometry_shapes import ARMHOLE, BODICE

LINE = Path.line(Point(0, 0), Point(100, 0))


def test_the_same_shape_in_other_pieces_is_close() -> None:
    whole = Path.of(ARMHOLE)
    first, second = whole.split_at(70.0)
    assert_paths_close(first.joined(second), whole, 1e-6)
    assert_paths_close(BODICE.starting_at(400.0), BODICE, 1e-6)


@pytest.mark.parametrize(
    ("path", "words"),
    [
        (Path.line(Point(0, 0), Point(100, 0.2)), "end 0.2"),
        (Path.line(Point(0, 0.2), Point(100, 0)), "start 0.2"),
        (LINE.reversed(), "start 100"),
        (Path.polyline([Point(0, 0), Point(50, 0.2), Point(100, 0)]), "apart, allowed"),
        (Path.polyline([Point(0, 0), Point(60, 0), Point(40, 0), Point(100, 0)]), "lengths differ"),
        (BODICE, "one path is closed"),
    ],
)
def test_other_shapes_are_not_close(path: Path, words: str) -> None:
    with pytest.raises(AssertionError, match=words):
        assert_paths_close(path, LINE, 0.1)


def test_outlines_that_run_around_the_other_way_are_not_close() -> None:
    with pytest.raises(AssertionError, match="different directions"):
        assert_paths_close(BODICE.reversed(), BODICE, 1.0)


def test_the_gap_is_that_of_the_farthest_place() -> None:
    bent = Path.polyline([Point(0, 0), Point(50, 3), Point(100, 0)])
    assert greatest_gap(bent, LINE) == pytest.approx(3.0, abs=1e-9)
    assert greatest_gap(LINE, LINE) == 0.0
