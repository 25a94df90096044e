"""The leg opening of a bodysuit: scooped in front, covering the seat behind, smooth across both joins."""

from dataclasses import dataclass
from math import atan2, degrees, radians, tan
from typing import Literal

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import BodysuitGiven
from notchbook.blocks.stretch.side_seam import cut_at
from notchbook.geometry import Cubic, Path, Point, curve_between, direction

_DOWN = -90.0


@dataclass(frozen=True, slots=True)
class LegLines:
    """The side seam down to the opening, and both leg lines from there to the crotch join."""

    side: Path
    front: Path
    back: Path

    @property
    def opening(self) -> float:
        """The length of the whole opening, mm."""
        return self.front.length + self.back.length


def leg_lines(given: BodysuitGiven, side: Path, height: float) -> LegLines:
    """The opening whose highest place at the side lies at this height (below 0: under the waist line)."""
    above = cut_at(side, height)
    square = above.tangent_at(above.length).direction() - 90.0
    half = given.crotch_width / 2.0
    front, back = Point(half, -given.crotch_front), Point(half, -given.crotch_back)
    rise = _front_rise(above.end, back, square)
    lean = _crotch_lean(above.end, back, "roomy" if given.has_front_room else "most")
    return LegLines(
        above,
        _front(above.end, square - rise, front, _DOWN + lean, given.has_front_room),
        _back(above.end, square + rise, back, _DOWN - lean),
    )


def _front_rise(start: Point, back: Point, square: float) -> float:
    """How much (degrees) the front line rises where it leaves the side, and the back falls: by so much more
    than the way to the back crotch that one bend brings the back to where it covers the seat."""
    chord = back - start
    falling = (chord.direction() - square + 180.0) % 360.0 - 180.0
    way = degrees(atan2(_wanted_cover(chord.norm()), _cover_place(chord.norm())))
    return min(
        max(falling + figure("leg.cover_turn") * way, figure("leg.least_rise")), figure("leg.most_rise")
    )


def _crotch_lean(start: Point, back: Point, most: Literal["most", "roomy"]) -> float:
    """How much (degrees) the back line still runs inward where it reaches the crotch join, and the front
    outward: enough that the back need not turn in with a hook. A ``roomy`` front stays wider by less."""
    chord = (back - start).direction() % 360.0
    wanted = _DOWN % 360.0 - figure("leg.most_turn_in") - chord
    return min(max(wanted, figure("leg.least_crotch_lean")), figure(f"leg.{most}_crotch_lean"))


def _front(start: Point, leaving: float, end: Point, arriving: float, is_roomy: bool) -> Path:
    """Scooped, and running outward at the crotch as much as the back runs inward; a roomy one stays wider."""
    side = figure("leg.front_side_pull")
    crotch = figure(f"leg.{'roomy' if is_roomy else 'front'}_crotch_pull")
    return Path.of(curve_between(start, leaving, end, arriving, side, crotch))


def _back(start: Point, leaving: float, end: Point, arriving: float) -> Path:
    """Continues the front line across the side seam in one bend over the seat, to where it lies farthest
    below its chord, and turns in evenly to the crotch. Where it can not leave the side so steeply it covers
    less."""
    chord = end - start
    along, reach = chord.direction(), _cover_place(chord.norm())
    turn = radians((leaving - along + 180.0) % 360.0 - 180.0)
    cover = min(_wanted_cover(chord.norm()), reach * tan(max(turn, 0.0) / figure("leg.cover_turn")))
    middle = start + direction(along) * reach + direction(along + 90.0) * cover
    over_seat = curve_between(start, leaving, middle, along, keep_convex=False)
    return Path.of(over_seat, _turning_in(middle, along, end, arriving, chord.norm()))


def _turning_in(start: Point, along: float, end: Point, arriving: float, chord: float) -> Cubic:
    """From where it runs along the chord to the crotch; of a line with a short chord (mm) the bend behind the
    join is longer."""
    pull = _between("leg.back_crotch_pull", "leg.short_crotch_pull", chord)
    last = curve_between(start, along, end, arriving, 1.0, pull, keep_convex=False).end_handle
    kept = figure("leg.cover_pull") * (end - start).norm()
    return Cubic(start, start + direction(along) * kept, last, end)


def _cover_place(chord: float) -> float:
    """How far from the side along a chord of this length the back line lies farthest below it, mm."""
    return chord * _between("leg.cover_place", "leg.short_cover_place", chord)


def _between(usual: str, of_short: str, chord: float) -> float:
    """A figure for a chord of this length, mm."""
    return figure(usual) + _shortness(chord) * (figure(of_short) - figure(usual))


def _shortness(chord: float) -> float:
    """How much of a short line a back leg of this chord is: 0 of a grown-up's, 1 of a child's."""
    short, long = figure("leg.short_chord"), figure("leg.long_chord")
    return min(max((long - chord) / (long - short), 0.0), 1.0)


def _wanted_cover(chord: float) -> float:
    """How far the back line is to lie below a chord of this length, mm: over the fold of the seat."""
    wanted = figure("leg.cover_share") * chord
    return min(max(wanted, figure("leg.least_cover")), figure("leg.most_cover"))
