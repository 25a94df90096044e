"""The piece with the corner cut off for a slanted pocket, and what goes with the corner."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.geometry import Path
from notchbook.pattern import Edge, InternalLine, Mark, Piece, child_name, part_name
from notchbook.pattern.splitting import cut_path
from notchbook.style.pockets.corner_walks import CornerWalks
from notchbook.style.pockets.slant_shape import SlantAsked, SlantShape

INNER, OUTER = "inner", "outer"
"""The parts of the waist and of what else is cut: on the piece, and on the cut-off corner."""

ABOVE, BELOW = "above", "below"
"""The parts of the side: on the cut-off corner, and on the piece."""


@dataclass(frozen=True, slots=True)
class SlantCut:
    """The piece without its corner, the two edges of the corner as they go on under the names of their parts,
    what was drawn in it, and what became of the divided names."""

    piece: Piece
    outer: Edge
    above: Edge
    lines: tuple[InternalLine, ...]
    marks: tuple[Mark, ...]
    splits: Mapping[str, tuple[str, ...]]


def slant_cut(walks: CornerWalks, shape: SlantShape, asked: SlantAsked, owner: str, under: str) -> SlantCut:
    """Cut the corner off; new names on the piece are given under ``owner``, on the corner under ``under``."""
    waist, side = walks.waist_edge, walks.side_edge
    names = [child_name(waist.name, INNER), child_name(waist.name, OUTER)]
    side_names = [child_name(side.name, ABOVE), child_name(side.name, BELOW)]
    top, end = part_name(owner, "opening_top"), part_name(owner, "opening_end")
    far = waist.start if walks.runs_to_side else waist.end
    foot = side.end if walks.runs_to_side else side.start
    inner_path = _inner(walks, shape)
    below_path = walks.side.split_at(asked.down_side)[1]
    run = [
        Edge(names[0], inner_path, far, top, waist.kind),
        Edge(part_name(owner, "opening"), shape.opening.with_end(below_path.start), top, end),
        Edge(side_names[1], below_path, end, foot, side.kind),
    ]
    corner = _corner(walks, asked, (names[1], side_names[0]), under)
    order = slice(None) if walks.runs_to_side else slice(None, None, -1)
    splits = {waist.name: tuple(names[order]), side.name: tuple(side_names[order])}
    inside = _divided(walks.piece, shape.opening, _corner_region(walks, shape, asked))
    piece = replace(
        walks.piece, outline=_outline(walks, run), lines=inside.kept_lines, marks=inside.kept_marks
    )
    return SlantCut(piece, *corner, inside.lines, inside.marks, {**splits, **inside.splits})


def _inner(walks: CornerWalks, shape: SlantShape) -> Path:
    """What stays of the waist part, from its far end to the raised end of the opening."""
    near = walks.waist_edge.path.reversed() if walks.runs_to_side else walks.waist_edge.path
    rest = near.split_at(shape.ramp_end)[1]
    return shape.ramp.joined(rest.with_start(shape.ramp.end)).reversed()


def _corner(walks: CornerWalks, asked: SlantAsked, names: tuple[str, str], under: str) -> tuple[Edge, Edge]:
    """The cut-off parts of waist and side, in the direction of the outline."""
    near = walks.waist_edge.path.reversed() if walks.runs_to_side else walks.waist_edge.path
    top, end = part_name(under, "opening_top"), part_name(under, "opening_end")
    outer = Edge(names[0], near.split_at(asked.along_waist)[0], walks.corner, top, walks.waist_edge.kind)
    above = Edge(names[1], walks.side.split_at(asked.down_side)[0], walks.corner, end, walks.side_edge.kind)
    return (outer.reversed(), above) if walks.runs_to_side else (outer, above.reversed())


def _outline(walks: CornerWalks, run: list[Edge]) -> tuple[Edge, ...]:
    """The outline with the new edges in place of the two that met in the corner."""
    edges = run if walks.runs_to_side else [edge.reversed() for edge in reversed(run)]
    first, second = walks.waist_edge.name, walks.side_edge.name
    if not walks.runs_to_side:
        first, second = second, first
    outline: list[Edge] = []
    for edge in walks.piece.outline:
        if edge.name == first:
            outline += edges
        elif edge.name != second:
            outline.append(edge)
    return tuple(outline)


@dataclass(frozen=True, slots=True)
class _Inside:
    """Lines and marks that stay, those of the corner, and the lines that were divided."""

    kept_lines: tuple[InternalLine, ...]
    lines: tuple[InternalLine, ...]
    kept_marks: tuple[Mark, ...]
    marks: tuple[Mark, ...]
    splits: Mapping[str, tuple[str, ...]]


def _corner_region(walks: CornerWalks, shape: SlantShape, asked: SlantAsked) -> Path:
    """The cloth beyond the edge of the opening as a closed line."""
    near = walks.waist.split_at(asked.along_waist)[0]
    side = walks.side.split_at(asked.down_side)[0]
    back = shape.opening.reversed()
    raised = Path.line(back.end, near.end)
    return near.reversed().joined(side).joined(back.with_start(side.end)).joined(raised)


def _divided(piece: Piece, cut: Path, corner: Path) -> _Inside:
    kept: list[InternalLine] = []
    gone: list[InternalLine] = []
    splits: dict[str, tuple[str, ...]] = {}
    for line in piece.lines:
        parts = cut_path(line.path, cut)
        owners = [corner.contains(part.point_at(part.length / 2.0)) for part in parts]
        if len(set(owners)) == 1:
            (gone if owners[0] else kept).append(line)
            continue
        names = [child_name(line.name, OUTER if inside else INNER) for inside in owners]
        for name, path, inside in zip(names, parts, owners, strict=True):
            (gone if inside else kept).append(InternalLine(name, path, line.kind))
        splits[line.name] = tuple(names)
    # a place from which is measured is drawn nowhere: it stays with the others of its piece
    marks = [(mark, mark.kind != "datum" and corner.contains(mark.position)) for mark in piece.marks]
    return _Inside(
        tuple(kept),
        tuple(gone),
        tuple(mark for mark, inside in marks if not inside),
        tuple(mark for mark, inside in marks if inside),
        splits,
    )
