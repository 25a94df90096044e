"""An outline from named sides closes, runs counter-clockwise, and names each corner where a side begins."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.geometry import Path, Point
from notchbook.style._outlined import Corner, Side, outlined, straight_sides

WORDS = ("one", "two", "three", "four", "five", "six")
turns = st.lists(st.floats(10.0, 60.0), min_size=3, max_size=6)


def corners(parts: list[float]) -> list[Corner]:
    """Corners round a circle, counter-clockwise, at angles that share the whole turn as the parts say."""
    found, at = list[Corner](), 0.0
    for word, part in zip(WORDS, parts, strict=False):
        place = Point(100.0 * math.cos(at), 100.0 * math.sin(at))
        found.append(Corner(place, f"at_{word}", word))
        at += 2.0 * math.pi * part / sum(parts)
    return found


@given(turns, st.booleans())
def test_every_side_ends_where_the_next_begins_whichever_way_it_was_told(
    parts: list[float], clockwise: bool
) -> None:
    told = corners(parts)
    edges = outlined("a.b", straight_sides(told[::-1] if clockwise else told), clockwise=clockwise)
    for edge, following in zip(edges, (*edges[1:], edges[0]), strict=True):
        assert edge.path.end == following.path.start
        assert edge.end == following.start
    around = Path(tuple(segment for edge in edges for segment in edge.path.segments))
    assert around.area() > 0.0, "counter-clockwise"
    by_name = {edge.name: edge for edge in edges}
    for corner in told:
        edge = by_name[f"a.b/{corner.word}"]
        assert corner.place in (edge.path.start, edge.path.end)
        begin = edge.end if clockwise else edge.start
        assert begin == f"a.b/{corner.begins}"


def test_a_side_may_keep_the_name_of_an_edge_and_of_its_point_and_is_led_to_the_next() -> None:
    sides = (
        Side("lower", "left", Path.line(Point(0.0, 0.0), Point(10.0, 0.3)), "hem"),
        Side("", "", Path.line(Point(10.0, 0.0), Point(0.0, 8.0)), keeps="c.d/waist", from_point="c.d/side"),
        Side("far/upper", "top", Path.line(Point(0.0, 8.0), Point(0.0, 0.0))),
    )
    edges = outlined("a.b", sides)
    assert [edge.name for edge in edges] == ["a.b/lower", "c.d/waist", "a.b/far/upper"]
    assert [edge.start for edge in edges] == ["a.b/left", "c.d/side", "a.b/top"]
    assert [edge.kind for edge in edges] == ["hem", "seam", "seam"]
    assert edges[0].path.end == Point(10.0, 0.0)
    assert sum(edge.length for edge in edges) == pytest.approx(10.0 + math.hypot(10.0, 8.0) + 8.0)
