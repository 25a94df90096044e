"""Faults planted in a double-ended dart."""

from collections.abc import Callable
from dataclasses import replace

from notchbook.geometry import Path, Point
from notchbook.pattern import InnerDart, Pattern
from support.faults import Made, fault, harmless
from support.hand_upper import INNER_DART, hand_upper, upper_front, with_inner_dart

SIDE_LEG = f"{INNER_DART}/side_leg"


def _leg_through(*places: Point) -> Pattern:
    """The upper garment with the side leg of its inner dart drawn through these places."""
    front = hand_upper().pieces["top.front"]
    lines = tuple(
        replace(line, path=Path.polyline(places)) if line.name == SIDE_LEG else line for line in front.lines
    )
    return hand_upper().with_pieces(replace(front, lines=lines))


def _dart_changed(change: Callable[[InnerDart], InnerDart]) -> Pattern:
    front = hand_upper().pieces["top.front"]
    return hand_upper().with_pieces(replace(front, inner_darts=(change(front.inner_darts[0]),)))


def _wide(width: float) -> Pattern:
    return hand_upper().with_pieces(with_inner_dart(upper_front(), width))


@fault("dart-legs", "dart-part-legs-differ", measured=129.557, within=0.01)
def side_leg_shorter_above_the_waist(_: Pattern) -> Made:
    """Its corner 1 mm higher: above, the way from (0, 130) to (-12, 1) is the root of 129^2 + 12^2."""
    return _leg_through(Point(-100.0, 130.0), Point(-112.0, 1.0), Point(-100.0, -110.0))


@harmless("dart-legs")
def side_leg_off_by_four_tenths(_: Pattern) -> Made:
    return _leg_through(Point(-100.0, 130.0), Point(-112.0, 0.4), Point(-100.0, -110.0))


@fault("dart-legs", "dart-ends-apart", measured=2.0)
def side_leg_that_ends_beside_the_point(_: Pattern) -> Made:
    return _leg_through(Point(-100.0, 130.0), Point(-112.0, 0.0), Point(-102.0, -110.0))


@fault("dart-room", "dart-near-edge", measured=6.0)
def inner_dart_that_ends_near_the_hem(_: Pattern) -> Made:
    front = hand_upper().pieces["top.front"]
    shift = Point(0.0, -34.0)
    lines = tuple(
        replace(line, path=Path.polyline([*(s.start for s in line.path.segments), line.path.end + shift]))
        if line.kind == "dart_leg"
        else line
        for line in front.lines
    )
    return hand_upper().with_pieces(replace(front, lines=lines))


@fault("dart-count", "dart-large", measured=44.0)
def inner_dart_of_44_millimeters(_: Pattern) -> Made:
    return _wide(44.0)


@fault("dart-count", "dart-small", measured=6.0)
def inner_dart_of_six_millimeters(_: Pattern) -> Made:
    return _wide(6.0)


@harmless("dart-count")
def inner_dart_of_39_millimeters(_: Pattern) -> Made:
    return _wide(39.0)


@fault("names", "name-dead-dart")
def inner_dart_whose_leg_is_gone(_: Pattern) -> Made:
    return _dart_changed(lambda dart: replace(dart, center_leg="top.front/gone"))


@fault("names", "name-dead-dart")
def inner_dart_whose_point_is_gone(_: Pattern) -> Made:
    return _dart_changed(lambda dart: replace(dart, lower_point="top.front/gone"))
