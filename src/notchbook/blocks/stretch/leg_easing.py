"""Thigh, knee and calf of a full leg give way a little, so that its inseam runs down without humps."""

from dataclasses import dataclass
from math import atan2, degrees

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import LeggingsGiven


@dataclass(frozen=True, slots=True)
class LegEase:
    """By how much the girths of thigh and calf are drafted narrower than given, and that of the knee wider,
    mm."""

    thigh: float = 0.0
    knee: float = 0.0
    calf: float = 0.0


def leg_ease(given: LeggingsGiven) -> LegEase:
    """What the levels of this leg give way: nothing on a leg that runs in gently from thigh to knee, nor on
    one that ends above the calf, and never more than ``given`` allows."""
    share = _steepness(given)
    if share <= 0.0 or given.calf is None or given.calf_down is None or given.hem_down <= given.calf_down:
        return LegEase()
    hump, hollow = (2.0 * share * figure(f"leggings.eased_{word}") for word in ("hump", "hollow"))
    return LegEase(
        thigh=_narrowed(given.thigh, given.thigh_least, hump),
        knee=hollow if given.knee_may_widen else 0.0,
        calf=_narrowed(given.calf, given.calf_least, hump),
    )


def _steepness(given: LeggingsGiven) -> float:
    """From 0 where the inseam runs in gently between thigh and knee to 1 where it does so steeply."""
    down = (1.0 - figure("leggings.thigh_level")) * given.knee_down
    slope = degrees(atan2((given.thigh - given.knee) / 2.0, down))
    gentle, steep = figure("leggings.gentle_leg"), figure("leggings.steep_leg")
    return min(max((slope - gentle) / (steep - gentle), 0.0), 1.0)


def _narrowed(girth: float, least: float | None, wanted: float) -> float:
    return 0.0 if least is None else min(wanted, max(girth - least, 0.0))
