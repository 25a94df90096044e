"""What torso and dress have to say of what lies below the waist."""

from collections.abc import Iterator

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.bodice_pieces.promises import Drafted
from notchbook.blocks.joined.lengths import HemLength
from notchbook.blocks.skirts.halves import MOST_SIDE_TAKE_IN, Half
from notchbook.blocks.skirts.straight_notes import draft_notes as skirt_notes
from notchbook.pattern import Finding, Measured, Severity, worded

CHECK = "dress-draft"
"""The name under which the blocks speak."""


def length_notes(names: PanelNames, hem: HemLength) -> Iterator[Finding]:
    """A length that rests on the height, because the way to the knee was not measured."""
    if hem.is_assumed:
        amount = Measured(hem.length)
        yield worded(CHECK, "hem-level-assumed", Severity.NOTE, amount, where=names.at("back", "hem"))


def waist_notes(upper: Drafted, half: Half) -> Iterator[Finding]:
    """The skirt's own notes; sides that take in much where the darts are few."""
    names = PanelNames(upper.names.slug, "skirt")
    hip = upper.measures.hip
    raised = half.hip - hip.hip if hip is not None else 0.0
    yield from skirt_notes(names, half, -raised)
    if half.take_in > MOST_SIDE_TAKE_IN + 0.05:
        amount = Measured(half.take_in, MOST_SIDE_TAKE_IN)
        yield worded(CHECK, "skirt-side-takes-in-much", Severity.LOOK, amount, where=names.side_seam)
