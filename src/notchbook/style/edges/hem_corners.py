"""A hem brought to a seam beside it that was drawn anew, so that both meet square."""

from dataclasses import dataclass
from math import cos, radians, tan

from notchbook.errors import StepRefused
from notchbook.geometry import Path, curve_between
from notchbook.style.edges.carried import carried_on

_REACH = 600.0
"""mm by which seam and hem are followed to find where they meet: more than any hem is moved."""


@dataclass(frozen=True, slots=True)
class HemCorner:
    """A seam that runs down to its hem, and the hem that runs to the seam."""

    seam: Path
    hem: Path


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
