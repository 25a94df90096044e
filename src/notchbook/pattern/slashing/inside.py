"""What is drawn inside a divided piece goes with its part: lines, marks, double-ended darts."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform, curve_between
from notchbook.pattern.names import child_name, spoken
from notchbook.pattern.piece import InternalLine, Mark
from notchbook.pattern.slashing.dividing import Division
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class Inside:
    """The lines and marks after the parts moved, and the lines that a dart cut into several."""

    lines: tuple[InternalLine, ...]
    marks: tuple[Mark, ...]
    splits: dict[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class _Stretch:
    """A stretch of a line that lies in one part."""

    part: int
    path: Path


def carry_inside(
    division: Division, motions: Mapping[int, Transform], roles: Mapping[str, tuple[str, str]]
) -> Inside:
    """Move what is drawn inside with the parts. ``roles`` are those of the cuts at which darts open.

    A line across such a cut becomes a group of two; across any other gap it runs on, as one smooth curve
    where the gap is bridged. StepRefused ``slash-through-dart`` when a double-ended dart lies across a cut.
    """
    moved = {part: motions.get(part, Transform.identity()) for part in division.parts}
    lines: list[InternalLine] = []
    splits: dict[str, tuple[str, ...]] = {}
    for line in division.piece.lines:
        stretches = _stretches(division, line.path)
        if line.kind == "dart_leg" and len(stretches) > 1:
            raise StepRefused("slash-through-dart", line=spoken(line.name), piece=spoken(division.piece.name))
        lines.extend(_carried(division, line, stretches, moved, roles, splits))
    marks = tuple(
        replace(mark, position=moved[_holder(division, mark.position, moved)].apply(mark.position))
        for mark in division.piece.marks
    )
    return Inside(tuple(lines), marks, splits)


def _holder(division: Division, place: Point, moved: Mapping[int, Transform]) -> int:
    """The part in which a place lies; on a cut the part that lies still, else the first."""
    holders = [part for part in division.parts if division.regions[part].contains(place)]
    still = [part for part in division.parts if moved[part] == Transform.identity()]
    return next((part for part in still if part in holders or not holders), holders[0] if holders else 0)


def _stretches(division: Division, path: Path) -> list[_Stretch]:
    """The line in stretches of one part each; what lies in a gap already is left out."""
    places = sorted(
        crossing.at_self
        for gate in division.gates
        for side in (gate.inward, gate.outward)
        for crossing in path.intersections(side)
    )
    stops = [place for place in places if TOLERANCES.closure < place < path.length - TOLERANCES.closure]
    found: list[_Stretch] = []
    begin = 0.0
    for stop in [*stops, path.length]:
        if stop - begin <= TOLERANCES.join:
            continue
        part = _part_at(division, path.point_at((begin + stop) / 2.0))
        piece = path.between(begin, stop)
        begin = stop
        if part is None:
            continue
        if found and found[-1].part == part:
            joined = Path((*found[-1].path.segments, *piece.with_start(found[-1].path.end).segments))
            found[-1] = _Stretch(part, joined)
        else:
            found.append(_Stretch(part, piece))
    return found or [_Stretch(_part_at(division, path.point_at(path.length / 2.0)) or 0, path)]


def _part_at(division: Division, place: Point) -> int | None:
    return next((part for part in division.parts if division.regions[part].contains(place)), None)


def _carried(
    division: Division,
    line: InternalLine,
    stretches: Sequence[_Stretch],
    moved: Mapping[int, Transform],
    roles: Mapping[str, tuple[str, str]],
    splits: dict[str, tuple[str, ...]],
) -> list[InternalLine]:
    """The line moved; new names where a dart cut it."""
    name, found = line.name, [stretches[0].path.transformed(moved[stretches[0].part])]
    lines: list[InternalLine] = []
    for before, after in pairwise(stretches):
        path = after.path.transformed(moved[after.part])
        cut_roles = _roles_between(division, before.part, after.part, roles)
        if cut_roles is None or found[-1].end.distance_to(path.start) <= TOLERANCES.closure:
            found.append(path)
            continue
        first, rest = (child_name(name, role) for role in cut_roles)
        splits[name] = (first, rest)
        lines.append(replace(line, name=first, path=_run_on(found)))
        name, found = rest, [path]
    return [*lines, replace(line, name=name, path=_run_on(found))]


def _roles_between(
    division: Division, before: int, after: int, roles: Mapping[str, tuple[str, str]]
) -> tuple[str, str] | None:
    """The roles of a dart that opens between two parts, in the order in which the line meets them."""
    for label, (first, second) in roles.items():
        parts = division.beside(label)
        if parts == (before, after):
            return first, second
        if parts == (after, before):
            return second, first
    return None


def _run_on(stretches: Sequence[Path]) -> Path:
    """The stretches as one line: joined where they meet, one smooth curve where they came apart."""
    apart = any(
        first.end.distance_to(second.start) > TOLERANCES.closure for first, second in pairwise(stretches)
    )
    if apart:
        start, end = stretches[0], stretches[-1]
        leaving, arriving = start.tangent_at(0.0), end.tangent_at(end.length)
        return Path.of(curve_between(start.start, leaving.direction(), end.end, arriving.direction()))
    joined = stretches[0]
    for path in stretches[1:]:
        joined = joined.joined(path.with_start(joined.end))
    return joined
