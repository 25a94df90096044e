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
        "sleeve": "the piece round the arm",
        "bodice": "the part of a dress above its waist seam",
        "skirt": "the part of a dress below its waist seam",
        # edges and where they lie
        "waist": "the edge at the waist, or the line of the waist",
        "hem": "the lower edge that is turned up",
        "side_seam": "the seam down the wearer's side",
        "center_front": "the line down the middle of the front",
        "center_back": "the line down the middle of the back",
        "armhole": "the edge round the arm",
        "neck": "the edge round the neck",
        "shoulder": "the seam from the neck to the shoulder point",
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
        "neck_pit": "the center of the front neck",
        "nape": "the center of the back neck",
        "side_neck_point": "where neck and shoulder meet",
        "shoulder_point": "where shoulder and armhole meet",
        "underarm": "where armhole and side seam meet",
        "waist_under_bust": "where the way over the bust point ends on a front without a waist dart",
        "cap_front": "the front half of the sleeve cap",
        "cap_back": "the back half of the sleeve cap",
        "front_seam": "the front edge of the underarm seam of a sleeve",
        "back_seam": "the back edge of the underarm seam of a sleeve",
        "sleeve_seam": "the underarm seam of a sleeve",
        "front_armhole": "the seam between front armhole and cap",
        "back_armhole": "the seam between back armhole and cap",
        "cap_top": "the point of the cap that meets the shoulder seam",
        "crown": "the highest point of the cap",
        "side_point": "where the cap of a turned sleeve meets the side seam",
        "hem_middle": "the middle of the hem of a sleeve",
        "underarm_front": "the front end of the cap",
        "underarm_back": "the back end of the cap",
        "hem_front": "the front end of the hem of a sleeve",
        "hem_back": "the back end of the hem of a sleeve",
        "bust_point": "the fullest place of the bust",
        # darts
        "waist_dart": "the only dart of a panel at the waist",
        "waist_dart_center": "the dart nearest to the center",
        "waist_dart_middle": "the dart between two others",
        "waist_dart_side": "the dart nearest to the side",
        "bust_dart": "the dart that shapes the bust, wherever it opens",
        "contour_dart": "the small dart in the front neck that lets it lie close",
        "shoulder_dart": "the dart in the back shoulder",
        "elbow_dart": "the dart in the back seam of a sleeve",
        "center_leg": "the dart leg toward the center",
        "side_leg": "the dart leg toward the side",
        "upper_leg": "the upper leg of a dart that opens in an upright edge",
        "lower_leg": "the lower leg of a dart that opens in an upright edge",
        "center_mouth": "where the center leg meets its edge",
        "side_mouth": "where the side leg meets its edge",
        "upper_mouth": "where the upper leg meets its edge",
        "lower_mouth": "where the lower leg meets its edge",
        "point": "where the legs of a dart meet",
        # what becomes of a cut
        "above": "the part over a style line",
        "below": "the part under a style line",
        "seam": "the part of an edge that stays sewn",
        "vent": "the part of an edge that opens as a vent",
        "underlap": "what a band is longer for the fastening below",
        "opening": "where the garment opens",
        # lines
        "waist_line": "the level of the waist",
        "hip_line": "the level of the hip",
        "bust_line": "the level of the bust",
        "across_chest_line": "the level at which the front armhole is upright",
        "across_back_line": "the level at which the back armhole is upright",
        "biceps_line": "the level of the underarm on a sleeve",
        "elbow_line": "the level of the elbow",
        "fold_line": "where the cloth is folded",
        # notches
        "notch": "a notch at the corner or edge that is said before it",
        "hip_notch": "at the hip on the side seam",
        "side_notch": "on the side seam at the level of the bust",
        "balance_notch": "off the middle of a seam, so that its parts are not turned about",
        "shoulder_notch": "where the cap of a sleeve meets the shoulder seam",
        "ease_notch": "where the ease of a seam ends",
        "upper_elbow_notch": "where the ease at the elbow begins",
        "lower_elbow_notch": "where the ease at the elbow ends",
        "vent_notch": "at the top of a vent",
        "zip_notch": "where a zip stops",
        "center_notch": "at the center of the body on a band",
        "opening_notch": "at the opening on a band",
        "seam_notch": "where a seam comes to lie on a band",
        # closures
        "waist_girth": "the whole waist, as sewn",
        "hip_girth": "the whole hip",
        "bust_girth": "the whole bust at its level",
        "neck_base_girth": "the whole neck, as sewn",
        "across_back": "the whole width across the back",
        "across_chest": "the whole width across the chest",
        "back_waist_length": "the center back from the nape to the waist",
        "center_front_length": "the center front from the neck pit to the waist",
        "front_waist_length": "from the side-neck point over the bust point to the waist",
        "neck_to_bust_point": "from the side-neck point to the bust point",
        "bust_point_width": "from bust point to bust point",
        "shoulder_length": "the shoulder seam of the front",
        "scye_depth": "from the nape down to the underarm",
        "upper_arm_girth": "the whole upper arm at the biceps line",
        "elbow_girth": "the whole elbow",
        "wrist_girth": "the whole wrist, at the hem of a long sleeve",
        "arm_length": "from the shoulder point over the bent elbow to the wrist",
        "skirt_length": "the center back from the waist to the hem",
        "sleeve_length": "from the top of the cap to the hem; of a cap sleeve from the underarm",
        "hem_girth": "the hem of a sleeve that ends before the wrist",
        "cap_height": "from the biceps line up to the top of the cap",
        "cap_front_length": "the front half of the cap",
        "cap_back_length": "the back half of the cap",
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
