"""Figures of the trade for pockets, each with its source and grade."""

from typing import Final

from notchbook.recipe.style_figure import RangedFigure, StyleFigure

DRILL_INSIDE: Final = StyleFigure(
    3.0, "drill holes so far inside the corners of a pocket, under its stitching", "1/8 in", "memory"
)

FLAP_WIDER: Final = RangedFigure(
    3.0, "a flap is so much wider at each end than the opening", "2 to 3 mm", "common practice", 0.0, 6.0
)

FLAP_ABOVE: Final = RangedFigure(
    15.0,
    "a flap over a patch pocket is sewn on so far above the opening",
    "10 to 20 mm",
    "common practice",
    8.0,
    25.0,
)

OPENING_EASE: Final = RangedFigure(
    4.0,
    "the edge of a slanted opening is so much longer than what lies under it: it gives when one sits",
    "3 to 6 mm",
    "common practice",
    0.0,
    10.0,
)

WELT_SINGLE: Final = RangedFigure(
    12.0,
    "how wide a single welt shows",
    "1/2 in for trousers and skirts, to 1 in on a jacket",
    "common practice",
    8.0,
    30.0,
)

WELT_DOUBLE: Final = RangedFigure(
    6.0, "how wide each piping of a double welt shows", "1/4 in, 5 to 6 mm", "common practice", 3.0, 10.0
)

SLIT_CLIP: Final = StyleFigure(
    10.0,
    "so far before the ends of the box the slit parts into its corners",
    "3/8 to 1/2 in",
    "common practice",
)

SLIT_LEAST: Final = StyleFigure(
    30.0,
    "the least opening that is slit: its corners at both ends, and as much between them",
    "three times the part of a corner",
    "own judgment",
)

FACING_LEAST: Final = StyleFigure(
    10.0,
    "the least that a strip of the cloth on a bag is wide: narrower, its two edges lie on each other",
    "no source",
    "own judgment",
)

BAG_BESIDE: Final = StyleFigure(
    15.0,
    "a bag behind a welt is so much wider at each end than the opening",
    "10 to 20 mm",
    "common practice",
)

BAG_WIDER_THAN_HAND: Final = StyleFigure(
    10.0, "room beside the hand where it passes an opening", "1 to 2 cm", "common practice"
)

HAND_WITHOUT_MEASURE: Final = StyleFigure(
    110.0,
    "the least opening that a grown hand passes, where no hand was measured",
    "half of a hand of 20 cm round, and 1 cm",
    "common practice",
)
