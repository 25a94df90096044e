"""A value on one side that was probably meant as the other side has it."""

from collections.abc import Sequence
from dataclasses import replace

from notchbook.body.doubts.doubt import Doubt, Repair
from notchbook.body.doubts.left_and_right import usual_difference
from notchbook.body.doubts.statistic_words import hint_words
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.quantity_words import quantity_text
from notchbook.body.sides import split_key
from notchbook.errors import InputError
from notchbook.units import LengthStyle


def asking_for_other_side(
    doubts: Sequence[Doubt], measures: MeasureSet, style: LengthStyle
) -> tuple[Doubt, ...]:
    """The doubts, what is offered for one side asked about as the other side has it."""
    return tuple(_asking(doubt, measures, style) for doubt in doubts)


def _asking(doubt: Doubt, measures: MeasureSet, style: LengthStyle) -> Doubt:
    repairs = tuple(_as_on_other_side(repair, measures, style) for repair in doubt.repairs)
    if repairs == doubt.repairs or "hint" not in doubt.problem.facts:
        return doubt
    facts = {**doubt.problem.facts, "hint": hint_words(repairs, style)}
    return replace(doubt, repairs=repairs, problem=InputError(doubt.code, **facts))


def _as_on_other_side(repair: Repair, measures: MeasureSet, style: LengthStyle) -> Repair:
    """The repair with its question, where it comes to what the other side has."""
    if len(repair.values) != 1:
        return repair
    text_key, meant = repair.values[0]
    if "@" not in text_key or text_key not in measures.values:
        return repair
    key, side = split_key(text_key)
    other = measures.find(key, "left" if side == "right" else "right")
    entry = measure_entry(key)
    if other is None or abs(other.value - meant) > usual_difference(entry) / 2.0:
        return repair
    typed, sound = (quantity_text(entry, value, style) for value in (measures.values[text_key].value, meant))
    return replace(repair, question=f"{typed} for {sound}, as on the other side?")
