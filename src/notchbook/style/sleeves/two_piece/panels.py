"""The top and the under sleeve as pieces, cut from a sleeve in one piece along the seams beside its folds."""

from dataclasses import dataclass, replace

from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Edge, Piece, child_name, part_name, piece_name
from notchbook.style.sleeves.found import FoundSleeve
from notchbook.style.sleeves.two_piece.folds import Folds
from notchbook.style.sleeves.two_piece.levels import TURNED_OVER, with_levels
from notchbook.style.sleeves.two_piece.seam_lines import (
    SeamLine,
    Shift,
    from_cap,
    hem_between,
    seam_from,
    seam_line,
)

_POINTS = ("forearm_top", "hind_arm_top", "hem_forearm", "hem_hind_arm")


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
    forearm, front_at = from_cap(seam_line(folds.front, front, 1.0), cap)
    hind_arm, back_at = from_cap(seam_line(folds.back, back, 1.0), cap)
    # Laid under, the cap outside each seam is reflected about the fold; so is where it was cut.
    laid = folds.front.laid_under.then(TURNED_OVER), folds.back.laid_under.then(TURNED_OVER)
    under_front = _under_seam(seam_line(folds.front, front, -1.0), laid[0].apply(cap.point_at(front_at)))
    under_back = _under_seam(seam_line(folds.back, back, -1.0), laid[1].apply(cap.point_at(back_at)))
    top = _top(slug, sleeve, folds, (forearm.path, hind_arm.path), (front_at, back_at))
    under = _under(slug, sleeve, folds, (under_front.path, under_back.path), (front_at, back_at), laid)
    top, under, grows = with_levels(sleeve, folds, top, under, laid)
    return Panels(top, under, (forearm, under_front), (hind_arm, under_back), grows)


def _under_seam(line: Path, start: Point) -> SeamLine:
    turned = line.transformed(TURNED_OVER)
    path = turned.between(turned.nearest(start).distance_along, turned.length)
    return seam_from(path.with_start(start), turned)


def _face_up(way: Point) -> Point:
    """A direction of the under sleeve as it lies below the top one, on the piece face up."""
    return TURNED_OVER.apply(way)


def _edge(name: str, word: str, path: Path, start: str, end: str) -> Edge:
    return Edge(part_name(name, word), path, part_name(name, start), part_name(name, end))


def _top(
    slug: str, sleeve: FoundSleeve, folds: Folds, seams: tuple[Path, Path], at: tuple[float, float]
) -> Piece:
    name = piece_name(slug, "top_sleeve")
    front, back = sleeve.cap
    length = front.length
    forearm, hind_arm = seams
    points = {word: part_name(name, word) for word in _POINTS}
    hem = Edge(
        child_name(sleeve.name("hem"), "top"),
        hem_between(hind_arm, forearm, (-folds.back.beside_lower, folds.front.beside_lower)),
        points["hem_hind_arm"],
        points["hem_forearm"],
        "hem",
    )
    outline = (
        hem,
        _edge(name, "forearm_seam", forearm.reversed(), "hem_forearm", "forearm_top"),
        Edge(
            child_name(front.name, "above"),
            front.path.between(at[0], length).with_start(forearm.start),
            points["forearm_top"],
            front.end,
        ),
        Edge(
            child_name(back.name, "above"),
            back.path.between(0.0, at[1] - length).with_end(hind_arm.start),
            back.start,
            points["hind_arm_top"],
        ),
        _edge(name, "hind_arm_seam", hind_arm, "hind_arm_top", "hem_hind_arm"),
    )
    middle = sleeve.name("hem_middle")
    marks = tuple(
        replace(mark, position=folds.hem) if mark.name == middle else mark for mark in sleeve.piece.marks
    )
    return replace(
        sleeve.piece, name=name, title="Top sleeve", outline=outline, intakes=(), lines=(), marks=marks
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
    points = {word: part_name(name, word) for word in _POINTS}
    from_hind = back.path.between(at[1] - front.length, back.length).transformed(laid[1])
    to_forearm = front.path.between(0.0, at[0]).transformed(laid[0])
    outline = (
        Edge(
            child_name(sleeve.name("hem"), "under"),
            hem_between(
                forearm,
                hind_arm,
                (_face_up(folds.front.beside_lower) * -1.0, _face_up(folds.back.beside_lower)),
            ),
            points["hem_forearm"],
            points["hem_hind_arm"],
            "hem",
        ),
        _edge(name, "hind_arm_seam", hind_arm.reversed(), "hem_hind_arm", "hind_arm_top"),
        Edge(
            child_name(back.name, "below"),
            from_hind.with_start(hind_arm.start).with_end(to_forearm.start),
            points["hind_arm_top"],
            front.start,
        ),
        Edge(
            child_name(front.name, "below"),
            to_forearm.with_end(forearm.start),
            front.start,
            points["forearm_top"],
        ),
        _edge(name, "forearm_seam", forearm, "forearm_top", "hem_forearm"),
    )
    return replace(
        sleeve.piece, name=name, title="Under sleeve", outline=outline, intakes=(), lines=(), marks=()
    )
