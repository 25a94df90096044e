"""From measures to trousers in numbers: the crotch seam closed by its levers, everything else by
construction."""

from notchbook.blocks.legs.belly_room import Stand, lacking, room_for
from notchbook.blocks.legs.crotch_fit import CrotchFit
from notchbook.blocks.legs.dart_counts import worth_sewing
from notchbook.blocks.legs.drawing import Drawn
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.levers import levers
from notchbook.blocks.legs.panels import panel
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.shapes import TrousersHalf
from notchbook.errors import DraftRefused

_ROUNDS = 6
_HELD = 0.05
"""mm by which a girth between waist and hip may be short: half the limit of a closure."""


def draft_trousers(given: TrousersGiven) -> TrousersHalf:
    """Front and back of one leg.

    DraftRefused, each with the measures that cannot be had together: ``trousers-crotch-short``,
    ``trousers-crotch-long``, ``trousers-hip-below-crotch``, ``trousers-waist-unreachable``,
    ``trousers-side-short``, ``trousers-belly-unreachable``, ``trousers-thigh-against-hip``,
    ``trousers-inseam-unreachable``, ``trousers-hem-above-crotch``, ``trousers-knee-above-crotch``,
    ``trousers-crotch-flat``, ``trousers-crotch-unsettled``.
    """
    fit, drawn, given = _with_worthy_darts(given)
    return TrousersHalf(
        panel(drawn.front, 90.0 + drawn.fork_share),
        panel(drawn.back, 90.0 - drawn.fork_share),
        levers(given, fit.ranges, drawn, given.hip_depth - fit.hip_depth),
        drawn.pulled.steps,
        drawn.pulled.depth,
        -drawn.back.leg.fork.y,
        drawn.waist.moved,
        given.waist,
        drawn.hip,
        drawn.legs.knee,
        drawn.legs.girth(0.0),
        drawn.legs.girth(proportion("thigh.below")) if drawn.legs.reaches_below else drawn.legs.girth(0.0),
        fit.split_miss(drawn),
    )


def _with_worthy_darts(given: TrousersGiven) -> tuple[CrotchFit, Drawn, TrousersGiven]:
    """The leg with its crotch fitted, and from what it was drawn: without darts that are not worth their
    sewing, where those are left out. Where the leg cannot be had so, it keeps them."""
    fit, drawn = _fitted(given)
    while given.narrow_darts == "left_out":
        fewer = worth_sewing(given, drawn.front, drawn.back)
        if fewer == given:
            break
        try:
            fit, drawn = _fitted(fewer)
        except DraftRefused:
            break
        given = fewer
    return fit, drawn, given


def _fitted(given: TrousersGiven) -> tuple[CrotchFit, Drawn]:
    """The leg with its crotch fitted and, as far as both can be had, its room for the girths above the hip.

    The room is made before the crotch is fitted; where the levers of the crotch then take of it, it is made
    again at their new stand, until both agree. What cannot be had stays short, and the pieces tell it.
    """
    fit = CrotchFit(given, room_for(given))
    drawn = fit.split()
    for _ in range(_ROUNDS):
        if lacking(drawn, given, fit.hip_depth) <= _HELD:
            break
        try:
            again = CrotchFit(given, room_for(given, Stand(drawn.pulled.steps, drawn.pulled.shift)))
            fit, drawn = again, again.split()
        except DraftRefused:
            break
    return fit, drawn
