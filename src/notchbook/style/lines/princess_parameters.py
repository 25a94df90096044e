"""What is said of a princess seam."""

from typing import Annotated

from pydantic import Field

from notchbook.recipe import (
    AmountText,
    EdgeName,
    InnerDartName,
    IntakeName,
    PivotName,
    PlaceParameters,
    PointName,
    StepParameters,
    Word,
)

_AT_MOST_ONE = Field(max_length=1)


class PrincessParameters(StepParameters):
    """Where the seam begins and ends, which darts it takes in, and the ease of the side panel over the bust.

    It begins at a place (``start``) or in a dart (``upper_dart``), and ends in a dart (``waist_dart``) or at
    a place (``end``), through a double-ended dart (``inner_dart``) where there is one.
    """

    center: EdgeName
    """An edge of the center panel, such as the center front: it says which panel is which."""
    start: Annotated[tuple[PlaceParameters, ...], _AT_MOST_ONE] = ()
    """Where the seam begins, on shoulder or armhole; none where it begins in a dart."""
    upper_dart: IntakeName | None = None
    """The dart in which it begins: in shoulder, armhole or neck."""
    waist_dart: IntakeName | None = None
    """The dart in which it ends at the waist."""
    inner_dart: InnerDartName | None = None
    """The double-ended dart that it takes in on its way to the hem."""
    end: Annotated[tuple[PlaceParameters, ...], _AT_MOST_ONE] = ()
    """Where the seam ends, on a hem; none where it ends in a dart."""
    bust_point: PivotName | None = None
    """The point that the seam runs over; none on a back."""
    closed_dart: IntakeName | None = None
    """A dart elsewhere that is closed into the seam, such as the bust dart in the side seam."""
    hinge: PointName | None = None
    """The corner about which the side panel is opened for its ease where no dart is closed: the underarm."""
    ease: AmountText = "4 mm"
    """How much longer the side panel is over the bust: 3 to 6 mm are usual. Nothing on a back."""
    start_angle: Annotated[float | None, Field(ge=-80.0, le=80.0)] = None
    """Degrees by which it leaves its place turned from square, counter-clockwise; empty: it bends evenly."""
    center_role: Word = "center"
    """What the center panel is called in names."""
    side_role: Word = "side"
    """What the side panel is called in names."""
