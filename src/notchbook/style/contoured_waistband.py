"""A contoured waistband: curved to fit where the body narrows, with a facing of the same shape.

Its lower edge is the waist of the garment as sewn. Its upper edge is as long as is said, or as the garment
itself asks, carried on above with its darts closed. It is made when the wearer's two sides are laid together.
"""

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
from notchbook.style.closures.band_pieces import SEEN_FROM_BEHIND, BandSize, band_pieces, opens_in_front
from notchbook.style.closures.band_sewn import with_band_sewn
from notchbook.style.closures.curved_band import bend_of, bent
from notchbook.style.closures.garment_bend import carried_on_girth
from notchbook.style.closures.half_waist import BandedEdge, half_waist


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
    cut_in: Literal["one", "two"] = "two"
    """In two with a seam at the center opposite the opening; or in one piece."""


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
    bend = bend_of(lower, upper, depth)
    pieces = tuple(
        replace(bent(replace(piece, lines=()), bend), grain=Grain(0.0))
        for piece in band_pieces(name, size, in_two=parameters.cut_in == "two")
    )
    if opens_in_front(pattern, halves[0].uses):
        pieces = tuple(piece.transformed(SEEN_FROM_BEHIND) for piece in pieces)
    after = with_band_sewn(pattern, context.slug, pieces, halves, size, 0.0)
    after = _faced(after, context.slug, pieces).with_materials({"fusible": "fusible"})
    return Change(after.with_operations(*_operations(context.slug, pieces)))


def _faced(pattern: Pattern, slug: str, pieces: tuple[Piece, ...]) -> Pattern:
    """The pattern with a facing of each piece, sewn to it along its upper edge and its free ends."""
    after = pattern
    facings = [_facing(slug, piece) for piece in pieces]
    for piece, facing in zip(pieces, facings, strict=True):
        after = after.with_pieces(facing)
        for edge in piece.outline:
            own = _own(edge.name, piece, facing)
            given = _allowances(edge.name)
            after = after.with_allowances({edge.name: given[0], own: given[1]})
            if given[0].allowance_class == "facing_edge":
                after = after.with_seams(_turned_seam(slug, piece, edge, facing))
    if len(facings) == 2:
        first, second = (
            EdgeUse(part_name(one.name, "center_end"), part_name(one.name, "center")) for one in facings
        )
        name = part_name(slug, "facing_center")
        after = after.with_seams(Seam(name, (first,), (second,), allowance_class="waistband_center"))
    return after


def _allowances(edge: str) -> tuple[Allowance, Allowance]:
    """Those of an edge of the band and of the same edge of its facing."""
    if "/lower/" in edge:
        return Allowance("waist"), Allowance("waistband")
    both = Allowance("waistband_center" if last_word(edge) == "center_end" else "facing_edge")
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
