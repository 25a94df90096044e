"""Whether left and right differ more than the sides of bodies usually do."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from notchbook.body.doubts.doubt import Doubt, Repair
from notchbook.body.doubts.slips.likely_enough import likely_enough
from notchbook.body.doubts.slips.single import single_slips
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import MeasureEntry, MeasureKind, measure_entry
from notchbook.body.quantity_words import quantity_text
from notchbook.errors import InputError
from notchbook.units import LengthStyle

USUAL_DIFFERENCE: Final[Mapping[MeasureKind, float]] = MappingProxyType(
    {"length": 15.0, "girth": 40.0, "angle": 5.0, "weight": 0.0}
)
"""How far left and right may lie apart before it is asked about: mm, degrees (common practice, no source).
For a girth of the trunk each side means the whole girth of a body that is the same on both."""

LIMB_GIRTHS: Final = frozenset(
    {
        "armscye_girth",
        "upper_arm_girth",
        "elbow_girth",
        "wrist_girth",
        "hand_girth",
        "thigh_girth",
        "knee_girth",
        "calf_girth",
        "ankle_girth",
        "heel_girth",
    }
)
LIMB_DIFFERENCE: Final = 20.0
"""mm; limbs are round of their own (common practice, no source)."""

BODY_IS_SO: Final = 0.02
"""How likely it is, beside the priors of the slips, that the body itself is so or the tape lay elsewhere
(own judgment)."""


def left_and_right_doubts(measures: MeasureSet, style: LengthStyle) -> Iterator[Doubt]:
    """A question for every measure whose sides lie far apart; never a stop."""
    for key in measures.measure_keys():
        entry = measure_entry(key)
        left, right = measures.find(key, "left"), measures.find(key, "right")
        if left is None or right is None or "estimated" in (left.status, right.status):
            continue
        if abs(left.value - right.value) <= usual_difference(entry):
            continue
        problem = InputError(
            "sides-apart",
            label=entry.label,
            left=quantity_text(entry, left.value, style),
            right=quantity_text(entry, right.value, style),
            usual=quantity_text(entry, usual_difference(entry), style),
            where="",
        )
        names = (key, f"{key}@left", f"{key}@right")
        given = tuple(name for name in names if name in measures.values)
        repairs = _repairs(measures, key, style)
        yield Doubt("check", given, problem, repairs=repairs)


def usual_difference(entry: MeasureEntry) -> float:
    """How far left and right of this measure may lie apart on most bodies, mm or degrees."""
    return LIMB_DIFFERENCE if entry.key in LIMB_GIRTHS else USUAL_DIFFERENCE[entry.kind]


def _repairs(measures: MeasureSet, key: str, style: LengthStyle) -> tuple[Repair, ...]:
    """One slip on one side that would bring it to the other; the two sides are equally suspected."""
    entry = measure_entry(key)
    left, right = measures.value(key, "left"), measures.value(key, "right")
    spread = max(usual_difference(entry) / 2.0, 1.0)
    found = []
    for name, value, other in ((f"{key}@left", left, right), (f"{key}@right", right, left)):
        given = name if name in measures.values else key
        for slip in single_slips(entry, value, style.unit):
            fit = slip.prior * math.exp(-(((slip.value - other) / spread) ** 2) / 2.0)
            found.append((slip, given, fit))
    total = sum(fit for _, _, fit in found) + BODY_IS_SO
    best: dict[tuple[str, float], Repair] = {}
    for slip, given, fit in sorted(found, key=lambda one: -one[2]):
        # Several slips may lead to one value: it is offered once.
        place = (given, round(slip.value, 3))
        first = best.get(place) or Repair(slip.slip, slip.question, ((given, slip.value),), 0.0)
        best[place] = replace(first, share=first.share + fit / total)
    return likely_enough(best.values())
