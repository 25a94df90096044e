"""What elastics are cut to: one figure each, for the cutter and whoever lays out the trims."""

from dataclasses import dataclass

from notchbook.finish.house_table import HouseTable
from notchbook.pattern import Elastic, Pattern, ring_length, split_side

LAP = "elastic_lap"
"""The row of the house table by which the ends of an elastic lie over each other where it is joined."""


@dataclass(frozen=True, slots=True)
class ElasticCut:
    """``times`` elastics of ``length``, mm; ``ring`` is left of each where its ends are lapped, mm."""

    name: str
    title: str
    times: int
    width: float
    length: float
    ring: float


def elastic_cuts(pattern: Pattern, house: HouseTable) -> tuple[ElasticCut, ...]:
    """The elastics of a pattern as they are cut, in its order.

    InputError ``allowance-class-unknown`` for a table without the lap.
    """
    return tuple(_cut(pattern, elastic, house) for elastic in pattern.elastics.values())


def _cut(pattern: Pattern, elastic: Elastic, house: HouseTable) -> ElasticCut:
    side = split_side(elastic.name)[1]
    ring = ring_length(pattern, elastic)
    return ElasticCut(
        name=elastic.name,
        title=elastic.title if side == "both" else f"{side} {elastic.title}",
        times=2 if elastic.goes_round == "limb" and side == "both" else 1,
        width=elastic.width,
        length=ring + house.width(LAP),
        ring=ring,
    )
