"""The top and the under sleeve as pieces, cut from a sleeve in one piece along the seams beside its folds."""

from dataclasses import dataclass, replace

from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Piece, child_name, piece_name
from notchbook.style._outlined import Side, outlined
from notchbook.style.edges.tidied import tidied
from notchbook.style.sleeves.found import FoundSleeve
from notchbook.style.sleeves.two_piece.folds import Fold, Folds
from notchbook.style.sleeves.two_piece.levels import TURNED_OVER, with_levels
from notchbook.style.sleeves.two_piece.seam_lines import (
    SeamLine,
    Shift,
    from_cap,
    hem_between,
    seam_from,
    seam_line,
)


@dataclass(frozen=True)
class Panels:
    """The two pieces; the four seams as they were drawn, by which the notches stand; and the elbow before and
    now, mm."""

    top: Piece
    under: Piece
    forearm: tuple[SeamLine, SeamLine]
    hind_arm: tuple[SeamLine, SeamLine]
    elbow_grows: float


def panels_of(slug: str, sleeve: FoundSleeve, folds: Folds, front: Shift, back: Shift) -> Panels:
    """The two pieces; StepRefused ``two-piece-misses-cap``."""
    cap = sleeve.line
    forearm, front_at = from_cap(seam_line(folds.front, front, 1.0), front, cap)
    hind_arm, back_at = from_cap(seam_line(folds.back, back, 1.0), back, cap)
    # Laid under, the cap outside each seam is reflected about the fold; so is where it was cut.
    laid = folds.front.laid_under.then(TURNED_OVER), folds.back.laid_under.then(TURNED_OVER)
    under_front = _under_seam(folds.front, front, laid[0].apply(cap.point_at(front_at)))
    under_back = _under_seam(folds.back, back, laid[1].apply(cap.point_at(back_at)))
    top = _top(slug, sleeve, folds, (forearm.path, hind_arm.path), (front_at, back_at))
    under = _under(slug, sleeve, folds, (under_front.path, under_back.path), (front_at, back_at), laid)
    top, under, grows = with_levels(sleeve, folds, top, under, laid)
    return Panels(top, under, (forearm, under_front), (hind_arm, under_back), grows)


def _under_seam(fold: Fold, shift: Shift, start: Point) -> SeamLine:
    turned = seam_line(fold, shift, -1.0).transformed(TURNED_OVER)
    path = turned.between(turned.nearest(start).distance_along, turned.length)
    return seam_from(path.with_start(start), turned, shift)


def _face_up(way: Point) -> Point:
    """A direction of the under sleeve as it lies below the top one, on the piece face up."""
    return TURNED_OVER.apply(way)


def _top(
    slug: str, sleeve: FoundSleeve, folds: Folds, seams: tuple[Path, Path], at: tuple[float, float]
) -> Piece:
    name = piece_name(slug, "top_sleeve")
    front, back = sleeve.cap
    length = front.length
    forearm, hind_arm = seams
    hem = hem_between(hind_arm, forearm, (-folds.back.legs[-1].beside, folds.front.legs[-1].beside))
    fore = tidied(front.path.between(at[0], length).with_start(forearm.start))
    hind = tidied(back.path.between(0.0, at[1] - length))
    sides = (
        Side("hem", "hem_hind_arm", hem, "hem", keeps=child_name(sleeve.name("hem"), "top")),
        Side("forearm_seam", "hem_forearm", forearm.reversed()),
        Side("cap", "forearm_top", fore, keeps=child_name(front.name, "above")),
        Side("cap", "", hind, keeps=child_name(back.name, "above"), from_point=back.start),
        Side("hind_arm_seam", "hind_arm_top", hind_arm),
    )
    middle = sleeve.name("hem_middle")
    marks = tuple(
        replace(mark, position=folds.hem) if mark.name == middle else mark for mark in sleeve.piece.marks
    )
    return replace(
        sleeve.piece,
        name=name,
        title="Top sleeve",
        outline=outlined(name, sides),
        intakes=(),
        lines=(),
        marks=marks,
    )


def _under(
    slug: str,
    sleeve: FoundSleeve,
    folds: Folds,
    seams: tuple[Path, Path],
    at: tuple[float, float],
    laid: tuple[Transform, Transform],
) -> Piece:
    name = piece_name(slug, "under_sleeve")
    front, back = sleeve.cap
    forearm, hind_arm = seams
    lower = _face_up(folds.front.legs[-1].beside) * -1.0, _face_up(folds.back.legs[-1].beside)
    from_hind = back.path.between(at[1] - front.length, back.length).transformed(laid[1])
    to_forearm = tidied(front.path.between(0.0, at[0])).transformed(laid[0])
    hem = hem_between(forearm, hind_arm, lower)
    hind = tidied(from_hind.with_start(hind_arm.start))
    sides = (
        Side("hem", "hem_forearm", hem, "hem", keeps=child_name(sleeve.name("hem"), "under")),
        Side("hind_arm_seam", "hem_hind_arm", hind_arm.reversed()),
        Side("cap", "hind_arm_top", hind, keeps=child_name(back.name, "below")),
        Side("cap", "", to_forearm, keeps=child_name(front.name, "below"), from_point=front.start),
        Side("forearm_seam", "forearm_top", forearm),
    )
    return replace(
        sleeve.piece,
        name=name,
        title="Under sleeve",
        outline=outlined(name, sides),
        intakes=(),
        lines=(),
        marks=(),
    )
