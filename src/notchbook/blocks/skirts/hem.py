"""A straight skirt below the hip: sides that run down, flare or taper, and a hem square to them."""

from dataclasses import dataclass
from math import degrees, radians, tan

from notchbook.blocks._closed_waist import Panel
from notchbook.blocks.skirts.arc import level_line
from notchbook.blocks.skirts.halves import Half
from notchbook.blocks.skirts.lower_seam import LowerSeam
from notchbook.blocks.skirts.waist_height import FLATNESS
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Path, Point, Transform
from notchbook.geometry.solve import solve_rising

MOST_FLARE = 35.0
"""Degrees that a side may flare: beyond it a skirt is better drafted as a part of a circle. Own judgment."""

MOST_TAPER = 8.0
"""Degrees that a side may taper: 4 cm on 30 are 7.6. Own judgment."""


@dataclass(frozen=True, slots=True)
class PanelBelow:
    """A panel below the hip: its side from the hem up to the hip, its hem from the center to the side."""

    side: Path
    hem: Path


def straight_below(panel: Panel, hem: float) -> PanelBelow:
    """Straight down to the level of the hem (y)."""
    hip = panel.side.start
    side, center = Point(hip.x, hem), Point(0.0, hem)
    return PanelBelow(Path.line(side, hip), Path.line(center, side))


def estimated_lean(hip: float, hem: float, below: float) -> float:
    """How much each of the four side edges must lean for a hem, about, degrees; ``below`` is the length from
    hip to hem, mm."""
    return degrees((hem - hip) / 4.0 / below)


def flared_below(half: Half, hem: float, lean: float) -> tuple[PanelBelow, PanelBelow]:
    """Front and back below the hip with sides that flare (or taper) to this lean at the hem, degrees.

    The hem lies at ``hem`` (y) at the centers and rises to the sides, so that it is square to them; the
    sides of both panels are one line.
    """
    widths = (half.front.side.start.x, half.back.side.start.x)
    seam = LowerSeam(half.hip_lean, lean, 0.0, 1.0)
    out, down = seam.excursion, -seam.path.start.y
    hook = FLATNESS * tan(radians(lean / 2.0))
    length = (-hem - hook * sum(widths) / 2.0) / (down + hook * out)
    if length <= 0.0:
        raise GeometryError("no-solution", low=0.0, high=lean, at_low=-hem, at_high=length)
    path = LowerSeam(half.hip_lean, lean, 0.0, length).path
    front, back = (_panel(path, width, hem, lean) for width in widths)
    return front, back


def below_to_hem(half: Half, hem: float, girth: float) -> tuple[PanelBelow, PanelBelow]:
    """Front and back below the hip with a hem of this girth, mm.

    DraftRefused ``skirt-hem-unreachable`` with the least and the most that sides may flare to.
    """

    def over(lean: float) -> float:
        return 2.0 * sum(panel.hem.length for panel in flared_below(half, hem, lean)) - girth

    start = estimated_lean(half.hip, girth, -hem)
    try:
        return flared_below(half, hem, solve_rising(over, start, 0.05, -MOST_TAPER, MOST_FLARE))
    except GeometryError as error:
        raise DraftRefused("skirt-hem-unreachable", hem=girth, hip=half.hip, below=-hem) from error


def _panel(side: Path, width: float, hem: float, lean: float) -> PanelBelow:
    placed = side.transformed(Transform.translation(width, 0.0))
    return PanelBelow(placed, level_line(placed.start, lean, hem))
