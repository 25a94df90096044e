"""Padding against an outside judge: shapely lays a layer round convex sections and measures the girth."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import MultiPoint, Polygon

from notchbook.body import MeasureSet
from notchbook.body.charts import LevelPlan, padding_plan

QUARTER = 64
"""Chords in a quarter of a round corner: an arc comes out short by a ten-thousandth."""

radii = st.lists(st.floats(90.0, 200.0), min_size=5, max_size=24)
more = st.floats(15.0, 300.0)


def section(lengths: list[float]) -> Polygon:
    """A convex section through points at these distances from the middle, mm."""
    count = len(lengths)
    points = [
        (
            1.4 * length * math.cos(2 * math.pi * at / count + 0.1),
            length * math.sin(2 * math.pi * at / count + 0.1),
        )
        for at, length in enumerate(lengths)
    ]
    hull = MultiPoint(points).convex_hull
    assert isinstance(hull, Polygon)
    return hull


def hip_plan(girth: float, wanted: float, front_share: float) -> LevelPlan:
    """The plan at the hip of a form with this girth for a client with the wanted one."""
    form, client = (MeasureSet.from_mm("x", {"hip_girth": value}) for value in (girth, wanted))
    return padding_plan(form, client, front_shares={"hip_girth": front_share}).levels[0]


def half_length(shape: Polygon, *, front: bool) -> float:
    """The way along the front (positive y) or back half, between the outermost points left and right."""
    ring = list(shape.exterior.coords)[:-1]
    right = max(range(len(ring)), key=lambda at: ring[at][0])
    turned = ring[right:] + ring[:right]
    left = min(range(len(turned)), key=lambda at: turned[at][0])
    one, other = turned[: left + 1], [*turned[left:], turned[0]]
    halves = sorted((one, other), key=lambda chain: sum(y for _, y in chain) / len(chain))
    chain = halves[1] if front else halves[0]
    return sum(math.dist(start, end) for start, end in pairwise(chain))


@given(radii, more)
def test_an_even_layer_gives_the_wanted_girth(lengths: list[float], added: float) -> None:
    shape = section(lengths)
    plan = hip_plan(shape.length, shape.length + added, 0.5)
    assert plan.front == plan.back
    padded = shape.buffer(plan.front, quad_segs=QUARTER)
    assert padded.length == pytest.approx(shape.length + added, abs=0.001 * added)


@given(radii, more, st.floats(0.0, 1.0))
def test_front_and_back_together_give_the_wanted_girth(
    lengths: list[float], added: float, share: float
) -> None:
    """Each half is laid on alone; shapely's outlines of both thicknesses are measured half by half."""
    shape = section(lengths)
    plan = hip_plan(shape.length, shape.length + added, share)
    front = half_length(shape.buffer(plan.front, quad_segs=QUARTER), front=True)
    back = half_length(shape.buffer(plan.back, quad_segs=QUARTER), front=False)
    # The outermost point of a round corner lies up to a chord of it off.
    near = 0.001 * added + max(plan.front, plan.back) * math.pi / (2 * QUARTER)
    assert front + back == pytest.approx(shape.length + added, abs=near)
    assert front - half_length(shape, front=True) == pytest.approx(share * added, abs=near)


@given(
    st.floats(300.0, 1400.0), st.floats(10.1, 400.0), st.floats(0.0, 1.0), st.floats(0.5, 15.0), st.booleans()
)
def test_whole_layers_end_in_reach_whatever_the_share(
    girth: float, added: float, share: float, layer: float, by_arcs: bool
) -> None:
    """Never more than 3 mm above the client, less than one layer on one half below; the number of layers does
    not hang on how they are split, and no half is more than a layer off what it should be."""
    form, client = (MeasureSet.from_mm("x", {"hip_girth": value}) for value in (girth, girth + added))
    if by_arcs:
        form, client = (
            form.with_value("front_hip_arc", girth / 2),
            client.with_value("front_hip_arc", girth / 2 + share * added),
        )
    shares = None if by_arcs else {"hip_girth": share}
    level = padding_plan(form, client, layer, shares).levels[0]
    even = padding_plan(form, client, layer, {"hip_girth": 0.5}).levels[0]
    assert client.value("hip_girth") - math.pi * layer < level.reached <= client.value("hip_girth") + 3.0
    assert level.front_layers + level.back_layers == even.front_layers + even.back_layers
    assert level.reached == pytest.approx(girth + math.pi * layer * (level.front_layers + level.back_layers))
    for thickness, layers in ((level.front, level.front_layers), (level.back, level.back_layers)):
        assert abs(layers * layer - thickness) <= layer + 1e-6


@given(radii, more)
def test_the_judge_catches_a_wrong_formula(lengths: list[float], added: float) -> None:
    """A girth shared over the diameter (added / pi all round), as is easily done, lays on twice too much."""
    shape = section(lengths)
    padded = shape.buffer(added / math.pi, quad_segs=QUARTER)
    assert padded.length != pytest.approx(shape.length + added, abs=0.5 * added)
