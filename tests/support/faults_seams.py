"""Faults planted in seams, notches, junctions, names and closures."""

from dataclasses import replace
from math import radians, tan

from notchbook.checks import Subject
from notchbook.geometry import Path, Point
from notchbook.pattern import Allowance, EdgeUse, Expectation, Notch, Pattern, Place, Seam, frozen_map
from notchbook.pattern.pattern import Fate
from notchbook.pattern.promise_parts import LEFT_AWAY
from notchbook.pattern.seam import TURNED_SEAM
from support.bent import intake_changed, path_changed, point_moved
from support.faults import Made, fault, harmless
from support.faults_outline import vented
from support.hand_skirt import BODY_HIP, BODY_WAIST, FRONT_WIDTH, HEM_Y, HIP_EASE, WAIST_EASE

SIDE = "skirt/side_seam"
BACK_HIP = "skirt.back/side_seam/hip"


def longer_back(skirt: Pattern, amount: float) -> Pattern:
    """The skirt with the back side seam longer at the hem, on its straight part."""
    return point_moved(skirt, "skirt.back/hem_side", 0.0, -amount)


def _back_hip_at(skirt: Pattern, amount: float) -> Pattern:
    """The skirt with the hip notch of the back moved down by an amount (it stands 400 over the hem)."""
    notch = skirt.notches[BACK_HIP]
    return skirt.with_notches(replace(notch, place=replace(notch.place, amount=400.0 - amount)))


@fault("seam-walks", "seam-second-longer", measured=615.254)
def back_longer_by_seven_tenths(skirt: Pattern) -> Made:
    return longer_back(skirt, 0.7)


@fault("seam-walks", "seam-second-shorter", measured=613.854)
def back_shorter_by_seven_tenths(skirt: Pattern) -> Made:
    return longer_back(skirt, -0.7)


@fault("seam-walks", "seam-second-shorter")
def ease_that_is_declared_but_not_drawn(skirt: Pattern) -> Made:
    return skirt.with_seams(replace(skirt.seams[SIDE], ease=6.0))


@fault("seam-walks", "seam-eased", measured=10.0)
def ease_as_declared_is_noted(skirt: Pattern) -> Made:
    return longer_back(skirt, 10.0).with_seams(replace(skirt.seams[SIDE], ease=10.0))


@fault("seam-walks", "seam-stretched", measured=10.0)
def stretch_as_declared_is_noted(skirt: Pattern) -> Made:
    return longer_back(skirt, 10.0).with_seams(replace(skirt.seams[SIDE], ease=10.0, gives="shorter"))


@fault("seam-walks", "seam-eased", measured=10.0)
def more_than_the_turn_of_the_cloth_in_a_turned_seam(skirt: Pattern) -> Made:
    turned = replace(skirt.seams[SIDE], ease=10.0, seam_class=TURNED_SEAM)
    return longer_back(skirt, 10.0).with_seams(turned)


@harmless("seam-walks")
def turn_of_heavy_cloth_at_both_ends_of_a_turned_seam(skirt: Pattern) -> Made:
    """1/8 in at each (course notes: 1/16 to 1/8 in): a facing is cut smaller, nothing is eased in."""
    turned = replace(skirt.seams[SIDE], ease=6.3, seam_class=TURNED_SEAM)
    return longer_back(skirt, 6.3).with_seams(turned)


@harmless("seam-walks")
def back_longer_by_four_tenths(skirt: Pattern) -> Made:
    return longer_back(skirt, 0.4)


@fault("seam-notches", "notch-stretch-differs")
def hip_notch_moved_by_seven_tenths(skirt: Pattern) -> Made:
    return _back_hip_at(skirt, 0.7)


@harmless("seam-notches")
def hip_notch_moved_by_four_tenths(skirt: Pattern) -> Made:
    return _back_hip_at(skirt, 0.4)


@harmless("seam-notches")
def ease_within_one_stretch(skirt: Pattern) -> Made:
    return longer_back(skirt, 10.0).with_seams(replace(skirt.seams[SIDE], ease=10.0))


@fault("seam-notches", "notch-mate-missing")
def hip_notch_of_the_back_forgotten(skirt: Pattern) -> Made:
    return skirt.with_notches(without=(BACK_HIP,))


@fault("seam-notches", "notch-doubled")
def two_notches_of_one_name(skirt: Pattern) -> Made:
    first = skirt.notches[BACK_HIP]
    return skirt.with_notches(replace(first, name="skirt.back/hip", place=replace(first.place, amount=300.0)))


@fault("seam-notches", "notch-off-seam")
def notch_of_the_side_seam_on_the_hem(skirt: Pattern) -> Made:
    place = Place("skirt.back/hem", "skirt.back/hem_side", 10.0)
    return skirt.with_notches(Notch("skirt.back/hem/hip", place, seam=SIDE))


@fault("seam-junctions", "junction-dip", measured=185.0, within=0.01)
def hem_of_185_degrees_across_the_side_seam(skirt: Pattern) -> Made:
    return _hem_tilted(skirt, 5.0)


@fault("seam-junctions", "junction-peak", measured=175.0, within=0.01)
def hem_of_175_degrees_across_the_side_seam(skirt: Pattern) -> Made:
    return _hem_tilted(skirt, -5.0)


@harmless("seam-junctions")
def hem_within_two_degrees(skirt: Pattern) -> Made:
    return _hem_tilted(skirt, 2.0)


def _hem_tilted(skirt: Pattern, degrees: float) -> Pattern:
    return point_moved(skirt, "skirt.front/hem_side", 0.0, FRONT_WIDTH * tan(radians(degrees)))


@harmless("seam-junctions")
def seam_that_ends_in_the_middle_of_a_line(skirt: Pattern) -> Made:
    """As a band sewn to two pieces: its edge runs straight on beyond the end of the seam."""
    vent = vented(skirt)
    seam = Seam(
        "skirt/centers",
        (EdgeUse("skirt.front/center_front", "skirt.front/center_waist"),),
        (EdgeUse("skirt.back/center_back", "skirt.back/center_waist"),),
    )
    return replace(vent, seams={seam.name: seam})


@harmless("seam-junctions")
def seam_that_turns_a_corner(skirt: Pattern) -> Made:
    """As at a vent: the neighbors at one end of the seam are sewn to each other as well."""
    tilted = path_changed(
        _hem_tilted(skirt, 20.0),
        "skirt.front/hem",
        lambda path: Path.polyline([path.start, Point(-60.0, HEM_Y), path.end]),
    )
    hems = Seam(
        "skirt/hems",
        (EdgeUse("skirt.front/hem", "skirt.front/hem_side"),),
        (EdgeUse("skirt.back/hem", "skirt.back/hem_side"),),
    )
    waists = Seam(
        "skirt/waists",
        (EdgeUse("skirt.front/waist", "skirt.front/center_waist"),),
        (EdgeUse("skirt.back/waist", "skirt.back/center_waist"),),
    )
    return replace(tilted, seams={SIDE: tilted.seams[SIDE], hems.name: hems, waists.name: waists})


@fault("names", "name-dead-seam")
def seam_of_an_edge_that_is_gone(skirt: Pattern) -> Made:
    seam = skirt.seams[SIDE]
    return skirt.with_seams(replace(seam, second=(EdgeUse("skirt.back/side", "skirt.back/side_waist"),)))


@fault("names", "seam-one-sided")
def seam_with_nothing_on_one_side(skirt: Pattern) -> Made:
    return skirt.with_seams(replace(skirt.seams[SIDE], second=()))


@harmless("seam-walks")
def one_sided_seam_is_told_by_the_names(skirt: Pattern) -> Made:
    return skirt.with_seams(replace(skirt.seams[SIDE], second=()))


@fault("names", "name-dead-end")
def seam_from_a_point_that_is_no_end(skirt: Pattern) -> Made:
    seam = skirt.seams[SIDE]
    use = EdgeUse("skirt.back/side_seam", "skirt.back/hem_center")
    return skirt.with_seams(replace(seam, second=(use,)))


@fault("names", "name-dead-notch")
def notch_of_a_seam_that_is_gone(skirt: Pattern) -> Made:
    return skirt.with_seams(without=(SIDE,))


@fault("names", "name-dead-notch")
def notch_on_an_edge_that_is_gone(skirt: Pattern) -> Made:
    notch = skirt.notches[BACK_HIP]
    return skirt.with_notches(replace(notch, place=replace(notch.place, edge="skirt.back/side")))


@fault("names", "name-dead-notch")
def notch_from_a_notch_that_is_gone(skirt: Pattern) -> Made:
    notch = skirt.notches[BACK_HIP]
    return skirt.with_notches(replace(notch, place=replace(notch.place, notch="skirt.back/knee")))


@fault("names", "name-dead-dart")
def dart_whose_mouth_is_gone(skirt: Pattern) -> Made:
    return intake_changed(skirt, "skirt.back/side_dart", lambda old: replace(old, mouth="skirt.back/top"))


@fault("names", "name-dead-allowance")
def allowance_of_an_edge_that_is_gone(skirt: Pattern) -> Made:
    return skirt.with_allowances({"skirt.back/vent": Allowance("vent")})


@fault("names", "name-dead-allowance")
def corner_of_a_point_that_is_gone(skirt: Pattern) -> Made:
    return skirt.with_corners({"skirt.back/vent_top": "square"})


@fault("notch-places", "notch-beyond-edge")
def notch_beyond_its_edge(skirt: Pattern) -> Made:
    notch = skirt.notches[BACK_HIP]
    return skirt.with_notches(replace(notch, place=replace(notch.place, amount=700.0)))


@harmless("notch-places")
def notch_at_the_very_end(skirt: Pattern) -> Made:
    notch = skirt.notches[BACK_HIP]
    return skirt.with_notches(replace(notch, place=replace(notch.place, amount=1.0, measure="fraction")))


WAIST_PROMISE = Expectation(
    "skirt/waist_girth",
    "waist_girth",
    ("skirt.front/waist", "skirt.back/waist"),
    2,
    BODY_WAIST,
    WAIST_EASE,
    "the skirt hangs from the waist",
)
HIP_PROMISE = Expectation(
    "skirt/hip_girth",
    "hip_girth",
    ("skirt.front/hip_line", "skirt.back/hip_line"),
    2,
    BODY_HIP,
    HIP_EASE,
    "the skirt passes over the hip",
)
PROMISES = (WAIST_PROMISE, HIP_PROMISE)


@harmless("expectations")
def girths_as_promised(skirt: Pattern) -> Made:
    return Subject(skirt, {"waist_girth": BODY_WAIST, "hip_girth": BODY_HIP}, PROMISES)


@fault("expectations", "closure-large", measured=740.2)
def waist_too_large_by_a_fifth_of_a_millimeter(skirt: Pattern) -> Made:
    """The waist runs level into the center back: 0.1 mm there are 0.2 mm round the body."""
    return Subject(point_moved(skirt, "skirt.back/center_waist", -0.1, 0.0), None, PROMISES)


@fault("expectations", "closure-small", measured=739.8)
def waist_too_small_by_a_fifth_of_a_millimeter(skirt: Pattern) -> Made:
    return Subject(point_moved(skirt, "skirt.back/center_waist", 0.1, 0.0), None, PROMISES)


@harmless("expectations")
def waist_within_a_twentieth_of_a_millimeter(skirt: Pattern) -> Made:
    return Subject(point_moved(skirt, "skirt.back/center_waist", 0.025, 0.0), None, PROMISES)


@fault("expectations", "closure-large", measured=980.0)
def hip_promised_smaller_by_a_fifth_of_a_millimeter(skirt: Pattern) -> Made:
    return Subject(skirt, None, (replace(HIP_PROMISE, ease=HIP_EASE - 0.2),))


@fault("expectations", "closure-unmeasurable")
def promise_of_a_line_that_is_gone(skirt: Pattern) -> Made:
    return Subject(skirt, None, (replace(HIP_PROMISE, names=("skirt.front/knee_line",)),))


@fault("expectations", "closure-left-away")
def promise_of_a_line_on_a_piece_that_was_left_away(skirt: Pattern) -> Made:
    fate = Fate("removed", (), "leave_away-1", LEFT_AWAY)
    left = replace(skirt, fates=frozen_map({"skirt.front/knee_line": fate}))
    return Subject(left, None, (replace(HIP_PROMISE, names=("skirt.front/knee_line",)),))


@fault("expectations", "closure-other-body", measured=BODY_WAIST)
def waist_drafted_for_another_body(skirt: Pattern) -> Made:
    return Subject(skirt, {"waist_girth": BODY_WAIST + 10.0}, PROMISES)


@harmless("expectations")
def style_that_need_not_keep_the_hip(skirt: Pattern) -> Made:
    wider = replace(HIP_PROMISE, ease=HIP_EASE + 30.0)
    return Subject(skirt, None, (replace(WAIST_PROMISE, kept=True), wider), is_block=False)


@fault("expectations", "closure-small", measured=740.0)
def style_that_must_keep_the_waist(skirt: Pattern) -> Made:
    larger = replace(WAIST_PROMISE, ease=WAIST_EASE + 0.2, kept=True)
    return Subject(skirt, None, (larger,), is_block=False)


@harmless("expectations")
def body_whose_sides_differ(skirt: Pattern) -> Made:
    body = {"waist_girth": BODY_WAIST + 10.0, "waist_girth@left": BODY_WAIST - 10.0}
    return Subject(skirt, body, PROMISES)


@fault("expectations", "closure-other-body", measured=BODY_WAIST)
def left_side_drafted_for_another_body(skirt: Pattern) -> Made:
    body = {"waist_girth": BODY_WAIST, "waist_girth@left": BODY_WAIST + 10.0}
    return Subject(skirt, body, (replace(WAIST_PROMISE, name="skirt/waist_girth@left"),))


@harmless("expectations")
def right_side_drafted_for_its_own_measure(skirt: Pattern) -> Made:
    body = {"waist_girth@right": BODY_WAIST, "waist_girth@left": BODY_WAIST + 10.0}
    return Subject(skirt, body, (replace(WAIST_PROMISE, name="skirt/waist_girth@right"),))


@fault("expectations", "closure-other-body", measured=BODY_WAIST)
def sides_drafted_for_another_mean(skirt: Pattern) -> Made:
    body = {"waist_girth@right": BODY_WAIST, "waist_girth@left": BODY_WAIST + 10.0}
    return Subject(skirt, body, PROMISES)
