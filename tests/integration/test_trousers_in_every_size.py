"""The tailored trousers of the rack in every size of the chart that comes with the program.

The sizes are computed, so that none of their measures can be a slip: what a check would have looked at is the
style's or the program's. The style is invented.
"""

from functools import cache

import pytest

from lower_sheets import lower_bodies
from notchbook.app.rack.styles import rack
from notchbook.body.charts import shipped_chart
from notchbook.pattern import Pattern, pattern_to_data
from notchbook.recipe import Replay, replay
from support.lower_judge import LowerJudge

(STYLE,) = (style for style in rack() if style.stem == "tailored_trousers")
SIZES = {size.name.rsplit(" ", 1)[-1]: size for size in shipped_chart("women").sizes}
BODIES = {name: body for name, body in lower_bodies() if body.population == "women"}


@cache
def made(name: str) -> Replay:
    """The style on a size of the chart or an invented woman."""
    done = replay(STYLE.recipe, (SIZES | BODIES)[name])
    assert done.suspended is None, f"{done.suspended.step}: {done.suspended.error}"
    return done


def block(name: str) -> Pattern:
    """The trousers as they were drafted, before the pockets."""
    return made(name).states[0].pattern


@pytest.mark.parametrize("name", [*SIZES, *BODIES])
def test_loops_stand_no_farther_apart_than_the_trade_sets_them(name: str) -> None:
    """170 mm at the most (common practice, no source), between the first loop, 7 cm from the opening, and the
    one at the center back; each is moved beside a seam by 13 mm at most."""
    pattern = made(name).pattern
    places = [one for one in pattern.notches.values() if one.purpose == "belt loop"]
    half = LowerJudge(pattern_to_data(block(name))).both("waist")
    assert (half - 70.0) / (len(places) - 1) <= 170.0


@pytest.mark.parametrize("size", SIZES)
def test_the_leg_goes_with_the_hip(size: str) -> None:
    """A straight leg for the hip of each size: the knee is no wider than was asked for, so that the hem is in
    proportion; a hem of 0.92 of the knee (handbook draft: 44 of 48, from memory)."""
    legs = LowerJudge(pattern_to_data(block(size)))
    knee, hem = legs.at_level("knee_line"), legs.both("hem")
    asked = 0.55 * SIZES[size].get("hip_girth").value - 50.0
    assert knee == pytest.approx(asked, abs=5.0)
    assert hem == pytest.approx(0.92 * knee, abs=3.0)
