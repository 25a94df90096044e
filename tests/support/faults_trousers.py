"""Faults planted in the hand-made trousers."""

from dataclasses import replace

from notchbook.geometry import Cubic, Path, Point, Transform
from notchbook.pattern import STRETCH_FABRIC, InternalLine, Pattern, Piece
from support.bent import path_changed, piece_changed, point_moved
from support.faults import Made, fault, harmless
from support.hand_trousers import (
    BACK_CROTCH,
    FRONT_CROTCH,
    KNEE,
    back_crotch,
    front_crotch,
    hand_trousers,
    hooked_back,
    hooked_front,
    ramp_back,
    ramp_front,
)

CHECKED = ("center-square", "crease-line", "crotch-shape", "no-bump", "seam-junctions")
"""The checks under which the hand-made trousers are right (their side seams are drawn with a ruler)."""


def _front_of(first: float, second: float) -> Pattern:
    """The trousers with a front crotch curve of these handles, mm."""
    return path_changed(hand_trousers(), FRONT_CROTCH, lambda _: front_crotch(first, second).reversed())


def _back_of(first: float, second: float) -> Pattern:
    return path_changed(hand_trousers(), BACK_CROTCH, lambda _: back_crotch(first, second))


@fault("crotch-shape", "crotch-diagonal")
def front_that_cuts_its_corner(_: Pattern) -> Made:
    return _front_of(40.0, 20.0)


@fault("crotch-shape", "crotch-diagonal")
def back_that_cuts_its_corner(_: Pattern) -> Made:
    return _back_of(60.0, 20.0)


@fault("crotch-shape", "crotch-hooked")
def front_with_a_hook_of_the_right_depth(_: Pattern) -> Made:
    """Round in one place, then straight on to the crotch point, as deep in its corner as a J."""
    return path_changed(hand_trousers(), FRONT_CROTCH, lambda _: hooked_front().reversed())


@fault("crotch-shape", "crotch-hooked")
def back_with_a_hook(_: Pattern) -> Made:
    return path_changed(hand_trousers(), BACK_CROTCH, lambda _: hooked_back())


@fault("crotch-shape", "crotch-ramp")
def front_that_ends_in_a_ramp(_: Pattern) -> Made:
    """Round enough and as deep as a J, but straight on to the crotch point."""
    return path_changed(hand_trousers(), FRONT_CROTCH, lambda _: ramp_front().reversed())


@fault("crotch-shape", "crotch-ramp")
def back_that_ends_in_a_ramp(_: Pattern) -> Made:
    return path_changed(hand_trousers(), BACK_CROTCH, lambda _: ramp_back())


@fault("crotch-shape", "crotch-corner-deep")
def front_that_goes_into_its_corner(_: Pattern) -> Made:
    return _front_of(80.0, 45.0)


@fault("crotch-shape", "crotch-back-not-flatter")
def back_as_hollow_as_the_front(_: Pattern) -> Made:
    return _back_of(130.0, 90.0)


@fault("crotch-shape", "crotch-front-as-long", measured=65.0)
def back_that_reaches_less_far(_: Pattern) -> Made:
    return point_moved(hand_trousers(), "trousers.back/crotch_point", 50.0, 0.0)


@harmless("crotch-shape")
def stretch_front_that_goes_into_its_corner(_: Pattern) -> Made:
    trousers = _front_of(80.0, 45.0)
    return trousers.with_pieces(*(replace(piece, stretches=True) for piece in trousers.pieces.values()))


@fault("crotch-shape", "crotch-corner-deep")
def woven_front_beside_a_stretch_top(_: Pattern) -> Made:
    return _front_of(80.0, 45.0).with_materials({"self": STRETCH_FABRIC})


@harmless("crotch-shape")
def front_a_little_rounder(_: Pattern) -> Made:
    return _front_of(60.0, 32.0)


def _with_crease(motion: Transform) -> Pattern:
    name = "trousers.front/crease_line"

    def moved(line: InternalLine) -> InternalLine:
        return replace(line, path=line.path.transformed(motion)) if line.name == name else line

    def changed(piece: Piece) -> Piece:
        return replace(piece, lines=tuple(map(moved, piece.lines)))

    return piece_changed(hand_trousers(), "trousers.front", changed)


@fault("crease-line", "crease-off-middle", measured=3.0)
def crease_beside_the_middle(_: Pattern) -> Made:
    return _with_crease(Transform.translation(3.0, 0.0))


@fault("crease-line", "crease-off-grain", measured=1.5)
def crease_off_the_grain(_: Pattern) -> Made:
    line = hand_trousers().pieces["trousers.front"].line("trousers.front/crease_line").path
    return _with_crease(Transform.rotation(1.5, line.start))


def _inseam_in(way: float) -> Pattern:
    """The front with an inseam that runs in by so many mm from the knee to 80 below it, and then on to the
    hem."""
    edge = "trousers.front/inseam"
    old = hand_trousers().edges[edge].path
    hem, knee = old.start, Point(105.0, KNEE)
    straight = knee.lerp(hem, 80.0 / (knee.y - hem.y))
    lower = Path.polyline((hem, Point(straight.x - way, straight.y), knee)).segments
    return path_changed(hand_trousers(), edge, lambda _: Path((*lower, *old.segments[1:])))


@fault("crease-line", "leg-off-balance", measured=8.0)
def inseam_that_turns_below_the_knee(_: Pattern) -> Made:
    return _inseam_in(8.0)


@harmless("crease-line")
def inseam_that_hardly_turns_below_the_knee(_: Pattern) -> Made:
    return _inseam_in(1.9)


@fault("crease-line", "leg-off-balance", measured=8.0)
def turned_leg_out_of_balance(_: Pattern) -> Made:
    motion = Transform.rotation(37.0, Point(20.0, 10.0))
    return piece_changed(_inseam_in(8.0), "trousers.front", lambda piece: piece.transformed(motion))


@harmless("crease-line")
def crease_half_a_millimeter_off(_: Pattern) -> Made:
    return _with_crease(Transform.translation(0.5, 0.0))


@harmless("grain-direction")
def straight_crotch_seam_off_the_grain(_: Pattern) -> Made:
    """As the upper part of one is, where a yoke was cut off."""
    return path_changed(hand_trousers(), BACK_CROTCH, lambda old: Path.line(old.start, old.end))


@harmless("center-square")
def fork_that_is_not_square(_: Pattern) -> Made:
    """The front corner of the fork is 95 degrees, the back one 85: together they are straight."""
    return hand_trousers()


@fault("seam-junctions", "junction-peak")
def fork_that_peaks(_: Pattern) -> Made:
    """The inseam of the back leaves the crotch point 5 degrees off."""
    old = hand_trousers().edges["trousers.back/inseam"].path
    turned = old.transformed(Transform.rotation(5.0, old.start))
    parts = (*Path((turned.segments[0],)).with_end(old.segments[0].end).segments, *old.segments[1:])
    return path_changed(hand_trousers(), "trousers.back/inseam", lambda _: Path(parts))


def _waving(edge: str, off: float) -> Pattern:
    """The trousers with an edge that bends once to each side, by so many mm."""
    old = hand_trousers().edges[edge].path
    way = old.end - old.start
    aside = way.perpendicular().unit() * off
    handles = old.start + way * (1.0 / 3.0) + aside, old.start + way * (2.0 / 3.0) - aside
    return path_changed(hand_trousers(), edge, lambda _: Path.of(Cubic(old.start, *handles, old.end)))


@fault("fair-edges", "edge-wavers")
def inseam_that_bends_both_ways(_: Pattern) -> Made:
    return _waving("trousers.back/inseam", 40.0)


@fault("fair-edges", "edge-wavers")
def inseam_that_bends_both_ways_the_other_way(_: Pattern) -> Made:
    return _waving("trousers.back/inseam", -40.0)


@fault("fair-edges", "edge-wavers")
def crotch_that_is_round_before_it_is_hollow(_: Pattern) -> Made:
    return _waving(BACK_CROTCH, 60.0)


@fault("fair-edges", "edge-wavers")
def crotch_that_is_hollow_before_it_is_round(_: Pattern) -> Made:
    return _waving(BACK_CROTCH, -60.0)
