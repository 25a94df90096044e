"""What the measures of an upper body must not be together, by arithmetic alone.

Each function computes the figure of the limit of its name in ``agreements.toml``; None where a measure is
lacking.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from notchbook.blocks.upper_measures.agreement_table import Limit, limits
from notchbook.blocks.upper_measures.dart_outlook import NECK_SHARE, Find, bust_dart_angle
from notchbook.blocks.upper_measures.upper_measures import UpperMeasures

Figure = Callable[[Find], float | None]

NAPE_BELOW_NECK: Final = 20.0
"""mm by which the side-neck point stands above the nape (common practice, no source)."""

USUAL_SLOPE: Final = 24.3
"""Degrees, for a body whose slope is not known (computed from a published sample of 600 women)."""


@dataclass(frozen=True, slots=True)
class Breach:
    """A limit that the measures pass, and the figure that passes it."""

    limit: Limit
    figure: float


def breaches(measures: UpperMeasures) -> tuple[Breach, ...]:
    """Every limit that these measures pass, estimates counted as taken."""
    whose = "nobody" if measures.is_child or measures.population is None else measures.population
    found = []
    for limit in limits():
        figure = FIGURES[limit.name](measures.find) if whose in limit.judged else None
        if figure is not None and not limit.least <= figure <= limit.most:
            found.append(Breach(limit, figure))
    return tuple(found)


def is_within(limit: Limit, measures: UpperMeasures) -> bool:
    """Whether the measures keep this limit (also where it has nothing to say)."""
    figure = FIGURES[limit.name](measures.find)
    return figure is None or limit.least <= figure <= limit.most


def _front_over_back(find: Find) -> float | None:
    front, back = find("front_waist_length"), find("back_waist_length")
    return None if front is None or back is None else front - back


def _neck_depth(find: Find) -> float | None:
    """Depth of the front neck as a share of the girth of the neck base."""
    front, center = find("front_waist_length"), find("center_front_length")
    to_point, width, neck = find("neck_to_bust_point"), find("bust_point_width"), find("neck_base_girth")
    if front is None or center is None or to_point is None or width is None or not neck:
        return None
    rise = to_point**2 - (width / 2.0 - NECK_SHARE * neck) ** 2
    return (front - to_point + math.sqrt(max(rise, 0.0)) - center) / neck


def _shoulder_past(width_key: str) -> Figure:
    """How far the shoulder point stands outside of half a width of the body, mm."""

    def figure(find: Find) -> float | None:
        shoulder, neck, width = find("shoulder_length"), find("neck_base_girth"), find(width_key)
        if shoulder is None or neck is None or width is None:
            return None
        slope = math.radians(find("shoulder_slope") or USUAL_SLOPE)
        return NECK_SHARE * neck + shoulder * math.cos(slope) - width / 2.0

    return figure


def _arm_room(find: Find) -> float | None:
    """What back and chest leave on each side, as a share of the bust."""
    bust, back, chest = find("bust_girth"), find("across_back"), find("across_chest")
    if not bust or back is None or chest is None:
        return None
    return (bust - back - chest) / 2.0 / bust


def _rest_of(part_key: str, whole_key: str) -> Figure:
    """What a part leaves of its whole, as a share of the whole."""

    def figure(find: Find) -> float | None:
        part, whole = find(part_key), find(whole_key)
        return None if part is None or not whole else (whole - part) / whole

    return figure


def _upper_bust_share(find: Find) -> float | None:
    upper, bust = find("upper_bust_girth"), find("bust_girth")
    return None if upper is None or not bust else upper / bust


def _diagonal(find: Find) -> float | None:
    """How much longer the diagonal is than its parts make it, mm."""
    diagonal, usual = find("shoulder_point_to_center_waist"), usual_diagonal(find)
    return None if diagonal is None or usual is None else diagonal - usual


def usual_diagonal(find: Find) -> float | None:
    """The way from the shoulder point to the waist at the center back that the other measures make, mm."""
    width, back = find("shoulder_width_back"), find("back_waist_length")
    shoulder, slope = find("shoulder_length"), find("shoulder_slope")
    if width is None or back is None or shoulder is None or slope is None:
        return None
    drop = shoulder * math.sin(math.radians(slope)) - NAPE_BELOW_NECK
    return math.hypot(width / 2.0, back - drop)


FIGURES: Final[Mapping[str, Figure]] = MappingProxyType(
    {
        "bust_dart": bust_dart_angle,
        "front_over_back": _front_over_back,
        "neck_depth": _neck_depth,
        "shoulder_past_back": _shoulder_past("across_back"),
        "shoulder_past_chest": _shoulder_past("across_chest"),
        "arm_room": _arm_room,
        "side_share": _rest_of("scye_depth", "back_waist_length"),
        "bust_point_share": _rest_of("neck_to_bust_point", "front_waist_length"),
        "upper_bust_share": _upper_bust_share,
        "diagonal": _diagonal,
    }
)
