"""The waist seam of one panel: a chain of circular arcs that is one smooth line when its darts are closed.

It leaves the center square. At each dart it arrives leaning down by half the dart's angle and leaves
leaning up by as much, so that both legs stand square to it; it ends square to the side seam. A fitted
waist therefore dips a little at its darts and at the side: it is a cone, unrolled.

Plain numbers, because these lines are asked for again and again while others are solved. Angles here
are in radians, counter-clockwise; mm.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import asin, atan2, cos, degrees, hypot, sin, tan

from notchbook.blocks.upper.proportions import proportion
from notchbook.errors import DraftRefused
from notchbook.geometry import Cubic, Line, Path, Point

_ROUNDS = 60
_EXACTNESS = 1e-11
_LEAST_PART = 2.0
"""mm of waist that must stay between two darts: less is a slip, not a shape."""


@dataclass(frozen=True, slots=True)
class DartAim:
    """A dart to be set: where its middle stands (x), half its mouth, and either the length of its legs
    (``leg``; the point then follows) or the height of its point (``height``; the legs follow)."""

    middle: float
    half: float
    leg: float | None = None
    height: float | None = None


@dataclass(frozen=True, slots=True)
class ArcPart:
    """One arc of the waist: its ends and the headings there."""

    x: float
    y: float
    heading: float
    end_x: float
    end_y: float
    end_heading: float

    @property
    def length(self) -> float:
        """Its length, mm."""
        chord = hypot(self.end_x - self.x, self.end_y - self.y)
        half = (self.end_heading - self.heading) / 2.0
        return chord if abs(half) < 1e-9 else chord * half / sin(half)

    def path(self) -> Path:
        """The arc as a curve; its length is kept to better than 1e-6 mm."""
        start, end = Point(self.x, self.y), Point(self.end_x, self.end_y)
        turn = self.end_heading - self.heading
        if abs(turn) < 1e-9:
            return Path.of(Line(start, end))
        handle = start.distance_to(end) / (3.0 * cos(turn / 4.0) ** 2)
        leaving = Point(cos(self.heading), sin(self.heading))
        arriving = Point(cos(self.end_heading), sin(self.end_heading))
        return Path.of(Cubic(start, start + leaving * handle, end - arriving * handle, end))


@dataclass(frozen=True, slots=True)
class SetDart:
    """A dart as it came out: the ends of its mouth lie level."""

    middle: float
    half: float
    mouth_y: float
    point_y: float

    @property
    def leg(self) -> float:
        """The length of its legs, mm."""
        return hypot(self.half, self.point_y - self.mouth_y)

    @property
    def angle(self) -> float:
        """Its whole angle, degrees."""
        return 2.0 * degrees(atan2(self.half, self.point_y - self.mouth_y))


@dataclass(frozen=True, slots=True)
class WaistChain:
    """The arcs from the center to the side and the darts between them."""

    parts: tuple[ArcPart, ...]
    darts: tuple[SetDart, ...]

    @property
    def length(self) -> float:
        """The waist as sewn, mm."""
        return sum(part.length for part in self.parts)

    @property
    def side_y(self) -> float:
        """The height of the waist at the side over the waist at the center, mm (mostly below 0)."""
        return self.parts[-1].end_y

    def height_at(self, x: float) -> float:
        """The height of the waist below a place that no dart stands on, mm."""
        part = next((part for part in self.parts if part.x <= x <= part.end_x), self.parts[-1])
        span = part.end_x - part.x
        # Along an arc the sine of the heading grows evenly with x.
        sine = sin(part.heading) + (sin(part.end_heading) - sin(part.heading)) * (x - part.x) / span
        return part.y + (x - part.x) * tan((part.heading + asin(sine)) / 2.0)


def waist_chain(aims: Sequence[DartAim], side_x: float, side_tilt: float) -> WaistChain:
    """The waist of a panel that ends at ``side_x``, square to a side seam that leans by ``side_tilt``.

    DraftRefused ``bodice-waist-darts-too-wide`` when the darts run into each other or out of the panel,
    or are too wide for their length.
    """
    parts: list[ArcPart] = []
    darts: list[SetDart] = []
    x, y, heading = 0.0, 0.0, 0.0
    for aim in aims:
        first = aim.middle - aim.half
        _require(first - x >= _LEAST_PART, aim)
        mouth_y, half_angle = _seat(aim, x, y, heading)
        point_y = mouth_y + aim.leg * cos(half_angle) if aim.leg is not None else aim.height
        assert point_y is not None  # an aim says one of the two
        parts.append(ArcPart(x, y, heading, first, mouth_y, -half_angle))
        darts.append(SetDart(aim.middle, aim.half, mouth_y, point_y))
        x, y, heading = aim.middle + aim.half, mouth_y, half_angle
    if aims:
        _require(side_x - x >= _LEAST_PART, aims[-1])
    end_y = y + (side_x - x) * tan((heading - side_tilt) / 2.0)
    parts.append(ArcPart(x, y, heading, side_x, end_y, -side_tilt))
    return WaistChain(tuple(parts), tuple(darts))


def _seat(aim: DartAim, x: float, y: float, heading: float) -> tuple[float, float]:
    """Height of the mouth and half the angle of a dart that is reached from (x, y)."""
    way = aim.middle - aim.half - x
    mouth_y, widest = y, proportion("waist.widest_over_leg")
    if aim.leg is not None:
        _require(2.0 * aim.half < widest * aim.leg, aim)
        half_angle = asin(aim.half / aim.leg)
        return y + way * tan((heading - half_angle) / 2.0), half_angle
    assert aim.height is not None
    half_angle = 0.0
    for _ in range(_ROUNDS):
        tall = aim.height - mouth_y
        _require(2.0 * aim.half < widest * tall, aim)
        half_angle = atan2(aim.half, tall)
        lower = y + way * tan((heading - half_angle) / 2.0)
        if abs(lower - mouth_y) < _EXACTNESS:
            break
        mouth_y = lower
    return mouth_y, half_angle


def _require(holds: bool, aim: DartAim) -> None:
    if not holds:
        raise DraftRefused("bodice-waist-darts-too-wide", width=2.0 * aim.half)
