"""What the trousers draft has to say of itself: closed is not yet good."""

from collections.abc import Iterator

from notchbook.blocks.lower_measures import contradiction_notes, look_at_lower
from notchbook.blocks.trouser_pieces.assumed_notes import assumed_notes
from notchbook.blocks.trouser_pieces.ease_notes import ease_notes
from notchbook.blocks.trouser_pieces.leg_notes import leg_notes
from notchbook.blocks.trouser_pieces.level_notes import level_notes
from notchbook.blocks.trouser_pieces.lever_notes import lever_notes
from notchbook.blocks.trouser_pieces.promises import Drafted
from notchbook.blocks.trouser_pieces.shared_notes import shared_notes
from notchbook.body import PopulationName
from notchbook.pattern import Finding


def draft_notes(drafted: Drafted, population: PopulationName | None) -> Iterator[Finding]:
    """Contradictions, levers at their limits, forced shapes, and what was assumed."""
    yield from contradiction_notes(look_at_lower(drafted.measures.lower), population)
    yield from lever_notes(drafted)
    yield from level_notes(drafted)
    yield from shared_notes(drafted)
    yield from leg_notes(drafted)
    yield from assumed_notes(drafted, population)
    yield from ease_notes(drafted)
