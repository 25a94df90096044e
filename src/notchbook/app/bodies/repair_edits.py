"""Taking what was offered for a slip: one deed, however many measures it changes."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.body import Measure, MeasureSet, measure_entry, split_key
from notchbook.body.doubts.limits import refuse_impossible
from notchbook.body.doubts.waist_drops import refuse_impossible_drop
from notchbook.body.one_line import LONGEST_NOTE
from notchbook.body.quantity_words import quantity_text
from notchbook.body.waist_drop import DROP_KEY
from notchbook.units import LengthStyle


@dataclass(frozen=True, slots=True)
class RepairMeasures:
    """The values that were offered, by key (with a side where it has one), in mm, degrees or kg.

    The drop of the waist stands among them as ``waist_drop``.

    Notes and who took them stay; the readings of a repaired measure are gone, for they held the slip. With
    ``is_reckoned`` nobody read the value anywhere: it is what the other measures let expect, and the note of
    the measure says so, with what stood there before.
    """

    values: Mapping[str, float]
    is_reckoned: bool = False

    def apply(self, measures: MeasureSet) -> MeasureSet:
        """The set with the values in place; refused: ``measure-unknown``, ``measure-impossible``,
        ``waist-drop-impossible``."""
        for text_key, value in self.values.items():
            if text_key == DROP_KEY:
                refuse_impossible_drop(value, LengthStyle("cm"))
                measures = replace(measures, waist_drop=value)
                continue
            key, side = split_key(text_key)
            refuse_impossible(text_key, value, LengthStyle("cm"))
            known = measures.values.get(text_key)
            repaired = Measure(value) if known is None else replace(known, value=value, readings=())
            if self.is_reckoned:
                repaired = replace(repaired, note=_reckoned_note(text_key, known))
            measures = measures.with_value(key, repaired, side)
        return measures


def _reckoned_note(text_key: str, known: Measure | None) -> str:
    """What the note of a reckoned value says; what it said before stays where there is room."""
    entry = measure_entry(split_key(text_key)[0])
    before = "" if known is None else f", before: {quantity_text(entry, known.value, LengthStyle('cm'))}"
    words = f"reckoned from the other measures{before}; take it again"
    both = f"{words}; {known.note}" if known is not None and known.note else words
    return both if len(both) <= LONGEST_NOTE else words
