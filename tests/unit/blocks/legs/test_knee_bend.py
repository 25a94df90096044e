"""The bend of an inseam over its knee: through the knee, smooth, even, as long as it says."""

import numpy as np
import pytest

from notchbook.blocks.legs.knee_bend import KneeBend, bend_plan, knee_bend
from notchbook.geometry import Path, Point
from support.legs_judge import bends
from support.upper_judge import length, polyline

FORK, KNEE, HEM = Point(-226.0, -14.0), Point(-116.0, -308.0), Point(-104.0, -690.0)
"""A back of medium size."""


def bent(share_of_large: float = 0.0, fork: Point = FORK, knee: Point = KNEE, hem: Point = HEM) -> KneeBend:
    return knee_bend(fork, knee, hem, bend_plan(share_of_large, fork.y - knee.y, knee.y - hem.y))


def radius(path: Path) -> float:
    """The least radius over 20 mm, from a dense polyline."""
    points = polyline(path)
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    places = np.arange(int(along[-1]))
    even = np.column_stack([np.interp(places, along, points[:, axis]) for axis in (0, 1)])
    ways = np.unwrap(np.arctan2(*np.diff(even, axis=0).T[::-1]))
    return 20.0 / float(np.abs(ways[20:] - ways[:-20]).max())


@pytest.mark.parametrize("share_of_large", [0.0, 0.5, 1.0])
@pytest.mark.parametrize("knee", [KNEE, Point(-140.0, -308.0), Point(-95.0, -280.0)])
def test_it_passes_the_knee_smoothly_and_is_as_long_as_it_says(share_of_large: float, knee: Point) -> None:
    bend = bent(share_of_large, knee=knee)
    path = Path(bend.segments)
    assert length(path) == pytest.approx(bend.length, abs=1e-3)
    assert path.nearest(knee).gap < 1e-6
    for before, after in zip(bend.segments, bend.segments[1:], strict=False):
        assert before.end == after.start
    turns = [
        abs(path.tangent_at(at, "before").cross(path.tangent_at(at, "after")))
        for at in np.cumsum([segment.length for segment in bend.segments])[:-1]
    ]
    assert max(turns) < 1e-4
    assert bends(path) == 0


def test_it_has_no_elbow() -> None:
    """A curve drawn from the crotch point to the line below the knee had 170 mm on this leg."""
    assert radius(Path(bent().segments)) > 350.0


def test_a_large_leg_bends_lower_and_leaves_the_crotch_flatter() -> None:
    assert bent(1.0).lean < bent(0.0).lean


def test_a_hem_wider_than_the_knee_is_bent_too() -> None:
    flared = bent(hem=Point(-160.0, -690.0))
    assert bends(Path(flared.segments)) == 0
    assert flared.length == pytest.approx(length(Path(flared.segments)), abs=1e-3)


@pytest.mark.parametrize("share_of_large", [0.0, 0.5, 1.0])
@pytest.mark.parametrize("hem_x", [-80.0, -104.0, -150.0])
@pytest.mark.parametrize("fork_x", [-180.0, -226.0, -250.0])
def test_below_the_knee_it_hardly_turns(share_of_large: float, hem_x: float, fork_x: float) -> None:
    """A patternmaker's review: below the knee the leg hangs about its crease within 2 mm. The side seam is
    straight from the knee to the hem, so the inseam has to keep to that line."""
    fork, hem = Point(fork_x, FORK.y), Point(hem_x, HEM.y)
    points = polyline(Path(bent(share_of_large, fork=fork, hem=hem).segments))
    for below in (80.0, 200.0):
        share = below / (KNEE.y - hem.y)
        at = float(np.interp(below - KNEE.y, -points[:, 1], points[:, 0]))
        assert abs(at - KNEE.lerp(hem, share).x) < 2.0


def test_a_straight_inseam_stays_straight() -> None:
    straight = bent(fork=Point(-100.0, 0.0), knee=Point(-100.0, -300.0), hem=Point(-100.0, -700.0))
    assert straight.length == pytest.approx(700.0)
    assert straight.lean == pytest.approx(0.0, abs=1e-12)
