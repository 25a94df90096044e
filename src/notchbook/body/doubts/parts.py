"""Measures whose usual range follows from others: a share of a girth, a way in two pieces."""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.known import known_values, label_of, said_of, sided_keys
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError

_NAPE_BELOW_NECK_SIDE: Final = 20.0
"""mm by which the side-neck point stands above the nape (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class _Part:
    """``key`` is usually within the range that ``reach`` computes from the values of ``others``."""

    key: str
    others: tuple[str, ...]
    reach: Callable[..., tuple[float, float]]
    reason: str


def _share(least: float, most: float) -> Callable[..., tuple[float, float]]:
    return lambda girth: (least * girth, most * girth)


def _around(low: float, high: float) -> Callable[..., tuple[float, float]]:
    """The sum of the others, with how far the whole may lie below and above it (mm)."""
    return lambda *values: (sum(values) + low, sum(values) + high)


def _shoulder_width(shoulder: float, neck_base: float) -> tuple[float, float]:
    # Survey, shoulder points straight across, its shoulder: -64 to 12 mm at 0.5 and 99.5 % of women;
    # here the shoulder is about 10 mm shorter each and the tape goes over the nape (own judgment).
    straight = 2 * shoulder + neck_base / math.pi
    return straight - 60, straight + 70


def _to_wrist(width: float, arm: float) -> tuple[float, float]:
    return width / 2 + arm - 40, width / 2 + arm + 100


def _rise_between_legs(outside: float, inside: float) -> tuple[float, float]:
    # The outside leg follows the hip, and the two tapes may differ by 1 cm each (common practice).
    return outside - inside - 45, outside - inside + 60


def _to_center_waist(width: float, back: float, shoulder: float, slope: float) -> tuple[float, float]:
    drop = shoulder * math.sin(math.radians(slope)) - _NAPE_BELOW_NECK_SIDE
    straight = math.hypot(width / 2, back - drop)
    return straight - 35, straight + 35


_PARTS: Final = (
    _Part("front_bust_arc", ("bust_girth",), _share(0.45, 0.65), "It is about half of the girth."),
    _Part("front_waist_arc", ("waist_girth",), _share(0.42, 0.62), "It is about half of the girth."),
    _Part("front_hip_arc", ("hip_girth",), _share(0.40, 0.60), "It is about half of the girth."),
    _Part(
        "shoulder_width_back",
        ("shoulder_length", "neck_base_girth"),
        _shoulder_width,
        "It goes over both shoulders and the breadth of the neck.",
    ),
    _Part(
        "nape_to_wrist",
        ("shoulder_width_back", "arm_length"),
        _to_wrist,
        "It goes over half the shoulders and down the arm.",
    ),
    _Part(
        "shoulder_point_to_center_waist",
        ("shoulder_width_back", "back_waist_length", "shoulder_length", "shoulder_slope"),
        _to_center_waist,
        "It is the diagonal of these; the slope may be the one that is wrong.",
    ),
    _Part(
        "trunk_loop",
        ("front_waist_length", "back_waist_length", "crotch_length"),
        _around(-40, 180),
        "It goes down the front, under the crotch and up the back.",
    ),
    _Part(
        "sitting_rise",
        ("standing_rise",),
        _around(-30, 50),
        "Sitting, the same way is about 1 cm longer on most bodies.",
    ),
    _Part(
        "sitting_rise",
        ("outside_leg", "inside_leg"),
        _rise_between_legs,
        "The outside leg less the inside leg is the rise, standing.",
    ),
    _Part("back_crotch_length", ("crotch_length",), _share(0.44, 0.70), "It is a little over half of it."),
    _Part("front_crotch_length", ("crotch_length",), _share(0.30, 0.56), "It is a little under half of it."),
)
"""Own judgment, near 1 to 99 % of bodies where a survey tells. The way to the wrist: 38 to 140 mm over half
the straight width plus the straight arm in ANSUR II (computed), less about 40 mm for the bent arm and the way
over the nape. The loop: 78 to 274 mm there with the front from the neck pit, which is 88 mm shorter. Sitting
minus standing rise: mean 10.5, SD 14.6 mm (computed from a published sample). Back part of the crotch length:
47 to 66 % there (computed), widened. Shares of girths: common practice, no source."""


def part_doubts(measures: MeasureSet) -> Iterator[Doubt]:
    """Every measure outside what others let expect, on the side where it is.

    Records of a survey take some of these measures otherwise; they are left alone.
    """
    if measures.taken_as == "survey":
        return
    for rule in _PARTS:
        yield from _one_part(measures, rule)


def _one_part(measures: MeasureSet, rule: _Part) -> Iterator[Doubt]:
    keys = (rule.key, *rule.others)
    for side, (value, *others) in known_values(measures, keys):
        low, high = rule.reach(*others)
        if low <= value <= high:
            continue
        problem = InputError(
            "measures-unlike-parts",
            label=label_of(rule.key, side),
            given=value,
            others=", ".join(said_of(key, side) for key in rule.others),
            low=max(low, 0.0),
            high=high,
            reason=rule.reason,
            where="",
        )
        yield Doubt("check", sided_keys(keys, side), problem)
