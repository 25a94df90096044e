"""Pieces of the stretch blocks from their runs of edges, under their names."""

from dataclasses import dataclass

from notchbook.geometry import Cubic, Path, Point, Segment, Transform
from notchbook.geometry.roots import unit_roots
from notchbook.pattern import (
    CutAs,
    CutInstruction,
    Edge,
    EdgeKind,
    InternalLine,
    Mark,
    NotchKind,
    Piece,
    part_name,
)
from notchbook.units import TOLERANCES

ACROSS = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))
"""A front is reflected, so that the wearer's right lies toward -x."""

KINDS: dict[str, NotchKind] = {"front": "single", "back": "double"}
"""A double notch is the sign of the back."""


@dataclass(frozen=True, slots=True)
class Run:
    """One edge by its words: where it starts and what it is; it ends where the next one starts."""

    word: str
    path: Path
    start: str
    kind: EdgeKind = "seam"


@dataclass(frozen=True)
class Drawing:
    """A piece before its names: its runs counter-clockwise, levels and marks by their words."""

    title: str
    runs: tuple[Run, ...]
    levels: tuple[tuple[str, Path], ...] = ()
    marks: tuple[tuple[str, Point], ...] = ()
    cut: CutAs = "fold"
    material: str = "self"


def named_piece(name: str, drawing: Drawing) -> Piece:
    """The piece of this name. Marks are measured from, not marked on paper."""
    following = (*drawing.runs[1:], drawing.runs[0])
    outline = tuple(
        Edge(
            part_name(name, run.word),
            run.path,
            part_name(name, run.start),
            part_name(name, after.start),
            run.kind,
        )
        for run, after in zip(drawing.runs, following, strict=True)
    )
    return Piece(
        name=name,
        title=drawing.title,
        outline=outline,
        lines=tuple(InternalLine(part_name(name, word), path) for word, path in drawing.levels),
        marks=tuple(Mark(part_name(name, word), point, "datum") for word, point in drawing.marks),
        cut=drawing.cut,
        instructions=(CutInstruction(drawing.material),),
        stretches=True,
    )


def at_height(path: Path, height: float) -> Point:
    """The first point of a path at this height; its nearer end where it does not come there."""
    ends = (path.start, path.end)
    nearest = min(ends, key=lambda end: abs(end.y - height))
    if abs(nearest.y - height) <= TOLERANCES.join:
        return nearest
    for segment in path.segments:
        for place in _places_at(segment, height):
            return segment.at(place)
    return nearest


def _places_at(segment: Segment, height: float) -> list[float]:
    """The parameters at which a segment is at this height, rising."""
    rise = segment.end.y - segment.start.y
    slopes = segment.powers[1] if isinstance(segment, Cubic) else (rise,)
    return unit_roots((segment.start.y - height, *slopes))
