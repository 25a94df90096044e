"""The shoulder of a panel laid to its half of the sleeve, so that cap and raglan line are one smooth line."""

import math
from dataclasses import dataclass

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Line, Path, Point, Transform, curve_between
from notchbook.geometry.solve import solve_rising
from notchbook.style.sleeves.found import FoundSleeve
from notchbook.style.sleeves.raglan.taken import Panel

_ROUND = 170.0
"""mm below the top of the cap at which the line over the arm has come to the middle of the sleeve. Own
judgment: the roundness of the upper arm."""

_BONE, _ARM = 25.0, 45.0
"""mm before the end of the shoulder and beyond it over which the seam turns down the arm: the round of the
shoulder bone. Common practice, no source."""

_MOST = 60.0
"""mm by which the ends of the two shoulders may lie at different heights."""

_MEETS = (0.3, 0.6, 0.95)
"""Shares of the way from the underarm to the balance notch between which the line leaves the armhole, and
where it is looked for first. Own judgment: there armhole and cap are still one line."""


@dataclass(frozen=True, slots=True)
class Laid:
    """A panel, how far up from the underarm its line leaves the armhole (and the cap), mm, the line, and
    where the motion lays it in the frame of the sleeve; there the ``shoulder`` from the neck, as long as
    before and rounded at its end, and the line ``over`` the arm from its end down to the hem."""

    panel: Panel
    up: float
    line: Path
    motion: Transform
    shoulder: Path
    over: Path


def laid_to(sleeve: FoundSleeve, panel: Panel, above: float, foot: Point) -> Laid:
    """A shoulder laid so that its end is ``above`` mm over the top of the cap; ``foot`` is where the line
    over the arm meets the hem.

    The line leaves armhole and cap where both go on in its direction. StepRefused ``raglan-cap-high`` where
    the shoulder does not reach so high.
    """
    is_front = panel.which == "front"
    cap = sleeve.line if is_front else sleeve.line.reversed()
    flat = sleeve.notches[0] if is_front else sleeve.line.length - sleeve.notches[1]

    def corner(up: float) -> float:
        motion = _motion(sleeve, panel, above, cap, up)
        leaving = panel.from_underarm.tangent_at(up)
        laid = motion.apply(leaving) - motion.apply(Point(0.0, 0.0))
        return cap.tangent_at(up).cross(laid)

    low, start, high = (share * flat for share in _MEETS)
    try:
        up = solve_rising(corner, start, 3.0, low, high)
    except GeometryError:
        up = start
    motion, line = _motion(sleeve, panel, above, cap, up), panel.line_from(up)
    outward = motion.apply(panel.outward) - motion.apply(Point(0.0, 0.0))
    tip, top = motion.apply(panel.tip), sleeve.line.point_at(sleeve.top)
    middle = Point(foot.x, top.y - _ROUND)
    bend = curve_between(tip, outward.direction(), middle, -90.0)
    shoulder, over = _rounded(panel.from_neck.transformed(motion), Path.of(bend, Line(middle, foot)))
    return Laid(panel, up, line, motion, shoulder, over)


def _rounded(shoulder: Path, over: Path) -> tuple[Path, Path]:
    """Shoulder and line over the arm with one round line where they meet; the shoulder as long as it was."""
    length = shoulder.length
    bone = min(_BONE, length / 2.0)
    begin, end = shoulder.between(0.0, length - bone), over.between(_ARM, over.length)
    leaving, arriving = begin.tangent_at(begin.length).direction(), end.tangent_at(0.0, "after").direction()
    before, beyond = Path.of(curve_between(begin.end, leaving, end.start, arriving)).split_at(bone)
    return begin.joined(before), beyond.joined(end)


def _motion(sleeve: FoundSleeve, panel: Panel, above: float, cap: Path, up: float) -> Transform:
    corner, top = cap.point_at(up), sleeve.line.point_at(sleeve.top)
    begin = panel.from_underarm.point_at(up)
    reach, rise = begin.distance_to(panel.tip), top.y + above - corner.y
    if abs(rise) >= reach:
        raise StepRefused("raglan-cap-high", above=above, missing=rise - reach)
    inward = -1.0 if panel.which == "front" else 1.0
    tip = Point(corner.x + inward * math.sqrt(reach**2 - rise**2), corner.y + rise)
    return Transform.carrying(begin, panel.tip, corner, tip)


def both_laid(sleeve: FoundSleeve, front: Panel, back: Panel, above: float, foot: Point) -> tuple[Laid, Laid]:
    """Both shoulders laid: the front ``above`` the top of the cap, the back so high that the two lines over
    the arm are equally long. GeometryError ``no-solution`` where no height does it."""
    first = laid_to(sleeve, front, above, foot)

    def longer(at: float) -> float:
        return laid_to(sleeve, back, at, foot).over.length - first.over.length

    return first, laid_to(sleeve, back, solve_rising(longer, above, 2.0, above - _MOST, above + _MOST), foot)
