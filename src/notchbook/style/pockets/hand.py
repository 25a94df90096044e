"""Whether a hand goes into a pocket."""

from notchbook.body.doubts.child import is_child
from notchbook.pattern import Finding, Measured, Piece, Severity, spoken, worded
from notchbook.recipe import StepContext
from notchbook.style.pockets.figures import BAG_WIDER_THAN_HAND, HAND_WITHOUT_MEASURE


def hand_room(context: StepContext) -> float | None:
    """The least opening that the hand passes, mm: half its girth and some room. None for a child whose hand
    was not measured."""
    girth = context.find("hand_girth")
    if girth is not None:
        return girth / 2.0 + BAG_WIDER_THAN_HAND.value
    return None if is_child(context.measures) else HAND_WITHOUT_MEASURE.value


def hand_note(context: StepContext, piece: Piece, where: str, opening: float) -> tuple[Finding, ...]:
    """What is said of an opening that no hand passes."""
    least = hand_room(context)
    if least is None or opening >= least:
        return ()
    note = worded(
        context.step,
        "pocket-under-hand",
        Severity.NOTE,
        Measured(opening, least),
        piece=piece.name,
        where=where,
        names=(where,),
        said=spoken(where),
    )
    return (note,)
