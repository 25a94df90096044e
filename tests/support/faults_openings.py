"""Faults planted in openings, declared ease and the notches that tell seams apart.

What must pass an opening is common practice of the trade: the head a neck, the hips a waist, the hand a
sleeve, heel and instep a leg.
"""

from dataclasses import replace
from math import sqrt

from notchbook.checks import Subject
from notchbook.geometry import Line, Path, Point
from notchbook.pattern import CutInstruction, Edge, EdgeUse, Notch, Pattern, Piece, Place, Seam
from support.bent import edge_changed
from support.faults import Made, fault, harmless
from support.hand_skirt import BODY_WAIST, WAIST_EASE
from support.hand_trousers import hand_trousers
from support.hand_upper import hand_upper

SIDE = "skirt/side_seam"
ZIP = "skirt.back/center_back/zip_stop"
WAIST = BODY_WAIST + WAIST_EASE
SPARE = 20.0
"""mm; what the limits ask for over the girth that passes."""


def _finished(pattern: Pattern) -> Pattern:
    """The pattern with its waist turned in, so that no band is still to come."""
    for edge in pattern.edges.values():
        if "waist" in edge.name.split("/"):
            pattern = edge_changed(pattern, edge.name, lambda one: replace(one, kind="hem"))
    return pattern


def _worn(pattern: Pattern, **girths: float) -> Subject:
    """A style made of the pattern, on a body with these girths."""
    return Subject(pattern, girths, is_block=False)


def _without_zip(skirt: Pattern) -> Pattern:
    return _finished(skirt).with_notches(without=(ZIP,))


@fault("openings", "opening-under-hips", measured=WAIST)
def skirt_without_a_zip(skirt: Pattern) -> Made:
    return _worn(_without_zip(skirt), hip_girth=940.0)


@fault("openings", "opening-under-hips", measured=WAIST)
def waist_two_tenths_too_small(skirt: Pattern) -> Made:
    return _worn(_without_zip(skirt), hip_girth=WAIST - SPARE + 0.2)


@harmless("openings")
def waist_two_tenths_large_enough(skirt: Pattern) -> Made:
    return _worn(_without_zip(skirt), hip_girth=WAIST - SPARE - 0.2)


@harmless("openings")
def skirt_with_a_zip_of_eighteen_centimeters(skirt: Pattern) -> Made:
    return _worn(_finished(skirt), hip_girth=940.0)


@harmless("openings")
def skirt_whose_band_is_still_to_come(skirt: Pattern) -> Made:
    return _worn(skirt.with_notches(without=(ZIP,)), hip_girth=940.0)


@fault("openings", "opening-under-bust", measured=WAIST)
def waist_under_the_bust(skirt: Pattern) -> Made:
    top = hand_upper()
    both = replace(
        _without_zip(skirt),
        pieces={**_without_zip(skirt).pieces, **top.pieces},
        seams={**_without_zip(skirt).seams, **top.seams},
    )
    return _worn(both, hip_girth=940.0, bust_girth=920.0)


@fault("openings", "opening-under-head")
def neck_under_the_head(_: Pattern) -> Made:
    return _worn(hand_upper(), head_girth=900.0)


@fault("openings", "opening-under-hand")
def sleeve_under_the_hand(_: Pattern) -> Made:
    return _worn(hand_upper(), hand_girth=600.0)


@fault("openings", "opening-under-heel")
def leg_under_the_heel(_: Pattern) -> Made:
    trousers = hand_trousers()
    uses = tuple(
        (EdgeUse(f"trousers.{half}/side_seam", f"trousers.{half}/waist_side"),) for half in ("front", "back")
    )
    seam = Seam("trousers/side_seam", uses[0], uses[1])
    return _worn(trousers.with_seams(seam), heel_girth=900.0)


@fault("ease-taken", "ease-beyond-cloth", measured=95.0)
def more_ease_than_cloth_takes(skirt: Pattern) -> Made:
    """95 mm in a side seam of 614 mm are 15.5 percent."""
    return skirt.with_seams(replace(skirt.seams[SIDE], ease=95.0))


@fault("ease-taken", "ease-to-be-tried", measured=45.0)
def ease_to_be_tried_first(skirt: Pattern) -> Made:
    """45 mm are 7.3 percent."""
    return skirt.with_seams(replace(skirt.seams[SIDE], ease=45.0))


@harmless("ease-taken")
def ease_that_goes_in_unseen(skirt: Pattern) -> Made:
    return skirt.with_seams(replace(skirt.seams[SIDE], ease=40.0))


def _second_seam(skirt: Pattern, moved: float) -> Pattern:
    """The skirt with another seam along the front side edge, notched so far from the hip notch."""
    first = skirt.seams[SIDE].first
    hip = skirt.notches["skirt.front/side_seam/hip"]
    place: Place = replace(hip.place, amount=hip.place.amount + moved)
    notch = Notch("skirt.front/side_seam/wrap", place, hip.kind, "skirt/wrap")
    return skirt.with_seams(Seam("skirt/wrap", first, first)).with_notches(notch)


@fault("notch-signatures", "notches-alike", measured=0.0)
def two_seams_notched_alike(skirt: Pattern) -> Made:
    return Subject(_second_seam(skirt, 0.0), is_block=False)


@fault("notch-signatures", "notches-alike", measured=5.8)
def two_seams_notched_nearly_alike(skirt: Pattern) -> Made:
    return Subject(_second_seam(skirt, 5.8), is_block=False)


@harmless("notch-signatures")
def two_seams_that_are_told_apart(skirt: Pattern) -> Made:
    return Subject(_second_seam(skirt, 6.2), is_block=False)


def _hollow_seam(skirt: Pattern, straight: float) -> Subject:
    """The skirt and a wrap with a seam as long as its side seam and notched alike, bent so much in its middle
    that the straight way is this share of it."""
    side, hip = skirt.edges["skirt.front/side_seam"], skirt.notches["skirt.front/side_seam/hip"]
    half, deep = side.length / 2.0, side.length / 2.0 * sqrt(1.0 - straight**2)
    low, middle, high = Point(0.0, 0.0), Point(-deep, half * straight), Point(0.0, 2.0 * half * straight)
    bent = Path((Line(high, middle), Line(middle, low)))
    outline = (
        Edge("wrap.front/edge", bent, "wrap.front/high", "wrap.front/low"),
        Edge("wrap.front/other", Path.line(low, Point(200.0, 0.0)), "wrap.front/low", "wrap.front/end"),
        Edge("wrap.front/last", Path.line(Point(200.0, 0.0), high), "wrap.front/end", "wrap.front/high"),
    )
    use = (EdgeUse("wrap.front/edge", "wrap.front/high"),)
    place = Place("wrap.front/edge", "wrap.front/low", hip.place.amount)
    wrapped = (
        skirt.with_pieces(Piece("wrap.front", "Wrap front", outline, cut="pair"))
        .with_seams(Seam("skirt/wrap", use, use))
        .with_notches(Notch("wrap.front/hip", place, hip.kind, "skirt/wrap"))
    )
    return Subject(wrapped, is_block=False)


@fault("notch-signatures", "notches-alike", within=0.5, measured=0.0)
def a_hollow_seam_notched_as_one_nearly_as_hollow(skirt: Pattern) -> Made:
    """The side seam of the hand-made skirt is all but straight (0.998)."""
    return _hollow_seam(skirt, 0.93)


@harmless("notch-signatures")
def a_lining_notched_as_its_cloth(skirt: Pattern) -> Made:
    pattern = _hollow_seam(skirt, 0.93).pattern
    lining = replace(pattern.pieces["wrap.front"], instructions=(CutInstruction("lining"),))
    return Subject(pattern.with_pieces(lining).with_materials({"lining": "lining"}), is_block=False)


@harmless("notch-signatures")
def a_seam_over_a_fold_notched_as_one_that_ends(skirt: Pattern) -> Made:
    """Laid open it is twice as long."""
    pattern = _hollow_seam(skirt, 0.93).pattern
    wrap = pattern.pieces["wrap.front"]
    edge, other, last = wrap.outline
    folded = replace(wrap, outline=(edge, replace(other, kind="fold"), last), cut="fold")
    return Subject(pattern.with_pieces(folded), is_block=False)


@harmless("notch-signatures")
def an_armhole_notched_as_a_straight_seam(skirt: Pattern) -> Made:
    """The straight way across a front armhole is about 0.8 of it, measured on the blocks."""
    return _hollow_seam(skirt, 0.8)
