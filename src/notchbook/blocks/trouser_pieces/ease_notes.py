"""Findings on eases outside their usual range: drafted as asked for, and said."""

from collections.abc import Iterator

from notchbook.blocks.trouser_pieces.note_limits import CHECK
from notchbook.blocks.trouser_pieces.promises import Drafted
from notchbook.pattern import Finding, Measured, Severity, worded

_WORTH_A_WORD = 0.5
"""mm outside the range that is not worth a word."""

_WHERE = {"waist": "waist", "hip": "hip_line", "thigh": "crotch_line"}
"""On which edge or line an ease is shown; the others on the crotch seam."""


def ease_notes(drafted: Drafted) -> Iterator[Finding]:
    """Each ease that lies outside the usual range of its silhouette, mm."""
    for of, ease in drafted.measures.eases.items():
        least, most = ease.usual
        if least - _WORTH_A_WORD <= ease.value <= most + _WORTH_A_WORD:
            continue
        yield worded(
            CHECK,
            "trousers-ease-unusual",
            Severity.LOOK,
            Measured(ease.value, most if ease.value > most else least),
            where=drafted.names.at("front", _WHERE.get(of, "crotch_seam")),
            of=ease.row.of,
            least=least,
            most=most,
        )
