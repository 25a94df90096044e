"""A shawl collar drawn on the front: lapel and collar in one, from the break point to the center back."""

from dataclasses import dataclass

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, fair_curve, offset
from notchbook.style.collars.lapel_given import LapelFront
from notchbook.style.collars.lapel_lines import LapelSize, behind_shoulder, roll_of

_WIDEST = 0.62
"""Share of the roll line from the break point to the shoulder, at which it is widest. Own judgment."""

_BEHIND = 0.5
"""Share of the back neck along which the outer edge lies parallel to it. Own judgment."""


@dataclass(frozen=True, slots=True)
class ShawlLines:
    """The lines on the front, counter-clockwise: the ``edge`` from the break point to the center back, the
    ``center`` down to the neck, the ``neck`` on to the side-neck point; where it rolls."""

    edge: Path
    center: Path
    neck: Path
    roll: Path


def shawl_lines(front: LapelFront, size: LapelSize, turn: float = 0.0) -> ShawlLines:
    """The shawl; ``turn`` mm are added on its edge, for the facing. StepRefused ``collar-crosses``."""
    roll = roll_of(front, size.stand)
    behind = behind_shoulder(front, roll, size)
    to_front = behind.home.inverse()
    width = size.width + turn
    top = (front.neck_point - roll.foot).dot(roll.up)
    widest = roll.foot + roll.up * (_WIDEST * top) + roll.out * (size.lapel + turn)
    try:
        parallel = offset(behind.neck.between(0.0, size.back * _BEHIND), width).transformed(to_front)
        points = [roll.foot, widest, parallel.end, parallel.start]
        arriving = (-parallel.tangent_at(0.0)).direction()
        edge = fair_curve(points, None, arriving).path
        stands = offset(behind.neck.between(0.0, size.back * _BEHIND), size.stand).transformed(to_front)
        fold = [roll.foot, roll.foot + roll.up * top, stands.start]
        rolls = fair_curve(fold, roll.up.direction(), (-stands.tangent_at(0.0)).direction()).path
    except GeometryError as error:
        raise StepRefused("collar-crosses", width=width) from error
    neck = behind.neck.transformed(to_front)
    return ShawlLines(edge, Path.line(edge.end, neck.start), neck, rolls)
