"""An edge whose two ends are moved: its shape is carried along evenly, its end directions stay."""

from dataclasses import dataclass

from notchbook.geometry import Cubic, Path, Point
from notchbook.style.edges.as_cubic import as_cubic
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class Carry:
    """How far the start and the end of an edge move, and a ``hollow`` toward which its middle is drawn."""

    start: Point
    end: Point
    hollow: Point

    def at(self, share: float) -> Point:
        """How far the place at a share of the length moves."""
        eased = share * share * (3.0 - 2.0 * share)
        belly = 16.0 * (share * (1.0 - share)) ** 2
        return self.start * (1.0 - eased) + self.end * eased + self.hollow * belly

    def slope_at(self, share: float) -> Point:
        """How this changes with the share; nothing at both ends, so that the directions there stay."""
        eased = 6.0 * share * (1.0 - share)
        belly = 32.0 * share * (1.0 - share) * (1.0 - 2.0 * share)
        return (self.end - self.start) * eased + self.hollow * belly


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
