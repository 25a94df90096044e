"""Which tiles the area of a piece reaches into, compared with shapely."""

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from notchbook.geometry import Box, Point
from notchbook.output.tiling import touches

places = st.floats(-300.0, 300.0)
corners = st.tuples(places, places)

FRAME = Box(-95.0, -127.0, 95.0, 127.0)
SAME = shapely.box(-95.0, -127.0, 95.0, 127.0)


def both_ways(outline: list[tuple[float, float]]) -> tuple[bool, bool]:
    """Whether an outline touches the frame: by the house, and by shapely."""
    points = [Point(x, y) for x, y in (*outline, outline[0])]
    return touches(FRAME, Box.around(points), points), SAME.intersects(shapely.Polygon(outline))


@given(corners, corners, corners)
def test_a_triangle_touches_a_tile_as_shapely_says(
    first: tuple[float, float], second: tuple[float, float], third: tuple[float, float]
) -> None:
    outline = [first, second, third]
    piece = shapely.Polygon(outline)
    assume(SAME.buffer(1e-6).intersects(piece) == SAME.buffer(-1e-6).intersects(piece))  # no hair of doubt
    ours, theirs = both_ways(outline)
    assert ours == theirs


@pytest.mark.parametrize("side", [(-1, 0), (1, 0), (0, -1), (0, 1)])
def test_a_corner_cut_past_a_tile_does_not_touch_it(side: tuple[int, int]) -> None:
    x, y = side
    beside = [
        (-20.0 + x * 130.0, -20.0 + y * 160.0),
        (20.0 + x * 130.0, y * 160.0),
        (x * 130.0, 20.0 + y * 160.0),
    ]
    assert both_ways(beside) == (False, False)


def test_a_tile_in_the_middle_of_a_piece_is_touched() -> None:
    assert both_ways([(-900.0, -900.0), (900.0, -900.0), (900.0, 900.0), (-900.0, 900.0)]) == (True, True)
