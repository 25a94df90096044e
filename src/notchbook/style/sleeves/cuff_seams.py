"""How a cuff is sewn: its seams, notches, lines of the sewing order, and whether the hand passes."""

from collections.abc import Iterator
from itertools import accumulate

from notchbook.pattern import (
    EdgeUse,
    Finding,
    Measured,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    Severity,
    part_name,
    run_length,
    worded,
)
from notchbook.pattern.operation import Operation
from notchbook.pattern.run_place import place_on
from notchbook.recipe import StepContext
from notchbook.style.sleeves.figures import HAND_ROOM
from notchbook.style.sleeves.wrist import Wrist

_BALANCE = (0.4, 0.35, 0.45, 0.3, 0.6, 0.25)
"""Shares of the hem before the seam of the sleeve at which it may be notched to its cuff, off the middle; the
first that is clear of pleats and gathers is taken. Common practice, no source."""

_CLEAR = 12.0
"""mm that this notch stays off the ends of pleats and gathers, as far as the two of a double notch stand
apart, so that it is not read as one of them. Own judgment."""


def cuff_seams(slug: str, cuff: str, wrist: Wrist, *, is_ring: bool) -> Iterator[Seam]:
    """The cuff on the hem, from its upper end round the arm; the ring closed where nothing opens.

    The outer layer is sewn on plain. That the inner one is then stitched down over the allowances stands in
    the sewing order, in words: under which number ISO 4916 has the finished seam, nobody here is sure of.
    """
    edge = EdgeUse(part_name(cuff, "cuff_edge"), part_name(cuff, "cuff_edge_start"))
    yield Seam(part_name(slug, "cuff_seam"), (edge,), wrist.uses, allowance_class="cuff")
    if is_ring:
        first = EdgeUse(part_name(cuff, "upper_end"), part_name(cuff, "cuff_edge_start"))
        second = EdgeUse(part_name(cuff, "lower_end"), part_name(cuff, "cuff_edge_end"))
        yield Seam(part_name(slug, "cuff_end"), (first,), (second,), allowance_class="cuff")


def cuff_notches(pattern: Pattern, slug: str, cuff: str, wrist: Wrist) -> Iterator[Notch]:
    """A pair off the middle that spreads the gathers, and where the seam of the sleeve comes to lie."""
    seam, edge, start = (
        part_name(slug, "cuff_seam"),
        part_name(cuff, "cuff_edge"),
        part_name(cuff, "cuff_edge_start"),
    )
    first = run_length(pattern, wrist.uses[: wrist.before_seam])
    along = _balance(pattern, wrist, first)
    mate = place_on(pattern, wrist.uses, along)
    yield Notch(part_name(cuff, "cuff_notch"), Place(edge, start, along), "single", seam, "sleeve")
    yield Notch(part_name(slug, "cuff_notch"), mate, "single", seam, "cuff")
    if len(wrist.uses) > wrist.before_seam:
        yield Notch(part_name(cuff, "seam_notch"), Place(edge, start, first), purpose="sleeve seam")


def _balance(pattern: Pattern, wrist: Wrist, whole: float) -> float:
    """How far along the hem, of which so much lies before the seam of the sleeve, its balance notch stands;
    mm as sewn."""
    joints = list(accumulate(run_length(pattern, (use,)) for use in wrist.uses[: wrist.before_seam - 1]))
    places = [share * whole for share in _BALANCE]
    clear = [at for at in places if all(abs(at - joint) >= _CLEAR for joint in joints)]
    return clear[0] if clear else places[0]


def cuff_operations(slug: str, cuff: Piece, wrist: Wrist, buttons: int) -> Iterator[Operation]:
    """The cuff turned and stitched down; its buttonholes worked."""
    seam = part_name(slug, "cuff_seam")
    yield from _made(slug, cuff, is_ring=wrist.slit == 0.0)
    yield Operation(
        part_name(slug, "cuff_closed"),
        "hems",
        "Turn the cuff over the seam allowances and stitch its inner edge down.",
        (cuff.name,),
        (seam,),
    )
    if buttons:
        places = tuple(line.name for line in cuff.lines if line.kind == "buttonhole")
        places += tuple(mark.name for mark in cuff.marks if mark.kind == "button")
        text = "Work the buttonholes of the cuff and sew on its buttons."
        yield Operation(
            part_name(slug, "buttoning"), "finish", text, places, (part_name(slug, "cuff_closed"),)
        )


def _made(slug: str, cuff: Piece, *, is_ring: bool) -> Iterator[Operation]:
    """What is done before the cuff is sewn on. A straight ring is closed by its seam and folded later."""
    name, is_double = part_name(slug, "cuff_made"), cuff.instructions[0].times > 1
    if is_double and is_ring:
        text = "Sew the outer cuff, a ring, to the inner one along the free edge."
        yield Operation(name, "prepare", text, (cuff.name,), (part_name(slug, "cuff_end"),))
    elif is_double:
        text = "Sew the outer cuff to the inner one along the free edge and close its ends."
        yield Operation(name, "prepare", text, (cuff.name,))
    elif not is_ring:
        text = "Fold the cuff right sides together and sew its ends."
        yield Operation(name, "prepare", text, (cuff.name,))


def hand_told(check: str, context: StepContext, cuff: str, wrist: Wrist, length: float) -> Iterator[Finding]:
    """A cuff that nothing opens, or a short placket, through which the hand does not go."""
    hand = context.find("hand_girth")
    widest = length + 2.0 * wrist.slit
    if hand is not None and widest < hand + HAND_ROOM.value:
        yield worded(
            check,
            "cuff-under-hand",
            Severity.LOOK,
            Measured(widest, hand + HAND_ROOM.value),
            piece=cuff,
            where=part_name(cuff, "cuff_edge"),
            widest=widest,
            hand=hand,
        )


def lap_told(check: str, cuff: str, wrist: Wrist) -> Iterator[Finding]:
    """A cuff that laps as its tower does, whatever was asked for."""
    if wrist.tower is not None:
        lap = sum(wrist.tower)
        yield worded(
            check, "cuff-laps-as-tower", Severity.NOTE, Measured(lap), piece=cuff, where=cuff, lap=lap
        )


def longer_told(check: str, cuff: str, depth: float) -> Finding:
    """The sleeve is longer by the depth of its cuff."""
    return worded(
        check, "cuff-lengthens", Severity.NOTE, Measured(depth), piece=cuff, where=cuff, depth=depth
    )
