"""Figures of the trade for leather and coated cloth, each with its source and grade."""

from typing import Final

from notchbook.recipe.style_figure import RangedFigure

SEAM: Final = RangedFigure(
    10.0, "a seam, glued open or topstitched", "3/8 in, 8 to 10 mm", "common practice", 5.0, 15.0
)
HEM: Final = RangedFigure(
    30.0, "a hem turned once and glued", "1 to 1 1/4 in, 25 to 30 mm", "common practice", 15.0, 50.0
)
NOTCH: Final = RangedFigure(
    3.0, "a notch is a slit in the allowance", "2 to 3 mm", "common practice", 1.0, 3.0
)
SKIVED_SEAM: Final = RangedFigure(
    8.0, "the edge of a seam is skived over so much", "6 to 10 mm", "common practice", 0.0, 15.0
)
SKIVED_HEM: Final = RangedFigure(
    25.0, "the edge of a hem is skived over so much", "nearly the whole hem", "common practice", 0.0, 50.0
)
CAP_EASE: Final = RangedFigure(
    10.0,
    "a cap may be so much longer than its armhole: leather cannot be shrunk in",
    "leather and coated cloth 0 to 1 cm",
    "common practice",
    0.0,
    20.0,
)
