"""Figures of the trade for drawing edges anew, each with its source and grade."""

from typing import Final

from notchbook.recipe.style_figure import StyleFigure

MOST_AT_ONE_SEAM: Final = StyleFigure(
    20.0,
    "the most that a girth is changed at one seam alone, 5 mm at each of its four edges",
    "bulletins on pattern alteration of a state university: small amounts are divided over all seams; "
    "the figure is ours",
    "own judgment",
)

HEM_BEND: Final = StyleFigure(
    80.0,
    "the last stretch of a hem that bends to meet a slanted seam square",
    "no source",
    "own judgment",
)

SWING_BLEND: Final = StyleFigure(
    50.0,
    "so far to both sides of the place where a swing runs to nothing the corner is rounded",
    "no source",
    "own judgment",
)

SEEN_WAVE: Final = StyleFigure(
    1.5,
    "degrees that a curve must turn each way before the eye sees an S, as the check of fair edges has it",
    "no source",
    "common practice",
)

NECK_BEND: Final = StyleFigure(
    60.0,
    "the last stretch of a V or square neckline that bends to meet the shoulder seam square",
    "no source",
    "own judgment",
)

LEAST_NECK: Final = StyleFigure(
    15.0,
    "the least half width of a narrow neckline below its bend: a narrower slit cannot be faced",
    "no source",
    "own judgment",
)

NECK_GAPE: Final = StyleFigure(
    6.35,
    "what a neckline near the neck base gapes by on each half of the front: 1/4 in",
    "a handbook of drafting theory: contour amounts",
    "handbook",
)

DEEP_NECK_GAPE: Final = StyleFigure(
    19.05,
    "what a neckline as deep as the bust gapes by on each half of the front: 3/4 in",
    "a handbook of drafting theory: contour amounts",
    "handbook",
)

ARMHOLE_GAPE: Final = StyleFigure(
    6.35,
    "what an armhole without a sleeve gapes by on each half of the front: 1/4 in",
    "a handbook of drafting theory: contour amounts",
    "handbook",
)

CUTAWAY_GAPE: Final = StyleFigure(
    12.7,
    "what a cutaway armhole gapes by on each half of the front: 1/2 in",
    "a handbook of drafting theory: contour amounts",
    "handbook",
)

CUTAWAY_FROM: Final = StyleFigure(
    25.0,
    "from so much of the shoulder taken off on an armhole counts as cut away",
    "no source",
    "own judgment",
)

OVER_HEAD: Final = StyleFigure(
    20.0,
    "what an opening must be larger than the head to go over it without a closure",
    "no source",
    "common practice",
)
