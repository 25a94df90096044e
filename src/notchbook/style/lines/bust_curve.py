"""The two edges of a seam that runs over the bust point: each fair, the side one eased between two notches.

Both panels are as long as each other above and below the zone round the bust point. Within it the side edge
is rounded over the fullness of the closed darts, and longer by the ease.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from math import degrees

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Cubic, Path, Point, Transform, curve_between, run_on
from notchbook.geometry.nearest import nearest_parameter
from notchbook.geometry.solve import solve_rising
from notchbook.units import TOLERANCES

ZONE = 50.0
"""mm above and below the bust point within which the ease lies: from notch to notch. Common practice: the
notches stand 5 cm from the bust point."""

ZONE_SHARE = 0.4
"""Greatest share of the way above or below the bust point that the zone takes, on a small body."""

INSIDE_SHARE = 0.5
"""How far inside the bust point the side edge passes, as a share of how far a curve would pass that only cuts
the corner: half is given up at the bust point, half added above and below it. Own judgment."""

MOST_INSIDE = 10.0
"""mm; a seam over the bust passes the bust point within this. Trade course notes allow up to an inch."""

_MOST_OPENED = 40.0
"""mm that the side panel may be opened or lapped at the bust point to come out with its ease."""


@dataclass(frozen=True, slots=True)
class OverBust:
    """The ways along one panel, top to bust point and bust point to bottom, as they lie with the darts
    closed."""

    above: Path
    below: Path

    @property
    def zones(self) -> tuple[float, float]:
        """How far the zone reaches above and below, mm."""
        return (
            min(ZONE, ZONE_SHARE * self.above.length),
            min(ZONE, ZONE_SHARE * self.below.length),
        )


@dataclass(frozen=True, slots=True)
class Rounded:
    """An edge over the bust: its parts above, within and below the zone; ``inside`` is how far within the
    panel it passes the bust point, mm."""

    above: Path
    within: Path
    below: Path
    inside: float

    @property
    def length(self) -> float:
        """The length of the whole edge, mm."""
        return self.above.length + self.within.length + self.below.length


@dataclass(frozen=True, slots=True)
class EasedPair:
    """The edges of the center and the side panel, and by how many degrees the upper part of the side panel is
    turned about its hinge (counter-clockwise) to give the ease."""

    center: Rounded
    side: Rounded
    turned: float


def eased_pair(
    center: OverBust, side: Callable[[float], OverBust], bust_point: Point, ease: float, hinge_turn: float
) -> EasedPair:
    """The two edges, the side one longer by ``ease``.

    ``side`` gives the ways along the side panel when its upper part is turned by so many degrees about its
    hinge; ``hinge_turn`` is the turn, with its sign, that opens it by 1 mm at the bust point (0: no hinge,
    and the side edge is as long as it comes).
    StepRefused ``princess-ease-unreachable``, ``princess-misses-bust-point``.
    """
    middle = rounded(center, bust_point, 0.0)

    @cache
    def eased(opened: float) -> Rounded:
        return _over(side(opened * hinge_turn), bust_point)

    opened = 0.0
    if hinge_turn:
        try:
            opened = solve_rising(
                lambda by: eased(by).length - middle.length - ease, ease, 2.0, -_MOST_OPENED, _MOST_OPENED
            )
        except GeometryError as error:
            raise StepRefused("princess-ease-unreachable", ease=ease) from error
    outer = eased(opened)
    if not hinge_turn and abs(outer.length - middle.length - ease) > TOLERANCES.seam_walk:
        raise StepRefused("princess-ease-needs-hinge", ease=ease, comes=outer.length - middle.length)
    if max(outer.inside, abs(middle.inside)) > MOST_INSIDE:
        raise StepRefused(
            "princess-misses-bust-point", inside=max(outer.inside, abs(middle.inside)), most=MOST_INSIDE
        )
    return EasedPair(middle, outer, opened * hinge_turn)


def _over(ways: OverBust, bust_point: Point) -> Rounded:
    """The edge of the side panel: its straight ways swung out so that the curve passes half as far inside."""
    swing = _Swing.of(ways, bust_point)
    plain = swing.inside(0.0)
    if plain <= 0.0:
        return swing.rounded(0.0)
    wanted = INSIDE_SHARE * plain
    out = solve_rising(lambda by: swing.inside(by) - wanted, 0.0, 1.0, 0.0, 3.0 * plain)
    return swing.rounded(out)


def rounded(ways: OverBust, bust_point: Point, out: float) -> Rounded:
    """The ways swung outward by so many mm at the bust point, with one curve from zone end to zone end.

    Each way turns about its outer end, so that both stay congruent with those of the other panel.
    """
    return _Swing.of(ways, bust_point).rounded(out)


@dataclass(frozen=True, slots=True)
class _Swing:
    """Ways that can be swung outward: their parts above and below the zone as they lie, and the turns in
    degrees by which each moves outward by 1 mm at the bust point."""

    above: Path
    below: Path
    turns: tuple[float, float]
    outward: float
    bust_point: Point

    @staticmethod
    def of(ways: OverBust, bust_point: Point) -> "_Swing":
        """The ways before they are swung."""
        upper, lower = ways.zones
        above, below = ways.above, ways.below
        chord = (below.end - above.start).unit()
        corner = above.end.lerp(below.start, 0.5)
        outward = 1.0 if chord.cross(corner - above.start) < 0.0 else -1.0
        return _Swing(
            above.between(0.0, above.length - upper),
            below.between(lower, below.length),
            (-outward * _turn_for_1_mm(above), outward * _turn_for_1_mm(below)),
            outward,
            bust_point,
        )

    def rounded(self, out: float) -> Rounded:
        """The edge with its ways swung by so many mm."""
        first = self.above.transformed(Transform.rotation(self.turns[0] * out, self.above.start))
        last = self.below.transformed(Transform.rotation(self.turns[1] * out, self.below.end))
        within = run_on(first, first.length, last, 0.0)
        return Rounded(first, Path.of(within), last, self._inside(within))

    def inside(self, out: float) -> float:
        """How far inside the panel that edge passes the bust point, mm; it draws the zone alone."""
        turns = [turn * out for turn in self.turns]
        before = self.above.tangent_at(self.above.length).direction() + turns[0]
        after = self.below.tangent_at(0.0).direction() + turns[1]
        start = self.above.end.rotated(turns[0], self.above.start)
        end = self.below.start.rotated(turns[1], self.below.end)
        return self._inside(curve_between(start, before, end, after))

    def _inside(self, within: Cubic) -> float:
        parameter, _ = nearest_parameter(within, self.bust_point)
        side = within.tangent(parameter).cross(self.bust_point - within.at(parameter))
        return -self.outward * side


def _turn_for_1_mm(path: Path) -> float:
    """The turn in degrees by which the end of the path far from its pivot moves by 1 mm."""
    return degrees(1.0 / path.start.distance_to(path.end))
