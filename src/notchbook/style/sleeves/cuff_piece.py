"""The cuff as a piece: straight and folded, or in the round with two layers; buttons and buttonholes."""

import math
from collections.abc import Callable, Iterator
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
from notchbook.style._outlined import Side, outlined
from notchbook.style.sleeves.figures import HOLE_OVER_BUTTON


@dataclass(frozen=True, slots=True)
class CuffShape:
    """The edge at the sleeve, finished depth, by how much the free edge is shorter, and how far the cuff
    reaches beyond the slit at its upper end (``over``) and at its lower one (``under``); mm."""

    length: float
    depth: float
    narrower: float
    over: float
    under: float

    @property
    def lap(self) -> float:
        """How far the two ends lap."""
        return self.over + self.under

    @property
    def whole(self) -> float:
        """The cuff from end to end."""
        return self.length + self.lap


@dataclass(frozen=True, slots=True)
class _Laid:
    """How the cuff is laid out: where a place lies by its distance from the upper end and below the edge at
    the sleeve, the line between two places at one height, and how far below that edge the other one is."""

    at: Callable[[float, float], Point]
    along: Callable[[float, float, float], Path]
    lowest: float


def cuff_piece(slug: str, shape: CuffShape, buttons: int, button: float) -> Piece:
    """The right cuff, face up, its edge at the sleeve above; it begins at the upper end and ends below."""
    name = piece_name(slug, "cuff")
    is_straight = shape.narrower == 0.0
    laid = _straight(shape) if is_straight else _round(shape)
    lines, marks = _fastening(name, shape, laid, buttons, button)
    if is_straight:
        fold = InternalLine(
            part_name(name, "fold_line"), laid.along(0.0, shape.whole, shape.depth), "fold_line"
        )
        lines = (fold, *lines)
    return Piece(
        name=name,
        title="Cuff",
        outline=outlined(name, tuple(_sides(shape, laid))),
        lines=lines,
        marks=marks,
        grain=Grain(0.0),
        cut="pair",
        instructions=(CutInstruction("self", 1 if is_straight else 2), CutInstruction("fusible")),
        rule=slug,
    )


def _straight(shape: CuffShape) -> _Laid:
    """Both layers in one, the inner one below its fold."""
    height = 2.0 * shape.depth

    def at(along: float, down: float) -> Point:
        return Point(along, height - down)

    def line(start: float, end: float, down: float) -> Path:
        return Path.line(at(start, down), at(end, down))

    return _Laid(at, line, height)


def _round(shape: CuffShape) -> _Laid:
    """A part of a ring whose outer arc is the edge at the sleeve."""
    radius = shape.length * shape.depth / shape.narrower
    middle, half = Point(0.0, -radius), math.degrees(shape.whole / radius) / 2.0

    def at(along: float, down: float) -> Point:
        turn = math.degrees(along / radius) - half
        return middle + Point(0.0, radius - down).rotated(-turn)

    def arc(start: float, end: float, down: float) -> Path:
        degrees = math.degrees((start - end) / radius)
        return Path(tuple(arc_segments(middle, at(start, down), degrees))).with_end(at(end, down))

    return _Laid(at, arc, shape.depth)


def _sides(shape: CuffShape, laid: _Laid) -> Iterator[Side]:
    """The sides, counter-clockwise from where the upper end meets the edge below."""
    whole, lowest = shape.whole, laid.lowest
    begin, end = shape.over, shape.over + shape.length
    kind: EdgeKind = "plain" if shape.lap > 0.0 else "seam"
    lower = "free_edge" if shape.narrower > 0.0 else "inner"
    yield Side(lower, "upper_end_inner", laid.along(0.0, whole, lowest), "plain")
    yield Side("lower_end", "lower_end_inner", Path.line(laid.at(whole, lowest), laid.at(whole, 0.0)), kind)
    if shape.under > 0.0:
        yield Side("underlap", "underlap_end", laid.along(whole, end, 0.0), "plain")
    yield Side("cuff_edge", "cuff_edge_end", laid.along(end, begin, 0.0))
    if shape.over > 0.0:
        yield Side("overlap", "cuff_edge_start", laid.along(begin, 0.0, 0.0), "plain")
    corner = "overlap_end" if shape.over > 0.0 else "cuff_edge_start"
    yield Side("upper_end", corner, Path.line(laid.at(0.0, 0.0), laid.at(0.0, lowest)), kind)


def _fastening(
    name: str, shape: CuffShape, laid: _Laid, buttons: int, button: float
) -> tuple[tuple[InternalLine, ...], tuple[Mark, ...]]:
    """Buttonholes along the upper end and buttons along the lower one, one above the other, both in the
    middle of the lap."""
    lines: list[InternalLine] = []
    marks: list[Mark] = []
    inset, hole = shape.lap / 2.0, button + HOLE_OVER_BUTTON.value
    for number in range(1, buttons + 1):
        down = shape.depth * number / (buttons + 1)
        begin = inset - HOLE_OVER_BUTTON.value
        start = laid.at(begin, down)
        path = Path.line(start, start + (laid.at(begin + hole, down) - start).unit() * hole)
        lines.append(InternalLine(part_name(name, f"buttonhole_{number}"), path, "buttonhole"))
        position = laid.at(shape.whole - inset, down)
        marks.append(Mark(part_name(name, f"button_{number}"), position, "button"))
    return tuple(lines), tuple(marks)
