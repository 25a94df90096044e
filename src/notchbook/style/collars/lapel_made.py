"""A notched lapel made: the front with its lapel, undercollar, upper collar and facing, sewn together."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from notchbook.pattern import (
    Allowance,
    EdgeUse,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    piece_name,
    run_length,
)
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.style.collars.lapel_cut import LapelCut, NewEdge, cut_on, lapel_name, own
from notchbook.style.collars.lapel_facing import FacingSize, facing_sides
from notchbook.style.collars.lapel_given import LapelFront
from notchbook.style.collars.lapel_lines import (
    LapelCollar,
    LapelSize,
    NotchedLines,
    behind_shoulder,
    lapel_collar,
    notched_lines,
    roll_of,
)
from notchbook.style.collars.neck import Neck
from notchbook.style.collars.pieces import Layer, Side, center_seam, layer_piece
from notchbook.style.collars.sewing import back_neck_sewn, edges_sewn, neck_layers, outer_seam
from notchbook.style.traced.allowance_of import allowance_of


@dataclass(frozen=True, slots=True)
class LapelMaking:
    """The step's ``slug``, the turn of the cloth in mm, how wide the facing is, what is interfaced, and
    whether the undercollar lies on the bias."""

    slug: str
    turn: float
    facing: FacingSize
    interfaced: bool
    is_bias: bool = False

    @property
    def materials(self) -> tuple[str, ...]:
        """What facing and collars are cut in."""
        return ("self", "fusible") if self.interfaced else ("self",)


def with_notched_lapel(neck: Neck, front: LapelFront, size: LapelSize, making: LapelMaking) -> LapelCut:
    """The lapel cut on the front, with its collar and facing."""
    slug = making.slug
    roll = roll_of(front, size.stand)
    lines, grown = (notched_lines(front, roll, size, turn) for turn in (0.0, making.turn))
    cut = _front_cut(neck.pattern, front, lines, slug)
    behind = behind_shoulder(front, roll, size)
    under, upper = _collars(
        lapel_collar(lines, roll, behind, size), lapel_collar(lines, roll, behind, size, making.turn), making
    )
    facing = _facing(front, lines, grown, making)
    after = cut.pattern.with_pieces(under, upper, facing)
    after = edges_sewn(after, {edge.name for edge in cut.edges})
    after = front_edge_sewn(after, slug, cut, facing, ("lapel", "lapel_top"))
    after = _gorges_sewn(after, slug, front, facing)
    run = [("end", "lapel_corner"), ("outer", "collar_point")]
    after = after.with_seams(outer_seam(after, slug, (under.name, upper.name), run))
    after = back_neck_sewn(after, neck, slug, neck_layers((under.name, upper.name), "side_neck_point"))
    if making.is_bias:
        after = after.with_seams(center_seam(slug, under.name, "nape"))
    after = facing_finished(neck.pattern, after, front, facing)
    if making.interfaced:
        after = after.with_materials({"fusible": "fusible"})
    return replace(cut, pattern=after)


def _front_cut(pattern: Pattern, front: LapelFront, lines: NotchedLines, slug: str) -> LapelCut:
    drawn = [
        NewEdge(lapel_name(front), lines.edge, own(front, slug, "break_point")),
        NewEdge(own(front, slug, "lapel_top"), lines.top, own(front, slug, "lapel_tip")),
        NewEdge(own(front, slug, "gorge"), lines.gorge, own(front, slug, "lapel_corner")),
        NewEdge(own(front, slug, "inner_neck"), lines.inner, own(front, slug, "gorge_corner")),
    ]
    roll = InternalLine(own(front, slug, "roll_line"), lines.roll, "roll_line")
    return cut_on(pattern, front, drawn, roll)


def _collars(under: LapelCollar, upper: LapelCollar, making: LapelMaking) -> tuple[Piece, Piece]:
    """Undercollar and upper collar, the latter reflected: they are sewn face to face."""
    slug = making.slug
    below = layer_piece(
        slug,
        Layer(
            "undercollar",
            "Undercollar",
            making.materials,
            grain="bias" if making.is_bias else "straight",
            on_fold=not making.is_bias,
        ),
        _collar_sides(under, on_fold=not making.is_bias),
        (InternalLine(part_name(f"{slug}.undercollar", "roll_line"), under.roll, "roll_line"),),
    )
    above = layer_piece(
        slug,
        Layer("collar", "Upper collar", making.materials, reflected=True),
        _collar_sides(upper, on_fold=True),
        (InternalLine(part_name(f"{slug}.collar", "roll_line"), upper.roll, "roll_line"),),
    )
    return below, above


def _collar_sides(lines: LapelCollar, *, on_fold: bool) -> tuple[Side, ...]:
    return (
        Side("neck_edge", lines.neck, "seam", "nape"),
        Side("inner_neck", lines.inner, "seam", "side_neck_point"),
        Side("gorge", lines.gorge, "seam", "gorge_corner"),
        Side("end", lines.end, "seam", "lapel_corner"),
        Side("outer", lines.outer, "seam", "collar_point"),
        Side("center_back", lines.center, "fold" if on_fold else "seam", "outer_center"),
    )


def _facing(front: LapelFront, lines: NotchedLines, grown: NotchedLines, making: LapelMaking) -> Piece:
    below = front.edge.path.between(0.0, front.break_at)
    upper = (
        Side("lapel", grown.edge, "seam", "break_point"),
        Side("lapel_top", grown.top, "seam", "lapel_tip"),
        Side("gorge", lines.gorge, "seam", "lapel_corner"),
        Side("inner_neck", lines.inner, "seam", "gorge_corner"),
    )
    sides = facing_sides(front, below, upper, making.facing)
    return facing_piece(front, making, sides)


def facing_piece(front: LapelFront, making: LapelMaking, sides: tuple[Side, ...]) -> Piece:
    """The facing as a piece with the grain of the front."""
    layer = Layer("facing", f"{front.piece.title} facing", making.materials, on_fold=False)
    piece = layer_piece(making.slug, layer, sides)
    return replace(piece, grain=front.piece.grain)


def front_edge_sewn(
    pattern: Pattern, slug: str, cut: LapelCut, facing: Piece, words: tuple[str, ...]
) -> Pattern:
    """Front edge and lapel sewn to the facing, the break point notched on both."""
    piece = pattern.piece_of(cut.edges[0].name)
    below = piece.edge_before(cut.edges[0].name)
    own_run = [below, *cut.edges[: len(words)]]
    first = tuple(EdgeUse(edge.name, edge.start) for edge in own_run)
    mates = [facing.edge(part_name(facing.name, word)) for word in ("center", *words)]
    second = tuple(EdgeUse(edge.name, edge.start) for edge in mates)
    ease = run_length(pattern, second) - run_length(pattern, first)
    name = part_name(slug, "front_edge")
    seam = Seam(name, first, second, ease, "collar_edge", TURNED_SEAM)
    breaks = [
        Notch(
            part_name(edge.name, "break_notch"), Place(edge.name, edge.start, 0.0), seam=name, purpose="break"
        )
        for edge in (cut.edges[0], mates[1])
    ]
    sewn = edges_sewn(pattern, {below.name})
    return sewn.with_seams(seam).with_notches(*breaks)


def _gorges_sewn(pattern: Pattern, slug: str, front: LapelFront, facing: Piece) -> Pattern:
    """The undercollar sewn to the front along gorge and neck, the upper collar to the facing."""
    on_front = (
        EdgeUse(own(front, slug, "gorge"), own(front, slug, "lapel_corner")),
        EdgeUse(own(front, slug, "inner_neck"), own(front, slug, "gorge_corner")),
    )
    on_facing = tuple(_from_lapel(facing.name))
    seams = []
    for word, collar, mate in (
        ("gorge", "undercollar", on_front),
        ("facing_gorge", "collar", on_facing),
    ):
        run = tuple(_from_lapel(piece_name(slug, collar)))
        seams.append(Seam(part_name(slug, word), run, mate, 0.0, "collar_edge", TURNED_SEAM))
    marks = [*_collar_ends(seams[0], seams[0].name), *_collar_ends(seams[1], None)]
    return pattern.with_seams(*seams).with_notches(*marks)


def _collar_ends(seam: Seam, serves: str | None) -> Iterator[Notch]:
    """Where the collar begins on the upper edge of the lapel, which runs on straight there; and its mate. The
    seam of the upper layers is a copy of that below: its marks are lone, as those of its neck."""
    for use in (seam.first[0], seam.second[0]):
        place = Place(use.edge, use.starts_at, 0.0)
        yield Notch(part_name(use.edge, "gorge_notch"), place, seam=serves, purpose="gorge")


def _from_lapel(piece: str) -> list[EdgeUse]:
    """Gorge and neck of a piece, walked from the lapel to the shoulder."""
    return [
        EdgeUse(part_name(piece, "gorge"), part_name(piece, "lapel_corner")),
        EdgeUse(part_name(piece, "inner_neck"), part_name(piece, "gorge_corner")),
    ]


def facing_finished(before: Pattern, after: Pattern, front: LapelFront, facing: Piece) -> Pattern:
    """The allowances of the facing's other edges: shoulder, free edge, and hem as that of the front."""
    hem = front.piece.edge_before(front.edge.name)
    said = allowance_of(before, hem.name) or Allowance("hem" if hem.kind == "hem" else "plain")
    return after.with_allowances(
        {
            part_name(facing.name, "shoulder"): Allowance("shoulder"),
            part_name(facing.name, "edge"): Allowance("neatened_edge"),
            part_name(facing.name, "hem"): said,
        }
    )
