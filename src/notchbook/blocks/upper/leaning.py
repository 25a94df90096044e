"""An armhole that leans forward: where the front would come out less hollow than the back, it stays square to
the side seam for longer, and where that does not do, the side seam goes back."""

from dataclasses import replace

from notchbook.blocks.upper.armhole import Landing, draw_armhole
from notchbook.blocks.upper.frames import Frames, arrivals
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.levers import Pulled
from notchbook.blocks.upper.necks import Slopes
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.side_place import Place, settle_side
from notchbook.geometry import Path

Armholes = tuple[Path, Path]
"""Front and back."""

_ROUNDS = 6
_SAMPLES = 24
"""Places at which each segment is looked at: the deepest is found within 0.1 mm."""

_MARGIN = 0.0005
"""By how much of the straight way the front is to be hollower at least: about 0.1 mm."""


def draw_armholes(frames: Frames, pulled: Pulled) -> Armholes:
    """Both armholes with the levers in use."""
    back = frames.back_upper
    landing = Landing(frames.back_underarm, arrivals(frames)[1], proportion("armhole.back_bottom"))
    drawn = draw_armhole(back, back.lean + pulled.tilt, back.width + pulled.back_change, landing)
    return _front(frames, pulled), drawn


def _front(frames: Frames, pulled: Pulled) -> Path:
    front = frames.front_upper
    bottom = proportion("armhole.front_bottom") + pulled.hollower
    landing = Landing(frames.turned.underarm, arrivals(frames)[0], bottom)
    return draw_armhole(front, front.lean - pulled.tilt, front.width + pulled.front_change, landing)


def leans_back(armholes: Armholes) -> bool:
    """Whether the front is hardly hollower than the back, each against its straight way."""
    return _short(armholes) > 0.0


def lean_forward(
    given: BodiceGiven, slopes: Slopes, place: Place, frames: Frames, pulled: Pulled
) -> tuple[Frames, Pulled, Armholes]:
    """The frames, levers and armholes with the front made hollower, as far as it may be."""
    most = proportion("armhole.most_side_lean")
    for _ in range(_ROUNDS):
        pulled = _hollower(frames, pulled)
        front, back = armholes = draw_armholes(frames, pulled)
        short = _short(armholes)
        if short <= 0.0 or place.lean >= most or back.length <= front.length:
            return frames, pulled, armholes
        # A side seam moved by 1 mm makes the one about half of that deeper, the other shallower.
        place.lean = min(place.lean + short, most)
        frames, pulled = settle_side(given, slopes, place)
    return frames, pulled, draw_armholes(frames, pulled)


def _hollower(frames: Frames, pulled: Pulled) -> Pulled:
    """The levers with a front that stays square to its side seam for as long as it must or may."""
    most = proportion("armhole.most_hollower")
    back = draw_armholes(frames, pulled)[1]
    low, high = (_short((_front(frames, replace(pulled, hollower=by)), back)) for by in (0.0, most))
    if low <= 0.0:
        return replace(pulled, hollower=0.0)
    # It is nearly even in between; a little more than even makes sure.
    share = 1.0 if high >= 0.0 else min(1.1 * low / (low - high), 1.0)
    return replace(pulled, hollower=share * most)


def _short(armholes: Armholes) -> float:
    """By how many mm the front is less hollow than it should be."""
    front, back = (_hollow(path) for path in armholes)
    return (back + _MARGIN - front) * armholes[0].start.distance_to(armholes[0].end)


def _hollow(armhole: Path) -> float:
    """How far an armhole strays from the straight way between its ends, as a share of that."""
    way = armhole.end - armhole.start
    deepest = max(
        (segment.at(number / _SAMPLES) - armhole.start).cross(way)
        for segment in armhole.segments
        for number in range(_SAMPLES + 1)
    )
    return deepest / way.norm() ** 2
