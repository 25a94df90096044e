"""Figures of the trade for pieces traced off others, each with its source and grade."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

from notchbook.errors import StepRefused
from notchbook.recipe import StepContext
from notchbook.recipe.style_figure import StyleFigure

Weight = Literal["light", "medium", "heavy"]
"""How heavy the cloth is: a heavy one takes more to turn."""


_TURN = "turn of cloth 1/16 to 1/8 in: the facing is so much smaller than what it faces"

TURN_OF_CLOTH: Final[Mapping[Weight, StyleFigure]] = MappingProxyType(
    {
        "light": StyleFigure(1.0, _TURN, "below 1/16 in for thin cloth; no source", "common practice"),
        "medium": StyleFigure(1.6, _TURN, "1/16 in", "memory"),
        "heavy": StyleFigure(3.2, _TURN, "1/8 in", "memory"),
    }
)
"""By how much a facing is shorter at each seam than the edge that it faces, so that the seam rolls inward."""


def turn_of_cloth(context: StepContext, cloth: Weight, asked: str | None, depth: float) -> float:
    """The turn of the cloth at each seam, mm: as asked, else from the table.

    StepRefused ``turn-out-of-range`` below nothing or above a quarter of the facing's depth.
    """
    turn = TURN_OF_CLOTH[cloth].value if asked is None else context.mm(asked)
    if not 0.0 <= turn <= depth / 4.0:
        raise StepRefused("turn-out-of-range", turn=turn, depth=depth)
    return turn


CENTER_BACK_PLEAT: Final = StyleFigure(
    20.0, "room across the back of a lining", "pleat 1 to 2 cm in each half, to the waist", "memory"
)

ARMHOLE_RAISED: Final = StyleFigure(
    10.0, "an armhole of a lining lies higher: it goes round the seam", "armhole up 1 cm", "common practice"
)

SLEEVE_RAISED: Final = StyleFigure(
    15.0,
    "the underarm of a lining's sleeve lies higher still: it goes over the armhole seam that stands up there",
    "15 to 20 mm; no source",
    "common practice",
)

HEM_SHORTER: Final = StyleFigure(
    20.0, "a lining ends over the hem", "lining 2 cm shorter than the finished hem", "common practice"
)
