"""Crotch seams measured, against what a circle's arc and a ruler's line must come to."""

import math
from dataclasses import replace

import pytest

from notchbook.blocks.legs.proportions import proportion
from notchbook.checks.crotches import Crotch, corner_range, crotches, least_radius
from notchbook.checks.limits import LIMITS
from notchbook.geometry import Cubic, Line, Path, Point, Transform
from notchbook.pattern import Pattern
from support.bent import path_changed, piece_changed
from support.hand_trousers import FRONT_CROTCH, FRONT_FOOT, hand_trousers

RADIUS = 65.0
"""mm: the extension of the hand-made front."""
QUARTER = 4.0 / 3.0 * (math.sqrt(2.0) - 1.0)
"""Handles of a cubic that is a quarter of a circle within 0.03 %, over its radius (general knowledge)."""
BEGINS, FORK = FRONT_FOOT + Point(0.0, RADIUS), FRONT_FOOT + Point(RADIUS, 0.0)


def front(pattern: Pattern) -> Crotch:
    return next(one for one in crotches(pattern) if one.run.panel == "front")


def drawn(curve: Cubic | Line) -> Pattern:
    """The hand-made trousers with this curve between the straight center front and the crotch point."""
    top = hand_trousers().edges[FRONT_CROTCH].path.end
    path = Path((*Path.line(top, BEGINS).segments, curve)).reversed()
    return path_changed(hand_trousers(), FRONT_CROTCH, lambda _: path)


def quarter() -> Pattern:
    reach = QUARTER * RADIUS
    return drawn(Cubic(BEGINS, BEGINS + Point(0.0, -reach), FORK + Point(-reach, 0.0), FORK))


def test_a_quarter_of_a_circle_lies_at_its_known_depth_in_the_corner() -> None:
    found = front(quarter())
    assert found.corner_depth == pytest.approx(RADIUS * (math.sqrt(2.0) - 1.0), rel=5e-4)
    assert found.hollow == pytest.approx((1.0 - math.sqrt(0.5)) / math.sqrt(2.0), rel=5e-3)
    assert found.end_hollow == pytest.approx(math.tan(math.radians(7.5)) / 2.0, rel=5e-3)
    assert found.end_way == pytest.approx(2.0 * RADIUS * math.sin(math.radians(15.0)), rel=5e-3)
    assert found.extension == pytest.approx(RADIUS, abs=1e-6)


def test_a_straight_line_has_no_hollow_and_lies_at_half_its_length() -> None:
    found = front(drawn(Line(BEGINS, FORK)))
    assert found.corner_depth == pytest.approx(RADIUS / math.sqrt(2.0), abs=1e-6)
    assert found.hollow == pytest.approx(0.0, abs=1e-6)


def test_a_piece_that_lies_turned_is_measured_by_its_grain() -> None:
    turn = Transform.rotation(33.0, Point(10.0, -20.0))
    turned = piece_changed(quarter(), "trousers.front", lambda piece: piece.transformed(turn))
    assert front(turned).corner_depth == pytest.approx(front(quarter()).corner_depth, abs=1e-6)


def test_the_hip_is_that_of_both_panels_twice() -> None:
    lines = [(85.0 + 155.0), (102.0 + 145.0)]
    assert front(hand_trousers()).hip == pytest.approx(2.0 * sum(lines))


@pytest.mark.parametrize(
    ("hip", "least", "most"),
    [
        (1000.0, 30.0, 38.0),
        (1165.0, 30.0, 38.0),
        (1202.5, 30.0, 41.5),
        (1240.0, 30.0, 45.0),
        (1600.0, 30.0, 45.0),
        (645.0, 22.5, 38.0),
        (0.0, 30.0, 45.0),
    ],
)
def test_the_range_of_the_front_corner_follows_the_hip(hip: float, least: float, most: float) -> None:
    """The figures are a patternmaker's: 30 to 38, large bodies 45 at most."""
    crotch = replace(front(hand_trousers()), hip=hip)
    assert corner_range(crotch, LIMITS) == pytest.approx((least, most))


def test_a_quarter_of_a_circle_bends_with_its_radius() -> None:
    assert front(quarter()).least_radius == pytest.approx(RADIUS, rel=0.01)


def test_a_small_body_may_bend_tighter() -> None:
    usual = replace(front(hand_trousers()), hip=1000.0)
    small = replace(usual, hip=430.0)
    assert least_radius(usual, LIMITS) == LIMITS.crotch_front_radius
    assert least_radius(small, LIMITS) == pytest.approx(LIMITS.crotch_front_radius / 2.0)


@pytest.mark.parametrize("panel", ["front", "back"])
def test_the_draft_aims_within_what_is_checked(panel: str) -> None:
    """Two tables, for a check must not ask the draft: but one range, less the room that the draft keeps."""
    room = proportion("curve.room")
    for word, sign in (("least", -1.0), ("most", 1.0), ("plus", 1.0)):
        aimed = proportion(f"curve.{word}_{panel}") + sign * room
        assert aimed == getattr(LIMITS, f"crotch_{panel}_{word}")
    assert proportion(f"curve.radius_{panel}") == getattr(LIMITS, f"crotch_{panel}_radius")
    assert 1.0 < proportion(f"curve.end_{panel}") / getattr(LIMITS, f"crotch_{panel}_end") < 1.2
    assert proportion("curve.adult_hip") == LIMITS.crotch_small_below
    assert (proportion("curve.plus_hip"), proportion("curve.plus_full")) == (
        LIMITS.crotch_plus_from,
        LIMITS.crotch_plus_full,
    )
