"""The smooth curve by which one line runs on into another."""

from notchbook.geometry.cubic import Cubic
from notchbook.geometry.path import Path
from notchbook.geometry.velocity import curve_between


def run_on(before: Path, stop: float, after: Path, begin: float) -> Cubic:
    """The curve from the place ``stop`` mm along one path to the place ``begin`` mm along the next.

    It leaves the first and reaches the second in their own directions there. GeometryError
    ``points-coincide`` where the two places do.
    """
    return curve_between(
        before.point_at(stop),
        before.tangent_at(stop).direction(),
        after.point_at(begin),
        after.tangent_at(begin).direction(),
    )
