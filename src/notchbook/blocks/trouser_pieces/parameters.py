"""The parameters of the trousers step."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.blocks.trouser_pieces.eases import Silhouette
from notchbook.recipe import AmountText, StepParameters

DartCount = Literal["auto", 0, 1, 2]
WearerChoice = Literal["auto", "women", "men", "children"]
FrontShape = Literal["auto", "darts", "flat"]
LegLength = Literal["auto", "full", "ankle", "calf", "knee", "short"]
CrotchLimits = Literal["usual", "wide"]
CrotchParts = Literal["in_shape", "as_far"]
NarrowDarts = Literal["left_out", "sewn"]

_EASE = Field(json_schema_extra={"group": "ease"})
_DARTS = Field(json_schema_extra={"group": "darts"})
_SHAPE = Field(json_schema_extra={"group": "shape"})

EaseText = Annotated[AmountText | None, _EASE]
"""An ease of the wearer's own choice; None takes that of the silhouette."""

WidthText = Annotated[AmountText | None, _SHAPE]


class TrousersParameters(StepParameters):
    """Silhouette, eases, legs and darts of trousers.

    Eases are of the whole girth or length. What is left empty is the silhouette's. ``auto`` is chosen once,
    on the base measures, and written down.
    """

    silhouette: Silhouette = "fitted"
    """How the leg falls; it sets eases, knee, hem and length that are left empty."""
    length: LegLength = "auto"
    """Where the hem lies: full ends over the shoe, short high on the thigh; auto: by the silhouette."""
    waist_drop: AmountText = "0 mm"
    """How far below the measured waist the upper edge lies, down the side; above the hip."""
    wearer: Annotated[WearerChoice, _SHAPE] = "auto"
    """Whose eases and darts are taken."""
    waist_ease: EaseText = None
    """Ease of the whole waist."""
    hip_ease: EaseText = None
    """Ease of the whole hip."""
    crotch_ease: EaseText = None
    """Ease of the whole crotch seam, from waist to waist."""
    sitting_rise_ease: EaseText = None
    """How far the crotch lies below the sitting rise, where that was taken."""
    standing_rise_ease: EaseText = None
    """How far the crotch lies below the standing rise, or the outside leg less the inside leg."""
    thigh_ease: EaseText = None
    """Least ease of the leg round the thigh."""
    own_knee: WidthText = None
    """Girth of the leg at the knee; empty: by the silhouette."""
    own_hem: WidthText = None
    """Girth of the hem; empty: by the silhouette."""
    own_length: WidthText = None
    """From the waist down the side to the hem, instead of a length by name."""
    front_shape: Annotated[FrontShape, _DARTS] = "auto"
    """Darts in the front or a flat one; auto: darts for women, flat for men and children."""
    front_darts: Annotated[DartCount, _DARTS] = "auto"
    """Darts in each half of the front."""
    back_darts: Annotated[DartCount, _DARTS] = "auto"
    """Darts in each half of the back."""
    narrow_darts: Annotated[NarrowDarts, _DARTS] = "left_out"
    """What becomes of darts that another body makes too narrow: left out, so that two are one and the side
    takes a small one, or sewn as they come."""
    inseam_stretch: Annotated[AmountText, _SHAPE] = "5 mm"
    """How much shorter the back inseam is than the front one, 0 to 10 mm: it is stretched on above the knee,
    so that the seat lies close under the fold."""
    inseam_forward: WidthText = None
    """How far before the lowest point of the body the inseam lies, where the crotch length was taken in two
    parts; empty: by the wearer. 0 where the tape was parted at an inseam."""
    crotch_parts: Annotated[CrotchParts, _SHAPE] = "in_shape"
    """How far front and back crotch length are followed, where both were taken: while both curves keep their
    shape, or as far as it goes."""
    crotch_limits: Annotated[CrotchLimits, _SHAPE] = "usual"
    """How far the crotch may be drawn away from its usual shape to reach the crotch length."""
