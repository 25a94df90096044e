"""From measures to trousers in numbers: the crotch seam closed by its levers, everything else by
construction."""

from notchbook.blocks.legs.belly_room import room_for
from notchbook.blocks.legs.crotch_fit import CrotchFit
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.levers import levers
from notchbook.blocks.legs.panels import panel
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.shapes import TrousersHalf


def draft_trousers(given: TrousersGiven) -> TrousersHalf:
    """Front and back of one leg.

    DraftRefused, each with the measures that cannot be had together: ``trousers-crotch-short``,
    ``trousers-crotch-long``, ``trousers-hip-below-crotch``, ``trousers-waist-unreachable``,
    ``trousers-side-short``, ``trousers-belly-unreachable``, ``trousers-thigh-against-hip``,
    ``trousers-inseam-unreachable``, ``trousers-hem-above-crotch``, ``trousers-knee-above-crotch``,
    ``trousers-crotch-flat``.
    """
    fit = CrotchFit(given, room_for(given))
    drawn = fit.split()
    split_miss = 0.0
    if given.front_crotch is not None and given.back_crotch is not None:
        wanted = given.front_crotch * given.crotch / (given.front_crotch + given.back_crotch)
        split_miss = drawn.front.crotch - wanted
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
        split_miss,
    )
