"""Parameters of stands, flies, bands and strips on the blocks of the invented bodies."""

from collections.abc import Callable, Iterator, Mapping
from functools import cache
from typing import Any

import numpy as np
from shapely.geometry import LineString, Polygon

from lower_sheets import lower_bodies
from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.geometry import Path
from notchbook.pattern import Pattern, Piece, Severity
from notchbook.recipe import Replay, replay
from support.edge_steps import applied, bodice, skirt, trousers
from upper_sheets import bodies

STAND: dict[str, Any] = {
    "centers": [{"center": "bodice.front/center_front", "top": "bodice.front/neck_pit"}],
    "level": "bodice.front/bust_point",
}
BACK_OPENING: list[dict[str, Any]] = [
    {"edge": "skirt.back/waist", "starts_at": "skirt.back/waist_center"},
    {"edge": "skirt.front/waist", "starts_at": "skirt.front/waist_side"},
]
FLY: dict[str, Any] = {
    "edge": "trousers.front/crotch_seam",
    "top": "trousers.front/waist_center",
    "notch": "trousers.front/crotch_notch",
}
FLY_WAIST: list[dict[str, Any]] = [
    {"edge": "trousers.front/waist", "starts_at": "trousers.front/waist_center"},
    {"edge": "trousers.back/waist", "starts_at": "trousers.back/waist_side"},
]
FLY_BAND: dict[str, Any] = {
    "edges": FLY_WAIST,
    "underlap": "44 mm",
    "underlap_on": "right",
    "cut_in": "two",
}
SIDE_SLIT: dict[str, Any] = {"edge": "skirt.front/side_seam", "hem_end": "skirt.front/hem_side"}
STRAP: dict[str, Any] = {
    "front": {"edge": "bodice.front/neck", "from_point": "bodice.front/side_neck_point", "distance": "2 cm"},
    "back": {"edge": "bodice.back/neck", "from_point": "bodice.back/side_neck_point", "distance": "2 cm"},
    "bust_point": "bodice.front/bust_point",
    "waist": "bodice.back/waist_center",
}


@cache
def lower_sets() -> Mapping[str, MeasureSet]:
    """The invented bodies of the lower sheets by name, and one whose left waist and hip are larger."""
    known = dict(lower_bodies())
    uneven = known["medium-92"]
    for key in ("waist_girth", "hip_girth"):
        uneven = uneven.with_value(key, uneven.value(key) + 15.0, "left")
    return {**known, "uneven": uneven}


@cache
def upper_sets() -> Mapping[str, MeasureSet]:
    """The invented women of the upper sheets by name, and one whose left side is larger."""
    known = {name: made for name, _, made in bodies()}
    uneven = known["medium-92"]
    for key, more in (("bust_girth", 15.0), ("waist_girth", 15.0), ("shoulder_length", 6.0)):
        uneven = uneven.with_value(key, uneven.value(key) + more, "left")
    women = {name: made for name, made in known.items() if name not in ("man-100", "child-116")}
    return {**women, "uneven": uneven}


def stepped(base: Replay, *steps: tuple[str, dict[str, Any]]) -> Replay:
    """The block with these steps; it may not stop."""
    done = base
    for operation, parameters in steps:
        done = applied(done, operation, **parameters)
        assert done.suspended is None, done.suspended.error
    return done


@cache
def bare_block(block: str, name: str) -> frozenset[str]:
    """What the checks say of a block on another body without any step."""
    blocks: dict[str, Callable[[], Replay]] = {"bodice": bodice, "skirt": skirt, "trousers": trousers}
    base = blocks[block]()
    return frozenset(codes(replay(base.recipe, sets_of(block)[name])))


def sets_of(block: str) -> Mapping[str, MeasureSet]:
    """The bodies for a block."""
    return upper_sets() if block == "bodice" else lower_sets()


def codes(done: Replay) -> set[str]:
    """The codes of all that the checks and steps say, notes apart."""
    return {found.code for found in examine(done).findings if found.severity is not Severity.NOTE}


def said_more(done: Replay, block: str, name: str) -> set[str]:
    """What is said of the style on another body that is not said of its block there; it may not stop."""
    there = replay(done.recipe, sets_of(block)[name])
    assert there.suspended is None, there.suspended.error
    return codes(there) - bare_block(block, name)


def polygon(piece: Piece) -> Polygon:
    """The sew line for the outside program."""
    made = Polygon([(point.x, point.y) for point in piece.sew_line.flattened(0.005)])
    assert made.is_valid
    return made


def line(path: Path) -> LineString:
    """A line for the outside program."""
    return LineString([(point.x, point.y) for point in path.flattened(0.005)])


def outside_length(pattern: Pattern, *edges: str) -> float:
    """The length of edges by the outside program, mm."""
    return sum(line(pattern.edges[name].path).length for name in edges)


def holes(piece: Piece) -> Iterator[np.ndarray]:
    """The buttonholes of a piece, each as its two ends."""
    for one in piece.lines:
        if one.kind == "buttonhole":
            yield np.array([[one.path.start.x, one.path.start.y], [one.path.end.x, one.path.end.y]])


def buttons(piece: Piece) -> np.ndarray:
    """The places of the buttons of a piece, in order."""
    return np.array([(mark.position.x, mark.position.y) for mark in piece.marks if mark.kind == "button"])
