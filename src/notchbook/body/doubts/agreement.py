"""Whether the measures of one body agree with each other."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from notchbook.body.doubts.doubt import Doubt, DoubtLevel
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.sides import Side, sided_key
from notchbook.errors import InputError

LEAST_HIP_TO_WAIST: Final = 0.7
"""Below this the hip cannot belong to the waist. The least among the 3,034 bodies of the ANSUR II half at
hand is 0.82 (computed); the margin is ours (common practice, no source)."""

SUM_TOLERANCE: Final = 20.0
"""mm. Two tapes over the same way differ by up to 1 cm each (common practice)."""


@dataclass(frozen=True, slots=True)
class _Order:
    """``smaller`` is less than ``larger`` on every body, because it is a part of it or lies above."""

    smaller: str
    larger: str
    level: DoubtLevel
    reason: str


_ORDERS: Final = (
    _Order("outside_leg", "height", "stop", "The waist lies below the top of the head."),
    _Order("inside_leg", "outside_leg", "stop", "The crotch lies below the waist."),
    _Order("hip_depth", "knee_depth", "stop", "The hip lies above the knee."),
    _Order("knee_depth", "outside_leg", "stop", "The knee lies above the floor."),
    _Order("hip_depth", "standing_rise", "check", "The seat is largest above the crotch."),
    _Order("elbow_length", "arm_length", "stop", "The elbow lies above the wrist."),
    _Order("arm_length", "nape_to_wrist", "stop", "The way from the nape begins before the shoulder point."),
    _Order("front_bust_arc", "bust_girth", "stop", "The front arc is a part of the girth."),
    _Order("front_waist_arc", "waist_girth", "stop", "The front arc is a part of the girth."),
    _Order("front_hip_arc", "hip_girth", "stop", "The front arc is a part of the girth."),
    _Order("bust_point_width", "front_bust_arc", "stop", "Both bust points lie on the front arc."),
    _Order("neck_to_bust_point", "front_waist_length", "stop", "The bust point lies above the waist."),
    _Order("scye_depth", "back_waist_length", "stop", "The underarm lies above the waist."),
    _Order("front_crotch_length", "crotch_length", "stop", "It is a part of the crotch length."),
    _Order("back_crotch_length", "crotch_length", "stop", "It is a part of the crotch length."),
    _Order("neck_girth", "neck_base_girth", "check", "The neck widens toward its base."),
    _Order("under_bust_girth", "bust_girth", "check", "The bust is larger than the body under it."),
    _Order("waist_girth", "belly_girth", "check", "The belly girth is the largest below the waist."),
    _Order("knee_girth", "thigh_girth", "check", "The thigh is measured where it is largest."),
    _Order("ankle_girth", "calf_girth", "stop", "The ankle is measured where the leg is least."),
    _Order("ankle_girth", "heel_girth", "check", "The foot is larger than the ankle above it."),
    _Order("wrist_girth", "hand_girth", "check", "The hand is larger than the wrist."),
    _Order("wrist_girth", "upper_arm_girth", "stop", "The arm narrows toward the wrist."),
    _Order("shoulder_length", "shoulder_width_back", "stop", "The shoulder is a part of the width."),
)
"""Facts of the body; they follow from the definitions (own reasoning)."""


def agreement_doubts(measures: MeasureSet) -> tuple[Doubt, ...]:
    """Every pair or sum that disagrees, on the side where it does."""
    found: list[Doubt] = []
    for rule in _ORDERS:
        found.extend(_order_doubts(measures, rule))
    found.extend(_hip_doubts(measures))
    found.extend(_sum_doubts(measures, ("front_crotch_length", "back_crotch_length"), "crotch_length"))
    found.extend(_sum_doubts(measures, ("inside_leg", "standing_rise"), "outside_leg"))
    return tuple(found)


def _known_values(measures: MeasureSet, keys: tuple[str, ...]) -> Iterator[tuple[Side, tuple[float, ...]]]:
    """The values of these measures, per side where sides differ, where all of them are known."""
    sides: tuple[Side, ...] = ("left", "right") if measures.sides_differ(keys) else ("both",)
    for side in sides:
        found = [measures.find(key, side) for key in keys]
        values = tuple(measure.value for measure in found if measure is not None)
        if len(values) == len(keys):
            yield side, values


def _order_doubts(measures: MeasureSet, rule: _Order) -> Iterator[Doubt]:
    keys = (rule.smaller, rule.larger)
    for side, (smaller, larger) in _known_values(measures, keys):
        if smaller < larger or (rule.level == "check" and smaller == larger):
            continue
        problem = InputError(
            "measures-disagree",
            smaller_label=_label(rule.smaller, side),
            larger_label=_label(rule.larger, side),
            smaller=smaller,
            larger=larger,
            reason=rule.reason,
            where="",
        )
        yield Doubt(rule.level, _sided(keys, side), problem)


def _hip_doubts(measures: MeasureSet) -> Iterator[Doubt]:
    keys = ("waist_girth", "hip_girth")
    for side, (waist, hip) in _known_values(measures, keys):
        facts = {"waist": waist, "hip": hip, "side": _side_words(side), "where": ""}
        if hip < LEAST_HIP_TO_WAIST * waist:
            yield Doubt("stop", _sided(keys, side), InputError("hip-too-small", **facts))
        elif waist > hip:
            yield Doubt("check", _sided(keys, side), InputError("waist-over-hip", **facts))


def _sum_doubts(measures: MeasureSet, parts: tuple[str, ...], whole: str) -> Iterator[Doubt]:
    keys = (*parts, whole)
    for side, values in _known_values(measures, keys):
        total, expected = sum(values[:-1]), values[-1]
        if abs(total - expected) <= SUM_TOLERANCE:
            continue
        labels = " + ".join(_label(part, side) for part in parts)
        problem = InputError(
            "measures-sum", parts=labels, whole=_label(whole, side), total=total, expected=expected, where=""
        )
        yield Doubt("check", _sided(keys, side), problem)


def _sided(keys: tuple[str, ...], side: Side) -> tuple[str, ...]:
    return tuple(sided_key(key, side) for key in keys)


def _side_words(side: Side) -> str:
    return "" if side == "both" else f" on the {side}"


def _label(key: str, side: Side) -> str:
    return measure_entry(key).label + _side_words(side)
