"""Pairs of measures of which one is smaller on every body, or nearly every one."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from notchbook.body.doubts.doubt import Doubt, DoubtLevel
from notchbook.body.doubts.known import known_values, label_of, said_of, side_words, sided_keys
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError

LEAST_HIP_TO_WAIST_SEEN: Final = 0.82
"""The least among the 3,034 bodies of the ANSUR II half at hand (computed)."""

LEAST_HIP_TO_WAIST: Final = 0.7
"""Below this the hip cannot belong to the waist; the margin is ours (common practice, no source)."""


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


def order_doubts(measures: MeasureSet) -> Iterator[Doubt]:
    """Every pair in the wrong order, on the side where it is."""
    for rule in _ORDERS:
        yield from _one_order(measures, rule)
    yield from _hip_doubts(measures)


def _one_order(measures: MeasureSet, rule: _Order) -> Iterator[Doubt]:
    keys = (rule.smaller, rule.larger)
    for side, (smaller, larger) in known_values(measures, keys):
        if smaller < larger or (rule.level == "check" and smaller == larger):
            continue
        problem = InputError(
            "measures-disagree",
            smaller_label=label_of(rule.smaller, side),
            larger_label=said_of(rule.larger, side),
            smaller=smaller,
            larger=larger,
            reason=rule.reason,
            where="",
        )
        yield Doubt(rule.level, sided_keys(keys, side), problem)


def _hip_doubts(measures: MeasureSet) -> Iterator[Doubt]:
    keys = ("waist_girth", "hip_girth")
    for side, (waist, hip) in known_values(measures, keys):
        facts = {"waist": waist, "hip": hip, "side": side_words(side), "where": ""}
        if hip < LEAST_HIP_TO_WAIST * waist:
            yield Doubt("stop", sided_keys(keys, side), InputError("hip-too-small", **facts))
        elif waist > hip:
            yield Doubt("check", sided_keys(keys, side), InputError("waist-over-hip", **facts))
