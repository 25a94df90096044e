"""Faults planted in what a pattern rests on: measures that nobody took."""

from notchbook.body import Measure
from notchbook.checks import Subject
from notchbook.pattern import Pattern
from support.faults import Made, fault, harmless

SOURCE = "from height, waist, hip; 100 invented women"


@fault("estimates", "estimates-rested-on", measured=203.0)
def hip_depth_that_nobody_took(skirt: Pattern) -> Made:
    return Subject(skirt, estimates={"hip_depth": Measure(203.0, "estimated", 18.0, SOURCE)})


@fault("estimates", "estimates-rested-on", measured=24.3)
def a_slope_that_nobody_took_on_one_side(skirt: Pattern) -> Made:
    return Subject(skirt, estimates={"shoulder_slope@left": Measure(24.3, "estimated", 7.4)})


@fault("estimates", "estimates-rested-on-stale", measured=203.0)
def hip_depth_that_would_be_another_now(skirt: Pattern) -> Made:
    stored, now = Measure(203.0, "estimated", 18.0, SOURCE), Measure(211.0, "estimated", 12.0, SOURCE)
    return Subject(skirt, estimates={"hip_depth": stored}, stale={"hip_depth": now})


@harmless("estimates")
def everything_was_measured(skirt: Pattern) -> Made:
    return Subject(skirt, {"hip_depth": 203.0})
