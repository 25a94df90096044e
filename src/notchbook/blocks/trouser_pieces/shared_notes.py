"""Findings on the one crotch seam of two legs that differ."""

from collections.abc import Iterator

from notchbook.blocks.trouser_pieces.note_limits import CHECK, note_limit
from notchbook.blocks.trouser_pieces.promises import Drafted
from notchbook.pattern import Finding, Measured, Severity, worded

_UNSEEN = 0.5
"""mm."""


def shared_notes(drafted: Drafted) -> Iterator[Finding]:
    """By how much each part of the shared crotch seam is longer or shorter than this leg alone would have it,
    mm."""
    for panel, more in zip(("front", "back"), drafted.shared, strict=True):
        if abs(more) <= _UNSEEN:
            continue
        own = getattr(drafted.half, panel).crotch.length - more
        yield worded(
            CHECK,
            "trousers-crotch-shared",
            Severity.LOOK if abs(more) > note_limit("amounts.shared") else Severity.NOTE,
            Measured(own + more, own),
            where=drafted.names.at(panel, "crotch_seam"),
            panel=panel,
            by=abs(more),
            way="longer" if more > 0.0 else "shorter",
        )
