"""Values of 0, which are written where nothing was measured."""

from dataclasses import replace

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.sides import plain_key
from notchbook.errors import InputError


def zero_doubts(measures: MeasureSet) -> tuple[Doubt, ...]:
    """A stop for every 0 where a body has more."""
    return tuple(
        Doubt(
            "stop",
            (text_key,),
            InputError("measure-zero", label=measure_entry(plain_key(text_key)).label, where=""),
        )
        for text_key, measure in measures.values.items()
        if _is_no_measure(text_key, measure)
    )


def without_zeros(measures: MeasureSet) -> MeasureSet:
    """The set without them: they are neither judged nor judge anything."""
    kept = {key: one for key, one in measures.values.items() if not _is_no_measure(key, one)}
    return replace(measures, values=kept)


def _is_no_measure(text_key: str, measure: Measure) -> bool:
    return measure.value == 0.0 and measure_entry(plain_key(text_key)).possible[0] > 0.0
