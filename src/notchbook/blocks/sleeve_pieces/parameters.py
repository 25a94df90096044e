"""The parameters of the sleeve step."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.blocks.set_in.given import Keep
from notchbook.blocks.sleeve_pieces.fabrics import Fabric, fabric_rows
from notchbook.recipe import AmountText, StepParameters
from notchbook.recipe.parameters import Word

SleeveLength = Literal["long", "three_quarter", "short", "cap"]
Elbow = Literal["none", "ease", "dart"]

_RANGES = {name: [row.least, row.most] for name, row in fabric_rows().items()}
_EASE = Field(json_schema_extra={"group": "ease"})
_DARTS = Field(json_schema_extra={"group": "darts"})
_SHAPE = Field(json_schema_extra={"group": "shape"})


class SleeveParameters(StepParameters):
    """Cloth, length, eases and shape of a set-in sleeve.

    The cloth, or the cap ease itself, must be said. Eases are of the whole girth.
    """

    fabric: Annotated[Fabric | None, Field(json_schema_extra={"asked": True, "ranges": _RANGES})] = None
    """The cloth, which says how much the cap can be eased; asked for unless a cap ease is given."""
    length: SleeveLength = "long"
    """To the wrist, three quarter, short above the elbow, or cap: as short as an underarm seam can be."""
    elbow: Annotated[Elbow, _DARTS] = "none"
    """How the back seam makes room for the bent elbow."""
    bodice: Annotated[Word, _SHAPE] = "bodice"
    """The bodice into whose armhole the sleeve is set."""
    own_length: Annotated[AmountText | None, _SHAPE] = None
    """From the top of the cap to the middle of the hem, instead of the length's own."""
    cap_ease: Annotated[AmountText | None, _EASE] = None
    """Ease of the whole cap; empty: what is usual for the cloth."""
    upper_arm_ease: Annotated[AmountText, _EASE] = "50 mm"
    """Ease round the upper arm; 40 to 80 mm is usual."""
    upper_arm_gives: Annotated[AmountText, _EASE] = "10 mm"
    """By how much that ease may give way where a full arm would spoil the cap, before the armhole must be
    lowered; never below 40 mm. 0 keeps the ease as it is."""
    wrist_ease: Annotated[AmountText, _EASE] = "50 mm"
    """Ease round the wrist of a long sleeve, toward which shorter ones narrow too."""
    own_hem: Annotated[AmountText | None, _EASE] = None
    """Girth of the hem, instead of wrist and ease or of a short sleeve's own."""
    keep: Annotated[Keep, _SHAPE] = "biceps"
    """What is kept as given, biceps or cap height; the other one is solved."""
    cap_height: Annotated[AmountText | None, _SHAPE] = None
    """The cap height that is kept."""
    elbow_amount: Annotated[AmountText | None, _DARTS] = None
    """Width of the elbow dart or ease at the elbow; empty: 15 mm of dart, 8 of ease."""
    pitch: Annotated[
        float | None, Field(ge=-10.0, le=12.0, json_schema_extra={"group": "shape", "unit": "deg"})
    ] = None
    """Degrees by which the sleeve hangs forward: how far the crown lies behind the shoulder seam, along the
    armhole taken as a full turn. Empty: what balances the cap, 0 to 9 degrees."""
