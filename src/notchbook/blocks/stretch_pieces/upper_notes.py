"""What torso and bodysuit have to say of themselves: closed is not yet good."""

from collections.abc import Iterator

from notchbook.blocks.stretch.given import BodysuitGiven
from notchbook.blocks.stretch.shapes import BodysuitHalf
from notchbook.blocks.stretch_fabric.cloth import Cloth
from notchbook.blocks.stretch_pieces.cloth_notes import CHECK, COMFORTABLE_SHARE, cloth_notes
from notchbook.blocks.stretch_pieces.cuts import cut_rows
from notchbook.blocks.stretch_pieces.front_notes import front_notes
from notchbook.blocks.stretch_pieces.passing import Passage, passing_notes
from notchbook.blocks.stretch_pieces.promises import Drafted
from notchbook.blocks.stretch_pieces.upper_measures import TorsoRead
from notchbook.blocks.upper.shapes import Lever
from notchbook.pattern import Finding, Measured, Severity, worded
from notchbook.units import stretch_needed

_UNSEEN = 0.5
"""mm that a lever may be pulled without a word."""

_WORTH_A_LOOK = 20.0
"""mm by which a shoulder or a width may give way before it is to be looked at (own judgment)."""


def upper_notes(
    drafted: Drafted, cloth: Cloth, passages: Iterator[Passage], read: TorsoRead
) -> Iterator[Finding]:
    """Cloth, levers, what was assumed, and what does not pass."""
    piece = drafted.names.piece("front")
    yield from cloth_notes(cloth, drafted.taken, piece)
    yield from _given_way(drafted)
    yield from _moved(drafted)
    yield from front_notes(drafted, is_woman=read.is_woman)
    yield from _armhole(drafted)
    yield from _sleeve(drafted)
    yield from passing_notes(passages, cloth.across)
    if read.hem_wider > _UNSEEN:
        hem = drafted.names.at("sleeve", "hem")
        yield worded(
            CHECK, "sleeve-hem-widened-for-hand", Severity.NOTE, Measured(read.hem_wider, 0.0), where=hem
        )
    if read.slope_error is not None:
        slope = Measured(drafted.given.shoulder_slope, None, "deg")
        where = drafted.names.at("back", "shoulder")
        yield worded(
            CHECK,
            "shoulder-slope-assumed",
            Severity.NOTE,
            slope,
            where=where,
            slope=drafted.given.shoulder_slope,
            error=read.slope_error,
        )


def bodysuit_notes(
    drafted: Drafted, given: BodysuitGiven, half: BodysuitHalf, cloth: Cloth, loop: float | None
) -> Iterator[Finding]:
    """Leg opening and elastic, and the trunk loop where it was measured (mm)."""
    height, wanted = drafted.lever("leg_height"), given.leg_opening
    where = drafted.names.at("back", "leg_opening")
    piece = drafted.names.piece("back")
    if wanted is not None and height is not None and height.at_limit:
        opening = Measured(half.leg_opening, wanted)
        yield worded(CHECK, "leg-opening-not-reached", Severity.LOOK, opening, piece=piece, where=where)
    row = cut_rows()["elastic.leg"]
    elastic = Measured(row.value * half.leg_opening)
    front = half.front.leg.length
    yield worded(
        CHECK,
        "leg-elastic",
        Severity.NOTE,
        elastic,
        piece=piece,
        where=where,
        share=100.0 * row.value,
        front=front,
        back=row.value * half.leg_opening - front,
    )
    yield from _edge_elastics(drafted, half)
    if loop is not None:
        yield from _trunk_loop(drafted, half, cloth, loop)


def _edge_elastics(drafted: Drafted, half: BodysuitHalf) -> Iterator[Finding]:
    """What the elastics of neck and armhole are cut to."""
    share = cut_rows()["elastic.edge"].value
    lengths = {"neck": 2.0 * (half.front.neck.length + half.back.neck.length)}
    if half.sleeve is None:
        lengths["armhole"] = half.front.armhole.length + half.back.armhole.length
    for word, length in lengths.items():
        yield worded(
            CHECK,
            "edge-elastic",
            Severity.NOTE,
            Measured(share * length),
            piece=drafted.names.piece("front"),
            where=drafted.names.at("front", word),
            edge=word,
            share=100.0 * share,
        )


def _trunk_loop(drafted: Drafted, half: BodysuitHalf, cloth: Cloth, loop: float) -> Iterator[Finding]:
    needed = stretch_needed(half.trunk_loop, loop)
    given = COMFORTABLE_SHARE * (cloth.along or 0.0)
    if needed <= given:
        return
    yield worded(
        CHECK,
        "trunk-too-short",
        Severity.LOOK,
        Measured(half.trunk_loop, loop / (1.0 + given)),
        piece=drafted.names.piece("front"),
        where=drafted.names.at("front", "center_front"),
        needed=100.0 * needed,
        comfortable=100.0 * given,
    )


def _given_way(drafted: Drafted) -> Iterator[Finding]:
    shoulder, armhole = drafted.names.at("front", "shoulder"), drafted.names.at("back", "armhole")
    for name, code, sign, where, ways in (
        ("shoulder_narrowed", "stretch-shoulder-changed", -1.0, shoulder, ("out", "in")),
        ("across_back", "stretch-across-changed", 1.0, armhole, ("wider", "narrower")),
    ):
        lever = drafted.lever(name)
        if lever is None or abs(lever.pulled) <= _UNSEEN:
            continue
        is_much = lever.at_limit or abs(lever.pulled) > _WORTH_A_LOOK
        severity = Severity.LOOK if is_much else Severity.NOTE
        outward = sign * lever.pulled
        way = ways[0] if outward > 0.0 else ways[1]
        yield worded(CHECK, code, severity, Measured(outward, 0.0), where=where, way=way)


def _moved(drafted: Drafted) -> Iterator[Finding]:
    """A bust that suits the across back, a waist that is left wider for the side seam, a strap that lies
    farther out."""
    bust = drafted.pulled("bust_wider")
    if abs(bust) > _UNSEEN:
        underarm = drafted.names.at("front", "underarm")
        way = "wider" if bust > 0.0 else "narrower"
        yield worded(
            CHECK, "stretch-bust-changed", Severity.NOTE, Measured(bust, 0.0), where=underarm, way=way
        )
    wider, side = drafted.lever("waist_wider"), drafted.names.at("front", "side_seam")
    if wider is not None and wider.pulled > _UNSEEN:
        code = "stretch-side-leans" if wider.at_limit else "stretch-waist-loosened"
        severity = Severity.LOOK if wider.at_limit else Severity.NOTE
        yield worded(CHECK, code, severity, Measured(wider.pulled, 0.0), where=side)
    out, shoulder = drafted.pulled("strap_moved_out"), drafted.names.at("front", "shoulder")
    if out > _UNSEEN:
        yield worded(CHECK, "stretch-strap-moved-out", Severity.NOTE, Measured(out, 0.0), where=shoulder)


def _armhole(drafted: Drafted) -> Iterator[Finding]:
    room, where = drafted.lever("armhole_room"), drafted.names.at("front", "armhole")
    if room is not None and room.at_limit:
        limit = room.most if room.pulled >= room.most else room.least
        is_pouch = room.pulled >= room.most
        code = "stretch-armhole-deep" if is_pouch else "stretch-armhole-shallow"
        yield worded(CHECK, code, Severity.LOOK, Measured(room.pulled, limit, ""), where=where)
    lowered = drafted.lever("underarm_lowered")
    if lowered is not None and lowered.pulled > _UNSEEN:
        severity = Severity.LOOK if lowered.at_limit else Severity.NOTE
        yield worded(CHECK, "stretch-underarm-lowered", severity, Measured(lowered.pulled, 0.0), where=where)


def _sleeve(drafted: Drafted) -> Iterator[Finding]:
    wider, height = drafted.lever("sleeve_wider"), drafted.lever("cap_height")
    sleeve = drafted.names.piece("sleeve")
    if wider is not None and wider.pulled > _UNSEEN:
        severity = Severity.LOOK if wider.at_limit else Severity.NOTE
        yield worded(CHECK, "stretch-sleeve-widened", severity, Measured(wider.pulled, 0.0), piece=sleeve)
    hem = drafted.pulled("sleeve_hem_wider")
    if hem > _UNSEEN:
        where = drafted.names.at("sleeve", "hem")
        yield worded(
            CHECK, "stretch-sleeve-hem-widened", Severity.NOTE, Measured(hem, 0.0), piece=sleeve, where=where
        )
    longer = drafted.pulled("sleeve_longer")
    if longer > _UNSEEN:
        yield worded(CHECK, "stretch-sleeve-lengthened", Severity.LOOK, Measured(longer, 0.0), piece=sleeve)
    if height is not None and _beyond(height):
        limit = height.least if height.pulled < height.least else height.most
        yield worded(
            CHECK, "stretch-cap-unusual", Severity.LOOK, Measured(height.pulled, limit, ""), piece=sleeve
        )


def _beyond(lever: Lever) -> bool:
    return not lever.least <= lever.pulled <= lever.most
