"""The panels of a hood as pieces, sewn to each other over the head and to the neck."""

from notchbook.geometry import Path, Point
from notchbook.pattern import Allowance, EdgeUse, Notch, Operation, Pattern, Place, Seam, part_name
from notchbook.style.collars.hood_lines import HoodLines
from notchbook.style.collars.neck import Neck
from notchbook.style.collars.pieces import Layer, Side, layer_piece
from notchbook.style.collars.sewing import neck_notches, neck_seam, with_neck_sewn

_HEMMED = "Turn the face edge of the hood in and stitch it."
_CORDED = (
    "Work an eyelet in the face hem of the hood over each end, turn the hem in and stitch it to a casing, "
    "and draw the cord in."
)
"""The hem is made before the neck seam catches its ends (common practice, no source)."""


def face_hemmed(slug: str, pieces: tuple[str, ...], *, has_cord: bool) -> Operation:
    """The line of the hem round the face."""
    faces = tuple(part_name(piece, "face") for piece in pieces)
    text = _CORDED if has_cord else _HEMMED
    return Operation(part_name(slug, "face_hemmed"), "prepare", text, faces, (part_name(slug, "head_seam"),))


def with_two_panels(neck: Neck, slug: str, lines: HoodLines) -> Pattern:
    """The pattern with the hood as a left and a right panel, with a seam over the head."""
    piece = layer_piece(slug, Layer("hood", "Hood", on_fold=False), _side(lines, "nape"))
    after = with_neck_sewn(neck.pattern, neck).with_pieces(piece)
    edge, top = part_name(piece.name, "head_seam"), part_name(piece.name, "face_top")
    over = Seam(part_name(slug, "head_seam"), (EdgeUse(edge, top, "right"),), (EdgeUse(edge, top, "left"),))
    own = (EdgeUse(part_name(piece.name, "neck_edge"), part_name(piece.name, "neck_end")),)
    after = after.with_seams(over).with_notches(*_over_head(over))
    return _on_neck(after, neck, slug, own, (piece.name,))


def with_three_panels(neck: Neck, slug: str, lines: HoodLines, middle: float) -> Pattern:
    """The pattern with the hood as two sides and a strip over the head, cut on the fold."""
    side = layer_piece(slug, Layer("hood", "Hood side", on_fold=False), _side(lines, "head_seam_neck"))
    strip = layer_piece(slug, Layer("hood_middle", "Hood middle"), _strip(lines.crown.length, middle / 2.0))
    after = with_neck_sewn(neck.pattern, neck).with_pieces(side, strip)
    first = (EdgeUse(part_name(side.name, "head_seam"), part_name(side.name, "face_top")),)
    second = (EdgeUse(part_name(strip.name, "head_seam"), part_name(strip.name, "face_top")),)
    over = Seam(part_name(slug, "head_seam"), first, second)
    own = (
        EdgeUse(part_name(side.name, "neck_edge"), part_name(side.name, "neck_end")),
        EdgeUse(part_name(strip.name, "neck_edge"), part_name(strip.name, "head_seam_neck")),
    )
    after = after.with_seams(over).with_notches(*_over_head(over))
    return _on_neck(after, neck, slug, own, (side.name, strip.name))


_CROWN = 0.4
"""Share of the seam over the head, from the face, at which it is notched. Own judgment."""


def _over_head(over: Seam) -> list[Notch]:
    """A notch on each edge of the seam over the head, off its middle so that no panel is turned about."""
    marks = {}
    for use in (*over.first, *over.second):
        name = part_name(use.edge, "balance_notch")
        place = Place(use.edge, use.starts_at, _CROWN, "fraction")
        marks[name] = Notch(name, place, seam=over.name, purpose="balance")
    return list(marks.values())


def _side(lines: HoodLines, corner: str) -> tuple[Side, ...]:
    return (
        Side("neck_edge", lines.neck, "seam", corner),
        Side("face", lines.face, "hem", "neck_end"),
        Side("head_seam", lines.crown, "seam", "face_top"),
    )


def _strip(length: float, half: float) -> tuple[Side, ...]:
    corners = [Point(0.0, 0.0), Point(half, 0.0), Point(half, length), Point(0.0, length)]
    paths = [Path.line(corners[index], corners[(index + 1) % 4]) for index in range(4)]
    return (
        Side("neck_edge", paths[0], "seam", "nape"),
        Side("head_seam", paths[1], "seam", "head_seam_neck"),
        Side("face", paths[2], "hem", "face_top"),
        Side("center_back", paths[3], "fold", "face_center"),
    )


def _on_neck(
    pattern: Pattern, neck: Neck, slug: str, own: tuple[EdgeUse, ...], pieces: tuple[str, ...]
) -> Pattern:
    """The hood sewn to the neck and notched; its face edge is a hem."""
    seam = neck_seam(slug, "neck", own, neck)
    after = pattern.with_seams(seam).with_notches(*neck_notches(pattern, own, neck, seam.name))
    hems = dict.fromkeys((part_name(piece, "face") for piece in pieces), Allowance("hem_top"))
    return after.with_allowances(hems)
