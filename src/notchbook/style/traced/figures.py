"""Figures of the trade for pieces traced off others, each with its source and grade."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal

from notchbook.errors import StepRefused
from notchbook.recipe import StepContext
from notchbook.recipe.usual_ease import Grade

Weight = Literal["light", "medium", "heavy"]
"""How heavy the cloth is: a heavy one takes more to turn."""


@dataclass(frozen=True, slots=True)
class TracedFigure:
    """A figure, mm, with what it is for, where it comes from and how sure it is."""

    value: float
    meaning: str
    source: str
    grade: Grade

    @property
    def amount(self) -> str:
        """The value as an amount in the trade's notation."""
        return f"{self.value:g} mm"


_TURN = "turn of cloth 1/16 to 1/8 in: the facing is so much smaller than what it faces"

TURN_OF_CLOTH: Final[Mapping[Weight, TracedFigure]] = MappingProxyType(
    {
        "light": TracedFigure(1.0, _TURN, "below 1/16 in for thin cloth; no source", "common practice"),
        "medium": TracedFigure(1.6, _TURN, "1/16 in", "memory"),
        "heavy": TracedFigure(3.2, _TURN, "1/8 in", "memory"),
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


CENTER_BACK_PLEAT: Final = TracedFigure(
    20.0, "room across the back of a lining", "pleat 1 to 2 cm in each half, to the waist", "memory"
)

ARMHOLE_RAISED: Final = TracedFigure(
    10.0, "an armhole of a lining lies higher: it goes round the seam", "armhole up 1 cm", "common practice"
)

HEM_SHORTER: Final = TracedFigure(
    20.0, "a lining ends over the hem", "lining 2 cm shorter than the finished hem", "common practice"
)
