"""The two sides of the cap as cubics of exactly the wanted length, in the frame of the sleeve."""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from notchbook.blocks.set_in.cap import Cap, CapLengths
from notchbook.blocks.set_in.cap_line import CapLine
from notchbook.errors import HouseFault
from notchbook.geometry import Cubic, Path, Point, Transform

_HOLLOW_STOPS = (0.0, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9)
_ROUND_STOPS = (0.08, 0.2, 0.4, 0.6, 0.8, 1.0)
"""Where the cubics meet, as shares of the hollow and of the round: none turns by more than about 25
degrees, and none begins at the turn-over, which then lies within one smooth cubic: a short one, or the line
drawn strays from the one that was solved (by 0.04 mm as it is)."""
_NEAR = 4.0
"""mm; a joint of cubics nearer than this to the shoulder seam gives way to it."""
_EXACT = 1e-8
"""mm; how exact a length is made."""
_ROUNDS = 12

_MIRROR = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))


class _Station(NamedTuple):
    """A place of the cap: its distance along the drawn line (mm), inward and up (mm), heading (radians)."""

    along: float
    x: float
    y: float
    way: float


def cap_paths(cap: Cap, lengths: CapLengths) -> tuple[Path, Path]:
    """The front and the back of the cap, each from its underarm to the shoulder seam.

    The crown lies on the back where it lies behind the shoulder seam, else on the front.
    """
    front, back = _side(cap.front), _side(cap.back)
    if lengths.behind > _EXACT:
        front, rest = _parted(cap.front, front, lengths.front)
        back = _past_crown(back, rest)
    elif lengths.behind < -_EXACT:
        back, rest = _parted(cap.back, back, lengths.back)
        front = _past_crown(front, rest)
    front_path = _of_length(front, lengths.front).transformed(_MIRROR)
    back_path = _of_length(back, lengths.back)
    return (
        front_path.transformed(Transform.translation(cap.front_width, 0.0)),
        back_path.transformed(Transform.translation(-cap.back_width, 0.0)),
    )


def _side(line: CapLine) -> list[_Station]:
    """The stations of a half cap at which its cubics meet, from the underarm to the crown."""
    rest = line.length - line.turn_over
    stops = [
        *(line.turn_over * share for share in _HOLLOW_STOPS),
        *(line.turn_over + rest * share for share in _ROUND_STOPS),
    ]
    return [_Station(stop, *line.at(stop)) for stop in stops]


def _parted(line: CapLine, stations: list[_Station], place: float) -> tuple[list[_Station], list[_Station]]:
    """The stations before and after a place, which becomes the last of the one, the first of the other."""
    cut = _Station(place, *line.at(place))
    before = [station for station in stations if station.along < place - _NEAR]
    after = [station for station in stations[:-1] if station.along > place + _NEAR]
    return [*before, cut], [cut, *after, stations[-1]]


def _past_crown(stations: list[_Station], rest: list[_Station]) -> list[_Station]:
    """A half cap carried on over the crown, down the last stations of the other half."""
    _, crown_x, _, _ = crown = stations[-1]
    _, other_x, _, _ = other = rest[-1]
    carried = [
        _Station(
            crown.along + other.along - station.along, crown_x + other_x - station.x, station.y, -station.way
        )
        for station in reversed(rest[:-1])
    ]
    return [*stations, *carried]


def _of_length(stations: Sequence[_Station], length: float) -> Path:
    """The path through the stations, made exactly so long.

    Places and directions stay; the handles of the cubics are drawn out or in by the few parts in ten
    thousand that are missing. Solved by secants.
    """
    pull, next_pull = 1.0, 1.001
    path = _drawn(stations, pull)
    miss = path.length - length
    for _ in range(_ROUNDS):
        if abs(miss) <= _EXACT:
            return path
        path = _drawn(stations, next_pull)
        next_miss = path.length - length
        if next_miss == miss:
            break
        pull, next_pull = next_pull, next_pull - next_miss * (next_pull - pull) / (next_miss - miss)
        miss = next_miss
    raise HouseFault("cap-length-not-met", wanted=length, drawn=path.length)


def _drawn(stations: Sequence[_Station], pull: float) -> Path:
    return Path(tuple(_cubic(before, after, pull) for before, after in pairwise(stations)))


def _cubic(before: _Station, after: _Station, pull: float) -> Cubic:
    """The cubic between two stations; its handles are those of an arc as long that turns as much."""
    arc, turn = after.along - before.along, abs(after.way - before.way)
    handle = pull * (arc / 3.0 if turn < 1e-4 else arc / turn * (4.0 / 3.0) * math.tan(turn / 4.0))
    return Cubic(
        Point(before.x, before.y),
        Point(before.x + handle * math.cos(before.way), before.y + handle * math.sin(before.way)),
        Point(after.x - handle * math.cos(after.way), after.y - handle * math.sin(after.way)),
        Point(after.x, after.y),
    )
