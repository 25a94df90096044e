"""Torso and dress without a waist seam: panels in one piece from the shoulder to the hem."""

from dataclasses import replace

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.bodice_pieces.drafting import LowerEnd, draft_upper, upper_change
from notchbook.blocks.bodice_pieces.parameters import UpperParameters
from notchbook.blocks.joined.hem_promise import hem_promise
from notchbook.blocks.joined.lengths import HemLength
from notchbook.blocks.joined.notes import length_notes
from notchbook.pattern import Pattern
from notchbook.recipe import Change, StepContext


def one_piece_change(
    pattern: Pattern, context: StepContext, parameters: UpperParameters, hem: HemLength
) -> Change:
    """The panels down to this hem in the pattern, what is promised of them and what is to be said."""
    end, names = LowerEnd(hem.length, "hem_dress"), PanelNames(context.slug)
    drafted = draft_upper(context, parameters, names, end)
    change = upper_change(pattern, context, parameters, drafted, end)
    return replace(
        change,
        expectations=(*change.expectations, hem_promise(names, hem.length)),
        notes=(*change.notes, *length_notes(names, hem)),
    )
