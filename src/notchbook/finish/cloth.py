"""What finishing must know of the cloth."""

from dataclasses import dataclass
from typing import Literal

Surface = Literal["woven", "soft"]
"""``woven``: firm woven cloth; ``soft``: wool and knit, whose excess at a curved hem shrinks in."""


@dataclass(frozen=True, slots=True)
class Cloth:
    """The cloth of one garment, as far as the cut pieces depend on it.

    ``one_way``: nap, shine or print lets pieces lie one way only, so that grain lines get one arrow
    head. ``drill_before_point`` (mm) replaces the house's figure, 10 to 12 in light cloth (common
    practice); None keeps it.
    """

    name: str = ""
    one_way: bool = False
    surface: Surface = "woven"
    drill_before_point: float | None = None
