"""What is drawn inside a piece goes with the part and the stretch on which it lies."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from notchbook.geometry import Line, Path, Point, Transform
from notchbook.pattern import Edge, InnerDart, InternalLine, Mark, Piece
from notchbook.pattern.closing import ClosedRun
from notchbook.pattern.splitting import cut_path
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class Inside:
    """Internal lines, marks and double-ended darts of a part. A line that a cut divided stands here as often
    as it has parts on this side, still under its old name."""

    lines: tuple[InternalLine, ...] = ()
    marks: tuple[Mark, ...] = ()
    inner_darts: tuple[InnerDart, ...] = ()


def shared_inside(
    piece: Piece, stretches: Sequence[Sequence[Edge]], faces: Sequence[Path]
) -> tuple[Inside, Inside, Mapping[str, tuple[bool, ...]]]:
    """What lies between the stretches and their faces, and the rest; for each line that the faces divide, in
    its order, whether each part is of the first.

    The faces lie in the direction of the run; what lies on them is of the first.
    """
    regions = regions_of(stretches, faces)
    lines: tuple[list[InternalLine], list[InternalLine]] = ([], [])
    divided: dict[str, tuple[bool, ...]] = {}
    for line in piece.lines:
        parts = _parts(line.path, faces)
        owners = tuple(_is_in(regions, part.point_at(part.length / 2.0)) for part in parts)
        if len(set(owners)) == 1:
            parts, owners = (line.path,), owners[:1]
        else:
            parts, owners = _one_each(parts, owners)
            divided[line.name] = owners
        for part, is_first in zip(parts, owners, strict=True):
            lines[0 if is_first else 1].append(InternalLine(line.name, part, line.kind))
    marks: tuple[list[Mark], list[Mark]] = ([], [])
    for mark in piece.marks:
        marks[0 if _is_in(regions, mark.position) else 1].append(mark)
    first, second = (
        Inside(tuple(own), tuple(points), _inner_darts(piece, points))
        for own, points in zip(lines, marks, strict=True)
    )
    return first, second, divided


def moved_inside(inside: Inside, closed: ClosedRun, faces: Sequence[Path]) -> Inside:
    """What lies on each stretch moved with it."""
    regions = regions_of(closed.stretches, faces)

    def motion_of(place: Point) -> Transform:
        found = [index for index, region in enumerate(regions) if region.contains(place)]
        return closed.motions[found[0]] if found else Transform.identity()

    return Inside(
        tuple(
            InternalLine(
                line.name,
                line.path.transformed(motion_of(line.path.point_at(line.path.length / 2.0))),
                line.kind,
            )
            for line in inside.lines
        ),
        tuple(Mark(m.name, motion_of(m.position).apply(m.position), m.kind) for m in inside.marks),
        inside.inner_darts,
    )


NEAR_SEAM = 8.0
"""mm; a level that ends this near to the finished edge of a panel ended at the leg that became it."""


def ended_on(inside: Inside, outline: Sequence[Edge], face: Path) -> Inside:
    """What lies inside, with the lines that ran to the seam cut off at its finished edge or led on to it."""
    whole = Path(tuple(segment for edge in outline for segment in edge.path.segments))
    lines = tuple(InternalLine(line.name, _ended(line.path, whole, face), line.kind) for line in inside.lines)
    return Inside(lines, inside.marks, inside.inner_darts)


def _ended(path: Path, whole: Path, face: Path) -> Path:
    parts = cut_path(path, face)
    within = [part for part in parts if whole.contains(part.point_at(part.length / 2.0))]
    kept = max(within or parts, key=lambda part: part.length)
    return _led_on(_led_on(kept, face).reversed(), face).reversed()


def _led_on(path: Path, face: Path) -> Path:
    """The path led straight on from its end to the face, where that is near."""
    if not TOLERANCES.closure < face.nearest(path.end).gap <= NEAR_SEAM:
        return path
    ahead = Line(path.end, path.end + path.tangent_at(path.length) * (2.0 * NEAR_SEAM))
    met = face.intersections(Path.of(ahead))
    return path.joined(Path.line(path.end, met[0].point)) if met else path


def regions_of(stretches: Sequence[Sequence[Edge]], faces: Sequence[Path]) -> tuple[Path, ...]:
    """The cloth between each stretch and its part of the line, both in the direction of the run."""
    return tuple(_region(stretch, face) for stretch, face in zip(stretches, faces, strict=True))


def _region(stretch: Sequence[Edge], face: Path) -> Path:
    around = tuple(segment for edge in stretch for segment in edge.path.segments)
    back = face.reversed()
    return Path((*around, Line(around[-1].end, back.start), *back.segments, Line(back.end, around[0].start)))


def _is_in(regions: Sequence[Path], place: Point) -> bool:
    return any(region.contains(place) for region in regions)


def _one_each(parts: Sequence[Path], owners: Sequence[bool]) -> tuple[tuple[Path, ...], tuple[bool, ...]]:
    """The longest part on either side, in order: a cut that grazes a level twice leaves no scraps of it."""
    longest = {
        owner: max(
            (part for part, of in zip(parts, owners, strict=True) if of is owner), key=lambda p: p.length
        )
        for owner in owners
    }
    kept = [(part, owner) for part, owner in zip(parts, owners, strict=True) if part is longest[owner]]
    return tuple(part for part, _ in kept), tuple(owner for _, owner in kept)


def _parts(path: Path, faces: Sequence[Path]) -> tuple[Path, ...]:
    parts: tuple[Path, ...] = (path,)
    for face in faces:
        parts = tuple(piece for part in parts for piece in cut_path(part, face))
    return parts


def _inner_darts(piece: Piece, marks: Sequence[Mark]) -> tuple[InnerDart, ...]:
    names = {mark.name for mark in marks}
    return tuple(dart for dart in piece.inner_darts if {dart.upper_point, dart.lower_point} <= names)
