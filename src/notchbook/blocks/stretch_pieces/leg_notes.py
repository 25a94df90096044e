"""What the leggings have to say of themselves: closed is not yet good."""

from collections.abc import Iterator

from notchbook.blocks.stretch_fabric.cloth import Cloth
from notchbook.blocks.stretch_pieces.cloth_notes import CHECK, cloth_notes
from notchbook.blocks.stretch_pieces.cuts import cut_rows
from notchbook.blocks.stretch_pieces.leg_promises import DraftedLeg
from notchbook.blocks.stretch_pieces.passing import Passage, passing_notes
from notchbook.pattern import Finding, Measured, Severity, worded

_UNSEEN = 0.5
"""mm that a lever may be pulled without a word."""


def leggings_notes(
    drafted: DraftedLeg, cloth: Cloth, heel: float | None, hem_wider: float
) -> Iterator[Finding]:
    """Cloth, levers, the elastic, and what does not pass; ``heel`` as measured, ``hem_wider`` what was added
    for it, mm."""
    piece = next(iter(drafted.pieces.values())).name
    yield from cloth_notes(cloth, drafted.taken, piece)
    yield from _levers(drafted, piece)
    yield from passing_notes(_passages(drafted, piece, heel), cloth.across)
    if hem_wider > _UNSEEN:
        hem = drafted.edges("hem")[0]
        yield worded(
            CHECK, "leggings-hem-widened", Severity.NOTE, Measured(hem_wider, 0.0), piece=piece, where=hem
        )
    row = cut_rows()["elastic.waist"]
    length = Measured(row.value * drafted.taken["waist_girth"].body)
    yield worded(CHECK, "waist-elastic", Severity.NOTE, length, piece=piece, share=100.0 * row.value)


_EASILY_GATHERED = 1.10
"""A waist edge up to so much of the body's waist is drawn in by the elastic unseen (own judgment)."""

_SAID_BY_THE_WAIST = ("waist_left_wide", "center_slants")
"""Levers that stand at their limit where the waist edge is left wide: it speaks for them."""


def _levers(drafted: DraftedLeg, piece: str) -> Iterator[Finding]:
    wide = drafted.pulled("waist_left_wide")
    if wide > _UNSEEN:
        most = _EASILY_GATHERED * drafted.taken["waist_girth"].body
        severity = Severity.NOTE if drafted.given.waist + wide <= most else Severity.LOOK
        yield worded(CHECK, "leggings-waist-wide", severity, Measured(wide, 0.0), piece=piece)
    for lever in drafted.leg.levers:
        if lever.at_limit and not (wide > _UNSEEN and lever.name in _SAID_BY_THE_WAIST):
            limit = lever.least if lever.pulled <= lever.least else lever.most
            yield worded(
                CHECK,
                "leggings-forced",
                Severity.LOOK,
                Measured(lever.pulled, limit, lever.unit),
                piece=piece,
                lever=lever.name.replace("_", " "),
            )


def _passages(drafted: DraftedLeg, piece: str, heel: float | None) -> Iterator[Passage]:
    """The hip through the waist edge, the heel through the hem."""
    given = drafted.given
    waist = drafted.edges("waist")[0]
    yield Passage(
        "the hip",
        "the waist",
        given.waist + drafted.pulled("waist_left_wide"),
        drafted.taken["hip_girth"].body,
        piece,
        waist,
    )
    if heel is not None:
        hem = drafted.edges("hem")[0]
        yield Passage("the heel", "the hem", given.ankle, heel, piece, hem)
