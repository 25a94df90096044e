"""Which measures decide the size of which garment.

Primary and secondary dimensions after ISO 8559-2 / EN 13402-2 (from memory, to be checked against the text):
a primary one counts 1, a secondary one a half (common practice, no source). Height is left out: charts are
drawn for one height, and it does not tell their sizes apart.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

Garment = Literal["top", "dress", "skirt", "trousers"]

PRIMARY: Final = 1.0
SECONDARY: Final = 0.5

GARMENT_WEIGHTS: Final[Mapping[Garment, Mapping[str, float]]] = MappingProxyType(
    {
        "top": {"bust_girth": PRIMARY, "hip_girth": SECONDARY},
        "dress": {"bust_girth": PRIMARY, "waist_girth": SECONDARY, "hip_girth": SECONDARY},
        "skirt": {"waist_girth": PRIMARY, "hip_girth": SECONDARY},
        "trousers": {"waist_girth": PRIMARY, "hip_girth": SECONDARY},
    }
)

GARMENT_WORDS: Final[Mapping[Garment, str]] = MappingProxyType(
    {"top": "a top", "dress": "a dress", "skirt": "a skirt", "trousers": "trousers"}
)
"""Each garment as it is said after *for*."""

GARMENTS: Final[tuple[Garment, ...]] = tuple(GARMENT_WEIGHTS)
