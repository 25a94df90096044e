"""The leg opening of a bodysuit: scooped in front, covering the seat behind, smooth across both joins."""

from dataclasses import dataclass
from typing import Literal

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import BodysuitGiven
from notchbook.blocks.stretch.side_seam import cut_at
from notchbook.geometry import Path, Point, curve_between, direction

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
        _front(above.end, square - rise, front, _DOWN + lean),
        _back(above.end, square + rise, back, _DOWN - lean),
    )


def _front_rise(start: Point, back: Point, square: float) -> float:
    """How much (degrees) the front line rises where it leaves the side, and the back falls: more where the
    way to the back crotch falls steeply, so that the back soon comes below it."""
    falling = ((back - start).direction() - square + 180.0) % 360.0 - 180.0
    wanted = figure("leg.level_rise") + figure("leg.rise_share") * falling
    return min(max(wanted, figure("leg.least_rise")), figure("leg.most_rise"))


def _crotch_lean(start: Point, back: Point, most: Literal["most", "roomy"]) -> float:
    """How much (degrees) the back line still runs inward where it reaches the crotch join, and the front
    outward: enough that the back need not turn in with a hook. A ``roomy`` front stays wider by less."""
    chord = (back - start).direction() % 360.0
    wanted = _DOWN % 360.0 - figure("leg.most_turn_in") - chord
    return min(max(wanted, figure("leg.least_crotch_lean")), figure(f"leg.{most}_crotch_lean"))


def _front(start: Point, leaving: float, end: Point, arriving: float) -> Path:
    """Scooped, and running outward at the crotch as much as the back runs inward."""
    side, crotch = figure("leg.front_side_pull"), figure("leg.front_crotch_pull")
    return Path.of(curve_between(start, leaving, end, arriving, side, crotch))


def _back(start: Point, leaving: float, end: Point, arriving: float) -> Path:
    """Continues the front line across the side seam, lies below its chord over the seat and turns in evenly
    toward the crotch."""
    chord = end - start
    along = chord.direction()
    short = _shortness(chord.norm())
    place = _between("leg.cover_place", "leg.short_cover_place", short)
    middle = start.lerp(end, place) + direction(along + 90.0) * _cover(chord.norm())
    near, side = (figure(f"leg.back_{word}_pull") for word in ("cover", "side"))
    crotch = _between("leg.back_crotch_pull", "leg.short_crotch_pull", short)
    return Path.of(
        curve_between(start, leaving, middle, along, side, near, keep_convex=False),
        curve_between(middle, along, end, arriving, near, crotch, keep_convex=False),
    )


def _shortness(chord: float) -> float:
    """How much of a short line a back leg of this chord is: 0 of a grown-up's, 1 of a child's."""
    short, long = figure("leg.short_chord"), figure("leg.long_chord")
    return min(max((long - chord) / (long - short), 0.0), 1.0)


def _between(usual: str, of_short: str, short: float) -> float:
    return figure(usual) + short * (figure(of_short) - figure(usual))


def _cover(chord: float) -> float:
    """How far the back line lies below a chord of this length, mm: over the fold of the seat."""
    wanted = figure("leg.cover_share") * chord
    return min(max(wanted, figure("leg.least_cover")), figure("leg.most_cover"))
