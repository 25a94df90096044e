"""Faults planted in the shapes of a hand-made bodice and sleeve."""

from dataclasses import replace
from itertools import pairwise

from notchbook.checks import Subject
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import STRETCH_FABRIC, Expectation, Grain, Mark, Pattern
from notchbook.pattern.names import last_word
from support.bent import path_changed, point_moved
from support.faults import Made, fault, harmless
from support.hand_upper import (
    BACK_ARMHOLE,
    CAP_BACK,
    CAP_FRONT,
    FRONT_ARMHOLE,
    FRONT_SEAM,
    hand_upper,
    turned,
    upper_back,
    upper_front,
)

BALANCE = "balance_notch"
DRAWN = (
    "armhole-shape",
    "cap-laid-in",
    "cap-shape",
    "dart-count",
    "dart-legs",
    "dart-room",
    "fair-edges",
    "names",
    "neck-shape",
    "no-bump",
    "seam-junctions",
    "seam-notches",
)
"""The checks under which the hand-made bodice and sleeve are right (it has no cut data)."""


def _front_armhole(*points: tuple[Point, float, float]) -> Pattern:
    """The upper garment with its front armhole drawn anew from the tip through these points: each with the
    heading there, degrees, and the length of its handles, mm."""
    old = upper_front().edge(FRONT_ARMHOLE).path
    through = [(old.start, -70.0, 30.0), *points, (old.end, 180.0, 40.0)]
    segments = [
        turned(begin, heading, (handle, reach), end, arriving)
        for (begin, heading, handle), (end, arriving, reach) in pairwise(through)
    ]
    return path_changed(hand_upper(), FRONT_ARMHOLE, lambda _: Path(tuple(segments)))


def _back_armhole_leaves(degrees: float) -> Pattern:
    """The upper garment with a back armhole that leaves the underarm so many degrees steeper than square."""
    old = upper_back().edge(BACK_ARMHOLE).path
    lower = turned(old.start, 180.0 - degrees, (42.0, 52.0), old.segments[0].end, 90.0)
    return path_changed(hand_upper(), BACK_ARMHOLE, lambda _: Path((lower, *old.segments[1:])))


@fault("seam-junctions", "armhole-corner", measured=187.0, within=0.1)
def armhole_with_a_corner_at_the_underarm(_: Pattern) -> Made:
    return _back_armhole_leaves(7.0)


@fault("seam-junctions", "junction-dip", measured=185.0, within=0.1)
def armhole_a_little_off_at_the_underarm(_: Pattern) -> Made:
    return _back_armhole_leaves(5.0)


@harmless("seam-junctions")
def armhole_within_three_degrees_at_the_underarm(_: Pattern) -> Made:
    return _back_armhole_leaves(2.5)


@fault("armhole-shape", "armhole-wavers")
def armhole_that_bulges_above_its_hollow(_: Pattern) -> Made:
    return _front_armhole((Point(-178.0, 300.0), -90.0, 20.0), (Point(-190.0, 250.0), -75.0, 20.0))


@fault("armhole-shape", "armhole-diagonal")
def armhole_that_is_a_lazy_diagonal(_: Pattern) -> Made:
    old = hand_upper().edges[BACK_ARMHOLE].path
    lazy = Path.of(turned(old.start, 118.0, (60.0, 60.0), old.end, 92.0))
    return path_changed(hand_upper(), BACK_ARMHOLE, lambda _: lazy)


@fault("armhole-shape", "armhole-hollow-high")
def armhole_that_is_hollow_at_its_middle(_: Pattern) -> Made:
    return _front_armhole((Point(-150.0, 290.0), -90.0, 30.0))


@fault("armhole-shape", "armhole-leans-back")
def front_armhole_shallower_than_the_back(_: Pattern) -> Made:
    return _front_armhole((Point(-196.0, 250.0), -90.0, 24.0))


@harmless("armhole-shape")
def armhole_with_a_hook_at_its_tip(_: Pattern) -> Made:
    """It turns back by 6 degrees in the last quarter."""
    old = upper_front().edge(FRONT_ARMHOLE).path
    first = turned(old.start, -85.0, (14.0, 14.0), Point(-183.0, 322.0), -79.0)
    second = turned(first.end, -79.0, (17.0, 17.0), Point(-178.0, 272.0), -90.0)
    third = turned(second.end, -90.0, (26.0, 54.0), old.end, 180.0)
    return path_changed(hand_upper(), FRONT_ARMHOLE, lambda _: Path((first, second, third)))


@fault("neck-shape", "neck-wavers")
def neck_that_bends_outward_at_the_shoulder(_: Pattern) -> Made:
    old = hand_upper().edges["top.back/neck"].path
    drawn = Path.of(turned(old.start, -170.0, (40.0, 20.0), old.end, 180.0))
    return path_changed(hand_upper(), "top.back/neck", lambda _: drawn)


def _square_neck(*leg: Point) -> Pattern:
    """The front with a neck level from the pit to a corner and from there through these places upward."""
    old = hand_upper().edges["top.front/neck"].path
    pit, tip = (old.start, old.end) if old.start.y < old.end.y else (old.end, old.start)
    corner = Point(tip.x, pit.y)
    places = [pit, corner, *(Point(corner.x + off.x, corner.y + off.y) for off in leg), tip]
    drawn = Path.polyline(places if pit == old.start else places[::-1])
    return path_changed(hand_upper(), "top.front/neck", lambda _: drawn)


@harmless("neck-shape")
def square_neck_with_a_leg_that_turns_to_the_shoulder(_: Pattern) -> Made:
    return _square_neck(Point(2.0, 15.0), Point(3.0, 30.0))


@fault("neck-shape", "neck-wavers")
def square_neck_with_a_leg_that_bends_both_ways(_: Pattern) -> Made:
    return _square_neck(Point(3.0, 15.0), Point(-3.0, 30.0), Point(0.0, 40.0))


@fault("neck-shape", "back-neck-deep", measured=40.0)
def back_neck_that_rises_by_40_over_71(_: Pattern) -> Made:
    upper = hand_upper()
    back = upper.pieces["top.back"]
    nape = Point(0.0, 375.0)
    outline = []
    for edge in back.outline:
        path = edge.path
        if edge.start == "top.back/nape":
            path = path.with_start(nape)
        if edge.end == "top.back/nape":
            path = path.with_end(nape)
        outline.append(replace(edge, path=path))
    return upper.with_pieces(replace(back, outline=tuple(outline)))


@harmless("neck-shape")
def back_neck_of_a_slip_on_the_bias(_: Pattern) -> Made:
    """Cut low and wide, away from the neck; its grain runs aslant to the center."""
    upper = hand_upper()
    back = upper.pieces["top.back"]
    neck = next(edge for edge in back.outline if last_word(edge.name) == "neck")
    nape, side = Point(0.0, 265.0), neck.path.end if neck.end != "top.back/nape" else neck.path.start
    low = Path.of(curve_between(nape, 0.0, side, (side - nape).direction() + 25.0))
    outline = []
    for edge in back.outline:
        path = edge.path
        if edge.name == neck.name:
            path = low if edge.start == "top.back/nape" else low.reversed()
        elif edge.start == "top.back/nape":
            path = path.with_start(nape)
        elif edge.end == "top.back/nape":
            path = path.with_end(nape)
        outline.append(replace(edge, path=path))
    return upper.with_pieces(replace(back, outline=tuple(outline), grain=Grain(135.0)))


def _below_a_marked_neck_base(lowered: float) -> Pattern:
    """The deep back neck, its nape so far below the neck base of the body, mm."""
    upper = back_neck_that_rises_by_40_over_71(hand_upper())
    assert isinstance(upper, Pattern)
    back = upper.pieces["top.back"]
    base = Mark("top.back/neck_base", Point(0.0, 375.0 + lowered), "datum")
    return upper.with_pieces(replace(back, marks=(*back.marks, base)))


@harmless("neck-shape")
def back_neck_cut_low_below_a_marked_neck_base(_: Pattern) -> Made:
    return _below_a_marked_neck_base(25.0)


@fault("neck-shape", "back-neck-deep", measured=40.0)
def deep_back_neck_a_millimeter_below_its_neck_base(_: Pattern) -> Made:
    return _below_a_marked_neck_base(1.0)


def _cap_of(name: str, path: Path) -> Pattern:
    return path_changed(hand_upper(), name, lambda _: path)


@fault("cap-shape", "cap-turns", measured=0.0)
def cap_without_a_hollow(_: Pattern) -> Made:
    old = hand_upper().edges[CAP_FRONT].path
    return _cap_of(CAP_FRONT, Path.of(turned(old.start, 100.0, (60.0, 80.0), old.end, 180.0)))


@fault("cap-shape", "cap-turns", measured=2.0)
def cap_that_is_hollow_at_its_crown_too(_: Pattern) -> Made:
    old = hand_upper().edges[CAP_FRONT].path
    first = turned(old.start, 180.0, (50.0, 40.0), Point(80.0, 90.0), 130.0)
    middle = turned(first.end, 130.0, (20.0, 20.0), Point(40.0, 120.0), 165.0)
    return _cap_of(CAP_FRONT, Path((first, middle, turned(middle.end, 165.0, (15.0, 15.0), old.end, 130.0))))


@fault("cap-shape", "cap-crown-hollow")
def cap_turned_upside_down(_: Pattern) -> Made:
    old = hand_upper().edges[CAP_FRONT].path
    first = turned(old.start, 100.0, (40.0, 40.0), Point(90.0, 70.0), 170.0)
    return _cap_of(CAP_FRONT, Path((first, turned(first.end, 170.0, (40.0, 40.0), old.end, 110.0))))


@fault("cap-shape", "cap-hollower-behind")
def cap_hollower_behind(_: Pattern) -> Made:
    old = hand_upper().edges[CAP_BACK].path
    low = turned(Point(-100.0, 40.0), 230.0, (30.0, 60.0), old.end, 180.0)
    return _cap_of(CAP_BACK, Path((turned(old.start, 180.0, (60.0, 40.0), low.start, 230.0), low)))


def _narrower(amount: float) -> Pattern:
    """The upper garment with the front of the cap drawn straight through the armhole's hollow by so much."""
    old = hand_upper().edges[CAP_FRONT].path
    across = Point(165.0 - 57.0 + amount, 72.0)
    lower = turned(old.start, 180.0, (54.0 - amount, 26.0), across, 90.0)
    return _cap_of(CAP_FRONT, Path((lower, turned(lower.end, 90.0, (52.0, 62.0), old.end, 180.0))))


@fault("cap-laid-in", "cap-off-armhole")
def cap_that_leaves_its_armhole_by_four(_: Pattern) -> Made:
    return _narrower(4.3)


@harmless("cap-laid-in")
def cap_that_leaves_its_armhole_by_two(_: Pattern) -> Made:
    return _narrower(2.0)


def _of_stretch(amount: float) -> Pattern:
    upper = _narrower(amount)
    return upper.with_pieces(*(replace(piece, stretches=True) for piece in upper.pieces.values()))


@fault("cap-laid-in", "cap-off-armhole")
def stretch_cap_that_leaves_its_armhole_by_nine(_: Pattern) -> Made:
    return _of_stretch(9.5)


@fault("cap-laid-in", "cap-off-armhole")
def woven_cap_beside_a_stretch_top(_: Pattern) -> Made:
    return _narrower(4.3).with_materials({"self": STRETCH_FABRIC})


@harmless("cap-laid-in")
def stretch_cap_that_leaves_its_armhole_by_four(_: Pattern) -> Made:
    return _of_stretch(4.3)


def _balance_at(amount: float) -> Pattern:
    upper = hand_upper()
    notch = upper.notches[f"{CAP_FRONT}/{BALANCE}"]
    return upper.with_notches(replace(notch, place=replace(notch.place, amount=amount)))


@fault("cap-laid-in", "cap-notch-off", measured=76.2)
def cap_notch_too_high_by_12_tenths(_: Pattern) -> Made:
    return _balance_at(76.2)


@harmless("cap-laid-in")
def cap_notch_too_high_by_8_tenths(_: Pattern) -> Made:
    return _balance_at(75.8)


@fault("seam-notches", "notch-stretch-differs", measured=75.7)
def ease_that_slips_below_the_balance_notch(_: Pattern) -> Made:
    return _balance_at(75.7)


@harmless("seam-notches")
def cap_notch_within_half_a_millimeter(_: Pattern) -> Made:
    return _balance_at(75.4)


@harmless("seam-notches")
def ease_that_may_lie_anywhere(_: Pattern) -> Made:
    upper = _balance_at(76.2)
    return upper.with_seams(replace(upper.seams[FRONT_SEAM], ease_between=None))


@fault("seam-notches", "ease-notch-missing")
def ease_up_to_a_notch_that_is_not_there(_: Pattern) -> Made:
    upper = hand_upper()
    return upper.with_seams(replace(upper.seams[FRONT_SEAM], ease_between=(BALANCE, "crown_notch")))


@fault("seam-notches", "ease-notches-turned")
def ease_between_notches_in_the_wrong_order(_: Pattern) -> Made:
    upper = hand_upper()
    return upper.with_seams(replace(upper.seams[FRONT_SEAM], ease_between=("ease_notch", BALANCE)))


@harmless("seam-notches")
def ease_from_a_notch_to_the_end(_: Pattern) -> Made:
    upper = hand_upper()
    return upper.with_seams(replace(upper.seams[FRONT_SEAM], ease_between=(BALANCE, "end")))


@fault("no-bump", "edge-bumpy")
def neck_of_two_rounds_with_a_slack_between(_: Pattern) -> Made:
    old = hand_upper().edges["top.front/neck"].path
    first = turned(old.start, 180.0, (6.0, 20.0), Point(-36.0, 352.0), 138.0)
    second = turned(first.end, 138.0, (20.0, 6.0), old.end, 106.0)
    return path_changed(hand_upper(), "top.front/neck", lambda _: Path((first, second)))


@fault("no-bump", "edge-bumpy")
def armhole_of_two_rounds_below_its_tip(_: Pattern) -> Made:
    return _front_armhole((Point(-178.0, 285.0), -90.0, 20.0), (Point(-185.0, 225.0), -120.0, 16.0))


@harmless("no-bump")
def neck_of_one_round(_: Pattern) -> Made:
    return hand_upper()


def _side_seam(*places: tuple[Point, float]) -> Pattern:
    """The upper garment with its front side seam drawn through these places, each with its heading."""
    old = upper_front().edge("top.front/side_seam").path
    through = [(old.start, -90.0), *places, (old.end, -90.0)]
    segments = tuple(
        turned(begin, heading, (40.0, 40.0), end, arriving)
        for (begin, heading), (end, arriving) in pairwise(through)
    )
    return path_changed(hand_upper(), "top.front/side_seam", lambda _: Path(segments))


@fault("fair-edges", "edge-wavers")
def side_seam_that_changes_three_times(_: Pattern) -> Made:
    return _side_seam((Point(-225.0, 60.0), -90.0), (Point(-240.0, -60.0), -90.0))


@harmless("fair-edges")
def side_seam_hollow_at_the_waist_and_round_at_the_hip(_: Pattern) -> Made:
    old = upper_front().edge("top.front/side_seam").path
    waist = turned(old.start, -86.0, (60.0, 60.0), Point(-232.0, 0.0), -94.0)
    hip = turned(waist.end, -94.0, (50.0, 50.0), old.end, -84.0)
    return path_changed(hand_upper(), "top.front/side_seam", lambda _: Path((waist, hip)))


SCYE_DEPTH = Expectation(
    "top/scye_depth",
    "scye_depth",
    (),
    1,
    182.0,
    10.0,
    "the armhole begins so far below the nape",
    kind="length",
    chains=(("top.back/nape", "top.back/underarm"),),
    reach="down",
)
"""The nape lies at y = 392 and the underarm at y = 200."""
NECK_WIDTH = replace(SCYE_DEPTH, name="top/neck_width", body=136.0, ease=0.0, times=2, reach="across")


@harmless("expectations")
def depth_as_promised(_: Pattern) -> Made:
    return Subject(hand_upper(), None, (SCYE_DEPTH,))


@fault("expectations", "closure-small", measured=191.8)
def depth_too_small_by_two_tenths(_: Pattern) -> Made:
    return Subject(point_moved(hand_upper(), "top.back/underarm", 0.0, 0.2), None, (SCYE_DEPTH,))


@harmless("expectations")
def depth_is_taken_down_and_not_across(_: Pattern) -> Made:
    return Subject(point_moved(hand_upper(), "top.back/underarm", 5.0, 0.0), None, (SCYE_DEPTH,))


@fault("expectations", "closure-large", measured=136.4)
def width_across_taken_twice(_: Pattern) -> Made:
    """The neck of the front is 68 wide."""
    wider = point_moved(hand_upper(), "top.front/side_neck_point", -0.2, 0.0)
    width = replace(NECK_WIDTH, chains=(("top.front/neck_pit", "top.front/side_neck_point"),))
    return Subject(wider, None, (width,))


@fault("expectations", "closure-large", measured=590.0)
def two_ways_added(_: Pattern) -> Made:
    """240 between the points of the dart and 350 down the side seam."""
    ways = (
        ("top.front/waist_dart/lower_point", "top.front/waist_dart/upper_point"),
        ("top.front/underarm", "top.front/hem_side"),
    )
    promise = replace(SCYE_DEPTH, body=589.8, ease=0.0, chains=ways, reach="straight")
    return Subject(hand_upper(), None, (promise,))


FRONT_UNDERARM = replace(SCYE_DEPTH, chains=(("top.back/nape", "top.front/underarm"),))


@fault("expectations", "closure-unmeasurable")
def way_to_a_point_that_no_seam_joins(_: Pattern) -> Made:
    apart = hand_upper()
    return Subject(apart.with_seams(without=apart.seams), None, (FRONT_UNDERARM,))


@harmless("expectations")
def way_to_a_point_over_a_seam(_: Pattern) -> Made:
    """At the top of the side seam both underarms are one place."""
    return Subject(hand_upper(), None, (FRONT_UNDERARM,))
