"""Invented bodies and recipes for the tests of the bodice; none of them is anybody. mm, degrees."""

from typing import Any

from notchbook.body import MeasureSet, PopulationName
from notchbook.pattern import Pattern
from notchbook.recipe import Recipe, Replay, add_step, replay

WOMAN: dict[str, float] = {
    "height": 1680.0,
    "bust_girth": 920.0,
    "under_bust_girth": 780.0,
    "waist_girth": 760.0,
    "hip_girth": 980.0,
    "hip_depth": 200.0,
    "back_waist_length": 400.0,
    "front_waist_length": 438.0,
    "center_front_length": 350.0,
    "neck_to_bust_point": 265.0,
    "bust_point_width": 190.0,
    "neck_base_girth": 370.0,
    "shoulder_length": 123.0,
    "shoulder_slope": 24.3,
    "scye_depth": 190.0,
    "across_back": 350.0,
    "across_chest": 330.0,
}
"""A woman of bust 92."""

FULL_BUST = WOMAN | {
    "bust_girth": 1120.0,
    "under_bust_girth": 860.0,
    "waist_girth": 860.0,
    "front_waist_length": 478.0,
    "center_front_length": 360.0,
    "neck_to_bust_point": 315.0,
    "bust_point_width": 220.0,
    "across_back": 372.0,
    "across_chest": 358.0,
    "scye_depth": 202.0,
    "hip_girth": 1120.0,
}
"""A woman with a full bust."""

MAN: dict[str, float] = {
    "height": 1780.0,
    "bust_girth": 1000.0,
    "waist_girth": 880.0,
    "hip_girth": 1000.0,
    "hip_depth": 200.0,
    "back_waist_length": 450.0,
    "neck_base_girth": 425.0,
    "shoulder_length": 148.0,
    "shoulder_slope": 24.0,
    "scye_depth": 225.0,
    "across_back": 410.0,
    "across_chest": 390.0,
}
"""A man of chest 100, no front lengths taken."""

CHILD: dict[str, float] = {
    "height": 1160.0,
    "bust_girth": 600.0,
    "waist_girth": 560.0,
    "hip_girth": 640.0,
    "hip_depth": 140.0,
    "back_waist_length": 270.0,
    "neck_base_girth": 290.0,
    "shoulder_length": 92.0,
    "scye_depth": 140.0,
    "across_back": 245.0,
    "across_chest": 235.0,
}
"""A child of 116 cm, the shoulder slope not taken."""


def body(
    values: dict[str, float] = WOMAN, population: PopulationName | None = "women", **more: float
) -> MeasureSet:
    """A body of these measures; what is named after them replaces its value."""
    return MeasureSet.from_mm("Body", {**values, **more}, population=population)


def without(values: dict[str, float], *keys: str) -> dict[str, float]:
    """The measures without some of them."""
    return {key: value for key, value in values.items() if key not in keys}


def bodice_recipe(base: MeasureSet, **parameters: Any) -> Recipe:
    """The block alone."""
    return add_step(Recipe("Bodice"), "bodice", parameters, base=base)


def bodice_run(measures: MeasureSet, **parameters: Any) -> Replay:
    """The block drafted for a body."""
    done = replay(bodice_recipe(measures, **parameters), measures)
    assert done.suspended is None, str(done.suspended)
    return done


def bodice(measures: MeasureSet, **parameters: Any) -> Pattern:
    """The pattern of the block drafted for a body."""
    return bodice_run(measures, **parameters).pattern


def codes(measures: MeasureSet, **parameters: Any) -> set[str]:
    """What the draft has to say."""
    return {note.code for note in bodice_run(measures, **parameters).notes}
