"""The measures of the lower body as garments with legs see them: the rise, the crotch length, what
contradicts what, and what would explain it.

``docs/how-measures-are-judged.md`` tells how a sheet of measures is judged when it is taken. Here the same
statistics are asked what trousers need to know: whether crotch length and rise were taken from one waist,
and whether the thigh goes with the hip.
"""

from notchbook.blocks.lower_measures.crotch_length import usual_crotch_length
from notchbook.blocks.lower_measures.disagreement import LowerDisagreement
from notchbook.blocks.lower_measures.looking import look_at_lower
from notchbook.blocks.lower_measures.lower_measures import LowerMeasures
from notchbook.blocks.lower_measures.notes import contradiction_notes
from notchbook.blocks.lower_measures.reading import LOWER_KEYS, read_lower
from notchbook.blocks.lower_measures.rise import (
    Rise,
    known_rise_keys,
    needed_rise_keys,
    read_rise,
    rise_of_side,
)

__all__ = [
    "LOWER_KEYS",
    "LowerDisagreement",
    "LowerMeasures",
    "Rise",
    "contradiction_notes",
    "known_rise_keys",
    "look_at_lower",
    "needed_rise_keys",
    "read_lower",
    "read_rise",
    "rise_of_side",
    "usual_crotch_length",
]
