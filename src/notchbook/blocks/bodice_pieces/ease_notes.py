"""Findings on eases outside their usual range: drafted as asked for, and said."""

from collections.abc import Iterator

from notchbook.blocks.bodice_pieces.eases import LAYER_WORDS
from notchbook.blocks.bodice_pieces.lever_notes import CHECK
from notchbook.blocks.bodice_pieces.promises import Drafted
from notchbook.pattern import Finding, Measured, Severity, part_name, worded

_WORTH_A_WORD = 0.5
"""mm outside the range that is not worth a word."""
_EDGES = {
    "bust": "bust_line",
    "waist": "waist",
    "hip": "hem",
    "neck": "neck",
    "scye": "armhole",
    "across_chest": "armhole",
    "shoulder_longer": "shoulder",
    "shoulder_raised": "shoulder",
    "neck_lowered": "neck",
}
"""On which edge of the front an ease is shown; the others on the back armhole."""


def ease_notes(drafted: Drafted) -> Iterator[Finding]:
    """Each ease that lies outside the usual range of its silhouette, mm."""
    for of, ease in drafted.measures.eases.items():
        least, most = ease.usual
        if least - _WORTH_A_WORD <= ease.value <= most + _WORTH_A_WORD:
            continue
        is_hip_missing = of == "hip" and drafted.hip is None
        if is_hip_missing:
            continue
        piece = drafted.names.piece("front" if of in _EDGES else "back")
        is_lowered = of == "scye" and ease.value > most
        yield worded(
            CHECK,
            "armhole-lowered" if is_lowered else "ease-unusual",
            Severity.LOOK,
            Measured(ease.value, most if ease.value > most else least),
            piece=piece,
            where=part_name(piece, _EDGES.get(of, "armhole")),
            of=LAYER_WORDS.get(of, of.replace("_", " ")),
            least=least,
            most=most,
            below=ease.value - most,
        )
