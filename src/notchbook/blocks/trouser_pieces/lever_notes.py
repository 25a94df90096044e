"""Findings on the levers of the trousers: what was pulled to its limit, and what gave way."""

from collections.abc import Iterator

from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.trouser_pieces.note_limits import CHECK, note_limit
from notchbook.blocks.trouser_pieces.promises import Drafted
from notchbook.blocks.upper.shapes import Lever
from notchbook.pattern import Finding, Measured, Severity, worded
from notchbook.units import TOLERANCES

_UNSEEN = 0.5
"""mm; what gave way by less is not spoken of."""

_AT_LIMIT = {
    "front_side_take_in": ("trousers-front-side-takes-much", "side_seam"),
    "back_side_take_in": ("trousers-back-side-takes-much", "side_seam"),
    "back_waist_dart": ("trousers-back-darts-at-limit", "waist"),
}
"""How a lever at its limit is told, and on which edge it shows."""

_ORDINARY = frozenset({"front_side_take_in", "back_side_take_in"})
"""Levers whose limit is a good amount still: said for the record."""

_WIDENED = {
    "hip_girth": ("trousers-hip-widened", "hip_line"),
    "knee_girth": ("trousers-knee-widened", "knee_line"),
    "hem_girth": ("trousers-hem-widened", "hem"),
    "hem_follows": ("trousers-hem-follows", "hem"),
    "hip_level": ("trousers-hip-level-raised", "hip_line"),
}
"""How a girth or a level that gave way is told, and on which line it shows."""


def lever_notes(drafted: Drafted) -> Iterator[Finding]:
    """What each lever has to say, those of the crotch together."""
    yield from _crotch(drafted)
    yield from _side(drafted)
    yield from _darts(drafted)
    for lever in drafted.half.levers:
        if lever.name in _WIDENED:
            yield from _widened(drafted, lever)
        elif lever.name in _AT_LIMIT and lever.at_limit:
            code, word = _AT_LIMIT[lever.name]
            limit = lever.least if lever.pulled <= lever.least else lever.most
            panel = "back" if lever.name.startswith("back") else "front"
            amount = Measured(lever.pulled, limit, lever.unit)
            severity = Severity.NOTE if lever.name in _ORDINARY else Severity.LOOK
            yield worded(CHECK, code, severity, amount, where=drafted.names.at(panel, word))


def _crotch(drafted: Drafted) -> Iterator[Finding]:
    """How far the crotch was drawn away from its usual shape, what it came to, and where that is too much."""
    half, names = drafted.half, drafted.names
    steps = abs(half.crotch_steps)
    where = names.at("back", "crotch_seam")
    if steps > note_limit("steps.told"):
        is_unusual = steps > proportion("steps.unusual")
        yield worded(
            CHECK,
            "trousers-crotch-unusual" if is_unusual else "trousers-crotch-pulled",
            Severity.LOOK if is_unusual else Severity.NOTE,
            Measured(),
            where=where,
            way="longer" if half.crotch_steps > 0.0 else "shorter",
            front=half.front.extension,
            back=half.back.extension,
            slant=half.back.slant,
            depth=half.depth,
        )
    most = drafted.given.depth_most
    if drafted.given.cut == "close" and half.depth > most + _UNSEEN:
        yield worded(CHECK, "trousers-fork-hangs", Severity.LOOK, Measured(half.depth, most), where=where)
    if half.drop > proportion("fork.flagged_drop"):
        amount = Measured(half.drop, proportion("fork.flagged_drop"))
        yield worded(CHECK, "trousers-back-fork-low", Severity.LOOK, amount, where=where)
    if abs(half.split_miss) > _UNSEEN:
        is_much = abs(half.split_miss) > note_limit("amounts.split")
        yield worded(
            CHECK,
            "trousers-crotch-parts-missed",
            Severity.LOOK if is_much else Severity.NOTE,
            Measured(half.split_miss, 0.0),
            where=names.at("front", "crotch_seam"),
            way="longer" if half.split_miss > 0.0 else "shorter",
            off=abs(half.split_miss),
        )


def _side(drafted: Drafted) -> Iterator[Finding]:
    """A side seam that was moved at the waist, because one panel could not take in its share."""
    moved, limit = drafted.half.moved_side, note_limit("amounts.moved_side")
    if abs(moved) <= limit:
        return
    is_forced = any(lever.name == "moved_side" and lever.at_limit for lever in drafted.half.levers)
    yield worded(
        CHECK,
        "trousers-side-moved",
        Severity.LOOK if is_forced else Severity.NOTE,
        Measured(moved, 0.0),
        where=drafted.names.at("front", "side_seam"),
        way="back" if moved > 0.0 else "forward",
    )


def _darts(drafted: Drafted) -> Iterator[Finding]:
    """A front whose darts take up more than those of the back."""
    front, back = sum(drafted.half.front.intakes), sum(drafted.half.back.intakes)
    if front > back + _UNSEEN:
        where = drafted.names.at("front", "waist")
        amount = Measured(front, back)
        yield worded(CHECK, "trousers-front-darts-larger", Severity.LOOK, amount, where=where)


def _widened(drafted: Drafted, lever: Lever) -> Iterator[Finding]:
    by = lever.pulled - lever.usual
    # A hip that is off by more than a closure is not the one that was asked for, and is promised otherwise.
    if abs(by) > (TOLERANCES.closure if lever.name == "hip_girth" else _UNSEEN):
        code, word = _WIDENED[lever.name]
        where = drafted.names.at("front", word)
        severity = Severity.LOOK if abs(by) > note_limit("amounts.widened") else Severity.NOTE
        yield worded(CHECK, code, severity, Measured(by, 0.0), where=where, by=by)
