"""The tolerances of the geometry: each with its meaning and its reason, in one place."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Tolerances:
    """How near is near enough. Lengths in mm, angles in degrees, unless the comment says otherwise."""

    join_mm: float = 1e-6
    """Ends nearer than this are the same point: far below any paper, far above float noise at 2 m."""

    place_mm: float = 1e-6
    """A distance along a path may overshoot its ends by this much before it is refused."""

    crossing_mm: float = 1e-6
    """Curves that come nearer than this to each other meet there."""

    crossing_leaf_mm: float = 0.01
    """Pieces this short count as straight when curves touch: a 100 mm circle bulges 1e-7 mm on it."""

    same_touch_mm: float = 0.05
    """Parallel curves that meet twice within this length touch once: the gap between is below 1e-5 mm."""

    same_touch_slope: float = 1e-2
    """Sine of the angle below which two meeting curves count as touching, not crossing."""

    same_crossing_mm: float = 1e-5
    """Crossings nearer than this on both paths are one: ten times the accuracy of each."""

    arc_length_mm: float = 1e-9
    """Two estimates of a length that agree this well end the subdivision; sums stay below 1e-6 mm."""

    speed_mm: float = 1e-6
    """A curve that moves slower than this for each unit of its parameter stands still (cusp, no handle)."""

    sliver_mm: float = 1e-4
    """An offset drops pieces shorter than this: they carry no direction that a cutter could follow."""

    offset_fit_mm: float = 0.01
    """How far a refitted offset may stray: a fifth of the promised 0.05 mm, so that errors can add."""

    offset_inside_mm: float = 0.02
    """An offset point nearer to its source than the width less this is on a loop: above the fit error."""

    smooth_join_degrees: float = 0.02
    """A smaller turn between segments is no corner for an offset: 10 mm beside it, 0.004 mm apart."""

    curvature_per_mm: float = 1e-7
    """Curvature below this is straight: a radius of 10 km, a bulge of 0.05 mm on 2 m."""

    curvature_noise: float = 0.02
    """Share of the curvature range that the eye and a French curve cannot tell from monotone."""

    fair_fit_mm: float = 0.005
    """How far a cubic may stray from the spiral it stands for."""


TOLERANCE = Tolerances()
"""The tolerances that the whole package uses."""
