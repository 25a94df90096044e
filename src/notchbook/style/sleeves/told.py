"""What a spread sleeve tells: how far its cap sank or rose, and what is gathered to what."""

from collections.abc import Iterator

from notchbook.pattern import Finding, Measured, Severity, spoken, worded
from notchbook.style.sleeves.found import cap_height
from notchbook.style.sleeves.gathers import Gathered
from notchbook.style.sleeves.opened import OpenedSleeve
from notchbook.units import TOLERANCES


def height_told(check: str, opened: OpenedSleeve) -> Iterator[Finding]:
    """How high the cap is now, where spreading or raising changed it."""
    before, now = cap_height(opened.before.cap), cap_height(opened.cap)
    if abs(now - before) > TOLERANCES.closure:
        yield worded(
            check,
            "sleeve-cap-height-changed",
            Severity.NOTE,
            Measured(now, before),
            piece=opened.piece.name,
            where=opened.before.name("crown"),
            before=before,
            now=now,
        )


def gathers_told(check: str, opened: OpenedSleeve, gathered: Gathered, words: str) -> Iterator[Finding]:
    """What is gathered, to how much."""
    yield worded(
        check,
        "sleeve-gathered",
        Severity.NOTE,
        Measured(gathered.cut, gathered.sewn),
        piece=opened.piece.name,
        where=opened.before.name("hem" if words == "hem" else "cap_front"),
        edge=words,
        piece_said=spoken(opened.piece.name),
        cut=gathered.cut,
        sewn=gathered.sewn,
    )
