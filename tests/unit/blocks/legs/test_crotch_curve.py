"""The crotch curve: as deep in its corner as is wanted, bent one way, square where it should be."""

import numpy as np
import pytest

from notchbook.blocks.legs.crotch_curve import Corner, crotch_curve, flattest_lean
from notchbook.blocks.legs.proportions import proportion
from notchbook.errors import DraftRefused
from notchbook.geometry import Cubic, Path, Point
from support.legs_judge import bends
from support.upper_judge import heading, polyline


def corner(extension: float, lean: float, slant: float = 9.0, drop: float = 12.0) -> Corner:
    return Corner(Point(0.0, 0.0), slant, Point(-extension, -drop), lean)


@pytest.mark.parametrize(
    ("extension", "lean", "depth"), [(62.0, 17.0, 29.0), (100.0, 20.0, 43.0), (150.0, 24.0, 57.0)]
)
def test_depth_is_met_and_the_ends_keep_their_directions(extension: float, lean: float, depth: float) -> None:
    frame = corner(extension, lean)
    drawn = crotch_curve(frame, depth, 1.1)
    assert drawn.depth == pytest.approx(depth, abs=1e-6)
    path = Path.of(drawn.curve)
    points = polyline(path)
    beside = np.abs(points[:, 0] + points[:, 1])
    assert float(np.hypot(*points[beside.argmin()])) == pytest.approx(depth, abs=0.2)
    assert heading(path, at_end=False) == pytest.approx(-90.0 - 9.0, abs=0.2)
    assert heading(path, at_end=True) == pytest.approx(180.0 + lean - 360.0, abs=0.2)
    assert bends(path) == 0


def test_a_depth_out_of_reach_comes_as_near_as_it_can() -> None:
    frame = corner(150.0, 40.0)
    shallow = crotch_curve(frame, 20.0, 1.1)
    assert shallow.depth > 40.0
    assert crotch_curve(frame, 19.0, 1.1).depth == pytest.approx(shallow.depth)


def test_no_hollow_is_refused() -> None:
    with pytest.raises(DraftRefused) as refused:
        crotch_curve(corner(60.0, 10.0, drop=120.0), 30.0, 1.1)
    assert refused.value.code == "trousers-crotch-flat"


def test_the_lean_up_to_which_a_curve_is_no_hook() -> None:
    """The end tangent then passes the corner, at 45 degrees, at the wanted share of the depth."""
    frame = corner(100.0, 20.0, drop=20.0)
    lean = np.radians(flattest_lean(frame, 44.0, 0.9))
    place = 0.9 * 44.0 / np.sqrt(2.0)
    assert np.tan(lean) * (100.0 - place) - 20.0 == pytest.approx(place)


@pytest.mark.parametrize(
    ("panel", "old", "new"),
    [
        (
            "front",
            (Corner(Point(0.0, 0.0), 1.5, Point(-95.3, 0.0), 18.9), 40.9),
            (Corner(Point(0.0, 0.0), 1.4, Point(-91.6, 0.0), 18.2), 44.0),
        ),
        (
            "back",
            (Corner(Point(0.0, 0.0), 14.8, Point(-167.1, -24.0), 23.8), 54.3),
            (Corner(Point(0.0, 0.0), 15.2, Point(-159.8, -24.1), 21.7), 57.0),
        ),
    ],
)
def test_a_ramp_that_was_sent_back_is_one_and_the_curve_drawn_instead_is_none(
    panel: str, old: tuple[Corner, float], new: tuple[Corner, float]
) -> None:
    """The corners of a large body (hip 122 cm) before and after a patternmaker's eye found the ramp."""
    start, least = proportion(f"curve.{panel}_start"), proportion(f"curve.end_{panel}")
    ramp, fair = (crotch_curve(corner, depth, start) for corner, depth in (old, new))
    assert ramp.end_hollow < least < fair.end_hollow
    assert least_end(ramp.curve) == pytest.approx(ramp.end_hollow, rel=0.02)


def least_end(curve: Cubic) -> float:
    """The same from a dense polyline, by numpy alone."""
    points = polyline(Path.of(curve))
    gone = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    third = points[gone >= gone[-1] * 2.0 / 3.0]
    chord, inside = third[-1] - third[0], third - third[0]
    away = np.abs(chord[0] * inside[:, 1] - chord[1] * inside[:, 0])
    return float(away.max() / (chord @ chord))


def test_the_least_radius_is_that_of_the_drawn_curve() -> None:
    hook, round_one = (crotch_curve(corner(111.0, lean, 1.6, 0.0), 44.0, 1.35) for lean in (20.0, 14.0))
    assert hook.least_radius < 30.0 < 60.0 < round_one.least_radius
