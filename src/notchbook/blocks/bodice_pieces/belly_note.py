"""What is said of a belly: no upper block is shaped over one yet."""

from collections.abc import Iterator

from notchbook.blocks.bodice_pieces.bodice_measures import BELLY
from notchbook.blocks.bodice_pieces.lever_notes import CHECK
from notchbook.blocks.bodice_pieces.promises import Drafted
from notchbook.pattern import Finding, Measured, Severity, worded


def belly_note(drafted: Drafted) -> Iterator[Finding]:
    """A belly that the girth at the hip, the widest below the waist, does not hold with its least ease, mm.

    Where it does not hold it at all, the garment can not be closed: a stop.
    """
    measures = drafted.measures
    belly = measures.body.get(BELLY)
    if measures.hip is None or belly is None:
        return
    least = belly + measures.eases["hip"].usual[0]
    if measures.hip.hip >= least:
        return
    severity = Severity.STOP if measures.hip.hip < belly else Severity.LOOK
    piece = drafted.names.piece("front")
    yield worded(
        CHECK,
        "belly-not-held",
        severity,
        Measured(measures.hip.hip, least),
        piece=piece,
        belly=belly,
        girth=measures.hip.hip,
    )
