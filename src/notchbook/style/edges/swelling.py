"""An edge moved square to the grain by an amount that is full at one place and runs to nothing at others."""

from dataclasses import dataclass

from notchbook.geometry import Cubic, Line, Path, Point, Segment
from notchbook.style.edges.as_cubic import as_cubic
from notchbook.units import TOLERANCES

_THIRD = 1.0 / 3.0


@dataclass(frozen=True, slots=True)
class Swelling:
    """How far an edge of the given ``length`` moves at each distance from its named end, mm.

    ``amount`` at ``full``; nothing from the places ``nothing`` outward. Toward an end without such a place
    the full amount goes on. Within the edge it begins and ends without a corner.
    """

    length: float
    amount: float
    full: float
    nothing: tuple[float, ...] = ()

    @property
    def below(self) -> float | None:
        """The place before the full one from which on it swells; None where it is full from the end on."""
        return max((place for place in self.nothing if place < self.full), default=None)

    @property
    def above(self) -> float | None:
        """The place after the full one at which it has run out."""
        return min((place for place in self.nothing if place > self.full), default=None)

    @property
    def runs_out(self) -> bool:
        """Whether it runs to nothing anywhere."""
        return self.below is not None or self.above is not None

    @property
    def knots(self) -> tuple[float, ...]:
        """The places within the edge at which the rule changes."""
        if not self.runs_out:
            return ()
        places = (self.below, self.full, self.above)
        return tuple(place for place in places if place is not None and self._is_within(place))

    def at(self, distance: float) -> float:
        """The amount at a distance from the named end."""
        side = self._side(distance)
        return self.amount if side is None else self.amount * self._shape(distance, side)[0]

    def slope_at(self, distance: float, from_before: bool) -> float:
        """How fast the amount changes along the edge, just before or after a distance."""
        nudge = -TOLERANCES.sew_length if from_before else TOLERANCES.sew_length
        side = self._side(distance + nudge)
        return 0.0 if side is None else self.amount * self._shape(distance, side)[1] / (self.full - side)

    def _side(self, distance: float) -> float | None:
        return self.below if distance < self.full else self.above

    def _is_within(self, place: float) -> bool:
        return TOLERANCES.closure < place < self.length - TOLERANCES.closure

    def _shape(self, distance: float, nothing: float) -> tuple[float, float]:
        """The share 0 to 1 at a distance, and how it changes with the share of the way to the full place."""
        way = (distance - nothing) / (self.full - nothing)
        if way < 0.0:
            return 0.0, 0.0
        flat_start, flat_end = self._is_within(nothing), self._is_within(self.full)
        if flat_start and flat_end:
            return way * way * (3.0 - 2.0 * way), 6.0 * way * (1.0 - way)
        if flat_start:
            return way * way, 2.0 * way
        if flat_end:
            return way * (2.0 - way), 2.0 - 2.0 * way
        return way, 1.0


def swollen(path: Path, begins: float, swelling: Swelling, outward: Point) -> Path:
    """A line that begins at a distance from the named end, moved along ``outward`` (a unit vector).

    Its segments stay cubics, moved exactly at the places where the rule changes.
    """
    moved: list[Segment] = []
    reached = begins
    for segment in _parted(path, [knot - begins for knot in swelling.knots]).segments:
        following = reached + segment.length
        moved.append(_moved(segment, (reached, following), swelling, outward))
        reached = following
    return Path(tuple(moved))


def _parted(path: Path, places: list[float]) -> Path:
    """The path with a joint at each of the places that lie within it."""
    parts: list[Segment] = []
    rest, travelled = path, 0.0
    for place in sorted(places):
        if TOLERANCES.closure < place - travelled < rest.length - TOLERANCES.closure:
            part, rest = rest.split_at(place - travelled)
            parts.extend(part.segments)
            travelled = place
    return Path((*parts, *rest.segments))


def _moved(segment: Segment, span: tuple[float, float], swelling: Swelling, outward: Point) -> Segment:
    amounts = [swelling.at(place) for place in span]
    slopes = (swelling.slope_at(span[0], from_before=False), swelling.slope_at(span[1], from_before=True))
    if isinstance(segment, Line) and _is_even(amounts, slopes, segment.length):
        return Line(segment.start + outward * amounts[0], segment.end + outward * amounts[1])
    curve = as_cubic(segment)
    speeds = (curve.derivative(0.0).norm(), curve.derivative(1.0).norm())
    return Cubic(
        curve.start + outward * amounts[0],
        curve.start_handle + outward * (amounts[0] + slopes[0] * speeds[0] * _THIRD),
        curve.end_handle + outward * (amounts[1] - slopes[1] * speeds[1] * _THIRD),
        curve.end + outward * amounts[1],
    )


def _is_even(amounts: list[float], slopes: tuple[float, float], length: float) -> bool:
    """Whether the amount changes evenly along a straight segment, so that it stays straight."""
    even = (amounts[1] - amounts[0]) / length if length > 0.0 else 0.0
    return max(abs(slope - even) for slope in slopes) * length < TOLERANCES.sew_length
