"""The words that names are made of, each with its one meaning.

Drafts and steps of the house name what they make with these words alone, or with several of them
joined: ``front_above`` is the part above a style line of the front. A studio's own steps may add words.
"""

from collections.abc import Mapping
from types import MappingProxyType

VOCABULARY: Mapping[str, str] = MappingProxyType(
    {
        # pieces
        "front": "the piece over the front of the body",
        "back": "the piece over the back of the body",
        "band": "a straight strip sewn to an edge, folded in half",
        "joined": "the piece that two others became",
        # edges and where they lie
        "waist": "the edge at the waist, or the line of the waist",
        "hem": "the lower edge that is turned up",
        "side_seam": "the seam down the wearer's side",
        "center_front": "the line down the middle of the front",
        "center_back": "the line down the middle of the back",
        "center": "at or nearest to the center of the body",
        "middle": "between center and side",
        "side": "at or nearest to the wearer's side",
        "center_middle": "between the dart at the center and the middle dart",
        "side_middle": "between the middle dart and the dart at the side",
        "upper": "the higher edge of a facing or band",
        "lower": "the lower edge of a facing or band",
        "inner": "nearer to the middle of the piece",
        "outer": "farther from the middle of the piece",
        "right": "the wearer's right",
        "left": "the wearer's left",
        "top": "the upper edge of a vent's extension",
        "end": "where an edge or the band ends; after an edge: the corner where a cut met it",
        "style_line": "the edge along which a piece was cut",
        # darts
        "waist_dart": "the only dart of a panel at the waist",
        "waist_dart_center": "the dart nearest to the center",
        "waist_dart_middle": "the dart between two others",
        "waist_dart_side": "the dart nearest to the side",
        "center_leg": "the dart leg toward the center",
        "side_leg": "the dart leg toward the side",
        "center_mouth": "where the center leg meets the waist",
        "side_mouth": "where the side leg meets the waist",
        "point": "where the legs of a dart meet",
        # what becomes of a cut
        "above": "the part over a style line",
        "below": "the part under a style line",
        "seam": "the part of an edge that stays sewn",
        "vent": "the part of an edge that opens as a vent",
        "underlap": "what a band is longer for the fastening below",
        "opening": "where the garment opens",
        # lines
        "hip_line": "the level of the hip",
        "fold_line": "where the cloth is folded",
        # notches
        "notch": "a notch at the corner or edge that is said before it",
        "hip_notch": "at the hip on the side seam",
        "balance_notch": "off the middle of a style line, so that the parts are not turned about",
        "vent_notch": "at the top of a vent",
        "zip_notch": "where a zip stops",
        "center_notch": "at the center of the body on a band",
        "opening_notch": "at the opening on a band",
        "seam_notch": "where a seam comes to lie on a band",
        # closures
        "waist_girth": "the whole waist, as sewn",
        "hip_girth": "the whole hip",
    }
)


def words_of(word: str) -> tuple[str, ...]:
    """The words of the vocabulary that a word is made of, the longest first; empty when it is not."""
    if word in VOCABULARY:
        return (word,)
    parts = word.split("_")
    for count in range(len(parts) - 1, 0, -1):
        head, tail = "_".join(parts[:count]), "_".join(parts[count:])
        if head in VOCABULARY and (rest := words_of(tail)):
            return (head, *rest)
    return ()
