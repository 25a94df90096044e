"""How far each lever of a legging was pulled."""

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import LeggingsGiven
from notchbook.blocks.stretch.leggings_balance import limits
from notchbook.blocks.stretch.leggings_upper import LegWidths, UpperLeg, hip_level
from notchbook.blocks.upper.shapes import Lever

_SLACK = 0.01
"""Centers that slant as much as they may are said by what the waist is left wider."""

_RISE_SLACK = 2.0
"""mm; a rise at its limit is said by what is moved between front and back."""


def leggings_levers(given: LeggingsGiven, widths: LegWidths, upper: UpperLeg) -> tuple[Lever, ...]:
    """All levers of a drafted leg."""
    wide = max(2.0 * upper.waist - given.waist, 0.0)
    moved = figure("leggings.most_moved")
    least, usual, most = (figure(f"leggings.{word}fork_share") for word in ("least_", "", "most_"))
    bounds = limits(given.hip)
    rises, pull = upper.rises, upper.pull
    raised = hip_level(given, widths, pull.depth) - (given.rise + pull.depth - given.hip_depth)
    return (
        Lever("fork", widths.fork / given.hip, least, most, usual, ""),
        Lever("center_slants", pull.slants, figure("leggings.least_slants"), 1.0 + _SLACK, 0.5, ""),
        Lever("crotch_depth", pull.depth, bounds.shallow, bounds.deep, 0.0),
        Lever("crotch_moved", pull.moved, -moved, moved, 0.0),
        Lever("waist_left_wide", wide, 0.0, figure("leggings.flagged_wide"), 0.0),
        Lever("hip_line_raised", raised, 0.0, figure("leggings.most_hip_raised"), 0.0),
        _rise("front_rise", rises.front, bounds.least.front, bounds.most.front, bounds.usual.front),
        _rise("back_rise", rises.back, bounds.least.back, bounds.most.back, bounds.usual.back),
    )


def _rise(name: str, pulled: float, least: float, most: float, usual: float) -> Lever:
    return Lever(name, pulled, least - _RISE_SLACK, most + _RISE_SLACK, usual)
