"""Drafted trousers agree with what was given, measured by other code (dense polylines, numpy)."""

from dataclasses import replace

import pytest
import shapely
from shapely.geometry import LinearRing, Polygon

from notchbook.blocks.legs import TrousersGiven, TrousersHalf, draft_trousers
from notchbook.geometry import Point
from support.legs_given import BELLY_MAN, BODIES, WOMAN
from support.legs_judge import (
    belly,
    bends,
    corner_depth,
    fork_angle,
    leg_width,
    outline,
    waist,
    waist_corners,
    x_at,
)
from support.upper_judge import heading, leg_difference, length, turn

LENGTH = 0.1
"""mm within which lengths agree: half a millimeter shows on card, a tenth does not."""

ANGLE = 1.0
SIDE_ANGLE = 3.0
"""Degrees: what no eye sees in a waistline; what is allowed across a side seam (common practice)."""

DRAFTED = {name: (given, draft_trousers(given)) for name, given in BODIES.items()}


@pytest.fixture(params=sorted(DRAFTED), name="drafted")
def _drafted(request: pytest.FixtureRequest) -> tuple[TrousersGiven, TrousersHalf]:
    found: tuple[TrousersGiven, TrousersHalf] = DRAFTED[request.param]
    return found


def test_waist_and_hip(drafted: tuple[TrousersGiven, TrousersHalf]) -> None:
    given, half = drafted
    assert 2.0 * (waist(half.front) + waist(half.back)) == pytest.approx(given.waist, abs=LENGTH)
    widths = [panel.hip_side.x - panel.hip_center.x for panel in (half.front, half.back)]
    assert 2.0 * sum(widths) == pytest.approx(half.hip, abs=LENGTH)
    assert half.hip >= given.hip - 1e-9
    assert all(
        panel.hip_side.y == pytest.approx(panel.hip_center.y, abs=1e-6) for panel in (half.front, half.back)
    )


def test_crotch_seam(drafted: tuple[TrousersGiven, TrousersHalf]) -> None:
    given, half = drafted
    assert length(half.front.crotch) + length(half.back.crotch) == pytest.approx(given.crotch, abs=LENGTH)


def test_seams_are_equal(drafted: tuple[TrousersGiven, TrousersHalf]) -> None:
    given, half = drafted
    assert length(half.front.side) == pytest.approx(given.length, abs=LENGTH)
    assert length(half.back.side) == pytest.approx(given.length, abs=LENGTH)
    stretch = length(half.front.inseam) - length(half.back.inseam)
    assert stretch == pytest.approx(given.inseam_stretch, abs=LENGTH)
    for panel in (half.front, half.back):
        assert length(
            panel.side.split_at(panel.side.nearest(panel.hip_side).distance_along)[0]
        ) == pytest.approx(given.hip_depth, abs=LENGTH)
    below = [length(panel.inseam.split_at(_knee(panel.inseam, half))[1]) for panel in (half.front, half.back)]
    # The back bends more through its knee; the notches lie where the seams agree (test_trousers_step).
    assert below[0] == pytest.approx(below[1], abs=1.0)


def _knee(inseam: object, half: TrousersHalf) -> float:
    panel = half.front if inseam is half.front.inseam else half.back
    assert panel.knee_inseam is not None
    return panel.inseam.nearest(panel.knee_inseam).distance_along


def test_corners_continue_each_other(drafted: tuple[TrousersGiven, TrousersHalf]) -> None:
    _, half = drafted
    assert fork_angle(half.front) + fork_angle(half.back) == pytest.approx(180.0, abs=ANGLE)
    assert fork_angle(half.front) == pytest.approx(half.front.fork_angle, abs=0.1)
    front, back = waist_corners(half.front), waist_corners(half.back)
    assert front[0] == pytest.approx(90.0, abs=ANGLE)
    assert back[0] == pytest.approx(90.0, abs=ANGLE)
    assert front[1] + back[1] == pytest.approx(180.0, abs=SIDE_ANGLE)


def test_darts(drafted: tuple[TrousersGiven, TrousersHalf]) -> None:
    given, half = drafted
    assert len(half.front.waist_darts) == given.front_darts
    assert len(half.back.waist_darts) == given.back_darts
    assert all(leg_difference(dart) < 1e-6 for dart in (*half.front.waist_darts, *half.back.waist_darts))
    assert sum(half.front.intakes) <= 20.5
    widest = max(half.back.intakes, default=20.0)
    assert max(half.front.intakes, default=0.0) <= widest + 1.0


def test_crease_is_the_middle_of_knee_and_hem(drafted: tuple[TrousersGiven, TrousersHalf]) -> None:
    given, half = drafted
    knee = hem = 0.0
    for panel in (half.front, half.back):
        assert panel.knee_side is not None
        assert panel.knee_inseam is not None
        assert panel.knee_side.x == pytest.approx(-panel.knee_inseam.x, abs=1e-6)
        assert panel.hem.start.x == pytest.approx(-panel.hem.end.x, abs=1e-6)
        knee += 2.0 * panel.knee_side.x
        hem += panel.hem.start.distance_to(panel.hem.end)
    assert half.knee is not None
    assert knee == pytest.approx(half.knee, abs=LENGTH)
    assert given.knee is not None
    assert half.knee >= given.knee - 1e-9
    assert hem == pytest.approx(given.hem, abs=LENGTH)


def test_thigh(drafted: tuple[TrousersGiven, TrousersHalf]) -> None:
    given, half = drafted
    at_crotch = leg_width(half.front, 0.0) + leg_width(half.back, 0.0)
    below = leg_width(half.front, 50.0) + leg_width(half.back, 50.0)
    assert at_crotch == pytest.approx(half.thigh, abs=LENGTH)
    assert below == pytest.approx(half.thigh_below, abs=LENGTH)
    assert at_crotch >= given.thigh - LENGTH
    assert below >= given.thigh - 15.0 - LENGTH


def test_corner_depths_are_a_hollow_and_no_diagonal(drafted: tuple[TrousersGiven, TrousersHalf]) -> None:
    """Front 30 to 38, back 42 to 52, plus sizes at most 45 and 58 (patternmaker's review); children less."""
    given, half = drafted
    small = min(1.0, given.hip / 860.0)
    plus = given.hip > 1150.0
    for panel, least, most in (
        (half.front, 30.0, 45.0 if plus else 38.0),
        (half.back, 42.0, 58.0 if plus else 52.0),
    ):
        depth = corner_depth(panel)
        assert depth == pytest.approx(panel.corner_depth, abs=LENGTH)
        assert least * small - 0.1 <= depth <= most + 0.1


def test_lines_bend_as_they_should(drafted: tuple[TrousersGiven, TrousersHalf]) -> None:
    _, half = drafted
    for panel in (half.front, half.back):
        assert bends(panel.crotch) == 0
        assert bends(panel.inseam) <= 1
        assert bends(panel.side) <= 1
        assert all(bends(part) == 0 for part in panel.waist)
        assert LinearRing(
            shapely.remove_repeated_points(Polygon(outline(panel).round(3)).exterior, 0.01)
        ).is_simple


def test_no_corner_in_seams(drafted: tuple[TrousersGiven, TrousersHalf]) -> None:
    _, half = drafted
    for panel in (half.front, half.back):
        for path in (panel.crotch, panel.inseam, panel.side):
            for before, after in zip(path.segments, path.segments[1:], strict=False):
                arriving = before.tangent_at(before.length).direction()
                assert abs(turn(arriving, after.tangent_at(0.0).direction())) < 0.05


def test_belly_is_reached() -> None:
    half = draft_trousers(BELLY_MAN)
    level = BELLY_MAN.between[0]
    reached = belly(half.front, half.back, level.depth, BELLY_MAN.hip_depth)
    without = draft_trousers(replace(BELLY_MAN, between=()))
    assert belly(without.front, without.back, level.depth, BELLY_MAN.hip_depth) < level.girth - 5.0
    assert level.girth - 0.5 < reached < level.girth + 12.0


def test_judge_sees_a_panel_that_is_off() -> None:
    """The measuring fails when a panel does: a crotch seam moved by 0.2 mm, a side that is another one."""
    half = draft_trousers(WOMAN)
    moved = replace(half.front, crotch=half.front.crotch.with_end(half.front.crotch.end - Point(0.2, 0.0)))
    assert abs(length(moved.crotch) - length(half.front.crotch)) > LENGTH
    assert abs(x_at(half.front.side, 0.0) - x_at(half.back.side, 0.0)) > LENGTH
    tilted = replace(half.front, inseam=half.back.inseam)
    assert abs(fork_angle(tilted) + fork_angle(half.back) - 180.0) > ANGLE
    assert heading(half.front.hem, at_end=False) == pytest.approx(180.0, abs=6.0)
