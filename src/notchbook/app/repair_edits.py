"""Taking what was offered for a slip: one deed, however many measures it changes."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.body import Measure, MeasureSet, split_key
from notchbook.body.doubts.limits import refuse_impossible
from notchbook.body.doubts.waist_drops import refuse_impossible_drop
from notchbook.body.waist_drop import DROP_KEY
from notchbook.units import LengthStyle


@dataclass(frozen=True, slots=True)
class RepairMeasures:
    """The values that were offered, by key (with a side where it has one), in mm, degrees or kg.

    The drop of the waist stands among them as ``waist_drop``.

    Notes and who took them stay; the readings of a repaired measure are gone, for they held the slip.
    """

    values: Mapping[str, float]

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
            measures = measures.with_value(key, repaired, side)
        return measures
