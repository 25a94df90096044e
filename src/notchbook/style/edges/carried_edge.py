"""An edge whose two ends are moved: its shape is carried along evenly, its end directions stay."""

from dataclasses import dataclass

from notchbook.geometry import Cubic, Path, Point
from notchbook.style.edges.as_cubic import as_cubic
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class Carry:
    """How far the start and the end of an edge move, and a ``hollow`` toward which its middle is drawn.

    ``lean``: by how much of the mean slant that this gives an edge its moved ends turn with it; 0: they keep
    their directions, and a straight edge becomes an S.
    """

    start: Point
    end: Point
    hollow: Point
    lean: float = 0.0

    def at(self, share: float) -> Point:
        """How far the place at a share of the length moves."""
        eased = share * share * (3.0 - 2.0 * share)
        belly = 16.0 * (share * (1.0 - share)) ** 2
        leant = self.end * _leant(share) + self.start * _leant(1.0 - share)
        return self.start * (1.0 - eased) + self.end * eased + self.hollow * belly + leant * self.lean

    def slope_at(self, share: float) -> Point:
        """How this changes with the share; without a lean nothing at both ends: the directions there stay."""
        eased = 6.0 * share * (1.0 - share)
        belly = 32.0 * share * (1.0 - share) * (1.0 - 2.0 * share)
        leant = self.end * _leant_slope(share) - self.start * _leant_slope(1.0 - share)
        return (self.end - self.start) * eased + self.hollow * belly + leant * self.lean


def _leant(share: float) -> float:
    """A cubic that is 0 at both ends and leaves the first one level."""
    return share * share * (share - 1.0)


def _leant_slope(share: float) -> float:
    return share * (3.0 * share - 2.0)


def carried_edge(path: Path, carry: Carry) -> Path:
    """The edge carried along; each segment stays one cubic, without a corner where there was none."""
    length = path.length
    moved: list[Cubic] = []
    reached = 0.0
    for segment in path.segments:
        following = reached + segment.length
        if segment.length > TOLERANCES.join:
            moved.append(_moved(as_cubic(segment), carry, (reached, following), length))
        reached = following
    return Path(tuple(moved))


def _moved(curve: Cubic, carry: Carry, span: tuple[float, float], length: float) -> Cubic:
    first, last = (place / length for place in span)
    leaving = carry.slope_at(first) * (curve.derivative(0.0).norm() / length / 3.0)
    arriving = carry.slope_at(last) * (curve.derivative(1.0).norm() / length / 3.0)
    begins, ends = carry.at(first), carry.at(last)
    return Cubic(
        curve.start + begins,
        curve.start_handle + begins + leaving,
        curve.end_handle + ends - arriving,
        curve.end + ends,
    )
