"""How long a skirt is: its promise down the center back, and a hem that would lie on the floor."""

from notchbook.blocks.skirts.figures import skirt_figure
from notchbook.pattern import Expectation, Finding, Measured, Severity, worded
from notchbook.recipe import StepContext


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
