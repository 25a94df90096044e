"""How far two values may lie apart and still be the same measure."""

from notchbook.body.measure import Measure
from notchbook.body.measure_table import MeasureEntry


def tolerance_of(entry: MeasureEntry, *measures: Measure) -> float:
    """mm (degrees, kg): what two readings may differ by, or the ± of an estimate where that is wider."""
    return max(entry.repeat, *(measure.error or 0.0 for measure in measures))
