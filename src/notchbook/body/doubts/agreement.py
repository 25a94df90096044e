"""Whether the measures of one body agree with each other, by arithmetic alone."""

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.left_and_right import left_and_right_doubts
from notchbook.body.doubts.orders import order_doubts
from notchbook.body.doubts.parts import part_doubts
from notchbook.body.doubts.readings_apart import reading_doubts
from notchbook.body.doubts.sums import sum_doubts
from notchbook.body.doubts.waists_apart import waist_doubts
from notchbook.body.measure_set import MeasureSet
from notchbook.units import LengthStyle


def agreement_doubts(measures: MeasureSet, style: LengthStyle) -> tuple[Doubt, ...]:
    """Every pair, sum or share that disagrees, on the side where it does."""
    return (
        *order_doubts(measures),
        *sum_doubts(measures),
        *part_doubts(measures),
        *waist_doubts(measures),
        *left_and_right_doubts(measures, style),
        *reading_doubts(measures, style),
    )
