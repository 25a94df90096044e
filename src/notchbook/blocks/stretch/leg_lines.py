"""The leg opening of a bodysuit: scooped in front, covering the seat behind, smooth across both joins."""

from dataclasses import dataclass

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
    return LegLines(
        above,
        _front(given, above.end, square - rise, front),
        _back(given, above.end, square + rise, back),
    )


def _front_rise(start: Point, back: Point, square: float) -> float:
    """How much (degrees) the front line rises where it leaves the side, and the back falls."""
    falling = ((back - start).direction() - square + 180.0) % 360.0 - 180.0
    wanted = falling + figure("leg.over_chord")
    return min(max(wanted, figure("leg.least_rise")), figure("leg.most_rise"))


def _front(given: BodysuitGiven, start: Point, leaving: float, end: Point) -> Path:
    """Scooped, and running outward at the crotch as much as the back runs inward."""
    arriving = _DOWN + figure("leg.crotch_lean")
    return Path.of(curve_between(start, leaving, end, arriving, given.front_scoop, given.front_scoop))


def _back(given: BodysuitGiven, start: Point, leaving: float, end: Point) -> Path:
    """Continues the front line across the side seam, lies below its chord and turns in near the crotch."""
    chord = end - start
    along = chord.direction()
    below = direction(along + 90.0) * given.seat_cover
    middle = start.lerp(end, figure("leg.cover_place")) + below
    arriving = _DOWN - figure("leg.crotch_lean")
    return Path.of(
        curve_between(start, leaving, middle, along, figure("leg.back_side_pull"), keep_convex=False),
        curve_between(middle, along, end, arriving, 1.0, figure("leg.back_crotch_pull"), keep_convex=False),
    )
