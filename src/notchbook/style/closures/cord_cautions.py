"""The usual cautions about ties on children's clothing: a cord can catch and strangle or drag."""

from collections.abc import Iterator, Sequence

from notchbook.body.doubts.child import is_child
from notchbook.pattern import Finding, Measured, Severity, split_side, worded
from notchbook.recipe import StepContext
from notchbook.style.closures.figures import CHILD_TIE_FREE
from notchbook.style.collars.figures import CORD_FREE_HEIGHT

CHECK = "ties"


def tie_cautions(piece: str, context: StepContext, edges: Sequence[str], length: float) -> Iterator[Finding]:
    """Of a child: a tie at the neck stops the papers up to 134 cm of height, any other is looked at.

    ``edges`` are those in which the ties are caught, ``length`` that of one free end, mm.
    """
    if not is_child(context.measures):
        return
    tall = context.find("height", "both")
    at_neck = any("neck" in split_side(edge)[0].split("/") for edge in edges)
    if at_neck and tall is not None and tall <= CORD_FREE_HEIGHT.value:
        measured = Measured(tall, CORD_FREE_HEIGHT.value)
        yield worded(CHECK, "tie-at-child-neck", Severity.STOP, measured, piece=piece, height=tall)
        return
    limit = CHILD_TIE_FREE.value
    measured = Measured(length, limit)
    yield worded(CHECK, "tie-of-child", Severity.LOOK, measured, piece=piece, length=length, limit=limit)
