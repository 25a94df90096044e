"""A stand of two layers: the outer one interfaced, the inner one its reflection, both sewn to the neck."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.pattern import (
    EdgeUse,
    Notch,
    Pattern,
    Place,
    Seam,
    part_name,
    piece_name,
)
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.style.closures.buttons_laid import ButtonSize
from notchbook.style.collars.neck import Neck
from notchbook.style.collars.pieces import Layer, layer_piece
from notchbook.style.collars.sewing import neck_notches, neck_seam, with_neck_sewn
from notchbook.style.collars.stand import StandLines, stand_sides, turned_run, upper_corner
from notchbook.style.collars.stand_button import with_button


@dataclass(frozen=True, slots=True)
class StandNames:
    """How the two layers are called, which center lies on the fold, and whether the upper edges are sewn to
    each other, with nothing between them."""

    outer: str
    outer_title: str
    inner: str
    inner_title: str
    center: str = "center_back"
    is_closed: bool = True


@dataclass(frozen=True, slots=True)
class StandMaking:
    """How much of the neck lies before the center front, mm; the button; whether the outer layer is cut in
    fusible too."""

    extension: float
    button: ButtonSize
    interfaced: bool


def with_stand(neck: Neck, slug: str, lines: StandLines, names: StandNames, making: StandMaking) -> Pattern:
    """The pattern with both layers of the stand cut, and sewn to the neck and to each other at their ends."""
    sides = stand_sides(lines, names.center)
    fusible = ("self", "fusible") if making.interfaced else ("self",)
    outer = layer_piece(slug, Layer(names.outer, names.outer_title, fusible), sides)
    inner = layer_piece(slug, Layer(names.inner, names.inner_title, reflected=True), sides)
    outer = with_button(outer, lines, making.button)
    after = with_neck_sewn(neck.pattern, neck).with_pieces(outer, inner)
    begin = "neck_end" if names.center == "center_back" else "neck_pit"
    for piece, word, seam in ((outer, "neck", part_name(slug, "neck")), (inner, "inner_stand_neck", None)):
        own = (EdgeUse(part_name(piece.name, "neck_edge"), part_name(piece.name, begin)),)
        after = after.with_seams(neck_seam(slug, word, own, neck))
        after = after.with_notches(*neck_notches(after, own, neck, seam))
        if making.extension > 0.0 and names.center == "center_back":
            after = after.with_notches(*_center_notches(own, neck, making.extension, seam))
    if names.is_closed:
        run = [*turned_run(lines), ("upper", upper_corner(lines))]
        after = after.with_seams(_turned(part_name(slug, "stand_end"), (outer.name, inner.name), run))
    return after.with_materials({"fusible": "fusible"}) if making.interfaced else after


def with_ends_sewn(pattern: Pattern, slug: str, lines: StandLines, names: StandNames) -> Pattern:
    """The ends of both layers sewn to each other and turned, after something was sewn between their upper
    edges."""
    pieces = piece_name(slug, names.outer), piece_name(slug, names.inner)
    return pattern.with_seams(_turned(part_name(slug, "stand_end"), pieces, turned_run(lines)))


def _turned(name: str, pieces: tuple[str, str], run: Sequence[tuple[str, str]]) -> Seam:
    """Edges of two layers of one shape, sewn to each other and turned."""
    first, second = (
        tuple(EdgeUse(part_name(piece, word), part_name(piece, corner)) for word, corner in run)
        for piece in pieces
    )
    return Seam(name, first, second, 0.0, "collar_edge", TURNED_SEAM)


def _center_notches(own: tuple[EdgeUse, ...], neck: Neck, extension: float, seam: str | None) -> list[Notch]:
    """Where the center front comes to lie on a stand that is sewn to a button stand too."""
    place = Place(own[0].edge, own[0].starts_at, extension)
    marks = [Notch(part_name(own[0].edge, "center_notch"), place, seam=seam, purpose="center front")]
    if seam is not None:
        mate = neck.place(extension)
        marks.append(Notch(part_name(seam, "center_notch"), mate, seam=seam, purpose="center front"))
    return marks
