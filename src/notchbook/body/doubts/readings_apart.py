"""Whether the readings of one measure agree with each other."""

from collections.abc import Iterator

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.quantity_words import quantity_text
from notchbook.body.sides import plain_key
from notchbook.errors import InputError
from notchbook.units import LengthStyle


def reading_doubts(measures: MeasureSet, style: LengthStyle) -> Iterator[Doubt]:
    """A question for every measure whose readings lie apart by more than a tape's repeat."""
    for text_key, measure in measures.values.items():
        entry = measure_entry(plain_key(text_key))
        if measure.spread <= entry.repeat:
            continue
        problem = InputError(
            "readings-apart",
            label=entry.label,
            readings=" and ".join(quantity_text(entry, one, style) for one in measure.readings),
            usual=quantity_text(entry, entry.repeat, style),
            where="",
        )
        yield Doubt("check", (text_key,), problem)
