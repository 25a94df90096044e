"""A piece slashed from one edge to another and spread: its parts moved, the two edges trued."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform, direction
from notchbook.pattern import Edge, Located, Piece, spoken
from notchbook.pattern.slashing import Bridge, Division, Slash, assemble, divide, slash_across
from notchbook.style.fullness.opening import Opening, motions_along
from notchbook.style.fullness.truing import trued_edge
from notchbook.units import TOLERANCES

_KEEPING = 6
_KEPT = 1e-7
"""mm within which an edge that stays shut keeps its length, and the rounds that this takes at most."""

_ALONG_GRAIN = math.cos(math.radians(30.0))
"""Cosine within which a slash counts as running along the grain. Own judgment."""


@dataclass(frozen=True, slots=True)
class SlashLine:
    """A slash from a place on the opened edge to a place on the edge across, and what it opens there, mm."""

    start: Located
    end: Located
    opened: float
    opened_across: float


@dataclass(frozen=True, slots=True)
class CutEdge:
    """What became of an edge that slashes meet: the ``places`` of the slashes along the old edge, rising, and
    the ``motions`` of the parts before, between and after them."""

    old: Edge
    places: tuple[float, ...]
    motions: tuple[Transform, ...]

    @property
    def opened(self) -> float:
        """How much longer the edge is before it is trued, mm: the sum of what opened, straight across."""
        pairs = zip(self.places, self.motions, self.motions[1:], strict=False)
        return sum(
            after.apply(self.old.path.point_at(place)).distance_to(
                before.apply(self.old.path.point_at(place))
            )
            for place, before, after in pairs
        )

    def place_now(self, distance: float) -> float:
        """How far along the edge, before it is trued, what lay at ``distance`` lies now, mm."""
        moved = distance
        for place, before, after in zip(self.places, self.motions, self.motions[1:], strict=False):
            if distance > place:
                point = self.old.path.point_at(place)
                moved += after.apply(point).distance_to(before.apply(point))
        return moved

    def trued(self) -> Path:
        """The fair line along the moved parts."""
        return trued_edge(self.old.path, self.places, self.motions)


@dataclass(frozen=True, slots=True)
class Spread:
    """The spread piece, its two edges trued, and what became of every edge that was met, by name.

    ``motions`` are those of the parts in the order of the slashes, the one that lies still first.
    """

    piece: Piece
    edges: Mapping[str, CutEdge]
    motions: tuple[Transform, ...]


def spread(piece: Piece, lines: Sequence[SlashLine], forward: bool, *, level: bool = True) -> Spread:
    """The piece spread at every line, what lies before the first of them lying still.

    Strips that open at both ends are moved square to the grain, so that levels stay level, where a slash runs
    within 30 degrees of it; else, and always when not ``level``, square to the slash.

    The lines follow each other along the opened edge: in the direction of the outline where ``forward``,
    else against it. StepRefused as the engine refuses slashes, and ``slash-opens-too-far``.
    """
    division = _divided(piece, lines)
    motions = motions_along(_opening(piece, line, forward, level=level) for line in lines)
    laid = assemble(
        division,
        dict(zip(_parts_in_order(division, len(lines), forward), motions, strict=True)),
        {_label(index): Bridge() for index in range(len(lines))},
    )
    cut = _cut_edges(lines, motions, forward)
    return Spread(_with_trued(laid.piece, cut), cut, motions)


def spread_keeping_hinges(piece: Piece, lines: Sequence[SlashLine], forward: bool) -> Spread:
    """As :func:`spread`; an edge that stays shut at all its slashes is as long as before when it is trued.

    A fair line over the corners at the hinges is a little shorter than they are. What is missing, some
    hundredths of a millimeter at each slash, is let out there.
    """
    _divided(piece, lines)  # slashes that cannot be cut are refused before anything is let out at them
    names = {place.edge.name for line in lines for place in (line.start, line.end)}
    shut = {name for name in names if _is_shut(lines, name)}
    for _ in range(_KEEPING):
        motions = motions_along(_opening(piece, line, forward, level=True) for line in lines)
        cut = _cut_edges(lines, motions, forward)
        missing = {name: cut[name].old.length - cut[name].trued().length for name in shut}
        if all(abs(amount) <= _KEPT for amount in missing.values()):
            break
        each = {name: amount / len(cut[name].places) for name, amount in missing.items()}
        lines = [
            replace(
                line,
                opened=line.opened + each.get(line.start.edge.name, 0.0),
                opened_across=line.opened_across + each.get(line.end.edge.name, 0.0),
            )
            for line in lines
        ]
    return spread(piece, lines, forward)


def _divided(piece: Piece, lines: Sequence[SlashLine]) -> Division:
    for line in lines:
        _require_within(line.start)
        _require_within(line.end)
    return divide(piece, tuple(_slash(index, line) for index, line in enumerate(lines)))


def _is_shut(lines: Sequence[SlashLine], edge: str) -> bool:
    opened = [line.opened for line in lines if line.start.edge.name == edge]
    opened += [line.opened_across for line in lines if line.end.edge.name == edge]
    return not any(opened)


def _opening(piece: Piece, line: SlashLine, forward: bool, *, level: bool) -> Opening:
    return Opening(
        line.start.position,
        line.end.position,
        line.opened,
        line.opened_across,
        not forward,
        _level(piece, line) if level else None,
    )


def _level(piece: Piece, line: SlashLine) -> Point | None:
    grain = direction(piece.grain.degrees)
    along = (line.end.position - line.start.position).unit()
    return grain.perpendicular() if abs(grain.dot(along)) > _ALONG_GRAIN else None


def _require_within(place: Located) -> None:
    """Nearer to an end of its edge than a pencil line no slash is drawn."""
    length = place.edge.length
    if not TOLERANCES.closure < place.distance < length - TOLERANCES.closure:
        raise StepRefused("cut-at-end", edge=spoken(place.edge.name), distance=place.distance, length=length)


def _label(index: int) -> str:
    return f"slash {index}"


def _slash(index: int, line: SlashLine) -> Slash:
    return slash_across(_label(index), line.start, line.end)


def _parts_in_order(division: Division, count: int, forward: bool) -> tuple[int, ...]:
    """The parts from the one before the first slash to the one after the last."""
    begins = {gate.label: index for index, gate in enumerate(division.gates) if not gate.is_far_end}
    parts: list[int] = []
    for index in range(count):
        gate = begins[_label(index)]
        beside = (division.part_of_arc[gate], division.part_of_arc[(gate + 1) % len(division.gates)])
        near, far = beside if forward else beside[::-1]
        parts += [far] if parts else [near, far]
    return tuple(parts)


def _cut_edges(lines: Sequence[SlashLine], motions: Sequence[Transform], forward: bool) -> dict[str, CutEdge]:
    """Each edge that is met with its slashes, in its own direction; across, the outline runs back."""
    met: dict[str, list[int]] = {}
    places: dict[str, dict[int, Located]] = {}
    runs_along: dict[str, bool] = {}
    for index, line in enumerate(lines):
        for place, along in ((line.start, forward), (line.end, not forward)):
            met.setdefault(place.edge.name, []).append(index)
            places.setdefault(place.edge.name, {})[index] = place
            runs_along[place.edge.name] = along
    found: dict[str, CutEdge] = {}
    for name, slashes in met.items():
        indexes = slashes if runs_along[name] else slashes[::-1]
        parts = [*indexes, indexes[-1] + 1] if runs_along[name] else [indexes[0] + 1, *indexes]
        found[name] = CutEdge(
            places[name][indexes[0]].edge,
            tuple(places[name][index].distance for index in indexes),
            tuple(motions[part] for part in parts),
        )
    return found


def _with_trued(piece: Piece, cut: Mapping[str, CutEdge]) -> Piece:
    """The piece with every edge that was met trued, joined to its neighbors exactly."""
    outline = []
    for edge in piece.outline:
        met = cut.get(edge.name)
        if met is None:
            outline.append(edge)
        else:
            path = met.trued().with_start(edge.path.start).with_end(edge.path.end)
            outline.append(replace(edge, path=path))
    return replace(piece, outline=tuple(outline))
