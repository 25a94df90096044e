"""What is said of the crotch: a length that was not taken, and measures that do not go together."""

from collections.abc import Iterator

from notchbook.blocks.lower_measures import contradiction_notes, look_at_lower, read_lower
from notchbook.blocks.stretch_pieces.cloth_notes import CHECK
from notchbook.blocks.stretch_pieces.crotch_measures import usual_crotch
from notchbook.pattern import Finding, Measured, Severity, worded
from notchbook.recipe import StepContext


def crotch_notes(context: StepContext, piece: str) -> Iterator[Finding]:
    """A crotch length that was not taken, and what the lower body's measures contradict."""
    disagreements = look_at_lower(read_lower(context, context.side))
    yield from contradiction_notes(disagreements, context.measures.population)
    estimated = usual_crotch(context)
    if estimated is not None:
        value, error = estimated
        yield worded(
            CHECK,
            "crotch-length-assumed",
            Severity.LOOK,
            Measured(value),
            piece=piece,
            crotch=value,
            error=error,
        )
