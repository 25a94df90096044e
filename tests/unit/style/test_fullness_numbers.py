"""Closed forms of fullness, checked against plane geometry that is worked out here on its own."""

import math
from itertools import pairwise

import pytest
from shapely.geometry import Polygon

from notchbook.errors import StepRefused
from notchbook.geometry import Line, Path, Point, Transform, curvature_extrema, curve_between, inflections
from notchbook.pattern.slashing import located_on
from notchbook.style.fullness.fold_shape import fold_shape, half_of
from notchbook.style.fullness.opening import Opening, even_shares, motions_along, opened_by_angle
from notchbook.style.fullness.rising_curve import RisingCurve
from notchbook.style.fullness.spread import SlashLine, Spread, spread
from notchbook.style.fullness.truing import trued_edge
from notchbook.units import TOLERANCES
from support.fullness import rectangle

WIDTH, HEIGHT = 240.0, 600.0


def hung(number: int, opens: float, across: float = 0.0, width: float = WIDTH) -> Spread:
    """A rectangle slashed from its hem to its waist, from the left."""
    piece = rectangle(width, HEIGHT)
    lines = [
        SlashLine(
            located_on(piece, "cloth.panel/hem", share * width),
            located_on(piece, "cloth.panel/waist", (1.0 - share) * width),
            opens,
            across,
        )
        for share in even_shares(number)
    ]
    return spread(piece, lines, forward=True)


@pytest.mark.parametrize("leftward", [True, False])
@pytest.mark.parametrize("level", [None, Point(1.0, 0.0)])
@pytest.mark.parametrize(("at_start", "at_end"), [(30.0, 30.0), (30.0, 0.0), (0.0, 30.0), (50.0, 20.0)])
def test_both_ends_of_a_slash_open_by_what_is_said(
    leftward: bool, level: Point | None, at_start: float, at_end: float
) -> None:
    slash = Opening(Point(10.0, 0.0), Point(60.0, 500.0), at_start, at_end, leftward, level)
    motion = slash.motion()
    assert motion.apply(slash.start).distance_to(slash.start) == pytest.approx(at_start, abs=1e-9)
    assert motion.apply(slash.end).distance_to(slash.end) == pytest.approx(at_end, abs=1e-9)
    assert motion.determinant == pytest.approx(1.0, abs=1e-12)
    side = (slash.end - slash.start).cross(motion.apply(slash.start.lerp(slash.end, 0.5)) - slash.start)
    assert (side > 0.0) is leftward


def test_a_slash_opened_by_nothing_moves_nothing() -> None:
    motion = Opening(Point(0.0, 0.0), Point(0.0, 500.0), 0.0, 0.0, True).motion()
    assert motion == Transform.identity()


def test_a_slash_opens_by_sixty_degrees_at_most() -> None:
    wide = 2.0 * 500.0 * math.sin(math.radians(30.0))
    assert abs(Opening(Point(0.0, 0.0), Point(0.0, 500.0), wide - 0.1, 0.0, True).angle) < 60.0
    with pytest.raises(StepRefused) as refused:
        Opening(Point(0.0, 0.0), Point(0.0, 500.0), wide + 0.1, 0.0, True).motion()
    assert refused.value.code == "slash-opens-too-far"


def test_slashes_lie_evenly_each_in_the_middle_of_its_share() -> None:
    assert even_shares(4) == pytest.approx((0.125, 0.375, 0.625, 0.875))
    assert even_shares(2, 100.0, 200.0) == pytest.approx((125.0, 175.0))


def test_an_angle_is_shared_by_the_slashes() -> None:
    opened = opened_by_angle((600.0, 500.0), 10.0)
    # A chord of 5 degrees: 2 r sin 2.5 degrees, worked out apart.
    assert opened == pytest.approx((52.343, 43.619), abs=1e-3)


@pytest.mark.parametrize("number", [1, 3, 5, 8])
def test_n_slits_add_n_times_d_at_the_open_edge_and_nothing_at_the_hinge(number: int) -> None:
    """Plane geometry: n equal slits by d add n d at the open edge, 0 at the hinge (before truing)."""
    made = hung(number, 12.0)
    hem, waist = made.edges["cloth.panel/hem"], made.edges["cloth.panel/waist"]
    assert hem.opened == pytest.approx(number * 12.0, abs=1e-6)
    assert waist.opened == pytest.approx(0.0, abs=1e-6)
    assert made.piece.edge("cloth.panel/left").length == pytest.approx(HEIGHT, abs=1e-9)
    assert made.piece.edge("cloth.panel/right").length == pytest.approx(HEIGHT, abs=1e-9)


def test_parallel_fullness_adds_as_much_at_both_edges_and_they_stay_straight() -> None:
    made = hung(5, 20.0, 20.0)
    for word in ("hem", "waist"):
        edge = made.piece.edge(f"cloth.panel/{word}")
        assert edge.length == pytest.approx(WIDTH + 100.0, abs=1e-9)
        assert len(edge.path.segments) == 1
    area = Polygon([(p.x, p.y) for p in made.piece.sew_line.flattened(0.001)]).area
    assert area == pytest.approx((WIDTH + 100.0) * HEIGHT, abs=1e-3)


@pytest.mark.parametrize("number", [3, 5, 9])
def test_a_strip_hinged_evenly_becomes_a_ring(number: int) -> None:
    """Slashed evenly and trued, a rectangle is a part of a ring: both edges arcs about one center.

    From plane geometry: the ring's two radii differ by the height, its angle is that of all slashes, and
    its area (R squared less r squared) times half the angle.
    """
    made = hung(number, 30.0)
    waist, hem = (made.piece.edge(f"cloth.panel/{word}").path for word in ("waist", "hem"))
    radii = [
        [1.0 / abs(path.curvature_at(path.length * share)) for share in (0.1, 0.5, 0.9)]
        for path in (waist, hem)
    ]
    for found in radii:
        assert max(found) - min(found) < 0.002 * max(found)
    assert radii[1][1] - radii[0][1] == pytest.approx(HEIGHT, rel=0.002)
    angle = number * 2.0 * math.asin(30.0 / (2.0 * HEIGHT))
    ring = (radii[1][1] ** 2 - radii[0][1] ** 2) * angle / 2.0
    area = Polygon([(p.x, p.y) for p in made.piece.sew_line.flattened(0.001)]).area
    assert area == pytest.approx(ring, rel=0.003)


def test_truing_keeps_the_length_of_the_hinge_within_a_pencil_line() -> None:
    # An arc is shorter than the sides about it by a twelfth of the angle squared: worked out apart.
    made = hung(6, 40.0)
    each = 2.0 * math.asin(40.0 / (2.0 * HEIGHT))
    lost = WIDTH - made.piece.edge("cloth.panel/waist").length
    assert lost == pytest.approx(WIDTH * each**2 / 12.0, rel=0.05)
    assert lost < 0.1


def test_what_lies_far_from_a_slash_stays_as_it_was() -> None:
    line = Path.line(Point(0.0, 0.0), Point(1000.0, 0.0))
    motions = motions_along([Opening(Point(500.0, 0.0), Point(500.0, -600.0), 0.0, 30.0, True)])
    trued = trued_edge(line, [500.0], motions)
    assert trued.segments[0].end.distance_to(Point(380.0, 0.0)) < 1e-9
    assert inflections(trued) == ()
    assert len(curvature_extrema(trued, 1e-5)) <= 1
    assert trued.end.distance_to(motions[1].apply(line.end)) < 1e-9
    along = trued.tangent_at(trued.length).direction()
    assert along == pytest.approx(math.degrees(math.atan2(motions[1].b, motions[1].a)), abs=1e-9)


@pytest.mark.parametrize("joint", [379.95, 380.05, 619.95, 620.05])
def test_a_slash_drawn_out_to_beside_a_joint_leaves_no_sliver_there(joint: float) -> None:
    """The line is drawn anew for 120 mm on both sides of the slash; what is left up to the joint would be
    shorter than the 0.1 mm that the sharpest pencil draws."""
    line = Path.of(
        Line(Point(0.0, 0.0), Point(joint, 0.0)),
        curve_between(Point(joint, 0.0), 0.0, Point(1000.0, 40.0), 10.0),
    )
    motions = motions_along([Opening(line.point_at(500.0), Point(500.0, -600.0), 0.0, 30.0, True)])
    trued = trued_edge(line, [500.0], motions)
    assert min(segment.length for segment in trued.segments) > TOLERANCES.closure
    assert trued.start == line.start
    assert trued.end.distance_to(motions[1].apply(line.end)) < 1e-9


def test_nothing_opened_leaves_the_edge_alone() -> None:
    line = Path.polyline([Point(0.0, 0.0), Point(300.0, 10.0), Point(500.0, 80.0)])
    still = (Transform.identity(), Transform.identity())
    assert trued_edge(line, [200.0], still) == line


def test_a_corner_of_the_old_edge_stays_a_corner() -> None:
    line = Path.polyline([Point(0.0, 0.0), Point(200.0, 0.0), Point(400.0, 60.0)])
    motions = motions_along([Opening(Point(180.0, 0.0), Point(180.0, 500.0), 20.0, 0.0, False)])
    corners = trued_edge(line, [180.0], motions).corners(5.0)
    assert len(corners) == 1


def test_the_rising_curve_never_turns_back() -> None:
    curve = RisingCurve.through((0.0, 10.0, 11.0, 40.0), (0.0, 1.0, 5.0, 5.0), level=(False, True))
    values = [curve.at(place / 10.0) for place in range(401)]
    assert all(after >= before - 1e-12 for before, after in pairwise(values))
    assert [curve.at(place) for place in (0.0, 10.0, 11.0, 40.0)] == pytest.approx([0.0, 1.0, 5.0, 5.0])
    for place in (3.0, 10.5, 25.0):
        around = (curve.at(place + 1e-6) - curve.at(place - 1e-6)) / 2e-6
        assert curve.slope(place) == pytest.approx(around, abs=1e-6)


def test_half_an_opening_done_twice_is_the_whole() -> None:
    whole = Opening(Point(0.0, 0.0), Point(0.0, 500.0), 60.0, 20.0, True)
    half = half_of(whole).motion()
    twice, once = half.then(half), whole.motion()
    for place in (whole.start, whole.end, Point(-80.0, 30.0)):
        assert twice.apply(place).distance_to(once.apply(place)) < 1e-9


@pytest.mark.parametrize(("at_start", "at_end"), [(60.0, 60.0), (60.0, 0.0), (60.0, 20.0)])
def test_the_edge_in_a_fold_lies_even_with_the_edge_when_it_is_closed(at_start: float, at_end: float) -> None:
    """Folded by reflection, as paper is: both layers must come to lie on the finished edge."""
    edge = Path.line(Point(0.0, 0.0), Point(100.0, 14.0))
    fold = Opening(Point(0.0, 0.0), Point(5.0, -500.0), at_start, at_end, False)
    shape = fold_shape(edge, fold)
    over = Transform.reflection(fold.start, fold.end)
    for share in (0.0, 0.3, 0.7, 1.0):
        place = shape.to_inner.point_at(shape.to_inner.length * share)
        assert edge.nearest(over.apply(place)).gap < 1e-9
    back = Transform.carrying(
        shape.placement.start, shape.placement.end, fold.start, fold.end
    )  # the placement line laid on the fold line
    for share in (0.0, 0.3, 0.7, 1.0):
        place = shape.to_placement.point_at(shape.to_placement.length * share)
        assert edge.nearest(back.apply(place)).gap < 1e-9
    assert shape.to_inner.length == pytest.approx(shape.to_placement.length, abs=1e-9)
    assert shape.placement.start.distance_to(fold.start) == pytest.approx(at_start, abs=1e-9)


def test_a_fold_deeper_than_its_edge_is_refused() -> None:
    edge = Path.line(Point(0.0, 0.0), Point(25.0, 0.0))
    with pytest.raises(StepRefused) as refused:
        fold_shape(edge, Opening(Point(0.0, 0.0), Point(0.0, -500.0), 60.0, 60.0, False))
    assert refused.value.code == "fold-deeper-than-edge"
    assert refused.value.facts["depth"] == pytest.approx(30.0)


@pytest.mark.parametrize("forward", [True, False])
def test_a_single_slash_moves_what_lies_beyond_it_along_both_edges(forward: bool) -> None:
    piece = rectangle(WIDTH, HEIGHT)
    line = SlashLine(
        located_on(piece, "cloth.panel/hem", 100.0), located_on(piece, "cloth.panel/waist", 140.0), 30.0, 10.0
    )
    made = spread(piece, [line], forward=forward)
    for word in ("hem", "waist"):
        cut = made.edges[f"cloth.panel/{word}"]
        trued = made.piece.edge(f"cloth.panel/{word}").path
        ends = cut.motions[0].apply(cut.old.path.start), cut.motions[-1].apply(cut.old.path.end)
        assert trued.start.distance_to(ends[0]) < 1e-9
        assert trued.end.distance_to(ends[1]) < 1e-9
        assert trued.length == pytest.approx(cut.old.length + cut.opened, abs=0.2)
    still = "left" if forward else "right"
    assert made.piece.edge(f"cloth.panel/{still}").path == piece.edge(f"cloth.panel/{still}").path
