"""The girths of a straight skirt between waist and hip, and how it makes room for a full high hip."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from notchbook.blocks._closed_waist import LEAN_FACTOR, Panel
from notchbook.blocks.skirts.halves import DartLengths, Half, HalfMeasures, draft_half
from notchbook.blocks.skirts.levels import Level
from notchbook.errors import GeometryError
from notchbook.geometry import Point
from notchbook.geometry.solve import solve_rising

ROUNDEST = 2.1
"""Most lean of the side at the waist over the lean of its chord: 2 is the arc of a circle. Own judgment."""


@dataclass(frozen=True, slots=True)
class Roomier:
    """What a half is drafted from once room was made above the hip; by how much the longest dart was
    ``shortened`` for it, mm, and whether the side was made rounder."""

    measures: HalfMeasures
    lengths: DartLengths
    shortened: float = 0.0
    is_rounder: bool = False


def girth_at(half: Half, depth: float) -> float:
    """The whole girth so far below the waist, darts closed, both sides taken like this one, mm."""
    return 2.0 * sum(_width_at(panel, depth) for panel in (half.front, half.back))


def _width_at(panel: Panel, depth: float) -> float:
    """The way across a panel less what its darts still take up there, mm."""
    if depth >= panel.side.length:
        return panel.side.start.x
    side = panel.side.point_at(panel.side.length - depth)
    width = Point(0.0, panel.height - depth).distance_to(side)
    for index, point in enumerate(panel.points):
        leg = point.distance_to(panel.parts[index].end)
        width -= panel.intake(index) * max(0.0, 1.0 - depth / leg)
    return width


def with_room(
    measures: HalfMeasures, lengths: DartLengths, levels: tuple[Level, ...], shortest: float
) -> Roomier:
    """Shorten the darts and then round the sides until the skirt passes the levels above the hip.

    No dart becomes shorter than ``shortest``, mm. Where even that is too tight, the roomiest is given.
    """
    if not levels:
        return Roomier(measures, lengths)

    def room(pull: float) -> float:
        return _room(*_eased(measures, lengths, pull, shortest), levels)

    pull = _least_pull(room)
    if pull == 0.0:
        return Roomier(measures, lengths)
    pulled = _eased(measures, lengths, pull, shortest)
    before, after = (max((*one.front, *one.back), default=0.0) for one in (lengths, pulled[1]))
    return Roomier(*pulled, before - after, is_rounder=pull > 1.0)


def most_room(
    measures: HalfMeasures, lengths: DartLengths, levels: tuple[Level, ...], shortest: float, more: float
) -> float:
    """The most room at the tightest level, levers pulled, with so much ``more`` ease at the hip, mm."""
    front = measures.front_hip
    wider = replace(
        measures, hip=measures.hip + more, front_hip=None if front is None else front + more / 2.0
    )
    return _room(*_eased(wider, lengths, 2.0, shortest), levels)


def _eased(
    measures: HalfMeasures, lengths: DartLengths, pull: float, shortest: float
) -> tuple[HalfMeasures, DartLengths]:
    """With the darts shortened up to a pull of 1, and the sides made rounder from there to 2."""
    rounder = LEAN_FACTOR + (ROUNDEST - LEAN_FACTOR) * max(pull - 1.0, 0.0)
    return replace(measures, lean_factor=rounder), _shortened(lengths, min(pull, 1.0), shortest)


def _room(measures: HalfMeasures, lengths: DartLengths, levels: tuple[Level, ...]) -> float:
    drawn = draft_half(measures, lengths)
    return min(girth_at(drawn, one.depth) - one.girth - one.ease for one in levels)


def _least_pull(room: Callable[[float], float]) -> float:
    """How far the levers are pulled: 1 with the darts at their shortest, 2 with the sides roundest."""
    if room(0.0) >= 0.0:
        return 0.0
    try:
        return solve_rising(room, 0.0, 0.5, 0.0, 2.0)
    except GeometryError:
        return 2.0


def _shortened(lengths: DartLengths, share: float, shortest: float) -> DartLengths:
    def all_of(darts: tuple[float, ...]) -> tuple[float, ...]:
        return tuple(dart - share * max(dart - shortest, 0.0) for dart in darts)

    return DartLengths(all_of(lengths.front), all_of(lengths.back))
