"""A contoured waistband: curved to fit where the body narrows, with a facing of the same shape.

Its lower edge is the waist of the garment as sewn. Its upper edge is as long as is said, or as the garment
itself asks, carried on above with its darts closed. It is made when the wearer's two sides are laid together.
"""

from collections.abc import Mapping
from dataclasses import replace
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Allowance,
    CutInstruction,
    Edge,
    EdgeUse,
    Grain,
    Pattern,
    Piece,
    Seam,
    part_name,
    piece_name,
)
from notchbook.pattern.names import Side, last_word
from notchbook.pattern.operation import Operation
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.style.closures.band_in_three import opening_titles, side_stops, three_pieces, with_three_sewn
from notchbook.style.closures.band_pieces import SEEN_FROM_BEHIND, BandSize, band_pieces, opens_in_front
from notchbook.style.closures.band_sewn import with_band_sewn
from notchbook.style.closures.curved_band import Bend, bend_of, bent
from notchbook.style.closures.garment_bend import carried_on_girth
from notchbook.style.closures.half_waist import BandedEdge, half_waist
from notchbook.style.closures.within_trade import told_unusual


class ContouredWaistbandParameters(StepParameters):
    """The waist of one side from the opening to the center opposite, and the band above it.

    For a band inside a garment that goes up to the waist, cut the garment all round at the lower edge of the
    band first, its darts closed: what is above is the band.
    """

    edges: Annotated[tuple[BandedEdge, ...], Field(min_length=1)]
    """The waist of one side, from the opening to the center opposite."""
    depth: AmountText = "50 mm"
    """Finished width of the band."""
    upper: AmountText | None = "waist + 1 cm"
    """Whole length of its upper edge, without the underlap; empty: as a garment below the waist narrows."""
    underlap: AmountText = "30 mm"
    """Added at the opening: as wide as the shield where it goes behind a fly."""
    underlap_on: Literal["left", "right"] = "left"
    """The wearer's side that lies under at the opening: left for a back opening, right under a man's fly."""
    cut_in: Literal["one", "two", "three"] = "two"
    """In one; in two with a seam at the center opposite the opening; in three with seams at the sides."""


def run(pattern: Pattern, context: StepContext, parameters: ContouredWaistbandParameters) -> Change:
    """Bend the band, sew it to the waist, and face it."""
    depth = context.positive(parameters.depth, "depth")
    underlap = context.mm(parameters.underlap)
    if underlap < 0.0:
        raise StepRefused("band-negative", underlap=underlap, ease=0.0)
    sides: tuple[Side, Side] = ("right", "left")
    halves = [half_waist(pattern, parameters.edges, side) for side in sides]
    lower = sum(half.length for half in halves)
    if min(half.length for half in halves) <= depth:
        raise StepRefused("band-too-short", depth=depth, length=min(half.length for half in halves))
    upper = (
        carried_on_girth(pattern, halves, depth)
        if parameters.upper is None
        else context.positive(parameters.upper, "upper")
    )
    size = BandSize(halves[0].length, halves[1].length, depth / 2.0, underlap, parameters.underlap_on)
    name = piece_name(context.slug, "band")
    in_front = opens_in_front(pattern, halves[0].uses)
    bend = bend_of(lower, upper, depth)
    if parameters.cut_in == "three":
        stops = side_stops(pattern, halves)
        pieces = _shaped(three_pieces(name, size, stops, opening_titles(in_front=in_front)), bend, in_front)
        after = with_three_sewn(pattern, context.slug, pieces, halves, (size, stops))
    else:
        pieces = _shaped(band_pieces(name, size, in_two=parameters.cut_in == "two"), bend, in_front)
        after = with_band_sewn(pattern, context.slug, pieces, halves, size, 0.0)
    after = _faced(after, context.slug, pieces).with_materials({"fusible": "fusible"})
    amounts = {"depth": depth, "underlap": underlap}
    notes = told_unusual(pieces[0].name, "contoured_waistband", amounts)
    return Change(after.with_operations(*_operations(context.slug, pieces)), notes=tuple(notes))


def _shaped(pieces: tuple[Piece, ...], bend: Bend, in_front: bool) -> tuple[Piece, ...]:
    """The straight pieces bent, without a fold, and face up as they are worn."""
    bands = (replace(bent(replace(piece, lines=()), bend), grain=Grain(0.0)) for piece in pieces)
    return tuple(piece.transformed(SEEN_FROM_BEHIND) if in_front else piece for piece in bands)


def _faced(pattern: Pattern, slug: str, pieces: tuple[Piece, ...]) -> Pattern:
    """The pattern with a facing of each piece, sewn to it along its upper edge and its free ends, and to each
    other as the pieces are."""
    after = pattern
    facings = {piece.name: _facing(slug, piece) for piece in pieces}
    for piece in pieces:
        facing = facings[piece.name]
        after = after.with_pieces(facing)
        for edge in piece.outline:
            own = _own(edge.name, piece, facing)
            given = _allowances(edge)
            after = after.with_allowances({edge.name: given[0], own: given[1]})
            if given[0].allowance_class == "facing_edge":
                after = after.with_seams(_turned_seam(slug, piece, edge, facing))
    between = [seam for seam in pattern.seams.values() if _joins(seam, pieces)]
    return after.with_seams(*(_facing_seam(pattern, slug, seam, facings) for seam in between))


def _joins(seam: Seam, pieces: tuple[Piece, ...]) -> bool:
    """Whether the seam joins two pieces of the band."""
    uses = (*seam.first, *seam.second)
    return all(any(piece.has_edge(use.edge) for piece in pieces) for use in uses)


def _facing_seam(pattern: Pattern, slug: str, seam: Seam, facings: Mapping[str, Piece]) -> Seam:
    """The seam between two facings where the pieces of the band have theirs."""

    def run(uses: tuple[EdgeUse, ...]) -> tuple[EdgeUse, ...]:
        found: list[EdgeUse] = []
        for use in uses:
            piece = pattern.piece_of(use.edge)
            facing = facings[piece.name]
            found.append(EdgeUse(_own(use.edge, piece, facing), _own(use.starts_at, piece, facing)))
        return tuple(found)

    name = part_name(slug, last_word(seam.name).replace("band", "facing"))
    return Seam(name, run(seam.first), run(seam.second), allowance_class=seam.allowance_class)


def _allowances(edge: Edge) -> tuple[Allowance, Allowance]:
    """Those of an edge of the band and of the same edge of its facing."""
    if "/lower/" in edge.name:
        return Allowance("waist"), Allowance("waistband")
    both = Allowance("waistband_center" if edge.kind == "seam" else "facing_edge")
    return both, both


def _turned_seam(slug: str, piece: Piece, edge: Edge, facing: Piece) -> Seam:
    return Seam(
        part_name(slug, f"{last_word(piece.name)}_{last_word(edge.name)}"),
        (EdgeUse(_own(edge.name, piece, facing), _own(edge.start, piece, facing)),),
        (EdgeUse(edge.name, edge.start),),
        allowance_class="facing_edge",
        seam_class=TURNED_SEAM,
    )


def _own(name: str, piece: Piece, facing: Piece) -> str:
    """What a part of the band is called on its facing."""
    return name.replace(piece.name, facing.name, 1)


def _facing(slug: str, piece: Piece) -> Piece:
    """The facing of a piece of the band: its mirror, for it lies inside, face to face with it."""
    name = piece_name(slug, last_word(piece.name).replace("band", "facing"))
    facing = piece.renamed(lambda part: part.replace(piece.name, name, 1)).transformed(SEEN_FROM_BEHIND)
    return replace(
        facing,
        title=f"{piece.title} facing",
        grain=piece.grain,
        instructions=(CutInstruction("self"),),
    )


def _operations(slug: str, pieces: tuple[Piece, ...]) -> list[Operation]:
    names = tuple(piece.name for piece in pieces)
    turned = part_name(slug, "band_turned")
    text = "Understitch the upper edge of the band to its allowances, turn the band, and press."
    upper = tuple(part_name(slug, f"{last_word(name)}_upper") for name in names)
    seams = tuple(part_name(slug, f"waist_{side}") for side in ("right", "left"))
    closed = Operation(turned, "waist", text, names, (*upper, *seams))
    text = "Turn the lower edge of the facing in, or neaten it, and stitch it down in the seam of the waist."
    return [closed, Operation(part_name(slug, "facing_stitched"), "finish", text, names, (turned,))]


STEP = StepDefinition(
    operation="contoured_waistband",
    version=1,
    kind="style",
    phase="whole",
    title="Contoured waistband",
    sentence="{edges:{edge}}: {depth} wide, upper edge {upper}, underlap {underlap}",
    parameters=ContouredWaistbandParameters,
    run=run,
)
