"""A hem brought to a seam beside it that was drawn anew or cut, so that both meet square or as before."""

from dataclasses import dataclass
from math import cos, radians, tan

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point, curve_between
from notchbook.geometry.solve import solve_rising
from notchbook.style.edges.carried import carried_on
from notchbook.style.edges.end_turns import turned

_REACH = 600.0
"""mm by which seam and hem are followed to find where they meet: more than any hem is moved."""

_SLANTED = 4.0
"""So many times the amount by which a hem is moved it may run on to meet the edge beside it: an edge that
lies flatter to the hem than 15 degrees has no corner with it."""

_LEAST_TURN = 0.3
"""Degrees below which a corner needs no bend of the hem: a protractor does not show it."""

_HAIR = 5.0
"""mm that are no line of their own at the end of a curve: less than a ruler is laid to. Own judgment."""


@dataclass(frozen=True, slots=True)
class HemCorner:
    """A seam that runs down to its hem, and the hem that runs to the seam; ``rise``: how much further down
    the seam ends than the hem would meet it without a bend, mm."""

    seam: Path
    hem: Path
    rise: float = 0.0


def squared_corner(seam: Path, hem: Path, bend: float, said: str) -> HemCorner:
    """Seam and hem ended where they meet square; the last ``bend`` mm of the hem are an arc.

    The hem as it was is kept up to the bend. Where the seam leans the seam ends a little below the old hem,
    or above it, by the rise of the arc. StepRefused ``hem-missed`` when seam and hem do not meet; ``said``
    is the hem as it is said.
    """
    longer_seam, longer_hem = carried_on(seam, _REACH), carried_on(hem, _REACH)
    crossings = [one for one in longer_seam.intersections(longer_hem) if one.at_self > seam.length / 2.0]
    if not crossings:
        raise StepRefused("hem-missed", hem=said)
    meeting = crossings[0]
    along, down = longer_hem.tangent_at(meeting.at_other), longer_seam.tangent_at(meeting.at_self)
    lean = down.perpendicular() if down.perpendicular().dot(along) > 0.0 else -down.perpendicular()
    turn = lean.direction() - along.direction()
    angle = radians((turn + 180.0) % 360.0 - 180.0)
    half = min(bend, meeting.at_other * 0.75) / (1.0 + 1.0 / cos(angle))
    below = half * tan(angle) if down.cross(along) < 0.0 else -half * tan(angle)
    end = meeting.at_self + below
    kept = longer_hem.between(0.0, meeting.at_other - half / cos(angle) - half)
    ended = longer_seam.between(0.0, end)
    start_way, end_way = kept.tangent_at(kept.length).direction(), lean.direction()
    if abs(angle) < 1e-9:
        return HemCorner(ended, longer_hem.between(0.0, meeting.at_other))
    arc = curve_between(kept.end, start_way, ended.end, end_way)
    return HemCorner(ended, kept.joined(Path.of(arc)))


def kept_corner(seam: Path, hem: Path, amount: float, bend: float, said: str) -> HemCorner:
    """Seam and moved hem ended where they meet, at the angle at which the seam met the hem before it moved.

    ``seam`` is as it was and ``hem`` the parallel at ``amount`` mm. A straight seam meets it so wherever it
    is cut. Where a curved one has turned, the last ``bend`` mm of the hem turn with it, and the seam ends
    lower or higher by the rise of that arc. StepRefused ``hem-not-square`` where they do not meet, or not
    within the bend; ``said`` is the seam as it is said.
    """
    corner = _Corner(seam, hem, carried_on(seam, abs(amount) * _SLANTED + bend))
    longer = carried_on(hem, abs(amount) * _SLANTED)
    found = [one for one in corner.longer.intersections(longer) if one.at_other > hem.length / 2.0]
    if not found:
        raise StepRefused("hem-not-square", edge=said, gap=seam.nearest(hem.end).gap)
    meeting = min(found, key=lambda one: abs(one.at_self - seam.length - amount))
    ended = corner.longer.between(0.0, meeting.at_self)
    if abs(turned(seam, ended, at_end=True)) < _LEAST_TURN:
        return HemCorner(ended, _led_to(hem, longer, meeting.at_other).with_end(ended.end))
    return _bent(corner, longer, meeting.at_self, bend / 2.0, said)


def _led_to(hem: Path, longer: Path, place: float) -> Path:
    """The hem ended at a place of its longer line; a hair is led on by moving its end."""
    if hem.length < place <= hem.length + _HAIR:
        return hem.with_end(longer.point_at(place))
    return longer.between(0.0, place)


@dataclass(frozen=True, slots=True)
class _Corner:
    """The ``seam`` as it was and carried on (``longer``), and the ``hem`` at its new place."""

    seam: Path
    hem: Path
    longer: Path

    def tip(self, place: float, half: float) -> Point:
        """The tip of an arc of the hem that ends on the seam at the place, at the angle as before."""
        ended = self.longer.between(0.0, place)
        turn = turned(self.seam, ended, at_end=True)
        return ended.end - self.hem.tangent_at(self.hem.length).rotated(turn) * half


def _bent(corner: _Corner, hem: Path, meeting: float, half: float, said: str) -> HemCorner:
    """The hem with an arc at its end that is as long before its tip as after it."""

    def beside(rise: float) -> float:
        """How far the tip of the arc lies left of the hem when the seam ends so much lower."""
        tip = corner.tip(meeting + rise, half)
        nearest = hem.nearest(tip)
        return (tip - nearest.point).dot(hem.tangent_at(nearest.distance_along).perpendicular())

    try:
        rise = solve_rising(beside, 0.0, 1.0, max(-half, -meeting / 2.0), half)
    except GeometryError as error:
        raise StepRefused("hem-not-square", edge=said, gap=abs(beside(0.0))) from error
    ended = corner.longer.between(0.0, meeting + rise)
    tip = corner.tip(meeting + rise, half)
    kept = hem.between(0.0, hem.nearest(tip).distance_along - half)
    way = (ended.end - tip).direction()
    arc = curve_between(kept.end, kept.tangent_at(kept.length).direction(), ended.end, way)
    return HemCorner(ended, kept.joined(Path.of(arc)), rise)
