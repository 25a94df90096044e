"""What is said of a hem far below the hip: how far its cloth must stretch at a step."""

from collections.abc import Iterator
from math import hypot

from notchbook.blocks.stretch_fabric.cloth import Cloth
from notchbook.blocks.stretch_pieces.cloth_notes import CHECK, COMFORTABLE_SHARE
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.promises import Drafted
from notchbook.pattern import Finding, Measured, Severity, worded
from notchbook.units import stretch_needed


def stride_notes(drafted: Drafted, cloth: Cloth) -> Iterator[Finding]:
    """By how much a hem below the seat stretches at a step, and one that lets nobody walk."""
    given = drafted.given
    below = given.length - given.hip_depth
    if below < cut("stride.from"):
        return
    hem = 4.0 * drafted.half.back.side.end.x
    stride = stride_girth(drafted.taken["hip_girth"].body, below)
    needed = stretch_needed(hem, stride)
    if needed <= 0.0:
        return
    is_free = needed <= COMFORTABLE_SHARE * cloth.across
    yield worded(
        CHECK,
        "stretch-hem-stride" if is_free else "stretch-hem-narrow",
        Severity.NOTE if is_free else Severity.LOOK,
        Measured(hem, stride),
        where=drafted.names.at("front", "hem"),
        needed=100.0 * needed,
        gives=100.0 * cloth.across,
    )


def stride_girth(hip: float, below: float) -> float:
    """Round both legs of a body of this hip at a walking step, so far below the hip line, mm: two circles of
    a leg's girth with a thread round them, one before the other and beside it."""
    apart = hypot(cut("stride.forward") * below, cut("stride.beside"))
    thin = min(below / cut("stride.knee"), 1.0)
    leg = hip * (cut("stride.thigh") + thin * (cut("stride.leg") - cut("stride.thigh")))
    return 2.0 * apart + leg
