"""Whether a dress form is one of the small ones that are half as large as a body."""

from notchbook.body.doubts.likely_slip import within
from notchbook.body.doubts.slips.whole_set import HALF_SCALE, LEAST_LENGTHS, LEAST_THEN, MOST_NOW
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.sides import plain_key


def is_half_scale(measures: MeasureSet) -> bool:
    """Whether most lengths of a form are usual when doubled, and hardly any as it stands."""
    if measures.kind != "form":
        return False
    lengths = [
        (entry.usual_at(measures.drop_below_natural), measure.value)
        for text_key, measure in measures.values.items()
        if (entry := measure_entry(plain_key(text_key))).is_length and measure.status != "estimated"
    ]
    if len(lengths) < LEAST_LENGTHS:
        return False
    now = sum(within(value, usual) for usual, value in lengths)
    then = sum(within(value * HALF_SCALE, usual) for usual, value in lengths)
    return now <= MOST_NOW * len(lengths) and then >= LEAST_THEN * len(lengths)
