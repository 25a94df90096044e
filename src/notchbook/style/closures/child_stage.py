"""Whose garment it is, as far as cords and ties go: a young child's, an older one's, or perhaps a child's."""

from typing import Literal

from notchbook.body.doubts.child import CHILD_GIRTHS
from notchbook.recipe import StepContext
from notchbook.style.closures.figures import OLDER_CHILD_HEIGHT
from notchbook.style.collars.figures import CORD_FREE_HEIGHT

ChildStage = Literal["young", "older", "unmeasured"]
"""``young``: up to the height to which no cord may be at hood or neck; ``older``: a child above it;
``unmeasured``: a child by the girths, whose height was not taken."""


def child_stage(context: StepContext) -> ChildStage | None:
    """The stage of the wearer, None of an adult; height and girths count as asked for.

    The height alone tells a young child. Unlike elsewhere a size of a chart and a dress form count too, and a
    height above the limit that was only estimated is none: a caution too many harms nobody.
    """
    height = context.find("height", "both")
    found = [(context.find(key, "both"), most) for key, most in CHILD_GIRTHS.items()]
    girths = [(value, most) for value, most in found if value is not None]
    if height is not None and height <= CORD_FREE_HEIGHT.value:
        return "young"
    if not girths or any(value >= most for value, most in girths):
        return None
    taken = context.measures.find("height")
    if height is None or taken is None or taken.status == "estimated":
        return "unmeasured"
    return "older" if height <= OLDER_CHILD_HEIGHT.value else None
