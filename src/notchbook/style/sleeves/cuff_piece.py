"""The cuff as a piece: straight and folded, or in the round with two layers; buttons and buttonholes."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from notchbook.geometry import Path, Point
from notchbook.geometry.offset_join import arc_segments
from notchbook.pattern import (
    CutInstruction,
    EdgeKind,
    Grain,
    InternalLine,
    Mark,
    Piece,
    part_name,
    piece_name,
)
from notchbook.style.sleeves.figures import HOLE_OVER_BUTTON
from notchbook.style.sleeves.pieces import Side, outlined


@dataclass(frozen=True, slots=True)
class CuffShape:
    """Edge at the sleeve, overlap, finished depth, and by how much the free edge is shorter; mm."""

    length: float
    overlap: float
    depth: float
    narrower: float


Placed = Callable[[float, float], Point]
"""Where a place of the cuff lies, from its distance along the edge at the sleeve and below it, mm."""


def cuff_piece(slug: str, shape: CuffShape, buttons: int, button: float) -> Piece:
    """The right cuff, face up, its edge at the sleeve above; it begins at the upper end and ends below."""
    name = piece_name(slug, "cuff")
    placed, sides = _round(shape) if shape.narrower > 0.0 else _straight(shape)
    lines, marks = _fastening(name, shape, placed, buttons, button)
    if shape.narrower == 0.0:
        whole = shape.length + shape.overlap
        fold = Path.line(Point(0.0, shape.depth), Point(whole, shape.depth))
        lines = (InternalLine(part_name(name, "fold_line"), fold, "fold_line"), *lines)
    layers = 1 if shape.narrower == 0.0 else 2
    return Piece(
        name=name,
        title="Cuff",
        outline=outlined(name, sides),
        lines=lines,
        marks=marks,
        grain=Grain(0.0),
        cut="pair",
        instructions=(CutInstruction("self", layers), CutInstruction("fusible")),
        rule=slug,
    )


def _straight(shape: CuffShape) -> tuple[Placed, tuple[Side, ...]]:
    whole, height = shape.length + shape.overlap, 2.0 * shape.depth
    below = [
        Side(Point(0.0, 0.0), "upper_end_inner", "inner"),
        Side(Point(whole, 0.0), "lower_end_inner", "lower_end", _end_kind(shape)),
    ]
    return (lambda along, down: Point(along, height - down)), (
        *below,
        *_upper(shape, lambda along: Point(along, height)),
    )


def _end_kind(shape: CuffShape) -> EdgeKind:
    return "plain" if shape.overlap > 0.0 else "seam"


def _upper(shape: CuffShape, at: Callable[[float], Point]) -> tuple[Side, ...]:
    whole = shape.length + shape.overlap
    sides = [
        Side(at(shape.length), "cuff_edge_end", "cuff_edge", "seam"),
        Side(at(0.0), "cuff_edge_start", "upper_end", _end_kind(shape)),
    ]
    if shape.overlap > 0.0:
        sides.insert(0, Side(at(whole), "underlap_end", "underlap"))
    return tuple(sides)


def _round(shape: CuffShape) -> tuple[Placed, tuple[Side, ...]]:
    """The cuff as a part of a ring whose outer arc is the edge at the sleeve."""
    radius = shape.length * shape.depth / shape.narrower
    whole = shape.length + shape.overlap
    middle, angle = Point(0.0, -radius), math.degrees(whole / radius)

    def placed(along: float, down: float) -> Point:
        turn = math.degrees(along / radius) - angle / 2.0
        return middle + Point(0.0, radius - down).rotated(-turn)

    def arc(start: Point, end: Point, degrees: float) -> Path:
        return Path(tuple(arc_segments(middle, start, degrees))).with_end(end)

    inner = arc(placed(0.0, shape.depth), placed(whole, shape.depth), -angle)
    sides = [
        Side(placed(0.0, shape.depth), "upper_end_inner", "free_edge", "plain", inner),
        Side(placed(whole, shape.depth), "lower_end_inner", "lower_end", _end_kind(shape)),
    ]
    for side, ends in zip(_upper(shape, lambda along: placed(along, 0.0)), _spans(shape), strict=True):
        path = None
        if ends is not None:
            start, end = placed(ends[0], 0.0), placed(ends[1], 0.0)
            path = arc(start, end, math.degrees((ends[0] - ends[1]) / radius))
        sides.append(Side(side.corner, side.point, side.edge, side.kind, path))
    return placed, tuple(sides)


def _spans(shape: CuffShape) -> list[tuple[float, float] | None]:
    """From where to where along the upper edge its sides run; None for the end of the cuff."""
    spans: list[tuple[float, float] | None] = [(shape.length, 0.0), None]
    return [(shape.length + shape.overlap, shape.length), *spans] if shape.overlap > 0.0 else spans


def _fastening(
    name: str, shape: CuffShape, placed: Placed, buttons: int, button: float
) -> tuple[tuple[InternalLine, ...], tuple[Mark, ...]]:
    """Buttonholes along the upper end and buttons on the underlap, one above the other."""
    lines: list[InternalLine] = []
    marks: list[Mark] = []
    inset, hole = shape.overlap / 2.0, button + HOLE_OVER_BUTTON.value
    for number in range(1, buttons + 1):
        down = shape.depth * number / (buttons + 1)
        begin = inset - HOLE_OVER_BUTTON.value
        start = placed(begin, down)
        path = Path.line(start, start + (placed(begin + hole, down) - start).unit() * hole)
        lines.append(InternalLine(part_name(name, f"buttonhole_{number}"), path, "buttonhole"))
        position = placed(shape.length + inset, down)
        marks.append(Mark(part_name(name, f"button_{number}"), position, "button"))
    return tuple(lines), tuple(marks)
