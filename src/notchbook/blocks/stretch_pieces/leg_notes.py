"""What the leggings have to say of themselves: closed is not yet good."""

from collections.abc import Iterator

from notchbook.blocks.stretch_fabric.cloth import Cloth
from notchbook.blocks.stretch_pieces.cloth_notes import CHECK, cloth_notes
from notchbook.blocks.stretch_pieces.cuts import cut_rows
from notchbook.blocks.stretch_pieces.leg_promises import DraftedLeg
from notchbook.blocks.stretch_pieces.leggings_measures import LeggingsRead
from notchbook.blocks.stretch_pieces.passing import Passage, passing_notes
from notchbook.pattern import Finding, Measured, Severity, worded

_UNSEEN = 0.5
"""mm that a lever may be pulled without a word."""


def leggings_notes(
    drafted: DraftedLeg, cloth: Cloth, heel: float | None, read: LeggingsRead
) -> Iterator[Finding]:
    """Cloth, levers, the elastic, what does not pass, and a knee that lies nowhere on the leg; ``heel`` as
    measured, mm."""
    piece = next(iter(drafted.pieces.values())).name
    yield from cloth_notes(cloth, drafted.taken, piece)
    yield from _levers(drafted, piece)
    yield from _eased(drafted, piece)
    yield from passing_notes(_passages(drafted, piece, heel), cloth.across)
    if read.hem_wider > _UNSEEN:
        hem, wider = drafted.edges("hem")[0], Measured(read.hem_wider, 0.0)
        yield worded(CHECK, "leggings-hem-widened", Severity.NOTE, wider, piece=piece, where=hem)
    if read.knee_left_out is not None:
        yield worded(
            CHECK,
            "leggings-knee-left-out",
            Severity.LOOK,
            Measured(read.knee_left_out),
            piece=piece,
            knee=read.knee_left_out,
            rise=drafted.given.rise,
        )
    row = cut_rows()["elastic.waist"]
    length = Measured(row.value * drafted.taken["waist_girth"].body)
    yield worded(CHECK, "waist-elastic", Severity.NOTE, length, piece=piece, share=100.0 * row.value)


_EASILY_GATHERED = 1.10
"""A waist edge up to so much of the body's waist is drawn in by the elastic unseen (own judgment)."""

_SAID_BY_THE_WAIST = ("waist_left_wide", "center_slants")
"""Levers that stand at their limit where the waist edge is left wide: it speaks for them."""

AT_LIMIT = {
    "fork": ("The legs reach out as little as they may", "The legs reach out as far as they may"),
    "center_slants": (
        "The centers lean outward to the waist as far as they may",
        "The centers lean in to the waist as far as they may",
    ),
    "crotch_depth": (
        "The crotch lies higher than the rise says, as far as it may",
        "The crotch lies lower than the rise says, as far as it may",
    ),
    "crotch_moved": (
        "The back crotch is longer and the front shorter than measured, as far as they may",
        "The front crotch is longer and the back shorter than measured, as far as they may",
    ),
    "waist_left_wide": ("The waist is as wide as it may be left",) * 2,
    "hip_line_raised": ("The hip's width is held higher than the hip line, as far as it may",) * 2,
    "front_rise": (
        "The waist lies as low at the center front as it may",
        "The waist stands as high at the center front as it may",
    ),
    "back_rise": (
        "The waist lies as low at the center back as it may",
        "The waist stands as high at the center back as it may",
    ),
}
"""What is said of each lever at its least and at its most."""


def _levers(drafted: DraftedLeg, piece: str) -> Iterator[Finding]:
    wide = drafted.pulled("waist_left_wide")
    if wide > _UNSEEN:
        most = _EASILY_GATHERED * drafted.taken["waist_girth"].body
        severity = Severity.NOTE if drafted.given.waist + wide <= most else Severity.LOOK
        code = "leggings-waist-wide-at-side" if drafted.given.side_seam else "leggings-waist-wide"
        yield worded(CHECK, code, severity, Measured(wide, 0.0), piece=piece)
    for lever in drafted.leg.levers:
        if lever.at_limit and not (wide > _UNSEEN and lever.name in _SAID_BY_THE_WAIST):
            at_least = lever.pulled <= lever.least
            limit = lever.least if at_least else lever.most
            yield worded(
                CHECK,
                "leggings-forced",
                Severity.LOOK,
                Measured(lever.pulled, limit, lever.unit),
                piece=piece,
                what=AT_LIMIT[lever.name][0 if at_least else 1],
            )


def _eased(drafted: DraftedLeg, piece: str) -> Iterator[Finding]:
    """What thigh, knee and calf gave way for an inseam without humps."""
    ease = drafted.leg.ease
    for code, by in (
        ("leggings-thigh-narrowed", -ease.thigh),
        ("leggings-knee-widened", ease.knee),
        ("leggings-calf-narrowed", -ease.calf),
    ):
        if abs(by) > _UNSEEN:
            yield worded(CHECK, code, Severity.NOTE, Measured(by, 0.0), piece=piece)


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
