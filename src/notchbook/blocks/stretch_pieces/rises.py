"""How high the waist lies over the crotch, from whichever measure tells it."""

from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.body import MeasureSet, Side
from notchbook.recipe import StepContext

RISES = ("standing_rise", "outside_leg", "sitting_rise")
"""What tells the rise, the surest first; the outside leg with the inside leg."""


def rise_key(measures: MeasureSet) -> str | None:
    """The surest measure of the rise that was taken; None where there is none."""
    taken = [key for key in RISES if measures.find(key) is not None]
    has_inside = measures.find("inside_leg") is not None
    return next((key for key in taken if key != "outside_leg" or has_inside), None)


def standing_rise(context: StepContext, side: Side) -> float | None:
    """From the waist to the crotch, standing, mm; None where nothing tells it."""
    measured = context.find("standing_rise", side)
    if measured is not None:
        return measured
    outside, inside = (context.find(key, side) for key in ("outside_leg", "inside_leg"))
    if outside is not None and inside is not None:
        return outside - inside
    sitting = context.find("sitting_rise", side)
    return None if sitting is None else sitting - cut("rise.sitting_over_standing")
