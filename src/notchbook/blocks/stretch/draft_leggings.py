"""The leggings: one leg, front and back, with the crotch as long and the waist as wide as asked."""

from dataclasses import replace
from functools import cache

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import LeggingsGiven
from notchbook.blocks.stretch.inseams import inseam
from notchbook.blocks.stretch.leg_easing import leg_ease
from notchbook.blocks.stretch.leggings_balance import limits, require_agreement
from notchbook.blocks.stretch.leggings_levers import leggings_levers
from notchbook.blocks.stretch.leggings_upper import (
    LegWidths,
    UpperLeg,
    draw_upper_leg,
    hip_level,
    leg_widths,
    side_lean,
)
from notchbook.blocks.stretch.shapes import LeggingsLeg, LegPanel
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Line, Path, Point, Transform, curve_between
from notchbook.geometry.solve import solve_rising

_GRAIN = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))


def draft_leggings(given: LeggingsGiven) -> LeggingsLeg:
    """Draft one leg. The waist is as wide as asked where the centers (and the side seam) can take in so
    much; else it is left wider, and the lever says so.

    DraftRefused: ``leggings-hip-below-crotch``, ``leggings-hem-above-crotch``, ``leggings-crotch-short``,
    ``leggings-crotch-long``, ``leggings-thigh-against-hip``, ``leggings-waist-unreachable``.
    """
    _require_levels(given)
    widths = leg_widths(given)
    _require_thigh(given, widths)
    ease = leg_ease(given)
    seam = inseam(given, widths.crotch, ease)
    upper = _closed(given, widths, seam)
    level = hip_level(given, widths, upper.pull.depth)
    require_agreement(upper.rises, limits(given.hip), given.crotch_front + given.crotch_back, given.rise)
    side = _side(given, upper, level)
    hem = Path.line(seam.end, Point(0.0, seam.end.y))
    front = LegPanel(Path.of(upper.front_waist), upper.front.path, seam, hem, side)
    back = LegPanel(Path.of(upper.back_waist), upper.back.path, seam, hem, side)
    return LeggingsLeg(
        front=front,
        back=_mirrored(back),
        hip_level=level,
        knee_level=-given.knee_down,
        calf_level=-given.calf_down if given.calf_down is not None else None,
        ease=ease,
        levers=leggings_levers(given, widths, upper),
    )


def _require_levels(given: LeggingsGiven) -> None:
    least = figure("leggings.least_hip_over_crotch")
    if given.rise - given.hip_depth < least - figure("leggings.most_hip_raised"):
        raise DraftRefused("leggings-hip-below-crotch", rise=given.rise, hip_depth=given.hip_depth)
    if given.hem_down < least:
        raise DraftRefused("leggings-hem-above-crotch", hem=given.hem_down, least=least)


def _require_thigh(given: LeggingsGiven, widths: LegWidths) -> None:
    least, most = (figure(f"leggings.{word}_over_thigh") * given.thigh for word in ("least", "most"))
    if not least < widths.crotch < most:
        raise DraftRefused(
            "leggings-thigh-against-hip", thigh=given.thigh, hip=given.hip, crotch=widths.crotch
        )


def _closed(given: LeggingsGiven, widths: LegWidths, seam: Path) -> UpperLeg:
    """The upper leg whose centers slant so that the waist is as wide as asked."""

    @cache
    def drawn(slants: float) -> UpperLeg:
        return draw_upper_leg(given, widths, seam, slants)

    def over(slants: float) -> float:
        return drawn(slants).waist - given.waist / 2.0

    wide = 2.0 * over(1.0)
    if 0.0 < wide < figure("leggings.most_left_wide"):
        return drawn(1.0)
    try:
        slants = solve_rising(over, 0.5, 0.2, figure("leggings.least_slants"), 1.0)
    except GeometryError as error:
        raise DraftRefused("leggings-waist-unreachable", waist=given.waist, hip=given.hip) from error
    return drawn(slants)


def _side(given: LeggingsGiven, upper: UpperLeg, level: float) -> Path:
    """From the waist to the hem."""
    foot = Point(0.0, -given.hem_down)
    if not given.side_seam:
        return Path.line(upper.side_top, foot)
    hip = Point(0.0, level)
    lean = side_lean(upper.side_top, level)
    return Path.of(curve_between(upper.side_top, -90.0 - lean, hip, -90.0), Line(hip, foot))


def _mirrored(panel: LegPanel) -> LegPanel:
    """The panel with its center at -x."""
    return replace(
        panel,
        waist=panel.waist.transformed(_GRAIN),
        crotch=panel.crotch.transformed(_GRAIN),
        inseam=panel.inseam.transformed(_GRAIN),
        hem=panel.hem.transformed(_GRAIN),
        side=panel.side.transformed(_GRAIN),
    )
