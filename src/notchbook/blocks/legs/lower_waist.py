"""Trousers whose top edge lies below the waist: what a tape finds there, and the way down from there."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from notchbook.blocks.legs.given import LevelGirth, TrousersGiven
from notchbook.blocks.legs.proportions import proportion
from notchbook.errors import DraftRefused


def girth_below(levels: Sequence[LevelGirth], drop: float) -> float:
    """The girth so far below the waist, mm: straight between the two levels of the body around it.

    ``levels`` hold the waist at depth 0, the hip, and what was taken between.
    """
    ordered = sorted(levels, key=lambda level: level.depth)
    for above, below in pairwise(ordered):
        if above.depth <= drop <= below.depth and below.depth > above.depth:
            share = (drop - above.depth) / (below.depth - above.depth)
            return above.girth + share * (below.girth - above.girth)
    return ordered[-1].girth if drop > ordered[-1].depth else ordered[0].girth


def crotch_lost(drop: float) -> float:
    """By how much the crotch, front and behind together, is shorter from an edge so far down, mm."""
    return proportion("waist.crotch_per_drop") * drop


def lowered(given: TrousersGiven, drop: float, waist: float) -> TrousersGiven:
    """The same trousers with their top edge ``drop`` mm below, where their girth with its ease is ``waist``.

    The crotch seam is shorter by the drop in front and behind. DraftRefused ``trousers-waist-drop`` for an
    edge at the hip or below.
    """
    if drop <= 0.0:
        return given
    left, least = given.hip_depth - drop, proportion("waist.least_above_hip")
    if left < least:
        raise DraftRefused(
            "trousers-waist-drop", drop=drop, hip_depth=given.hip_depth, most=given.hip_depth - least
        )
    return replace(
        given,
        waist=waist,
        hip_depth=left,
        rise=given.rise - drop,
        crotch=given.crotch - crotch_lost(drop),
        front_crotch=None if given.front_crotch is None else given.front_crotch - drop,
        back_crotch=None if given.back_crotch is None else given.back_crotch - (crotch_lost(drop) - drop),
        knee_depth=given.knee_depth - drop,
        length=given.length - drop,
        between=tuple(
            LevelGirth(level.girth, level.depth - drop) for level in given.between if level.depth > drop
        ),
        front_waist=None,
    )
