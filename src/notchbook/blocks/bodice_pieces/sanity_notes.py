"""Findings on what came out, against limits near 1 and 99 of 100 drafts of surveyed women."""

from collections.abc import Iterator

from notchbook.blocks.bodice_pieces.lever_notes import CHECK
from notchbook.blocks.bodice_pieces.promises import Drafted
from notchbook.blocks.upper.proportions import proportion
from notchbook.pattern import Finding, Measured, Severity, worded

USUAL_BACK_LENGTH = 410.0
"""mm; heights on the body are compared after scaling to this back length."""

SIDE_SEAM = (95.0, 260.0)
BUST_HEIGHT = (90.0, 260.0)
"""mm at the usual back length: side seam, and bust point over the waist. Own judgment, from drafts."""

SIDE_TAKE_IN = (-15.0, 48.0)
"""mm that one panel gives up at the side from the hip to the waist: as the skirt's."""

MOST_BACK_OVER_FRONT = 40.0
"""mm by which the back armhole is longer than the front, near 99 % of surveyed women. Own judgment, from
drafts; the least stands with the figures that the draft keeps to."""

_SHORT_LONG = ("short", "long")
_WAYS = {"bust-point-height": ("low", "high"), "side-takes-in-much": ("out", "in")}
"""The words for a value below and above its limits."""

MOST_SUPPRESSION = 150.0
"""mm; half the bust less half the waist, eases in: beyond it a seam should take some. Own judgment."""

SLOPES = (10.0, 38.0)
"""Degrees of the shoulder as measured. Own judgment, far outside a sample of 600 women."""


def sanity_notes(drafted: Drafted) -> Iterator[Finding]:
    """Lengths and angles that are hardly ever so."""
    names, half, given = drafted.names, drafted.half, drafted.measures.given
    scale = given.back_length / USUAL_BACK_LENGTH
    side = half.back.side.length
    yield from _outside("side-seam-length", side, SIDE_SEAM, scale, names.side_seam)
    if given.bust_shape is not None:
        point = names.at("front", "bust_point")
        yield from _outside("bust-point-height", half.front.bust_point.y, BUST_HEIGHT, scale, point)
    apart = half.back.armhole.length - half.front.armhole.length
    armhole = names.at("back", "armhole")
    usual = proportion("armhole.least_back_over_front"), MOST_BACK_OVER_FRONT
    yield from _outside("armholes-apart", apart, usual, 1.0, armhole)
    yield from _suppression(drafted)
    if drafted.hip is not None:
        seam = names.side_seam
        yield from _outside("side-takes-in-much", drafted.hip.take_in, SIDE_TAKE_IN, 1.0, seam)
    slope = drafted.measures.body.get("shoulder_slope")
    if slope is not None and not SLOPES[0] <= slope <= SLOPES[1]:
        limit = SLOPES[0] if slope < SLOPES[0] else SLOPES[1]
        yield worded(CHECK, "shoulder-slope-unusual", Severity.LOOK, Measured(slope, limit, "deg"))


def _outside(
    code: str, value: float, limits: tuple[float, float], scale: float, where: str
) -> Iterator[Finding]:
    low, high = limits[0] * scale, limits[1] * scale
    if not low <= value <= high:
        way = _WAYS.get(code, _SHORT_LONG)[value > high]
        limit = low if value < low else high
        yield worded(CHECK, code, Severity.LOOK, Measured(value, limit), where=where, way=way)


def _suppression(drafted: Drafted) -> Iterator[Finding]:
    given = drafted.measures.given
    if given.waist is None:
        return
    taken = (given.bust - given.waist) / 2.0
    if taken > MOST_SUPPRESSION:
        where = drafted.names.at("front", "waist")
        yield worded(
            CHECK, "waist-asks-for-a-seam", Severity.LOOK, Measured(taken, MOST_SUPPRESSION), where=where
        )
