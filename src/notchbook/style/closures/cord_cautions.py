"""The usual cautions about ties on children's clothing: a cord can catch and strangle or drag."""

from collections.abc import Iterator

from notchbook.pattern import Finding, Measured, Severity, worded
from notchbook.recipe import StepContext
from notchbook.style.closures.child_stage import child_stage
from notchbook.style.closures.figures import CHILD_TIE_FREE
from notchbook.style.collars.figures import CORD_FREE_HEIGHT

CHECK = "ties"


def tie_cautions(piece: str, context: StepContext, length: float, *, at_neck: bool) -> Iterator[Finding]:
    """Of a child: a tie at hood or neck stops the papers up to 134 cm of height, and is looked at above it
    and where no height was taken; any other tie is looked at.

    ``at_neck``: whether one of the ties is caught there; ``length``: that of one free end, mm.
    """
    stage = child_stage(context)
    if stage is None:
        return
    most = CORD_FREE_HEIGHT.value
    tall = context.find("height", "both")
    if at_neck and stage == "young" and tall is not None:
        measured = Measured(tall, most)
        yield worded(CHECK, "tie-at-child-neck", Severity.STOP, measured, piece=piece, height=tall)
    elif at_neck and stage == "older":
        yield worded(CHECK, "tie-at-older-neck", Severity.LOOK, piece=piece, length=length, most=most)
    elif at_neck:
        yield worded(CHECK, "tie-at-unmeasured-neck", Severity.LOOK, piece=piece, most=most)
    else:
        limit = CHILD_TIE_FREE.value
        measured = Measured(length, limit)
        yield worded(CHECK, "tie-of-child", Severity.LOOK, measured, piece=piece, length=length, limit=limit)
