"""Front and back crotch seam of a legging: a straight center and a curve to the crotch point."""

from dataclasses import dataclass
from math import radians, tan

from notchbook.geometry import Cubic, Line, Path, Point, curve_between, direction


@dataclass(frozen=True, slots=True)
class CenterPlan:
    """What one center is drawn from, in a frame whose center lies toward +x: where it stands at the hip
    line, how far its curve reaches out beyond, how much it slants in to the waist (degrees), how much it
    falls where it meets the inseam (degrees), where its curve begins and how it is
    pulled at both ends."""

    hip: Point
    crotch_point: Point
    slant: float
    fall: float
    start_share: float
    pull: float
    end_pull: float = 1.0


@dataclass(frozen=True, slots=True)
class CrotchSeam:
    """A crotch seam whose straight part is as long as it must be. ``top`` is its end at the waist."""

    top: Point
    curve: Cubic
    slant: float

    @property
    def path(self) -> Path:
        """From the waist to the crotch point."""
        return Path.of(Line(self.top, self.curve.start), self.curve)


def center_curve(plan: CenterPlan) -> Cubic:
    """The curve from the straight center to the crotch point; it begins at the hip line or below."""
    reach = plan.crotch_point.x - plan.hip.x
    height = min(plan.start_share * reach, plan.hip.y)
    start = Point(plan.hip.x - tan(radians(plan.slant)) * (height - plan.hip.y), height)
    return curve_between(start, plan.slant - 90.0, plan.crotch_point, -plan.fall, plan.pull, plan.end_pull)


def crotch_seam(plan: CenterPlan, length: float) -> CrotchSeam:
    """The seam of this length, mm."""
    curve = center_curve(plan)
    up = direction(90.0 + plan.slant)
    return CrotchSeam(curve.start + up * (length - curve.length), curve, plan.slant)
