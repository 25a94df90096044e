"""How the garment is put on: what must pass an opening, and whether the cloth stretches so far."""

from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.blocks.stretch_pieces.cloth_notes import CHECK
from notchbook.pattern import Cure, Finding, Measured, Severity, worded
from notchbook.units import stretch_needed


@dataclass(frozen=True, slots=True)
class Passage:
    """One opening and what must pass it: ``what`` passes ``opening`` (words), of which the pattern has
    ``length`` mm, over ``girth`` mm. ``cure`` would let it pass."""

    what: str
    opening: str
    length: float
    girth: float
    piece: str
    where: str
    cures: tuple[Cure, ...] = ()


def passing_notes(passages: Iterator[Passage], stretch: float) -> Iterator[Finding]:
    """What does not pass; ``stretch`` is what the cloth gives round the body, a share."""
    for one in passages:
        needed = stretch_needed(one.length, one.girth)
        if needed <= stretch:
            continue
        yield worded(
            CHECK,
            "does-not-pass",
            Severity.LOOK,
            Measured(one.length, one.girth / (1.0 + stretch)),
            piece=one.piece,
            where=one.where,
            what=one.what,
            opening=one.opening,
            needed=100.0 * needed,
            stretch=100.0 * stretch,
            cures=one.cures,
        )
