"""Bringing the measures of one set to the waist level of another, as far as that can be done."""

from dataclasses import dataclass, replace

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.sides import plain_key
from notchbook.errors import InputError

WAIST_GIRTHS = ("waist_girth", "front_waist_arc")
"""Measures taken round the waist itself: at another level they are another measure."""


@dataclass(frozen=True, slots=True)
class Leveled:
    """A set as it would be tied at another level: ``moved`` were shifted, ``dropped`` cannot be compared."""

    measures: MeasureSet
    moved: tuple[str, ...] = ()
    dropped: tuple[str, ...] = ()
    remarks: tuple[Doubt, ...] = ()


def at_level_of(measures: MeasureSet, other: MeasureSet) -> Leveled:
    """The set as it would read with the waist tied where ``other`` has it.

    Lengths that begin or end at the waist move by the distance of the two levels times their
    ``waist_shift``; girths of the waist itself are left out, since nobody measured them there. Both are
    said, and so is a rise that was taken in another way.
    """
    remarks: list[Doubt] = []
    if {measures.rise_method, other.rise_method} == {"sitting", "standing"}:
        problem = InputError("compare-rise-methods", first=measures.name, second=other.name, where="")
        remarks.append(Doubt("check", ("sitting_rise", "standing_rise"), problem))
    lower = other.drop_below_natural - measures.drop_below_natural
    both_at_navel = measures.waist_level == other.waist_level == "navel"
    if both_at_navel or (lower == 0.0 and measures.waist_level == other.waist_level):
        # Two navels are one landmark, however far below the natural waist each lies.
        return Leveled(measures, remarks=tuple(remarks))
    moved = tuple(text for text in measures.values if _shift(text) and lower)
    dropped = tuple(text for text in measures.values if plain_key(text) in WAIST_GIRTHS)
    values = {
        text: _moved(measure, _shift(text) * lower)
        for text, measure in measures.values.items()
        if text not in dropped
    }
    remarks.append(Doubt("check", (*moved, *dropped), _words(measures, other, lower, dropped)))
    return Leveled(replace(measures, values=values), moved, dropped, tuple(remarks))


def _shift(text_key: str) -> int:
    return measure_entry(plain_key(text_key)).waist_shift


def _moved(measure: Measure, by: float) -> Measure:
    if not by:
        return measure
    return replace(measure, value=max(measure.value + by, 0.0), readings=())


def _words(measures: MeasureSet, other: MeasureSet, lower: float, dropped: tuple[str, ...]) -> InputError:
    return InputError(
        "compare-waist-levels",
        first=measures.name,
        second=other.name,
        by=abs(lower),
        way="lower" if lower > 0 else "higher",
        left_out="" if not dropped else " The girth of the waist itself is left out.",
        where="",
    )
