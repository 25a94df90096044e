"""Parameters of pockets on the blocks of the invented bodies, and how they are measured from outside."""

from functools import cache
from typing import Any

from shapely.geometry import LineString, Point, Polygon

from lower_sheets import lower_bodies
from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.geometry import Path
from notchbook.geometry import Point as Place
from notchbook.recipe import Replay
from support.two_sided import drafted, two_sided

PATCH: dict[str, Any] = {
    "below": "skirt.front/hip_line",
    "down": "2 cm",
    "beside": "skirt.front/center_front",
    "inward": "5 cm",
    "width": "12 cm",
    "depth": "14 cm",
}
SLANT: dict[str, Any] = {"waist": "trousers.front/waist", "side": "trousers.front/side_seam"}
WELT: dict[str, Any] = {
    "below": "trousers.back/waist",
    "down": "14 cm",
    "beside": "trousers.back/side_seam",
    "inward": "3 cm",
    "opening": "12 cm",
}
IN_SEAM: dict[str, Any] = {
    "edges": [
        {"edge": f"trousers.{side}/side_seam", "upper_end": f"trousers.{side}/waist_side"}
        for side in ("front", "back")
    ]
}
WAISTBAND: dict[str, Any] = {
    "edges": [
        {"edge": "trousers.back/waist", "starts_at": "trousers.back/waist_center"},
        {"edge": "trousers.front/waist", "starts_at": "trousers.front/waist_side"},
    ]
}
BODIES = ("small-80", "plus-128", "man-100", "child-116")
"""Invented bodies of every kind, beside the medium one."""


@cache
def drafted_for(block: str, body: str) -> Replay:
    """The block of one of the invented bodies, with its own settings."""
    return draft(block, dict(lower_bodies())[body], {})


@cache
def uneven(block: str) -> Replay:
    """The block for a body whose left differs at waist and hip."""
    return drafted(block, two_sided(block, "waist_girth", "hip_girth", "hip_depth"))


def line_of(path: Path) -> LineString:
    """The path as another program has it."""
    return LineString([(point.x, point.y) for point in path.flattened(0.005)])


def polygon_of(path: Path) -> Polygon:
    """The closed path as another program has it."""
    return Polygon(line_of(path))


def away(place: Place, path: Path) -> float:
    """How far a place is from a path, mm."""
    return float(line_of(path).distance(Point(place.x, place.y)))


def new_findings(before: Replay, after: Replay) -> list[tuple[str, str | None]]:
    """What the checks say of the run that they did not say before, notes apart."""
    known = {(one.code, one.where) for one in examine(before).findings}
    return [
        (one.code, one.where)
        for one in examine(after).findings
        if one.severity.value != "note" and (one.code, one.where) not in known
    ]
