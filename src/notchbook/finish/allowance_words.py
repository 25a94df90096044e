"""What the classes of the allowance table are called where a cutter or a seamstress reads them."""

from collections.abc import Mapping
from typing import Final

_HEM: Final = "hem"
_HEM_OF: Final = "hem_"

_WORDS: Final[Mapping[str, str]] = {
    "plain": "plain seams",
    "side": "side seam",
    "crotch": "crotch seam",
    "style_line": "style lines",
    "zip": "zip opening",
    "zip_invisible": "invisible zip",
    "zip_lapped": "lapped zip",
    "waistband_center": "center of the band",
    "hem_slit": "slit",
    "facing_edge": "turned edges",
    "collar_edge": "collar edges",
    "cuff": "cuff seam",
    "lining": "facing to lining",
    "pocket_edge": "edges turned under",
    "pocket_flap": "flap",
    "welt_end": "ends of the welt",
    "elastic_edge": "edge with elastic",
    "elastic_casing": "casing",
    "overlock": "overlocked seams",
    "let_out": "seams to let out",
    "bound": "bound edge",
}
"""Classes whose name is no word of the workroom; the others are their own name."""


def edge_words(allowance_class: str) -> str:
    """What the edges of a class are called on a piece: any hem is the hem there."""
    if is_hem(allowance_class):
        return _HEM
    return _WORDS.get(allowance_class, allowance_class.replace("_", " "))


def class_words(allowance_class: str) -> str:
    """What the class is called among all classes: ``hem, trousers``."""
    if is_hem(allowance_class) and allowance_class != _HEM:
        return f"{_HEM}, {allowance_class.removeprefix(_HEM_OF).replace('_', ' ')}"
    return edge_words(allowance_class)


def is_hem(allowance_class: str) -> bool:
    """Whether the class is one of hems; what is turned in along a slit is none."""
    return allowance_class == _HEM or (allowance_class.startswith(_HEM_OF) and allowance_class not in _WORDS)
