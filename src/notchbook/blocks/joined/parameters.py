"""The parameters of torso and dress: those of the bodice and where they end."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.blocks.bodice_pieces.parameters import UpperParameters
from notchbook.blocks.joined.lengths import SkirtLength
from notchbook.recipe import AmountText

TorsoLength = Literal["hip", "thigh", "knee", "mid_calf", "ankle"]
WaistSeam = Literal["seam", "none"]

_SHAPE = Field(json_schema_extra={"group": "shape"})


class TorsoParameters(UpperParameters):
    """Silhouette, eases, darts and length of a torso: bodice and hip in one piece.

    Eases are of the whole girth or width. What is left empty is the silhouette's. ``auto`` is chosen
    once, on the base measures, and written down.
    """

    length: TorsoLength = "hip"
    """Where it ends."""
    own_length: Annotated[AmountText | None, _SHAPE] = None
    """From the waist to the hem at the center back; empty: as the length says."""

    @property
    def reaches_hip(self) -> bool:
        """Whether the hip is needed."""
        return True


class DressParameters(UpperParameters):
    """Silhouette, eases, darts, length and waist of a dress.

    Eases are of the whole girth or width. What is left empty is the silhouette's. ``auto`` is chosen
    once, on the base measures, and written down.
    """

    length: SkirtLength = "knee"
    """Where it ends."""
    waist_seam: WaistSeam = "seam"
    """Bodice and skirt joined by a seam at the waist, or panels in one piece from shoulder to hem."""
    own_length: Annotated[AmountText | None, _SHAPE] = None
    """From the waist to the hem at the center back; empty: as the length says."""

    @property
    def reaches_hip(self) -> bool:
        """Whether the hip is needed."""
        return True

    @property
    def has_waist_seam(self) -> bool:
        """Whether the panels end at the waist."""
        return self.waist_seam == "seam"
