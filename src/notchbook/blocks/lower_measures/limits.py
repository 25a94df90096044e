"""What the measures of a lower body must not be together, by arithmetic alone."""

from notchbook.blocks.lower_measures.agreement_table import Limit, limit
from notchbook.blocks.lower_measures.disagreement import LowerDisagreement
from notchbook.blocks.lower_measures.lower_measures import LowerMeasures

SITTING_LONGER = 10.0
"""mm by which the sitting rise is longer than the standing one: 10.5, SD 14.6 (computed from a published
sample), as a whole cm."""


def rise_key(measures: LowerMeasures) -> str | None:
    """The taken measure that says how high the waist lies over the crotch; None where there is none."""
    if "standing_rise" in measures.taken:
        return "standing_rise"
    if "sitting_rise" in measures.taken:
        return "sitting_rise"
    return "outside_leg" if {"outside_leg", "inside_leg"} <= set(measures.taken) else None


def rise_of(measures: LowerMeasures, key: str) -> float:
    """The rise, standing, mm, as this measure has it."""
    value = measures.taken[key]
    if key == "outside_leg":
        return value - measures.taken["inside_leg"]
    return value - SITTING_LONGER if key == "sitting_rise" else value


def by_arithmetic(measures: LowerMeasures) -> list[LowerDisagreement]:
    """Crotch against rise and thigh against hip, where no population is asked."""
    found: list[LowerDisagreement] = []
    key, crotch = rise_key(measures), measures.taken.get("crotch_length")
    if key is not None and crotch is not None:
        rise = rise_of(measures, key) + measures.waist_drop
        whole = crotch + 2.0 * measures.waist_drop
        found += _outside("crotch_length", key, (whole, rise), limit("crotch_of_rise"), measures)
    thigh, hip = measures.taken.get("thigh_girth"), measures.taken.get("hip_girth")
    if thigh is not None and hip is not None:
        found += _outside("thigh_girth", "hip_girth", (thigh, hip), limit("thigh_of_hip"), measures)
    return found


def parts_disagreement(measures: LowerMeasures) -> list[LowerDisagreement]:
    """The two parts of the crotch length against the whole."""
    keys = ("front_crotch_length", "back_crotch_length", "crotch_length")
    if not set(keys) <= set(measures.taken):
        return []
    front, back, whole = (measures.taken[key] for key in keys)
    if front + back - whole in limit("parts_of_crotch"):
        return []
    return [
        LowerDisagreement(
            "parts", "crotch_length", "back_crotch_length", "crotch_length", whole, front + back
        )
    ]


def _outside(
    key: str, other: str, values: tuple[float, float], within: Limit, measures: LowerMeasures
) -> list[LowerDisagreement]:
    value, base = values
    if base > 0.0 and value / base in within:
        return []
    given = measures.taken[key]
    explaining = given + within.nearest(value / base if base > 0.0 else within.least) * base - value
    return [LowerDisagreement("ruled-out", key, other, key, given, explaining)]
