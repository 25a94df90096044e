"""The measures of the upper body as the draft sees them: what contradicts what, and what would explain it.

``docs/how-measures-are-judged.md`` tells how a sheet of measures is judged when it is taken. Here the same
statistics are asked what a bodice needs to know: which two measures shape it together, which of the two
does not go with the rest, and what to draft from.
"""

from notchbook.blocks.upper_measures.dart_outlook import DartOutlook, bust_dart_angle
from notchbook.blocks.upper_measures.disagreement import Disagreement, Substitute, Trusted
from notchbook.blocks.upper_measures.looking import look_at_upper
from notchbook.blocks.upper_measures.notes import contradiction_notes
from notchbook.blocks.upper_measures.reading import UPPER_KEYS, read_upper
from notchbook.blocks.upper_measures.upper_measures import Estimate, UpperMeasures

__all__ = [
    "UPPER_KEYS",
    "DartOutlook",
    "Disagreement",
    "Estimate",
    "Substitute",
    "Trusted",
    "UpperMeasures",
    "bust_dart_angle",
    "contradiction_notes",
    "look_at_upper",
    "read_upper",
]
