"""The crotch as measured: whole, or in two parts, and how it is shared between front and back."""

from typing import Literal

from notchbook.blocks.bodice_pieces.wearer import wearer_in
from notchbook.blocks.lower_measures import known_rise_keys, rise_of_side, usual_crotch_length
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.reading import StretchReader
from notchbook.body import MeasureSet
from notchbook.recipe import StepContext

CROTCH_PARTS = ("front_crotch_length", "back_crotch_length")


def crotch_shares(reader: StretchReader, usual: str = "front_share") -> tuple[float, float]:
    """The crotch of front and back on the pattern, mm: their sum is the measure as the cloth has it.

    ``usual`` names the figure of the front's share where only the whole was measured. The point between the
    two parts is felt and not seen: it shares the whole within the limits of the table. A crotch length that
    was not taken is estimated from rise, hip and waist; InputError ``measure-missing`` where no rise was.
    """
    estimated = usual_crotch(reader.context)
    whole = reader.shared("crotch_length", "crotch", None if estimated is None else estimated[0])
    front, back = (reader.find(key) for key in CROTCH_PARTS)
    share = front_share(front, back, cut(f"crotch.{usual}"))
    return share * whole, (1.0 - share) * whole


def has_front_room(context: StepContext) -> bool:
    """Whether the front is drafted with room between the legs: for a man."""
    return wearer_in(context) == "men"


def front_longer(context: StepContext, garment: Literal["suit", "leggings"]) -> float:
    """By how much the front crotch is longer on the pattern than its share of the measure, mm: a man's tape
    is laid beside what the front must hold."""
    return cut(f"men_front_longer.{garment}") if has_front_room(context) else 0.0


def crotch_needs(measures: MeasureSet) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What is needed for a crotch length, and what is estimated: the measure itself, or the rise in its
    place."""
    rise = known_rise_keys(measures)
    if measures.find("crotch_length") is not None or rise is None:
        return ("crotch_length",), ()
    return rise, ("crotch_length",)


def front_share(front: float | None, back: float | None, usual: float) -> float:
    """The front's share of the crotch length: as measured, within limits, else the usual one."""
    if front is None or back is None:
        return usual
    return min(max(front / (front + back), cut("crotch.least_front")), cut("crotch.most_front"))


def share_held(context: StepContext) -> tuple[float, float] | None:
    """The front's share as its two parts were measured, and as it is drafted, where that is beyond the limits
    of the table; None where it is followed or was not measured."""
    front, back = (context.find(key) for key in CROTCH_PARTS)
    if front is None or back is None:
        return None
    measured, held = front / (front + back), front_share(front, back, 0.0)
    return None if measured == held else (measured, held)


def usual_crotch(context: StepContext) -> tuple[float, float] | None:
    """A crotch length that was not taken, and its ±, mm; None where it was, or nothing tells the rise.

    It belongs to both of the wearer's sides: measures that differ are taken at their mean.
    """
    if context.find("crotch_length", "both") is not None:
        return None
    rises = [rise_of_side(context, side) for side in ("right", "left")]
    standing = [rise.standing for rise in rises if rise is not None]
    if len(standing) < len(rises):
        return None
    hip, waist = (
        (context.measure(key, "right") + context.measure(key, "left")) / 2.0
        for key in ("hip_girth", "waist_girth")
    )
    drop = context.measures.drop_below_natural
    return usual_crotch_length(wearer_in(context), sum(standing) / len(standing), hip, waist, drop)
