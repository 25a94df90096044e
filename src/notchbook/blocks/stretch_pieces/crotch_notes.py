"""What is said of the crotch: a length that was not taken, and measures that do not go together."""

from collections.abc import Iterator
from typing import Literal

from notchbook.blocks.lower_measures import contradiction_notes, look_at_lower, read_lower
from notchbook.blocks.stretch_pieces.cloth_notes import CHECK
from notchbook.blocks.stretch_pieces.crotch_measures import front_longer, share_held, usual_crotch
from notchbook.pattern import Finding, Measured, Severity, worded
from notchbook.recipe import StepContext

_FAR_OFF = 0.03
"""Share by which the parts of a crotch may lie beyond what is usual before they are to be looked at (own
judgment)."""


def crotch_notes(context: StepContext, piece: str, garment: Literal["suit", "leggings"]) -> Iterator[Finding]:
    """A crotch length that was not taken, a front that was given room, a share of its front that is not
    followed, and what the measures of the lower body contradict."""
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
    longer = front_longer(context, garment)
    if longer > 0.0:
        yield worded(CHECK, "stretch-front-room", Severity.NOTE, Measured(longer, 0.0), piece=piece)
    held = share_held(context)
    if held is not None:
        measured, drafted = (100.0 * share for share in held)
        share = Measured(held[0], held[1], "")
        severity = Severity.LOOK if abs(held[0] - held[1]) > _FAR_OFF else Severity.NOTE
        yield worded(
            CHECK,
            "crotch-share-held",
            severity,
            share,
            piece=piece,
            share=measured,
            drafted=drafted,
        )
