"""Faults planted in darts."""

from dataclasses import replace

from notchbook.geometry import Cubic, Path, Point
from notchbook.pattern import Notch, Pattern, Place
from support.bent import path_changed, point_moved
from support.faults import Made, fault, harmless
from support.faults_outline import empty_dart
from support.hand_skirt import FRONT_DART

DART = "skirt.front/waist_dart"
SIDE_MOUTH = f"{DART}/side_mouth"
TIP = f"{DART}/point"


def _side_leg_longer(skirt: Pattern, amount: float) -> Pattern:
    along = (FRONT_DART.second_mouth - FRONT_DART.point).unit() * amount
    return point_moved(skirt, SIDE_MOUTH, along.x, along.y)


def _mouth_of(skirt: Pattern, width: float) -> Pattern:
    """The skirt with the side mouth moved so that the mouth is this wide (straight across), mm."""
    target = FRONT_DART.first_mouth.lerp(FRONT_DART.second_mouth, width / 20.0)
    moved = target - FRONT_DART.second_mouth
    return point_moved(skirt, SIDE_MOUTH, moved.x, moved.y)


def _tip_at(skirt: Pattern, target: Point) -> Pattern:
    moved = target - FRONT_DART.point
    return point_moved(skirt, TIP, moved.x, moved.y)


@fault("dart-legs", "dart-legs-differ", measured=96.6)
def leg_longer_by_six_tenths(skirt: Pattern) -> Made:
    return _side_leg_longer(skirt, 0.6)


@harmless("dart-legs")
def leg_longer_by_four_tenths(skirt: Pattern) -> Made:
    return _side_leg_longer(skirt, 0.4)


@harmless("dart-legs")
def dart_closed_to_nothing(skirt: Pattern) -> Made:
    return empty_dart(skirt)


@fault("dart-mouth", "dart-mouth-peak", measured=175.0, within=0.05)
def waist_turned_by_five_degrees_at_a_leg(skirt: Pattern) -> Made:
    return path_changed(skirt, "skirt.front/waist/side_side", lambda path: _start_turned(path, 5.0))


@fault("dart-mouth", "dart-mouth-dip", measured=185.0, within=0.05)
def waist_turned_the_other_way_at_a_leg(skirt: Pattern) -> Made:
    return path_changed(skirt, "skirt.front/waist/side_side", lambda path: _start_turned(path, -5.0))


@harmless("dart-mouth")
def waist_turned_by_two_degrees_at_a_leg(skirt: Pattern) -> Made:
    return path_changed(skirt, "skirt.front/waist/side_side", lambda path: _start_turned(path, 2.0))


def _start_turned(path: Path, degrees: float) -> Path:
    (curve,) = path.segments
    assert isinstance(curve, Cubic)
    return Path.of(replace(curve, start_handle=curve.start_handle.rotated(degrees, curve.start)))


@fault("dart-room", "dart-point-outside")
def dart_that_ends_beyond_the_center(skirt: Pattern) -> Made:
    return _tip_at(skirt, Point(20.0, 100.0))


@fault("dart-room", "dart-near-edge", measured=6.0)
def dart_that_ends_beside_the_center(skirt: Pattern) -> Made:
    return _tip_at(skirt, Point(-6.0, 100.0))


@fault("dart-room", "dart-wide-angle", within=0.01)
def dart_too_short_for_its_width(skirt: Pattern) -> Made:
    middle = FRONT_DART.first_mouth.lerp(FRONT_DART.second_mouth, 0.5)
    return _tip_at(skirt, middle + (FRONT_DART.point - middle).unit() * 15.0)


@harmless("dart-room")
def dart_with_room_to_the_center(skirt: Pattern) -> Made:
    return _tip_at(skirt, Point(-12.0, 100.0))


@fault("dart-count", "dart-small", measured=6.0)
def dart_of_six_millimeters(skirt: Pattern) -> Made:
    return _mouth_of(skirt, 6.0)


@fault("dart-count", "dart-small", measured=0.0)
def dart_of_nothing(skirt: Pattern) -> Made:
    return empty_dart(skirt)


@fault("dart-count", "dart-large", measured=44.0)
def dart_of_44_millimeters(skirt: Pattern) -> Made:
    return _mouth_of(skirt, 44.0)


@harmless("dart-count")
def dart_of_39_millimeters(skirt: Pattern) -> Made:
    return _mouth_of(skirt, 39.0)


@harmless("dart-count")
def lining_with_the_small_dart_of_its_piece(skirt: Pattern) -> Made:
    """It is told of with the piece that the lining was copied from."""
    lining = replace(_mouth_of(skirt, 6.0).pieces["skirt.front"], rule="lining")
    return skirt.with_pieces(lining)


@harmless("dart-count")
def dart_of_nine_millimeters(skirt: Pattern) -> Made:
    return _mouth_of(skirt, 9.0)


def _notch_beside_the_dart(skirt: Pattern, apart: float) -> Pattern:
    """The skirt with a balance notch on the waist, so far from the side leg of the front dart, mm."""
    place = Place("skirt.front/waist/side_side", SIDE_MOUTH, apart)
    return skirt.with_notches(Notch("skirt.front/balance_notch", place, purpose="balance"))


@fault("notches-apart", "notches-too-near", measured=4.0, within=0.05)
def notch_four_millimeters_beside_a_dart(skirt: Pattern) -> Made:
    return _notch_beside_the_dart(skirt, 4.0)


@harmless("notches-apart")
def notch_on_the_leg_of_a_dart(skirt: Pattern) -> Made:
    return _notch_beside_the_dart(skirt, 0.2)


@harmless("notches-apart")
def notch_a_finger_beside_a_dart(skirt: Pattern) -> Made:
    return _notch_beside_the_dart(skirt, 15.0)
