"""A strap that is drafted farther out than given: for the armhole of a wide bust, and for a deep neck."""

from dataclasses import replace
from math import cos, radians, sin, tan

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import TorsoGiven
from notchbook.blocks.stretch.necks import Necks


def with_strap_out(given: TorsoGiven, necks: Necks) -> TorsoGiven:
    """What is given with its strap as far out as its armhole is upright and its deep neck is a scoop, but not
    off the shoulder, nor so far that the higher neck lies flat; ``necks`` are those drawn to the strap as
    given."""
    strap, edges = given.strap, given.strap_edges
    if strap is None or edges is None or not strap.may_move:
        return given
    lowest, highest = sorted(neck.start.y for neck in (necks.front, necks.back))
    scooped = _inner_for_rise(given, necks, lowest, "neck.steepest_strap")
    flattest = _inner_for_rise(given, necks, highest, "neck.flattest_strap")
    wanted = max(_outer_for_armhole(given, necks), scooped + strap.width)
    outmost = figure("armhole.strap_outmost") * given.shoulder
    by = min(wanted, outmost, flattest + strap.width) - edges[1]
    if by <= 0.0:
        return given
    return replace(given, strap=replace(strap, place=edges[1] - strap.width / 2.0 + by))


def _outer_for_armhole(given: TorsoGiven, necks: Necks) -> float:
    """Where along the shoulder the strap must end so that the armhole below it is upright, mm."""
    upright = (1.0 - figure("armhole.strap_room")) * given.bust / 4.0
    return (upright - necks.base.x) / cos(radians(given.shoulder_slope))


def _inner_for_rise(given: TorsoGiven, necks: Necks, center_y: float, rise: str) -> float:
    """Where along the shoulder the strap must begin so that a neck whose center lies at this height rises so
    steeply to it, mm."""
    slope, steep = radians(given.shoulder_slope), tan(radians(figure(rise)))
    return (necks.base.y - center_y - steep * necks.base.x) / (steep * cos(slope) + sin(slope))
