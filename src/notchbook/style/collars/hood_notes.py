"""What is said of a hood: whether the head has room, and where no cord may be."""

from collections.abc import Iterator

from notchbook.body.doubts.child import CHILD_GIRTHS, is_child
from notchbook.pattern import Finding, Measured, Severity, worded
from notchbook.recipe import StepContext
from notchbook.style.closures.child_stage import child_stage
from notchbook.style.collars.figures import CORD_FREE_HEIGHT

CHECK = "hood"


def of_child(context: StepContext) -> bool:
    """Whether the body is a child's; what tells it counts as asked for."""
    for key in ("height", *CHILD_GIRTHS):
        context.find(key, "both")
    return is_child(context.measures)


_LEAST_HEIGHT = 0.54
"""Share of the head girth below which a hood pulls on the crown. Own judgment."""


def low_notes(piece: str, height: float, head: float) -> Iterator[Finding]:
    """A hood too low for the head."""
    least = _LEAST_HEIGHT * head
    if height < least:
        yield worded(
            CHECK, "hood-low", Severity.LOOK, Measured(height, least), piece=piece, height=height, least=least
        )


def cord_notes(piece: str, context: StepContext, *, has_cord: bool) -> Iterator[Finding]:
    """The usual caution about cords: it stops a young child's hood, is looked at for an older child and where
    the girths are a child's and no height was taken, and told of every other body."""
    if not has_cord:
        return
    stage = child_stage(context)
    tall = context.find("height", "both")
    if stage == "young" and tall is not None:
        measured = Measured(tall, CORD_FREE_HEIGHT.value)
        yield worded(CHECK, "hood-cord-young", Severity.STOP, measured, piece=piece, height=tall)
        return
    severity = Severity.NOTE if stage is None else Severity.LOOK
    yield worded(CHECK, "hood-cord", severity, piece=piece)
