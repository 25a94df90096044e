"""A layer behind pieces: the same shape in another material, trimmed or not, with no seams of its own."""

from collections.abc import Sequence

from notchbook.errors import StepRefused
from notchbook.pattern import Allowance, Pattern, require_one, spoken
from notchbook.recipe import StepContext
from notchbook.style.traced.allowance_of import allowance_of
from notchbook.style.traced.copied import Copying, copied
from notchbook.style.traced.inset import inset


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
    smaller = [inset(copies.pattern.pieces[name], trims[0]) for name in copies.pieces]
    after = copies.pattern.with_pieces(*smaller)
    given: dict[str, Allowance] = {}
    for name in names:
        for edge in pattern.pieces[name].outline:
            said = allowance_of(pattern, edge.name) if trims[1] else Allowance("plain", 0.0)
            if said is not None and edge.kind != "fold":
                given[copies.names[edge.name]] = said
    return after.with_allowances(given)
