"""Unfold pieces: a half on the fold becomes whole, a pair becomes a left and a right piece.

Names get the wearer's side, ``@left`` or ``@right``; names on the fold stay. Steps that come after it
change one side alone: an asymmetric neckline, a style line on the right. It runs when the garment is whole,
after every step that shapes both sides alike.
"""

from dataclasses import replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import Notch, Pattern, part_name, piece_name, require_one, split_side, spoken
from notchbook.pattern.names import last_word
from notchbook.recipe import Change, PieceName, StepContext, StepDefinition, StepParameters
from notchbook.recipe.sides import unfolded


class UnfoldParameters(StepParameters):
    """The ``pieces`` that are unfolded, all in one step."""

    pieces: Annotated[tuple[PieceName, ...], Field(min_length=1)]
    """Halves on the fold and pairs; what shares an edge's old name with them comes with them."""


def run(pattern: Pattern, context: StepContext, parameters: UnfoldParameters) -> Change:
    """Lay both halves of the pieces out."""
    if any(split_side(name)[1] != "both" for name in pattern.index):
        raise StepRefused("unfold-sides-differ")
    names = {require_one(pattern, name, "piece") for name in parameters.pieces}
    for name in sorted(names):
        if pattern.pieces[name].cut == "single":
            raise StepRefused("unfold-single", piece=spoken(name))
    after = _own_notches(pattern, unfolded(pattern, names), context.slug)
    reason = "the piece was unfolded: say left or right"
    gone = [name for name in pattern.index if name not in after.index]
    return Change(after, removals=dict.fromkeys(gone, reason))


def _own_notches(before: Pattern, after: Pattern, slug: str) -> Pattern:
    """The new notches at both ends of an opened fold, named as made by this step."""
    new = [
        notch
        for name, notch in after.notches.items()
        if name not in before.notches and split_side(name)[1] == "both"
    ]
    named: list[Notch] = []
    for notch in new:
        owner = piece_name(slug, last_word(notch.name.split("/", 1)[0]))
        named.append(replace(notch, name=part_name(owner, last_word(notch.name))))
    return after.with_notches(*named, without=[notch.name for notch in new])


STEP = StepDefinition(
    operation="unfold",
    version=1,
    kind="style",
    phase="whole",
    title="Unfold",
    sentence="{pieces} drawn whole",
    parameters=UnfoldParameters,
    run=run,
)
