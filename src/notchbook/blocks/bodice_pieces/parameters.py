"""The parameters of the bodice step, and what it shares with torso and dress."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.blocks.bodice_pieces.dart_places import DartPlace
from notchbook.blocks.bodice_pieces.eases import Silhouette
from notchbook.recipe import AmountText, StepParameters

DartCount = Literal["auto", 0, 1, 2]
WearerChoice = Literal["auto", "women", "men", "children"]
BustShaping = Literal["auto", "dart", "none"]
BackShoulderChoice = Literal["auto", "dart", "ease"]
ContourChoice = Literal["auto", "dart", "none"]
BodiceLength = Literal["waist", "hip"]

_EASE = Field(json_schema_extra={"group": "ease"})
_DARTS = Field(json_schema_extra={"group": "darts"})

EaseText = Annotated[AmountText | None, _EASE]
"""An ease of the wearer's own choice; None takes that of the silhouette."""


class UpperParameters(StepParameters):
    """Silhouette, eases and darts of every block that hangs from the shoulders.

    Eases are of the whole girth or width. What is left empty is the silhouette's. ``auto`` is chosen
    once, on the base measures, and written down.
    """

    silhouette: Silhouette = "fitted"
    """How close the bodice lies; it sets every ease that is left empty."""
    bust_dart: DartPlace = "side"
    """Where the bust dart is drawn."""
    wearer: Annotated[WearerChoice, Field(json_schema_extra={"group": "shape"})] = "auto"
    """Whose eases are taken, and whether there is bust shaping where that is left to auto."""
    bust_ease: EaseText = None
    """Ease of the whole bust."""
    waist_ease: EaseText = None
    """Ease of the whole waist; without bust shaping the waist falls as wide as it will."""
    hip_ease: EaseText = None
    """Ease of the whole hip, for a bodice to the hip."""
    across_back_ease: EaseText = None
    """Ease of the whole width across the back."""
    across_chest_ease: EaseText = None
    """Ease of the whole width across the chest."""
    scye_ease: EaseText = None
    """How far the underarm lies below the scye depth as measured."""
    neck_ease: EaseText = None
    """Ease of the whole neck."""
    shoulder_longer: EaseText = None
    """How much longer each shoulder seam is than measured: over a pad, or the shoulder beneath."""
    shoulder_raised: EaseText = None
    """How much higher the shoulder seam lies at the shoulder point: as thick as pad and cloth are."""
    neck_lowered: EaseText = None
    """How much lower the neck lies at the pit: over the collar beneath."""
    armhole_lowered: Annotated[AmountText, _EASE] = "0 mm"
    """How much farther the underarm is lowered, where an arm asks for it."""
    bust_shaping: Annotated[BustShaping, _DARTS] = "auto"
    """A bust dart or none; auto: a dart for women, none for men and children."""
    front_darts: Annotated[DartCount, _DARTS] = "auto"
    """Waist darts in each half of the front."""
    back_darts: Annotated[DartCount, _DARTS] = "auto"
    """Waist darts in each half of the back."""
    back_shoulder: Annotated[BackShoulderChoice, _DARTS] = "auto"
    """How the back shoulder takes up the shoulder blade: by a dart or by ease; auto: a dart with bust
    shaping, else ease."""
    back_shoulder_amount: Annotated[AmountText | None, _DARTS] = None
    """Intake of the shoulder dart or ease of the back shoulder; empty: 10 mm of dart, 6 of ease, 4 for
    children."""
    contour: Annotated[ContourChoice, _DARTS] = "auto"
    """A small dart in the front neck, where the neck would fall too deep; auto: where the base measures
    ask for it."""
    shoulder_lift: Annotated[
        float, Field(ge=0.0, le=12.0, json_schema_extra={"group": "shape", "unit": "deg"})
    ] = 4.0
    """Degrees by which the shoulder seam lies flatter than the slope as measured: 4 for a slope taken
    between the bony points, 0 for one taken on a garment."""

    @property
    def reaches_hip(self) -> bool:
        """Whether the hip is needed."""
        return False

    @property
    def has_waist_seam(self) -> bool:
        """Whether the panels end at the waist; else they go on below it in one piece."""
        return not self.reaches_hip


class BodiceParameters(UpperParameters):
    """Silhouette, eases, darts and length of a bodice.

    Eases are of the whole girth or width. What is left empty is the silhouette's. ``auto`` is chosen
    once, on the base measures, and written down.
    """

    length: BodiceLength = "waist"
    """Ends at the waist or at the hip."""

    @property
    def reaches_hip(self) -> bool:
        """Whether the hip is needed."""
        return self.length == "hip"
