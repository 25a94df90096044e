"""Findings on belly and high hip: girths between waist and hip that the finished trousers do not reach."""

from collections.abc import Iterator

from notchbook.blocks.legs.between import girth_between
from notchbook.blocks.trouser_pieces.note_limits import CHECK
from notchbook.blocks.trouser_pieces.promises import Drafted
from notchbook.body import measure_entry
from notchbook.pattern import Finding, Measured, Severity, worded

_UNSEEN = 0.5
"""mm."""

_KEYS = ("belly_girth", "top_hip_girth")
"""The measures of such levels."""


def level_notes(drafted: Drafted) -> Iterator[Finding]:
    """A finding for each level that is tighter than asked: look at it, or stop the papers where the trousers
    are smaller than the body."""
    ease = drafted.measures.eases["waist"].value
    for level in drafted.given.between:
        girth = girth_between(drafted.half, drafted.given, level)
        if level.girth - girth <= _UNSEEN:
            continue
        body = level.girth - ease
        closes = girth >= body - _UNSEEN
        yield worded(
            CHECK,
            "trousers-level-tight" if closes else "trousers-level-does-not-close",
            Severity.LOOK if closes else Severity.STOP,
            Measured(girth, level.girth),
            where=drafted.names.at("front", "waist"),
            level=_label(drafted, body),
            girth=body,
            depth=level.depth,
            short=level.girth - girth,
        )


def _label(drafted: Drafted, body: float) -> str:
    """What the level is called: the measure that was taken there."""
    known = drafted.measures.body
    key = min((one for one in _KEYS if one in known), key=lambda one: abs(known[one] - body))
    return measure_entry(key).label.lower()
