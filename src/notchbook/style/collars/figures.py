"""Figures of the trade for collars, each with its source and its grade."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from notchbook.recipe.style_figure import RangedFigure, StyleFigure

_BULLETIN = "university sewing bulletin on fitting: fall, stand and neck seam of collars"

UPPER_COLLAR_TURN: Final = RangedFigure(
    1.6,
    "mm that the upper collar reaches beyond the undercollar, so that the seam rolls under",
    "undercollar about 1/8 in smaller all told; 1/16 to 1/8 in",
    "memory",
    1.0,
    3.2,
)
FLAT_OVERLAP: Final = RangedFigure(
    12.0,
    "mm by which the shoulder tips of front and back lap when a flat collar is drawn on them",
    "10 to 15 mm for a flat collar, 70 to 80 mm for one that stands high",
    "memory",
    0.0,
    80.0,
)
FALL_OVER_STAND: Final = StyleFigure(
    9.5,
    "mm that the fall of a collar is wider than its stand at the center back, at least",
    f"{_BULLETIN}: 3/8 in",
    "handbook",
)
NECK_EASE: Final = StyleFigure(
    10.0,
    "mm that a closed stand is longer than the neck at its upper edge: a finger's room",
    "one finger fits between collar and neck",
    "common practice",
)
OUTER_EDGE_SHORT: Final = StyleFigure(
    8.0,
    "mm on each side by which the outer edge may be shorter than the garment where it lies",
    "no source; a soft collar gives so much",
    "own judgment",
)
SHIRT_STAND: Final = RangedFigure(
    30.0,
    "mm that a shirt collar stands at the center back",
    "1 to 1 1/4 in",
    "common practice",
    25.0,
    38.0,
)
STAND_HEIGHT: Final = RangedFigure(
    35.0,
    "mm that a stand collar stands",
    "25 to 45 mm; a low one 20, a high one to 60 mm",
    "common practice",
    20.0,
    60.0,
)
STAND_RISE: Final = RangedFigure(
    12.0,
    "mm by which the front of a stand lies higher than its back, drawn flat: it lets it lean to the neck",
    "3/8 to 5/8 in",
    "common practice",
    0.0,
    25.0,
)
BINDING_LAYERS: Final[Mapping[str, int]] = MappingProxyType({"double": 4, "single": 2})
"""Finished widths that a bias strip is cut wide: 4 for a double fold, 2 for a single (common practice)."""

BINDING_DRAWS_IN: Final = RangedFigure(
    0.03,
    "share by which a binding is cut shorter than a hollow edge",
    "2 to 5 % on necks and armholes",
    "common practice",
    0.0,
    0.06,
)

HOOD_HEIGHT: Final = StyleFigure(
    0.6,
    "share of the head girth that a hood is high at the face edge, from neck to crown",
    "34 cm on a head of 57 cm",
    "common practice",
)
HOOD_DEPTH: Final = StyleFigure(
    0.44,
    "share of the head girth that a hood is deep, from the face edge to the back of the head",
    "25 cm on a head of 57 cm",
    "common practice",
)
CORD_FREE_HEIGHT: Final = StyleFigure(
    1340.0,
    "mm of height up to which a child's garment has no cords at hood or neck: below 7 years or 134 cm",
    "EN 14682:2014, cords and drawstrings on children's clothing, from memory",
    "memory",
)
