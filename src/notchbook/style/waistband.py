"""A straight waistband, cut in one piece for the whole waist with an underlap at the opening.

It is made when the wearer's two sides are laid together, from the waist as sewn, so it always fits.
"""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Allowance,
    Pattern,
    Piece,
    piece_name,
)
from notchbook.pattern.names import Side
from notchbook.recipe import (
    AmountText,
    Change,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.closures.band_in_three import (
    SideStops,
    opening_titles,
    side_stops,
    three_pieces,
    with_three_sewn,
)
from notchbook.style.closures.band_orders import band_orders
from notchbook.style.closures.band_pieces import SEEN_FROM_BEHIND, BandSize, band_pieces, opens_in_front
from notchbook.style.closures.band_sewn import with_band_sewn
from notchbook.style.closures.half_waist import BandedEdge, half_waist
from notchbook.style.closures.within_trade import told_unusual


class WaistbandParameters(StepParameters):
    """The edges of one side's waist, in order from the opening to the center opposite.

    ``depth`` is the finished width (the band is folded), ``underlap`` what is added at the opening on
    the side that lies under, ``ease`` how much of the whole waist is eased into the band.
    """

    edges: Annotated[tuple[BandedEdge, ...], Field(min_length=1)]
    """The waist of one side, from the opening to the center opposite."""
    depth: AmountText = "35 mm"
    """Finished width; the band is folded along its middle."""
    underlap: AmountText = "30 mm"
    """Added at the opening: as wide as the shield where it goes behind a fly."""
    underlap_on: Literal["left", "right"] = "left"
    """The wearer's side that lies under at the opening: left for a back opening, right under a man's fly."""
    ease: AmountText = "0 mm"
    """How much of the whole waist is eased into the band."""
    cut_in: Literal["one", "two", "three"] = "one"
    """In one; in two with a seam at the center opposite the opening; in three with seams at the sides."""


def run(pattern: Pattern, context: StepContext, parameters: WaistbandParameters) -> Change:
    """Draw the band right side up as it is worn, opened out: seen from the side opposite the opening."""
    depth = context.positive(parameters.depth, "depth")
    underlap = context.mm(parameters.underlap)
    ease = context.mm(parameters.ease)
    if underlap < 0.0 or ease < 0.0:
        raise StepRefused("band-negative", underlap=underlap, ease=ease)
    sides: tuple[Side, Side] = ("right", "left")
    halves = [half_waist(pattern, parameters.edges, side) for side in sides]
    lengths = [half.length - ease / 2.0 for half in halves]
    if min(lengths) <= depth:
        raise StepRefused("band-too-short", depth=depth, length=min(lengths))
    size = BandSize(lengths[0], lengths[1], depth, underlap, parameters.underlap_on)
    in_front = opens_in_front(pattern, halves[0].uses)
    name = piece_name(context.slug, "band")
    if parameters.cut_in == "three":
        sewn_stops = side_stops(pattern, halves)
        shares = [length / half.length for length, half in zip(lengths, halves, strict=True)]
        stops = SideStops(sewn_stops.right * shares[0], sewn_stops.left * shares[1])
        pieces = three_pieces(name, size, stops, opening_titles(in_front=in_front))
        after = with_three_sewn(pattern, context.slug, _seen(pieces, in_front), halves, (size, stops))
    else:
        pieces = band_pieces(name, size, in_two=parameters.cut_in == "two")
        after = with_band_sewn(pattern, context.slug, _seen(pieces, in_front), halves, size, ease)
    outline = [edge for piece in pieces for edge in piece.outline]
    sewn = [edge.name for edge in outline if edge.kind == "seam" and "/lower/" in edge.name]
    plain = [edge.name for edge in outline if edge.kind == "plain"]
    after = after.with_allowances(dict.fromkeys(sewn, Allowance("waist")))
    after = after.with_allowances(dict.fromkeys(plain, Allowance("waistband")))
    after = after.with_operations(*band_orders(context.slug, pieces))
    amounts = {"depth": depth, "underlap": underlap, "ease": ease}
    notes = told_unusual(pieces[0].name, "waistband", amounts)
    return Change(after.with_materials({"fusible": "fusible"}), notes=tuple(notes))


def _seen(pieces: tuple[Piece, ...], in_front: bool) -> tuple[Piece, ...]:
    """The pieces face up, as they are worn, from the side opposite the opening."""
    return tuple(piece.transformed(SEEN_FROM_BEHIND) for piece in pieces) if in_front else pieces


STEP = StepDefinition(
    operation="waistband",
    version=2,
    kind="style",
    phase="whole",
    title="Waistband",
    sentence="{edges:{edge}}: {depth} finished, underlap {underlap}",
    parameters=WaistbandParameters,
    run=run,
    upcasters={1: dict},
)
