"""Shirt and blouse of the rack, in every size of the chart that comes with the program: shoulder, yoke, cuff.

That nothing is told of any style in any size is tested with all twelve. Styles are invented.
"""

from functools import cache

import numpy as np
import pytest

from lower_sheets import lower_bodies
from notchbook.app.rack.styles import rack
from notchbook.body import MeasureSet
from notchbook.body.charts import shipped_chart
from notchbook.geometry import Path
from notchbook.pattern import Pattern, require, sewn_length
from notchbook.recipe import Replay, replay

RECIPES = {style.stem: style.recipe for style in rack()}
SIZES = {size.name.rsplit(" ", 1)[-1]: size for size in shipped_chart("women").sizes}
BODIES = ("small-80", "medium-92", "plus-128")


def body(name: str) -> MeasureSet:
    """An invented woman, or a size of the chart."""
    return SIZES[name] if name in SIZES else dict(lower_bodies())[name]


@cache
def made(style: str, name: str) -> Replay:
    done = replay(RECIPES[style], body(name))
    assert done.suspended is None, f"{done.suspended.step}: {done.suspended.error}"
    return done


def drafted(style: str, name: str, operation: str) -> Pattern:
    """The pattern as the step of this operation left it."""
    return next(state.pattern for state in made(style, name).states if state.record.operation == operation)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize(("style", "block"), [("work_shirt", "torso"), ("gathered_blouse", "bodice")])
def test_a_shoulder_that_falls_over_is_taken_off_the_sleeve(style: str, block: str, size: str) -> None:
    """Common practice, no source: from neck to wrist a garment is as long as shoulder and arm. Within what
    the shoulder may be drafted longer in the widest sizes."""
    (depth,) = [step.parameters["depth"] for step in RECIPES[style].steps if step.operation == "cuff"]
    shoulder = sewn_length(drafted(style, size, block), f"{block}.front/shoulder")
    points = drafted(style, size, "sleeve").pieces["sleeve.sleeve"].points
    sleeve = points["sleeve.sleeve/crown"].y - points["sleeve.sleeve/hem_middle"].y
    wanted = SIZES[size].value("shoulder_length") + SIZES[size].value("arm_length")
    assert shoulder + sleeve + 10.0 * float(depth.removesuffix(" cm")) == pytest.approx(wanted, abs=3.0)


@pytest.mark.parametrize("name", [*BODIES, "76", "128"])
def test_the_yoke_of_the_shirt_is_straight_behind(name: str) -> None:
    """It is told as straight: each half of the seam is one line, level with the center back on the fold."""
    pattern = made("work_shirt", name).pattern
    (edge,) = require(pattern, "back_yoke.back_below/style_line")
    points = np.array([(one.x, one.y) for one in pattern.edges[edge].path.flattened(0.001)])
    across, up = points.max(axis=0) - points.min(axis=0)
    assert across > 150.0
    assert up < 1e-6


@pytest.mark.parametrize("name", [*BODIES, "76", "128"])
def test_the_gathered_shoulder_of_the_blouse_has_no_place_that_looks_like_a_corner(name: str) -> None:
    """Common practice, no source; 5 degrees over a centimeter, a radius of 115 mm, is our own limit."""
    pattern = made("gathered_blouse", name).pattern
    members = require(pattern, "bodice.front/shoulder")
    path = Path(tuple(part for member in members for part in pattern.edges[member].path.segments))
    points = np.array([(one.x, one.y) for one in map(path.point_at, np.arange(0.0, path.length, 1.0))])
    steps = np.diff(points, axis=0)
    headings = np.degrees(np.unwrap(np.arctan2(steps[:, 1], steps[:, 0])))
    assert np.abs(headings[10:] - headings[:-10]).max() < 5.0


@pytest.mark.parametrize("name", [*BODIES, *SIZES])
def test_the_pleats_of_the_shirt_sleeve_lie_clear_before_its_placket(name: str) -> None:
    """Common practice, no source: the pleats stand in front of the slit, so that the seam of the
    tower, 6 mm before the cut, catches no fold; twice that is our own limit."""
    sleeve = made("work_shirt", name).pattern.pieces["sleeve.sleeve"]
    lines = {line.name: line.path for line in sleeve.lines}
    fold = lines["sleeve_pleats.sleeve/pleat_1/near_line"].start
    slit = lines["placket.sleeve/slit"].start
    assert fold.x - slit.x >= 12.0


@pytest.mark.parametrize("name", [*BODIES, *SIZES])
def test_the_cuff_of_the_shirt_is_for_the_wrist_and_not_for_the_arm(name: str) -> None:
    """Common practice, no source: a shirt cuff is closed 4 to 7 cm over the wrist; it takes in what a full
    sleeve has more. The recipe asks for 5 cm, and a straight rule of the arm leaves it within 2 of that."""
    pattern = made("work_shirt", name).pattern
    sewn = sum(sewn_length(pattern, edge) for edge in require(pattern, "sleeve.sleeve/hem"))
    assert 0.0 <= pattern.pieces["cuff.cuff"].bounds.width - sewn <= 30.0
    assert 30.0 <= sewn - body(name).value("wrist_girth") <= 70.0
