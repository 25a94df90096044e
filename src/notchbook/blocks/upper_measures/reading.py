"""Reading the upper body out of a set of measures, so that a step knows what it has read."""

from typing import Final

from notchbook.blocks.upper_measures.upper_measures import Estimate, UpperMeasures
from notchbook.body import Measure, measure_entry
from notchbook.body.doubts.child import is_child
from notchbook.recipe import StepContext

UPPER_KEYS: Final = (
    "height",
    "neck_base_girth",
    "upper_bust_girth",
    "bust_girth",
    "waist_girth",
    "back_waist_length",
    "scye_depth",
    "shoulder_width_back",
    "across_back",
    "shoulder_point_to_center_waist",
    "center_front_length",
    "neck_to_bust_point",
    "front_waist_length",
    "bust_point_width",
    "across_chest",
    "shoulder_length",
    "shoulder_slope",
    "upper_arm_girth",
)
"""What a bodice is drafted from, and what bears witness to it, in the order of the measure table."""


def read_upper(context: StepContext) -> UpperMeasures:
    """The upper body of the set that a step is drafted from, its two sides together.

    A bodice has one center front, so the sides are judged as one body; they are held against each other
    elsewhere.
    """
    taken: dict[str, float] = {}
    estimated: dict[str, Estimate] = {}
    sure: set[str] = set()
    for key in UPPER_KEYS:
        value = context.find(key, "both")
        measure = context.measures.find(key)
        if value is None or measure is None:
            continue
        if measure.status == "estimated":
            estimated[key] = Estimate(value, measure.error or 0.0)
            continue
        taken[key] = value
        if _read_again(measure, measure_entry(key).repeat):
            sure.add(key)
    measures = context.measures
    # Records of a survey were taken by other definitions: arithmetic alone judges them.
    population = None if measures.taken_as == "survey" else measures.population
    return UpperMeasures(
        taken=taken,
        estimated=estimated,
        sure=frozenset(sure),
        population=population,
        is_child=is_child(measures),
        waist_level=measures.waist_level,
        waist_drop=measures.waist_drop,
    )


def _read_again(measure: Measure, repeat: float) -> bool:
    """Whether the tape was laid more than once and said the same."""
    return len(measure.readings) > 1 and measure.spread <= repeat
