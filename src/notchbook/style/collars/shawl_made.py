"""A shawl collar made: the front with the collar cut on, its facing with the upper collar, sewn together."""

from dataclasses import replace

from notchbook.pattern import EdgeUse, InternalLine, Pattern, Piece, Seam, part_name
from notchbook.style.collars.lapel_cut import LapelCut, NewEdge, cut_on, lapel_name, own
from notchbook.style.collars.lapel_facing import facing_sides
from notchbook.style.collars.lapel_given import LapelFront
from notchbook.style.collars.lapel_lines import LapelSize
from notchbook.style.collars.lapel_made import (
    LapelMaking,
    facing_finished,
    facing_piece,
    front_edge_sewn,
)
from notchbook.style.collars.neck import Neck
from notchbook.style.collars.pieces import Side, center_seam
from notchbook.style.collars.sewing import NeckLayer, back_neck_sewn, edges_sewn
from notchbook.style.collars.shawl_lines import ShawlLines, shawl_lines


def with_shawl(neck: Neck, front: LapelFront, size: LapelSize, making: LapelMaking) -> LapelCut:
    """The shawl cut on the front, with its facing."""
    slug = making.slug
    lines, grown = (shawl_lines(front, size, turn) for turn in (0.0, making.turn))
    cut = _front_cut(neck.pattern, front, lines, slug)
    facing = _facing(front, grown, making)
    after = edges_sewn(cut.pattern.with_pieces(facing), {edge.name for edge in cut.edges})
    after = front_edge_sewn(after, slug, cut, facing, ("lapel",))
    under = NeckLayer("neck", EdgeUse(cut.edges[2].name, front.shoulder.start))
    upper = NeckLayer(
        "upper_neck",
        EdgeUse(part_name(facing.name, "neck_edge"), part_name(facing.name, "side_neck_point")),
    )
    after = back_neck_sewn(after, neck, slug, (under, upper))
    after = after.with_seams(
        _center(slug, "center_back", cut.edges[1].name, cut.edges[1].end),
        replace(center_seam(slug, facing.name, "nape"), name=part_name(slug, "facing_center_back")),
    )
    after = facing_finished(neck.pattern, after, front, facing)
    if making.interfaced:
        after = after.with_materials({"fusible": "fusible"})
    return replace(cut, pattern=after)


def _front_cut(pattern: Pattern, front: LapelFront, lines: ShawlLines, slug: str) -> LapelCut:
    neck = own(front, slug, "neck_edge")
    drawn = [
        NewEdge(lapel_name(front), lines.edge, own(front, slug, "break_point")),
        NewEdge(own(front, slug, "center_back"), lines.center, own(front, slug, "outer_center")),
        NewEdge(neck, lines.neck, own(front, slug, "nape")),
    ]
    roll = InternalLine(own(front, slug, "roll_line"), lines.roll, "roll_line")
    return cut_on(pattern, front, drawn, roll)


def _facing(front: LapelFront, grown: ShawlLines, making: LapelMaking) -> Piece:
    below = front.edge.path.between(0.0, front.break_at)
    upper = (
        Side("lapel", grown.edge, "seam", "break_point"),
        Side("center_back", grown.center, "seam", "outer_center"),
        Side("neck_edge", grown.neck, "seam", "nape"),
    )
    return facing_piece(front, making, facing_sides(front, below, upper, making.facing))


def _center(slug: str, word: str, edge: str, point: str) -> Seam:
    """The center back seam of the collar cut on the front."""
    right, left = EdgeUse(edge, point, "right"), EdgeUse(edge, point, "left")
    return Seam(part_name(slug, word), (right,), (left,), allowance_class="collar_edge")
