"""A draft that was refused on these measures: what looking them over says, beside the refusal.

A draft sees the step at which it can go no further; the slip may stand two measures before it.
"""

from notchbook.app.finding_words import in_words
from notchbook.body import MeasureSet, look_over
from notchbook.errors import NotchbookError
from notchbook.units import LengthStyle


def note_doubts(error: NotchbookError, measures: MeasureSet, style: LengthStyle) -> None:
    """Add to the refusal what no body has, or hardly one, in the set as it was given."""
    for doubt in look_over(measures, style).doubts:
        if doubt.level == "stop" and doubt.code != error.code:
            error.add_note(f"The measures themselves: {doubt.problem.text(in_words(style)).strip()}")
