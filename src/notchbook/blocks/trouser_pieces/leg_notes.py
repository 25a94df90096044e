"""Findings on the legs of the trousers: a thigh that is held closely, a hem through which no foot passes."""

from collections.abc import Iterator

from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.trouser_pieces.note_limits import CHECK
from notchbook.blocks.trouser_pieces.promises import Drafted
from notchbook.pattern import Finding, Measured, Severity, worded

_UNSEEN = 0.5
"""mm."""


def leg_notes(drafted: Drafted) -> Iterator[Finding]:
    """What the thigh lacks of its ease, and what the hem lacks to pass over heel or calf, mm."""
    half, names, measures = drafted.half, drafted.names, drafted.measures
    # The body's thigh too is smaller farther down.
    thigh = min(half.thigh, half.thigh_below + proportion("thigh.less_below"))
    if thigh < drafted.given.thigh - _UNSEEN:
        body = measures.body["thigh_girth"]
        yield worded(
            CHECK,
            "trousers-thigh-close",
            _severity(thigh, body) if measures.is_thigh_taken else Severity.NOTE,
            Measured(thigh, drafted.given.thigh),
            where=names.at("front", "crotch_line"),
            thigh=body,
        )
    hem, must_pass = drafted.given.hem, measures.widths.must_pass
    if hem is not None and must_pass is not None and hem < must_pass - _UNSEEN:
        amount = Measured(hem, must_pass)
        where = names.at("front", "hem")
        of = measures.widths.passes
        yield worded(CHECK, "trousers-hem-narrow", Severity.LOOK, amount, where=where, of=of)


def _severity(thigh: float, body: float) -> Severity:
    """A leg that is smaller than the thigh cannot be put on."""
    return Severity.STOP if thigh < body else Severity.LOOK
