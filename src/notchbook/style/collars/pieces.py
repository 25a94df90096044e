"""From the lines of half a collar to its pieces: upper layer and under layer, on the fold or with a seam."""

from dataclasses import dataclass, replace
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import (
    CutInstruction,
    Edge,
    EdgeKind,
    EdgeUse,
    Grain,
    InternalLine,
    Piece,
    Seam,
    part_name,
    piece_name,
)
from notchbook.style.collars.outline import CollarLines

_ACROSS = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))
_TRUE_BIAS = 45.0

Grained = Literal["straight", "bias"]


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a piece: the word of the edge, its line, its kind, the corner where it begins."""

    word: str
    path: Path
    kind: EdgeKind
    corner: str


@dataclass(frozen=True, slots=True)
class Layer:
    """How a layer is called and cut: its word and title, its materials, whether it lies on its face side as
    drawn or is reflected, and its grain.

    ``on_fold``: half of a whole piece; else left and right are cut apart.
    """

    word: str
    title: str
    materials: tuple[str, ...] = ("self",)
    reflected: bool = False
    grain: Grained = "straight"
    on_fold: bool = True


def collar_sides(lines: CollarLines, *, on_fold: bool, word: str = "neck_edge") -> tuple[Side, ...]:
    """The sides of half a collar, counter-clockwise from the center back; ``word`` is what its inner edge is
    called."""
    sides = [Side(word, lines.neck, "seam", "nape")]
    if lines.end is not None:
        sides.append(Side("end", lines.end, "seam", "neck_end"))
        sides.append(Side("outer", lines.outer, "seam", "collar_point"))
    else:
        sides.append(Side("outer", lines.outer, "seam", "neck_end"))
    sides.append(Side("center_back", lines.center, "fold" if on_fold else "seam", "outer_center"))
    return tuple(sides)


def layer_piece(
    slug: str, layer: Layer, sides: tuple[Side, ...], lines: tuple[InternalLine, ...] = ()
) -> Piece:
    """The sides as a piece of this layer; ``lines`` are drawn on it, under the names that they have.

    StepRefused ``collar-outline-crosses`` where no scissors could follow the outline.
    """
    name = piece_name(slug, layer.word)
    paths = [side.path for side in sides]
    for index in range(1, len(paths)):
        paths[index] = paths[index].with_start(paths[index - 1].end)
    paths[-1] = paths[-1].with_end(paths[0].start)
    outline = tuple(
        Edge(
            part_name(name, side.word),
            path,
            part_name(name, side.corner),
            part_name(name, sides[(index + 1) % len(sides)].corner),
            side.kind,
        )
        for index, (side, path) in enumerate(zip(sides, paths, strict=True))
    )
    piece = Piece(
        name=name,
        title=layer.title,
        outline=outline,
        lines=lines,
        cut="fold" if layer.on_fold else "pair",
        instructions=tuple(CutInstruction(material) for material in layer.materials),
        rule=slug,
    )
    if piece.sew_line.self_crossings():
        raise StepRefused("collar-outline-crosses", piece=layer.title)
    placed = piece.transformed(_ACROSS) if layer.reflected else piece
    grain = Grain(90.0 if layer.grain == "straight" else _TRUE_BIAS)
    return replace(placed, grain=grain)


def center_seam(slug: str, piece: str, corner: str) -> Seam:
    """The center back seam of a layer that is cut left and right."""
    edge, point = part_name(piece, "center_back"), part_name(piece, corner)
    return Seam(
        part_name(slug, "center_back"),
        (EdgeUse(edge, point, "right"),),
        (EdgeUse(edge, point, "left"),),
        allowance_class="collar_edge",
    )
