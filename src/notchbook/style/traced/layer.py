"""A layer behind pieces: the same shape in another material, trimmed or not, with no seams of its own."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import Allowance, Operation, Pattern, Piece, part_name, require_one, spoken, title_of
from notchbook.pattern.operation import LAID, listed
from notchbook.recipe import AmountText, Change, PieceName, StepContext, StepParameters
from notchbook.recipe.parameters import MaterialWord
from notchbook.style.traced.allowance_of import allowance_of
from notchbook.style.traced.copied import Copying, copied
from notchbook.style.traced.inset import inset


class LayerParameters(StepParameters):
    """The ``pieces`` that get the layer, and by how much it is smaller than they are."""

    pieces: Annotated[tuple[PieceName, ...], Field(min_length=1)]
    """The pieces or facings behind which it lies."""
    trimmed: AmountText = "0 cm"
    """How far inside the sew line it ends all round, the fold left out."""
    allowances: bool
    """Whether it keeps the allowances of the piece, to be caught in the seams."""
    material: MaterialWord
    """The material that it is cut in."""


def run_layer(word: str, pattern: Pattern, context: StepContext, parameters: LayerParameters) -> Change:
    """Copy the pieces in the material, trimmed; ``word`` is what the copy is called after its piece.

    StepRefused ``trim-below-nothing`` for a layer that is to be larger than its piece.
    """
    trimmed = context.mm(parameters.trimmed)
    if trimmed < 0.0:
        raise StepRefused("trim-below-nothing", amount=trimmed)
    trims = trimmed, parameters.allowances
    after = layered(pattern, context, parameters.pieces, (word, parameters.material), trims)
    return Change(after.with_operations(_laid(pattern, after, context.slug, parameters.material)))


def _laid(pattern: Pattern, after: Pattern, slug: str, material: str) -> Operation:
    """The line of the sewing order by which the layer and its piece become one."""
    layers = tuple(piece for name, piece in after.pieces.items() if name not in pattern.pieces)
    titles = listed(tuple(dict.fromkeys(title_of(piece).lower() for piece in layers)))
    has_darts = any(intake.kind == "dart" for piece in layers for intake in piece.intakes)
    if material == "fusible":
        text = f"Fuse the {titles} to the wrong side" + (", its darts cut out." if has_darts else ".")
    else:
        text = f"Lay the {titles} behind its piece and baste both together; they are sewn as one."
    return Operation(part_name(slug, LAID), "prepare", text, tuple(piece.name for piece in layers))


def _plain(piece: Piece) -> Piece:
    """The layer without buttons and their holes: they are marked on the piece itself."""
    return replace(
        piece,
        marks=tuple(mark for mark in piece.marks if mark.kind != "button"),
        lines=tuple(line for line in piece.lines if line.kind != "buttonhole"),
    )


def layered(
    pattern: Pattern,
    context: StepContext,
    pieces: Sequence[str],
    layer: tuple[str, str],
    trims: tuple[float, bool],
) -> Pattern:
    """The pattern with a copy of each piece; ``layer``: the word after its title, and its material.

    ``trims``: by how much it is smaller all round, mm, and whether it keeps the allowances of the piece.
    StepRefused ``layer-twice`` for a piece that is cut in this material already.
    """
    word, material = layer
    names = [require_one(pattern, piece, "piece") for piece in pieces]
    for name in names:
        if any(told.material == material for told in pattern.pieces[name].instructions):
            raise StepRefused("layer-twice", piece=spoken(name), material=material)
    copies = copied(pattern, names, Copying(context.slug, context.step, word, material), sewn=False)
    smaller = [inset(_plain(copies.pattern.pieces[name]), trims[0]) for name in copies.pieces]
    after = copies.pattern.with_pieces(*smaller)
    given: dict[str, Allowance] = {}
    for name in names:
        for edge in pattern.pieces[name].outline:
            said = allowance_of(pattern, edge.name) if trims[1] else Allowance("plain", 0.0)
            if said is not None and edge.kind != "fold":
                given[copies.names[edge.name]] = said
    return after.with_allowances(given)
