"""Faults planted in outlines, folds, grain and fairness."""

from dataclasses import replace
from math import nan, radians, tan

from notchbook.checks import Subject
from notchbook.geometry import Cubic, Line, Path, Point, direction
from notchbook.pattern import CutInstruction, Edge, Grain, Pattern, Piece
from support.bent import edge_changed, outline_forced, path_changed, piece_changed, point_moved
from support.faults import Made, fault, harmless
from support.hand_skirt import FRONT_WIDTH, HEM_Y

FRONT_HEM = "skirt.front/hem"
FRONT_CENTER = "skirt.front/center_front"


@fault("outline", "outline-crosses")
def hem_corner_pulled_over_the_center(skirt: Pattern) -> Made:
    return point_moved(skirt, "skirt.front/hem_side", 300.0, 0.0)


@fault("outline", "outline-clockwise")
def outline_run_the_wrong_way(skirt: Pattern) -> Made:
    def backward(piece: Piece) -> Piece:
        return replace(piece, outline=tuple(edge.reversed() for edge in piece.outline[::-1]), intakes=())

    return piece_changed(skirt, "skirt.front", backward)


@fault("outline", "outline-gap", measured=0.2)
def gap_of_a_fifth_of_a_millimeter(skirt: Pattern) -> Made:
    def torn(piece: Piece) -> tuple[Edge, ...]:
        first, *rest = piece.outline
        return (replace(first, path=first.path.with_end(first.path.end + Point(0.0, -0.2))), *rest)

    return outline_forced(skirt, "skirt.front", torn)


@fault("outline", "outline-not-a-number")
def place_that_is_no_number(skirt: Pattern) -> Made:
    def spoiled(piece: Piece) -> tuple[Edge, ...]:
        lost = Point(0.0, 0.0)
        object.__setattr__(lost, "x", nan)
        first, *rest = piece.outline
        line = Line(first.path.start, first.path.end)
        object.__setattr__(line, "end", lost)
        path = Path.line(first.path.start, first.path.end)
        object.__setattr__(path, "segments", (line,))
        return (replace(first, path=path), *rest)

    return outline_forced(skirt, "skirt.front", spoiled)


@fault("outline", "outline-sliver", measured=0.05)
def hem_with_a_sliver(skirt: Pattern) -> Made:
    return path_changed(skirt, FRONT_HEM, lambda path: _cut_after(path, 0.05))


@harmless("outline")
def hem_with_a_short_part(skirt: Pattern) -> Made:
    return path_changed(skirt, FRONT_HEM, lambda path: _cut_after(path, 0.2))


@harmless("outline")
def dart_of_no_intake(skirt: Pattern) -> Made:
    return empty_dart(skirt)


def empty_dart(skirt: Pattern) -> Pattern:
    """The skirt with its front dart closed to nothing: all names stay, the mouths fall together."""
    points = skirt.pieces["skirt.front"].points
    moved = points["skirt.front/waist_dart/center_mouth"] - points["skirt.front/waist_dart/side_mouth"]
    return point_moved(skirt, "skirt.front/waist_dart/side_mouth", moved.x, moved.y)


def _cut_after(path: Path, distance: float) -> Path:
    before, after = path.split_at(distance)
    return before.joined(after)


@fault("fold-straight", "fold-bent", measured=0.2)
def fold_that_bulges(skirt: Pattern) -> Made:
    return path_changed(skirt, FRONT_CENTER, lambda path: _through(path, 0.2))


@harmless("fold-straight")
def fold_off_by_a_hair(skirt: Pattern) -> Made:
    return path_changed(skirt, FRONT_CENTER, lambda path: _through(path, 0.05))


def vented(skirt: Pattern) -> Pattern:
    """The skirt with a vent extension of 40 mm on the back, its top sloping by 20."""
    top, outer, low = Point(0.0, -250.0), Point(-40.0, -270.0), Point(-40.0, HEM_Y)
    names = [f"skirt.back/{word}" for word in ("vent_top", "vent_outer", "hem_center")]

    def extended(piece: Piece) -> Piece:
        hem, *between, center = piece.outline
        new = (
            replace(center, path=center.path.with_end(top), end=names[0]),
            Edge("skirt.back/vent/top", Path.line(top, outer), names[0], names[1]),
            Edge("skirt.back/vent/edge", Path.line(outer, low), names[1], names[2]),
        )
        return replace(piece, outline=(replace(hem, path=hem.path.with_start(low)), *between, *new))

    return piece_changed(skirt, "skirt.back", extended)


def _through(path: Path, off: float) -> Path:
    middle = path.start.lerp(path.end, 0.5) + Point(off, 0.0)
    return Path.polyline([path.start, middle, path.end])


@fault("center-square", "center-not-square", measured=88.5)
def hem_not_square_to_the_fold(skirt: Pattern) -> Made:
    return point_moved(skirt, "skirt.front/hem_side", 0.0, FRONT_WIDTH * tan(radians(1.5)))


@harmless("center-square")
def hem_square_within_half_a_degree(skirt: Pattern) -> Made:
    return point_moved(skirt, "skirt.front/hem_side", 0.0, -FRONT_WIDTH * tan(radians(0.5)))


@fault("center-square", "center-not-square", measured=92.0)
def waist_not_square_to_the_center_back(skirt: Pattern) -> Made:
    def tilted(path: Path) -> Path:
        (curve,) = path.segments
        assert isinstance(curve, Cubic)
        reach = curve.end.distance_to(curve.end_handle)
        return Path.of(replace(curve, end_handle=curve.end - direction(182.0) * reach))

    return path_changed(skirt, "skirt.back/waist/center_side", tilted)


@harmless("center-square")
def vent_beyond_the_center(skirt: Pattern) -> Made:
    """The piece goes on beyond the end of the center seam: no line comes in to it there."""
    return vented(skirt)


@fault("grain-direction", "grain-off-center", measured=3.0)
def grain_three_degrees_off(skirt: Pattern) -> Made:
    return piece_changed(skirt, "skirt.front", lambda piece: replace(piece, grain=Grain(93.0)))


@fault("grain-direction", "grain-off-center", measured=45.0)
def bias_back_that_is_not_declared(skirt: Pattern) -> Made:
    return piece_changed(skirt, "skirt.back", lambda piece: replace(piece, grain=Grain(45.0)))


@fault("grain-direction", "bias-on-fold", measured=45.0)
def half_on_the_fold_that_was_asked_for_on_the_bias(skirt: Pattern) -> Made:
    turned = piece_changed(skirt, "skirt.front", lambda piece: replace(piece, grain=Grain(45.0)))
    return Subject(turned, grains=frozenset({"skirt.front"}))


@harmless("grain-direction")
def back_that_was_asked_for_on_the_bias(skirt: Pattern) -> Made:
    turned = piece_changed(skirt, "skirt.back", lambda piece: replace(piece, grain=Grain(45.0)))
    return Subject(turned, grains=frozenset({"skirt.back"}))


@harmless("grain-direction")
def grain_across_the_center(skirt: Pattern) -> Made:
    return piece_changed(skirt, "skirt.front", lambda piece: replace(piece, grain=Grain(0.0)))


@harmless("grain-direction")
def grain_within_half_a_degree(skirt: Pattern) -> Made:
    return piece_changed(skirt, "skirt.front", lambda piece: replace(piece, grain=Grain(-90.5)))


@fault("fair-edges", "edge-kinked", measured=2.0)
def hem_with_a_corner(skirt: Pattern) -> Made:
    half = FRONT_WIDTH / 2
    middle = Point(-half, HEM_Y - half * tan(radians(1.0)))
    return path_changed(skirt, FRONT_HEM, lambda path: Path.polyline([path.start, middle, path.end]))


@harmless("fair-edges")
def hem_with_a_corner_that_is_not_seen(skirt: Pattern) -> Made:
    half = FRONT_WIDTH / 2
    middle = Point(-half, HEM_Y - half * tan(radians(0.4)))
    return path_changed(skirt, FRONT_HEM, lambda path: Path.polyline([path.start, middle, path.end]))


@fault("fair-edges", "edge-wavers")
def hem_that_wavers(skirt: Pattern) -> Made:
    return path_changed(skirt, FRONT_HEM, lambda path: _wavy(path, 6.0))


@harmless("fair-edges")
def hem_that_wavers_unseen(skirt: Pattern) -> Made:
    return path_changed(skirt, FRONT_HEM, lambda path: _wavy(path, 0.5))


@harmless("fair-edges")
def hem_that_was_asked_for_as_a_dip(skirt: Pattern) -> Made:
    return Subject(hem_that_wavers_by(skirt, 6.0), waves={FRONT_HEM: 1})


@fault("fair-edges", "edge-wavers")
def hem_that_wavers_more_often_than_was_asked(skirt: Pattern) -> Made:
    """Two dips side by side change three times."""

    def twice(path: Path) -> Path:
        halves = path.split_at(path.length / 2.0)
        return _wavy(halves[0], 6.0).joined(_wavy(halves[1], 6.0))

    return Subject(path_changed(skirt, FRONT_HEM, twice), waves={FRONT_HEM: 1})


def hem_that_wavers_by(skirt: Pattern, off: float) -> Pattern:
    """The skirt with a hem that bends first one way, then the other."""
    return path_changed(skirt, FRONT_HEM, lambda path: _wavy(path, off))


def _wavy(path: Path, off: float) -> Path:
    third = Point((path.end.x - path.start.x) / 3, 0.0)
    up, down = Point(0.0, off), Point(0.0, -off)
    return Path.of(Cubic(path.start, path.start + third + up, path.end - third + down, path.end))


@fault("quantities", "quantity-none")
def piece_for_no_material(skirt: Pattern) -> Made:
    return piece_changed(skirt, "skirt.back", lambda piece: replace(piece, instructions=()))


@fault("quantities", "quantity-below-one", measured=0)
def piece_cut_no_times(skirt: Pattern) -> Made:
    return _instructed(skirt, CutInstruction("self", 0))


@fault("quantities", "quantity-twice")
def piece_given_twice(skirt: Pattern) -> Made:
    return _instructed(skirt, CutInstruction("self", 1), CutInstruction("self", 2))


@fault("quantities", "quantity-material-unknown")
def piece_in_a_material_that_is_not_there(skirt: Pattern) -> Made:
    return _instructed(skirt, CutInstruction("self", 1), CutInstruction("lining", 1))


@harmless("quantities")
def piece_in_two_materials(skirt: Pattern) -> Made:
    told = _instructed(skirt, CutInstruction("self", 1), CutInstruction("lining", 1))
    return told.with_materials({"lining": "lining"})


def _instructed(skirt: Pattern, *told: CutInstruction) -> Pattern:
    return piece_changed(skirt, "skirt.back", lambda piece: replace(piece, instructions=told))


@fault("quantities", "fold-missing", measured=0)
def half_piece_without_a_fold(skirt: Pattern) -> Made:
    return edge_changed(skirt, FRONT_CENTER, lambda edge: replace(edge, kind="seam"))


@fault("quantities", "fold-several", measured=2)
def half_piece_with_two_folds(skirt: Pattern) -> Made:
    return edge_changed(skirt, FRONT_HEM, lambda edge: replace(edge, kind="fold"))


@fault("quantities", "fold-unexpected", measured=1)
def pair_with_a_fold(skirt: Pattern) -> Made:
    return piece_changed(skirt, "skirt.front", lambda piece: replace(piece, cut="pair"))


@fault("quantities", "pair-of-one-side")
def left_piece_as_a_pair(skirt: Pattern) -> Made:
    return piece_changed(skirt, "skirt.back", lambda piece: replace(piece, side="left"))


@fault("titles", "title-missing")
def piece_without_a_title(skirt: Pattern) -> Made:
    return piece_changed(skirt, "skirt.front", lambda piece: replace(piece, title="  "))


@fault("titles", "title-twice")
def pieces_of_one_title(skirt: Pattern) -> Made:
    return piece_changed(skirt, "skirt.front", lambda piece: replace(piece, title="skirt Back"))


@harmless("titles")
def left_and_right_of_one_title(skirt: Pattern) -> Made:
    front = skirt.pieces["skirt.front"]
    left = replace(front, title="Panel", side="left")
    right = replace(skirt.pieces["skirt.back"], title="Panel", side="right")
    return skirt.with_pieces(left, right)
