"""Faults planted in allowances and in cut pieces."""

from dataclasses import replace

from notchbook.finish import CutPiece
from notchbook.geometry import Point
from notchbook.pattern import Allowance, Pattern, frozen_map
from support.bent import point_moved
from support.faults import Made, fault, front_only, harmless, with_cut_pieces


@fault("allowance-given", "allowance-guessed")
def hem_without_an_allowance(skirt: Pattern) -> Made:
    kept = {name: said for name, said in skirt.allowances.items() if name != "skirt.front/hem"}
    return replace(skirt, allowances=frozen_map(kept))


@harmless("allowance-given")
def side_seam_that_takes_the_seams_allowance(skirt: Pattern) -> Made:
    kept = {name: said for name, said in skirt.allowances.items() if "side_seam" not in name}
    return replace(skirt, allowances=frozen_map(kept))


@fault("cut-ready", "cut-ready-refused")
def allowance_class_that_no_house_knows(skirt: Pattern) -> Made:
    return skirt.with_allowances({"skirt.front/hem": Allowance("moonlight")})


@fault("seam-allowances", "seam-allowances-differ", measured=12.0)
def front_side_seam_wider_than_the_back(skirt: Pattern) -> Made:
    return skirt.with_allowances({"skirt.front/side_seam": Allowance("side", 15.0)})


@harmless("seam-allowances")
def both_side_seams_wide(skirt: Pattern) -> Made:
    wide = Allowance("side", 25.0)
    return skirt.with_allowances({"skirt.front/side_seam": wide, "skirt.back/side_seam": wide})


@fault("notch-depth", "notch-too-deep", measured=2.5)
def notches_half_a_millimeter_too_deep(skirt: Pattern) -> Made:
    """The side seam allows 12 mm: a slit of 9.5 leaves 2.5."""
    return with_cut_pieces(skirt, front_only(lambda piece: _hip_notch_deep(piece, 9.5)))


@harmless("notch-depth")
def notches_as_deep_as_may_be(skirt: Pattern) -> Made:
    return with_cut_pieces(skirt, front_only(lambda piece: _hip_notch_deep(piece, 9.0)))


def _hip_notch_deep(piece: CutPiece, depth: float) -> CutPiece:
    notches = tuple(
        replace(notch, depth=depth) if notch.purpose == "hip line" else notch for notch in piece.notches
    )
    return replace(piece, notches=notches)


def _flared(skirt: Pattern, corner: str | None) -> Pattern:
    """The skirt with the front flared by 40 mm at the hem, the hem square to the side seam there."""
    flared = point_moved(skirt, "skirt.front/hem_side", -40.0, 0.0)
    return flared if corner is None else flared.with_corners({"skirt.front/hem_side": "mitre"})


@fault("hem-flat", "hem-sticks-out", within=0.3)
def flared_hem_with_its_sides_cut_straight_on(skirt: Pattern) -> Made:
    return _flared(skirt, "mitre")


@harmless("hem-flat")
def flared_hem_folded_back(skirt: Pattern) -> Made:
    return _flared(skirt, None)


@fault("grain-line", "grain-short", measured=100.0)
def grain_line_of_a_hands_breadth(skirt: Pattern) -> Made:
    return with_cut_pieces(skirt, front_only(lambda piece: _grain_to(piece, Point(0.0, 100.0))))


@fault("grain-line", "grain-astray")
def grain_line_that_leans(skirt: Pattern) -> Made:
    return with_cut_pieces(skirt, front_only(lambda piece: _grain_to(piece, Point(15.0, 400.0))))


def _grain_to(piece: CutPiece, along: Point) -> CutPiece:
    grain = piece.grain
    return replace(piece, grain=replace(grain, end=grain.start + along))


@fault("label-fits", "label-outside")
def label_beyond_the_side_seam(skirt: Pattern) -> Made:
    def moved(piece: CutPiece) -> CutPiece:
        return replace(piece, label=replace(piece.label, center=Point(-240.0, -100.0), degrees=0.0))

    return with_cut_pieces(skirt, front_only(moved))


@fault("label-fits", "label-over-lines")
def label_that_found_no_clear_room(skirt: Pattern) -> Made:
    return with_cut_pieces(
        skirt, front_only(lambda piece: replace(piece, label=replace(piece.label, is_clear=False)))
    )


@fault("piece-numbers", "number-twice", measured=2)
def pieces_of_one_number(skirt: Pattern) -> Made:
    return with_cut_pieces(skirt, lambda piece: replace(piece, number=1))


@fault("piece-numbers", "number-wrong", measured=3)
def count_that_does_not_fit(skirt: Pattern) -> Made:
    return with_cut_pieces(skirt, lambda piece: replace(piece, of=3))


@fault("piece-numbers", "piece-not-cut")
def piece_missing_from_the_papers(skirt: Pattern) -> Made:
    return with_cut_pieces(skirt, front_only(lambda piece: replace(piece, name="skirt.yoke")))


@fault("piece-numbers", "piece-unknown")
def piece_that_is_not_in_the_pattern(skirt: Pattern) -> Made:
    return with_cut_pieces(skirt, front_only(lambda piece: replace(piece, name="skirt.yoke")))
