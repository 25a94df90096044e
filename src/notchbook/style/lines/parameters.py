"""What is said of a style line."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.recipe import AmountText, IntakeName, PlaceParameters, StepParameters

Rest = Literal["none", "stays"]


class ThroughParameters(StepParameters):
    """A point that the line runs through, told from the straight way between its two ends."""

    along: Annotated[float, Field(gt=0.0, lt=1.0)] = 0.5
    """How far along the straight way, as a share: 0 where the line starts, 1 where it ends."""
    off: AmountText
    """How far beside it, to the left as the line runs; with a minus to the right."""


class DartOnLineParameters(StepParameters):
    """A dart that ends at the line or crosses it; it is closed where it opens, into a yoke for example."""

    intake: IntakeName
    """The dart that is closed on the side of the line where its mouth is."""
    rest: Rest = "none"
    """none: its point is moved onto the line, so that nothing of it is left; stays: what lies across the line
    stays a dart, which opens from the line."""


class LineParameters(StepParameters):
    """One cut: from a place on one edge to a place on another edge of the same piece.

    The angles (degrees) turn the line from square to the edge it leaves and meets, counter-clockwise.
    """

    start: PlaceParameters
    """Where the line leaves: an edge, the end to count from, how far."""
    end: PlaceParameters
    """Where the line arrives, on another edge of the same piece; squared across, it has no amount there."""
    start_angle: Annotated[float, Field(ge=-80.0, le=80.0)] = 0.0
    """Degrees by which it leaves turned from square, counter-clockwise."""
    end_angle: Annotated[float, Field(ge=-80.0, le=80.0)] = 0.0
    """Degrees by which it arrives turned from square, counter-clockwise."""
    shape: Literal["curve", "even", "straight", "square"] = "curve"
    """curve: leaves and meets the edges square, or as turned; even: so at the end that keeps its grain, and
    bends evenly from there; straight: from place to place; square: straight across, square to the edge that
    it leaves or as turned, to wherever it meets the other."""
    through: tuple[ThroughParameters, ...] = ()
    """Points that a curve runs through, in order."""
    darts: tuple[DartOnLineParameters, ...] = ()
    """Darts that end on the line or are cut by it, and are closed."""
    keeps_grain: Literal["start", "end"] = "end"
    """Where a dart is closed: which end of the line lies still and keeps its grain; a fold always does."""
