"""The two edges of a seam that runs over the bust point: each fair, the side one eased between two notches.

Both panels are as long as each other above and below the zone round the bust point. Within it the side edge
is rounded over the fullness of the closed darts, and longer by the ease.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import degrees

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point, Transform, run_on
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
    outside = _outside(ways)
    plain = _rounded(ways, outside, bust_point, 0.0)
    if plain.inside <= 0.0:
        return plain
    wanted = INSIDE_SHARE * plain.inside
    out = solve_rising(
        lambda by: _rounded(ways, outside, bust_point, by).inside - wanted, 0.0, 1.0, 0.0, 3.0 * plain.inside
    )
    return _rounded(ways, outside, bust_point, out)


def rounded(ways: OverBust, bust_point: Point, out: float) -> Rounded:
    """The ways swung outward by so many mm at the bust point, with one curve from zone end to zone end.

    Each way turns about its outer end, so that both stay congruent with those of the other panel.
    """
    return _rounded(ways, _outside(ways), bust_point, out)


def _outside(ways: OverBust) -> tuple[Path, Path]:
    """The parts of the ways above and below the zone, before they are swung."""
    upper, lower = ways.zones
    above, below = ways.above, ways.below
    return above.between(0.0, above.length - upper), below.between(lower, below.length)


def _rounded(ways: OverBust, outside: tuple[Path, Path], bust_point: Point, out: float) -> Rounded:
    corner = ways.above.end.lerp(ways.below.start, 0.5)
    chord = (ways.below.end - ways.above.start).unit()
    is_right = chord.cross(corner - ways.above.start) < 0.0
    outward = 1.0 if is_right else -1.0
    first = outside[0].transformed(_swing(ways.above, ways.above.start, -outward * out))
    last = outside[1].transformed(_swing(ways.below, ways.below.end, outward * out))
    within = Path.of(run_on(first, first.length, last, 0.0))
    nearest = within.nearest(bust_point)
    side = within.tangent_at(nearest.distance_along).cross(bust_point - nearest.point)
    return Rounded(first, within, last, -outward * side)


def _swing(path: Path, about: Point, by: float) -> Transform:
    """The turn by which the end of the path far from ``about`` moves by so many mm."""
    reach = path.start.distance_to(path.end)
    return Transform.rotation(degrees(by / reach), about)
