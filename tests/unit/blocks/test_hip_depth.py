"""A hip depth that no waistline has room for is refused with what would be usual."""

import numpy
import pytest

from make_bodies import bodies
from notchbook.blocks._hip_depth import (
    CONSTANT,
    LEAST_CENTER,
    PER_HEIGHT,
    PER_HIP,
    PER_WAIST,
    SPREAD,
    usual_hip_depth,
)
from notchbook.body import MeasureSet
from notchbook.errors import DraftRefused
from notchbook.recipe import Recipe, StepContext, add_step, replay


def _body(hip_depth: float, height: float | None = 1650.0) -> MeasureSet:
    values = {"waist_girth": 720.0, "hip_girth": 1000.0, "hip_depth": hip_depth}
    if height is not None:
        values["height"] = height
    return MeasureSet.from_mm("Test", values)


def _refusal(body: MeasureSet) -> DraftRefused | None:
    run = replay(add_step(Recipe("Test"), "skirt", base=_body(205.0)), body)
    error = run.suspended.error if run.suspended else None
    assert error is None or isinstance(error, DraftRefused)
    return error


def test_a_short_hip_depth_is_refused_with_pair_and_usual_value() -> None:
    refusal = _refusal(_body(65.0))
    assert refusal is not None
    assert refusal.code == "skirt-hip-depth-short"
    assert refusal.facts["hip_depth"] == 65.0
    assert float(str(refusal.facts["center"])) < LEAST_CENTER
    words = str(refusal)
    assert "720.0 mm" in words
    assert "1000.0 mm" in words


def test_a_hip_depth_that_leaves_room_is_drafted() -> None:
    assert _refusal(_body(140.0)) is None


def test_without_a_height_the_usual_range_speaks() -> None:
    with_height = usual_hip_depth(StepContext(_body(200.0), "skirt", "skirt-1"))
    without = usual_hip_depth(StepContext(_body(200.0, None), "skirt", "skirt-1"))
    assert with_height.spread == SPREAD
    assert without.expected == pytest.approx(with_height.expected, abs=2 * SPREAD)
    assert without.spread > SPREAD


def test_the_regression_is_the_least_squares_of_the_survey() -> None:
    """ANSUR II, 993 women, natural level as estimated (data/survey/ansur/SOURCE.md); numpy as judge."""
    women = list(bodies("natural", ("women",)))
    ones = [[1.0, body.height, body.waist_girth, body.hip_girth] for body in women]
    depths = numpy.array([body.hip_depth for body in women])
    solved, *_ = numpy.linalg.lstsq(numpy.array(ones), depths, rcond=None)
    assert solved == pytest.approx([CONSTANT, PER_HEIGHT, PER_WAIST, PER_HIP], abs=0.1)
    assert solved[1:] == pytest.approx([PER_HEIGHT, PER_WAIST, PER_HIP], abs=5e-4)
    assert float(numpy.std(depths - numpy.array(ones) @ solved)) == pytest.approx(SPREAD, abs=0.2)
