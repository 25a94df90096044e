"""How long a skirt is: to the knee of a small body, its promise, and a hem that would lie on the floor."""

from typing import TypeVar

from notchbook.blocks.skirts.figures import skirt_figure
from notchbook.pattern import Expectation, Finding, Measured, Severity, worded
from notchbook.recipe import StepContext, StepParameters

LengthT = TypeVar("LengthT", bound=StepParameters)


def with_usual_length(context: StepContext, parameters: LengthT) -> LengthT:
    """The parameters with a skirt to the knee, in whole centimeters, where nobody chose a length and the
    usual one would hang far below the knee: on a child."""
    knee = _way_to_knee(context)
    if knee is None or "length" in parameters.model_fields_set:
        return parameters
    usual = context.mm(type(parameters).model_fields["length"].default)
    if usual <= skirt_figure("length.most_over_knee") * knee:
        return parameters
    return parameters.model_copy(update={"length": f"{round(knee / 10.0)} cm"})


def _way_to_knee(context: StepContext) -> float | None:
    """From the waist to the knee, mm: measured, else from the outside leg or the height; None unknown."""
    knee = context.find("knee_depth", "both")
    if knee is not None:
        return knee
    outside, height = context.find("outside_leg", "both"), context.find("height", "both")
    if outside is not None:
        return skirt_figure("length.knee_outside_leg") * outside
    if height is None:
        return None
    return skirt_figure("length.knee_height") * height - context.measures.drop_below_natural


def length_promise(name: str, length: float, way: tuple[str, ...]) -> Expectation:
    """The length from waist to hem, mm, along the straight ``way`` between named points of one piece."""
    return Expectation(
        name, "", (), 1, length, 0.0, "the hem lies where it was asked for", kind="length", chains=(way,)
    )


def floor_notes(check: str, context: StepContext, length: float, hem: str) -> tuple[Finding, ...]:
    """A skirt that is longer than from the waist to the floor; ``hem`` is the name of its hem."""
    floor = way_to_floor(context)
    if length <= floor:
        return ()
    return (worded(check, "skirt-on-the-floor", Severity.LOOK, Measured(length, floor), where=hem),)


def way_to_floor(context: StepContext) -> float:
    """From the waist to the floor, mm: measured, else from the height, else that of a tall body."""
    outside, height = context.find("outside_leg", "both"), context.find("height", "both")
    if outside is not None:
        return outside
    if height is None:
        return skirt_figure("length.tall_waist")
    return skirt_figure("length.waist_height") * height - context.measures.drop_below_natural
