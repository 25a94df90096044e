"""Reading the lower body out of a set of measures, so that a step knows what it has read."""

from typing import Final

from notchbook.blocks.lower_measures.lower_measures import LowerMeasures
from notchbook.body import Measure, Side, measure_entry
from notchbook.body.doubts.child import is_child
from notchbook.recipe import StepContext

LOWER_KEYS: Final = (
    "height",
    "waist_girth",
    "hip_girth",
    "hip_depth",
    "knee_depth",
    "outside_leg",
    "standing_rise",
    "inside_leg",
    "thigh_girth",
    "crotch_length",
    "front_crotch_length",
    "back_crotch_length",
    "sitting_rise",
)
"""What trousers are drafted from, and what bears witness to it, in the order of the measure table."""


def read_lower(context: StepContext, side: Side) -> LowerMeasures:
    """The lower body of the set that a step is drafted from, as it is on one of the wearer's sides."""
    taken: dict[str, float] = {}
    estimated: dict[str, float] = {}
    sure: set[str] = set()
    for key in LOWER_KEYS:
        value, measure = context.find(key, side), context.measures.find(key, side)
        if value is None or measure is None:
            continue
        if measure.status == "estimated":
            estimated[key] = value
            continue
        taken[key] = value
        if _read_again(measure, measure_entry(key).repeat):
            sure.add(key)
    measures = context.measures
    return LowerMeasures(
        taken=taken,
        estimated=estimated,
        sure=frozenset(sure),
        # Records of a survey were taken by other definitions: arithmetic alone judges them.
        population=None if measures.taken_as == "survey" else measures.population,
        is_child=is_child(measures),
        waist_level=measures.waist_level,
        waist_drop=measures.waist_drop,
    )


def _read_again(measure: Measure, repeat: float) -> bool:
    """Whether the tape was laid more than once and said the same."""
    return len(measure.readings) > 1 and measure.spread <= repeat
