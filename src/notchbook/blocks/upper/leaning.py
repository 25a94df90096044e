"""An armhole that leans forward: where the front would come out less hollow than the back, it stays square to
the side seam for longer, and where that does not do, the side seam goes back."""

from dataclasses import replace

from notchbook.blocks.upper.across import UpperArmhole
from notchbook.blocks.upper.armhole import Landing, draw_armhole
from notchbook.blocks.upper.frames import Frames, arrivals
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.levers import Pulled
from notchbook.blocks.upper.necks import Slopes
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.side_place import Place, settle_side
from notchbook.geometry import Path, Point

Armholes = tuple[Path, Path]
"""Front and back."""

_ROUNDS = 6
_SAMPLES = 24
"""Places at which each segment is looked at: the deepest is found within 0.1 mm."""

_MARGIN = 0.0005
"""By how much of the straight way the front is to be hollower at least: about 0.1 mm."""


def draw_armholes(frames: Frames, pulled: Pulled) -> Armholes:
    """Both armholes with the levers in use."""
    under, bottom = frames.back_underarm, proportion("armhole.back_bottom")
    back = lowered_across(frames.back_upper, under, pulled.back_evened)
    landing = Landing(under, arrivals(frames)[1], bottom, _hollow_kept(pulled.back_evened))
    drawn = draw_armhole(back, back.lean + pulled.tilt, back.width + pulled.back_change, landing)
    return _front(frames, pulled), drawn


def _front(frames: Frames, pulled: Pulled) -> Path:
    under, bottom = frames.turned.underarm, proportion("armhole.front_bottom") + pulled.hollower
    front = lowered_across(frames.front_upper, under, pulled.front_evened)
    landing = Landing(under, arrivals(frames)[0], bottom, _hollow_kept(pulled.front_evened))
    return draw_armhole(front, front.lean - pulled.tilt, front.width + pulled.front_change, landing)


def lowered_across(upper: UpperArmhole, underarm: Point, evened: float) -> UpperArmhole:
    """The upper half with its across level as low as an armhole lies that was evened by this share."""
    tall = upper.tip.y - underarm.y
    room = upper.across_y - underarm.y - proportion("armhole.lowest_evened") * tall
    most = min(proportion("armhole.most_evening") * tall, max(room, 0.0))
    return replace(upper, across_y=upper.across_y - evened * most)


def _hollow_kept(evened: float) -> float:
    usual, least = proportion("armhole.usual_hollow"), proportion("armhole.least_hollow")
    return usual + evened * (least - usual)


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
