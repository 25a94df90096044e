"""A facing that is cut on, in fusible: what is folded back behind buttonholes or at a vent, up to its fold.

A buttonhole is worked through the front and the facing behind it; without something fused to one of them it
tears out of soft cloth. It is derived: it is made anew after the last shaping step, so that it never goes
stale.
"""

from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Allowance,
    Operation,
    Pattern,
    Piece,
    part_name,
    piece_name,
    require_one,
    split_side,
    spoken,
    title_of,
    with_side,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import LAID, listed
from notchbook.recipe import AmountText, Change, EdgeName, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import MaterialWord
from notchbook.style.traced.copied import Copying, copy_of
from notchbook.style.traced.folded_back import as_piece, folded_back
from notchbook.style.traced.inset import inset


class FusedFacingParameters(StepParameters):
    """The free edges of the ``facings`` that are cut on, and by how much their fusible is smaller."""

    facings: Annotated[tuple[EdgeName, ...], Field(min_length=1)]
    """The free edge of each facing or vent that is cut on and folded back."""
    trimmed: AmountText = "0 cm"
    """How far inside the sew line and the fold the fusible ends."""
    material: MaterialWord = "fusible"
    """The material that it is cut in."""


def run(pattern: Pattern, context: StepContext, parameters: FusedFacingParameters) -> Change:
    """Each facing up to its fold as a piece of its own, without allowances, and its line in the sewing order.

    StepRefused ``facing-not-folded`` where an edge is not folded back, ``layer-twice`` where the whole piece
    is cut in the material already, ``trim-below-nothing``, ``trim-too-much``.
    """
    trimmed = context.mm(parameters.trimmed)
    if trimmed < 0.0:
        raise StepRefused("trim-below-nothing", amount=trimmed)
    copying = Copying(context.slug, context.step, "facing interfacing", parameters.material)
    edges = dict.fromkeys(require_one(pattern, facing) for facing in parameters.facings)
    strips = [inset(_strip(pattern, edge, copying), trimmed) for edge in edges]
    after = pattern.with_pieces(*strips).with_materials({copying.material: copying.material})
    bare = {edge.name: Allowance("plain", 0.0) for strip in strips for edge in strip.outline}
    return Change(after.with_allowances(bare).with_operations(_laid(context.slug, strips)))


def _strip(pattern: Pattern, edge: str, copying: Copying) -> Piece:
    piece = pattern.piece_of(edge)
    part = folded_back(piece, edge)
    if part is None:
        raise StepRefused("facing-not-folded", edge=spoken(edge))
    if any(told.material == copying.material for told in piece.instructions):
        raise StepRefused("layer-twice", piece=spoken(piece.name), material=copying.material)
    word = f"{last_word(piece.name)}_facing"
    own = with_side(piece_name(copying.slug, word), split_side(piece.name)[1])
    return copy_of(as_piece(piece, part), own, copying)[0]


def _laid(slug: str, strips: list[Piece]) -> Operation:
    titles = listed(tuple(dict.fromkeys(title_of(strip).lower() for strip in strips)))
    text = f"Fuse the {titles} to the wrong side, up to the fold line."
    return Operation(part_name(slug, LAID), "prepare", text, tuple(strip.name for strip in strips))


STEP = StepDefinition(
    operation="fused_facing",
    version=1,
    kind="style",
    phase="derived",
    title="Fused facing",
    sentence="behind {facings}, trimmed by {trimmed}",
    parameters=FusedFacingParameters,
    run=run,
)
