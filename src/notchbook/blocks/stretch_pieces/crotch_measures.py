"""The crotch as measured: whole, or in two parts, and how it is shared between front and back."""

from collections.abc import Mapping
from functools import cache
from typing import Any

from notchbook.blocks._trade_figures import trade_table
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.reading import StretchReader
from notchbook.blocks.stretch_pieces.rises import rise_key, standing_rise
from notchbook.blocks.stretch_pieces.wearer import wearer_in
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


def crotch_needs(measures: MeasureSet) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What is needed for a crotch length, and what is estimated: the measure itself, or the rise in its
    place."""
    rise = rise_key(measures)
    if measures.find("crotch_length") is not None or rise is None:
        return ("crotch_length",), ()
    return (rise, "inside_leg") if rise == "outside_leg" else (rise,), ("crotch_length",)


def front_share(front: float | None, back: float | None, usual: float) -> float:
    """The front's share of the crotch length: as measured, within limits, else the usual one."""
    if front is None or back is None:
        return usual
    return min(max(front / (front + back), cut("crotch.least_front")), cut("crotch.most_front"))


def usual_crotch(context: StepContext) -> tuple[float, float] | None:
    """A crotch length that was not taken, and its ±, mm; None where it was, or nothing tells the rise.

    It belongs to both of the wearer's sides: measures that differ are taken at their mean.
    """
    if context.find("crotch_length", "both") is not None:
        return None
    rises = [standing_rise(context, side) for side in ("right", "left")]
    if rises[0] is None or rises[1] is None:
        return None
    row = _table()["crotch_length"][wearer_in(context)]
    hip, waist = (
        (context.measure(key, "right") + context.measure(key, "left")) / 2.0
        for key in ("hip_girth", "waist_girth")
    )
    rise = (rises[0] + rises[1]) / 2.0
    crotch = row["constant"] + row["rise"] * rise + row["hip"] * hip + row["waist"] * waist
    return float(crotch), float(row["plus_minus"])


@cache
def _table() -> Mapping[str, Any]:
    return trade_table("notchbook.blocks.stretch_pieces", "substitutes.toml")
