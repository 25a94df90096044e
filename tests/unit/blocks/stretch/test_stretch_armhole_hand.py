"""The armholes of the stretch blocks as a hand draws them: one fair J, no shelf, no elbow, no slant.

What is asked is a patternmaker's review of the drafts, put into figures here (own judgment, no source).
"""

from dataclasses import replace

import numpy as np
import pytest

from notchbook.blocks.stretch import (
    StrapGiven,
    StretchSleeveGiven,
    TorsoGiven,
    TorsoHalf,
    TorsoPanel,
    draft_torso,
)
from notchbook.blocks.stretch.armhole_curve import ArmholePlan, draw_armhole
from notchbook.geometry import Path, Point, curve_between
from support.armhole_hand import ArmholeHand, armhole_hand
from support.stretch_shapes import BODIES, PLUS, length, points

MOST_LEVEL = 0.3
"""Level at the underarm over the room: 15 to 30 mm. A shelf has 0.6."""

LEAST_RADIUS = 0.5
"""Quickest bend of the lower half over the room. An elbow has 0.3."""

MOST_LEAN = 6.0
"""Degrees outward at half the height."""

STRAP = StrapGiven(35.0, may_move=True)

DRAWN: dict[str, TorsoGiven] = {
    **BODIES,
    "full_bust": replace(
        PLUS,
        bust=1290.0,
        waist=None,
        hip=1330.0,
        shoulder=130.0,
        across_back=425.0,
        across_chest=420.0,
        armhole_depth=225.0,
        sleeve=StretchSleeveGiven(biceps=430.0, hem=400.0, length=190.0),
    ),
    "wide_strap": replace(
        PLUS,
        neck=413.0,
        shoulder=123.5,
        shoulder_slope=24.0,
        armhole_depth=211.0,
        back_length=394.0,
        neck_wider=54.0,
        front_neck_lower=86.7,
        back_neck_lower=102.5,
        strap=StrapGiven(40.0, 74.0, may_move=True),
        sleeve=None,
    ),
    **{
        f"{name}_strap": replace(one, sleeve=None, strap=STRAP, front_neck_lower=90.0, back_neck_lower=100.0)
        for name, one in BODIES.items()
    },
}


def faults(hand: ArmholeHand) -> list[str]:
    """What a hand would not draw so."""
    found = {
        "shelf": hand.level > MOST_LEVEL * hand.room,
        "elbow": hand.radius < LEAST_RADIUS * hand.room,
        "slant": hand.lean > MOST_LEAN,
        "hollow too high": hand.hollow > 1.0 / 3.0,
    }
    return [word for word, is_so in found.items() if is_so]


@pytest.fixture(scope="module", params=DRAWN)
def half(request: pytest.FixtureRequest) -> TorsoHalf:
    return draft_torso(DRAWN[request.param])


def panels(half: TorsoHalf) -> tuple[TorsoPanel, TorsoPanel]:
    return half.front, half.back


def test_an_armhole_is_one_fair_j(half: TorsoHalf) -> None:
    for panel in panels(half):
        hand = armhole_hand(points(panel.armhole, 200))
        assert faults(hand) == [], hand


def test_the_upper_part_runs_into_the_j(half: TorsoHalf) -> None:
    """Where they meet the line does not suddenly bend five times as much."""
    for panel in panels(half):
        above, below = panel.armhole.segments[-2:]
        before = np.linalg.norm(_turn(points(Path.of(above), 400)[-3:]))
        after = np.linalg.norm(_turn(points(Path.of(below), 400)[:3]))
        assert after < 5.0 * before


def _turn(three: np.ndarray) -> np.ndarray:
    """The curvature vector at the middle of three places, 1/mm."""
    first, second = np.diff(three, axis=0)
    sizes = np.hypot(*first), np.hypot(*second)
    return np.asarray((second / sizes[1] - first / sizes[0]) / (sum(sizes) / 2.0))


def test_no_armhole_leaves_its_shoulder_in_a_hook(half: TorsoHalf) -> None:
    """Over each 3 mm; a hook that begins with 15 has 22 so (a patternmaker's review)."""
    for panel in panels(half):
        assert _below_the_shoulder(panel.armhole) > 26.0


def _below_the_shoulder(armhole: Path) -> float:
    """The radius of the quickest bend in the first 50 mm, mm, each over 3 mm."""
    steps = np.diff(points(armhole, 400), axis=0)
    steps = steps[np.hypot(*steps.T) > 1e-9]
    along = np.cumsum(np.hypot(*steps.T))
    heading = np.unwrap(np.arctan2(steps[:, 1], steps[:, 0]))
    places = np.arange(along[0], 50.0, 0.5)
    turns = np.interp(places + 3.0, along, heading) - np.interp(places, along, heading)
    return float(3.0 / np.abs(turns).max())


def test_a_hook_below_the_shoulder_is_seen() -> None:
    hook = Path.of(curve_between(Point(179.4, 371.1), -115.2, Point(177.4, 266.3), -85.0, 1.0, 0.65))
    assert _below_the_shoulder(hook) < 26.0


def test_front_and_back_armhole_are_about_as_long(half: TorsoHalf) -> None:
    longer = length(half.front.armhole) - length(half.back.armhole)
    assert abs(longer) < 4.0, "about equal, or the back a little longer"


@pytest.mark.parametrize("name", ["plus", "full_bust"])
def test_the_cap_of_a_wide_armhole_is_a_fair_bell(name: str) -> None:
    sleeve = draft_torso(DRAWN[name]).sleeve
    assert sleeve is not None
    at_half = [
        float(np.interp(sleeve.cap_height / 2.0, rows[:, 1], np.abs(rows[:, 0])))
        for rows in (points(sleeve.cap_front, 200), points(sleeve.cap_back, 200))
    ]
    assert sum(at_half) > 0.53 * sleeve.biceps, "half as wide is a narrow bell"
    for rows in (points(sleeve.cap_front, 200), points(sleeve.cap_back, 200)):
        assert _wing(rows) < 0.06 * sleeve.biceps, "wings only slightly hollow"


def _wing(rows: np.ndarray) -> float:
    """How far the lower cap lies under the straight way from underarm to crown, mm."""
    chord, offsets = rows[-1] - rows[0], rows - rows[0]
    away = (chord[0] * offsets[:, 1] - chord[1] * offsets[:, 0]) / np.hypot(*chord)
    return float(max((np.sign(chord[0]) * -away).max(), 0.0))


@pytest.mark.parametrize(
    ("level", "bottom", "tip_x", "underarm_x", "fault"),
    [
        (0.21, 0.64, 218.0, 320.0, "shelf"),
        (0.19, 0.50, 218.0, 320.0, "elbow"),
        (0.42, 0.48, 170.0, 320.0, "slant"),
        (0.85, 0.30, 218.0, 300.0, "hollow too high"),
    ],
)
def test_what_a_hand_would_not_draw_is_seen(
    level: float, bottom: float, tip_x: float, underarm_x: float, fault: str
) -> None:
    across = Point(209.0, 200.0 * level)
    plan = ArmholePlan(Point(tip_x, 200.0), 24.0, across, Point(underarm_x, 0.0), 0.0, bottom)
    assert fault in faults(armhole_hand(points(draw_armhole(plan), 200)))
