"""A wave or a bias that a step was asked for is no finding; the same line that nobody asked for is."""

from typing import Any

import pytest

from notchbook.app.drafting import trial_recipe
from notchbook.app.examining import examine
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.body import set_from_data
from notchbook.checks import Subject, load_check
from notchbook.recipe import Replay, add_step, replay
from step_pictures import picture_row

BODY = set_from_data(BODY_OF_PICTURES)
FRONT, BACK = "skirt.front", "skirt.back"


def styled(*steps: tuple[str, dict[str, Any]], block: str = "skirt", side: Any = "both") -> Replay:
    """The block of the step pictures with these steps; it may not stop."""
    recipe = trial_recipe(block, BODY, {"front_darts": 1} if block == "skirt" else {})
    for operation, parameters in steps:
        recipe = add_step(recipe, operation, parameters, base=BODY, side=side)
    done = replay(recipe, BODY)
    assert done.suspended is None, done.suspended.error.text()
    return done


def codes(done: Replay) -> set[str]:
    """The codes of all that the checks say, cut data left out."""
    return {finding.code for finding in examine(done, cut=False).findings}


def pictured(operation: str) -> tuple[str, dict[str, Any]]:
    """A step as it stands in the step pictures."""
    row = picture_row(operation)
    assert row is not None
    return operation, row["parameters"]


def yoke(*through: dict[str, Any]) -> tuple[str, dict[str, Any]]:
    """A yoke that dips from 8 cm at the side to 16 cm at the center: an S, square to both."""
    line = {
        "start": {"edge": f"{FRONT}/side_seam", "from_point": f"{FRONT}/waist_side", "distance": "8 cm"},
        "end": {"edge": f"{FRONT}/center_front", "from_point": f"{FRONT}/waist_center", "distance": "16 cm"},
        "darts": [{"intake": f"{FRONT}/waist_dart"}],
        "through": list(through),
    }
    return "cut_style_line", {"lines": [line], "first_role": "above", "second_role": "below"}


@pytest.mark.parametrize(
    "step", [pictured("curve_hem"), pictured("reshape_edge"), yoke()], ids=lambda s: s[0]
)
def test_a_wave_that_was_asked_for_is_found_only_where_nobody_says_so(
    step: tuple[str, dict[str, Any]],
) -> None:
    done = styled(step)
    assert "edge-wavers" not in codes(done)
    assert done.waves
    plain = Subject(done.pattern, is_block=False)
    assert "edge-wavers" in {finding.code for finding in load_check("fair-edges").run(plain)}


def test_a_wave_of_one_side_is_asked_of_that_side() -> None:
    done = styled(pictured("reshape_edge"), side="left")
    assert set(done.waves) == {f"{FRONT}/side_seam@left", f"{BACK}/side_seam@left"}
    assert "edge-wavers" not in codes(done)


def test_a_wave_goes_on_with_the_parts_of_its_edge() -> None:
    done = styled(pictured("curve_hem"), pictured("slash_and_spread"))
    assert {name.split("/")[0] for name in done.waves} == {FRONT, BACK}
    assert all(name in done.pattern.edges for name in done.waves)


def test_an_edge_that_was_drawn_anew_without_a_wave_may_not_waver_any_more() -> None:
    waves = styled(yoke()).waves
    assert set(waves.values()) == {1}
    assert set(styled(yoke({"along": 0.5, "off": "1 cm"})).waves.values()) == {2}


def test_a_bias_that_was_asked_for_is_not_off_grain() -> None:
    for step, block in ((pictured("bias_grain"), "skirt"), (pictured("cowl"), "bodice")):
        done = styled(step, block=block)
        assert "grain-off-center" not in codes(done)
        assert done.grains
        plain = Subject(done.pattern, is_block=False)
        assert "grain-off-center" in {finding.code for finding in load_check("grain-direction").run(plain)}


def test_a_square_neck_is_no_wave() -> None:
    necks = [
        {"edge": "bodice.front/neck", "center": "bodice.front/neck_pit", "shape": "square", "depth": "8 cm"},
        {"edge": "bodice.back/neck", "center": "bodice.back/nape", "shape": "round", "depth": "2 cm"},
    ]
    done = styled(("change_neckline", {"width": "2 cm", "necks": necks}), block="bodice")
    assert "neck-wavers" not in codes(done)
