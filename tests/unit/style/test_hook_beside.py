"""A hook and its bar meet when the band is folded. Styles and bodies are invented.

That a hook is sewn inside the end that lies over, its bar outside the end that lies under, is common
practice, no source; how high they lie is reckoned here from the recipes by hand.
"""

import pytest

from lower_sheets import lower_bodies
from notchbook.app.rack.styles import rack
from notchbook.pattern import Finding, Severity
from notchbook.recipe import change_step, replay

RECIPES = {style.stem: style.recipe for style in rack()}
BODY = dict(lower_bodies())["medium-92"]


def told(stem: str, **changes: str) -> list[Finding]:
    """What is said of the hook when the waistband of a style of the rack is changed."""
    recipe = change_step(RECIPES[stem], "waistband-1", changes, base=BODY)
    run = replay(recipe, BODY)
    assert run.suspended is None
    return [one for one in run.notes if one.code == "hook-beside-bar"]


@pytest.mark.parametrize("stem", ["tailored_trousers", "six_gore_skirt"])
def test_hooks_of_the_rack_meet_their_bars(stem: str) -> None:
    assert told(stem) == []


@pytest.mark.parametrize("stem", ["tailored_trousers", "six_gore_skirt"])
@pytest.mark.parametrize(
    ("depth", "lies", "wanted"),
    [
        ("38 mm", 15.0, 21.0),  # hook at 53 of 76, bar at 17: 53 - 38 and 38 - 17 from the fold
        ("60 mm", -7.0, 43.0),  # the hook lies on the outer half
    ],
)
def test_a_hook_that_was_left_when_the_band_was_made_deeper_is_told(
    stem: str, depth: str, lies: float, wanted: float
) -> None:
    (found,) = told(stem, depth=depth)
    assert found.severity is Severity.LOOK
    assert found.measured == pytest.approx(lies, abs=0.01)
    assert found.wanted == pytest.approx(wanted, abs=0.01)
    assert ("outer half of the band, its bar" in found.message) is (lies < 0.0)


def test_within_two_millimeters_nothing_is_told() -> None:
    """36 mm: 17 and 19 from the fold."""
    assert told("six_gore_skirt", depth="36 mm") == []
