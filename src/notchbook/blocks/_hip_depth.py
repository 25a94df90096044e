"""What hip depth a body usually has: the measure that goes wrong most quietly.

The figures are our own least squares on surveyed women at their natural waist (data/survey/ansur,
docs/survey/skirt.md): U.S. Army personnel, fit for judging a slip, not for foretelling a body.
"""

from dataclasses import dataclass

from notchbook.body import measure_entry
from notchbook.recipe import StepContext

CONSTANT = -2.1
PER_HEIGHT = 0.103
PER_WAIST = -0.071
PER_HIP = 0.084
"""mm, and mm for each mm of stature, waist girth and hip girth."""

SPREAD = 16.8
"""Standard deviation of what remains, mm."""

LEAST_CENTER = 40.0
"""mm from the hip line to the waist at a center. Less leaves no room for a dart, and the waistline
dips toward the hip line. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class UsualHipDepth:
    """The hip depth to be expected, mm, and how far bodies stray from it (standard deviation)."""

    expected: float
    spread: float

    def away(self, hip_depth: float) -> float:
        """How many standard deviations a hip depth lies from what is expected."""
        return abs(hip_depth - self.expected) / self.spread


def usual_hip_depth(context: StepContext) -> UsualHipDepth:
    """What is usual for this body; without a height, the middle of the usual range of all bodies."""
    drop = context.measures.drop_below_natural
    height = context.find("height", "both")
    if height is None:
        low, high = measure_entry("hip_depth").usual_at(drop)
        return UsualHipDepth((low + high) / 2.0, (high - low) / 4.0)
    expected = (
        CONSTANT
        + PER_HEIGHT * height
        + PER_WAIST * context.measure("waist_girth")
        + PER_HIP * context.measure("hip_girth")
        - drop
    )
    return UsualHipDepth(expected, SPREAD)
