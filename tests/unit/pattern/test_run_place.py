"""A place so far along a run of edges lies on the edge where a tape laid along them ends."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.pattern import EdgeUse, locate
from notchbook.pattern.run_place import place_on
from support.edge_steps import trousers
from support.pockets import line_of

RUN = (
    EdgeUse("trousers.back/side_seam", "trousers.back/waist_side"),
    EdgeUse("trousers.front/side_seam", "trousers.front/hem_side"),
)
"""Down one side seam and up the other."""


def tape() -> tuple[float, float]:
    """The lengths of both as another program has them, mm."""
    edges = trousers().pattern.edges
    first, second = (line_of(edges[use.edge].path).length for use in RUN)
    return first, second


@given(st.floats(0.0, 1.0))
def test_a_place_lies_on_the_edge_where_the_tape_ends(share: float) -> None:
    pattern, (first, second) = trousers().pattern, tape()
    along = share * (first + second)
    place = place_on(pattern, RUN, along)
    on_first = along <= first
    if abs(along - first) > 0.02:
        assert place.edge == RUN[0 if on_first else 1].edge
    edge = line_of(pattern.edges[place.edge].path)
    asked = along if place.edge == RUN[0].edge else along - first
    begin = pattern.pieces[pattern.carriers[place.from_point]].points[place.from_point]
    ends = [math.dist(at, (begin.x, begin.y)) for at in (edge.coords[0], edge.coords[-1])]
    from_end = ends[1] < ends[0]
    assert min(ends) < 1e-6
    spot = edge.interpolate(max(edge.length - asked, 0.0) if from_end else asked)
    found = locate(pattern, place).position
    assert (found.x, found.y) == pytest.approx((spot.x, spot.y), abs=0.05)


def test_at_a_joint_the_earlier_edge_is_taken_and_beyond_the_run_its_end() -> None:
    pattern, lengths = trousers().pattern, [trousers().pattern.edges[use.edge].length for use in RUN]
    joint = place_on(pattern, RUN, lengths[0])
    assert joint.edge == RUN[0].edge
    assert joint.amount == pytest.approx(lengths[0])
    beyond = place_on(pattern, RUN, sum(lengths) + 100.0)
    assert beyond.edge == RUN[1].edge
    assert beyond.amount == pytest.approx(lengths[1])
