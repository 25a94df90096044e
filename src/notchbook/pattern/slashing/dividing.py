"""A piece divided by cuts: which stretches of its outline belong to which part.

Walking round the outline, whoever comes to a cut turns in along it and comes out of it again: at the
other end of a slash that goes through, at the neighbouring cut where several meet in a pivot. What is
walked until the walk closes is one part. Nothing is measured for that; only whether the cuts keep clear
of each other and of the outline.
"""

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Segment
from notchbook.pattern.names import spoken
from notchbook.pattern.piece import Piece
from notchbook.pattern.sewn import Located
from notchbook.pattern.slashing.cuts import Cut, DartCut, Slash, Wedge
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class Gate:
    """Where a cut meets the outline: an arc ends at ``before`` and the next begins at ``after``, each an
    index of an edge and a distance along it. ``inward`` leads from there in, ``outward`` back out."""

    cut: Cut
    before: tuple[int, float]
    after: tuple[int, float]
    inward: Path
    outward: Path
    pivot: Point | None
    is_far_end: bool = False
    """Whether it is where a slash that goes through comes out again."""

    @property
    def label(self) -> str:
        """What the cut is called."""
        return self.cut.label


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of one edge, from one distance to another along it."""

    edge: int
    start: float
    end: float


@dataclass(frozen=True)
class Division:
    """A piece and its parts.

    Arc ``i`` runs along the outline from gate ``i - 1`` to gate ``i``; ``part_of_arc`` tells the part of
    each arc, ``regions`` the closed outline of each part before anything moves.
    """

    piece: Piece
    gates: tuple[Gate, ...]
    arcs: tuple[tuple[Span, ...], ...]
    part_of_arc: tuple[int, ...]
    regions: tuple[Path, ...]

    @cached_property
    def parts(self) -> range:
        """The parts by their numbers; they mean nothing beyond this division."""
        return range(len(self.regions))

    def part_of(self, edge: str) -> int:
        """The part that holds the whole of an uncut edge; refused (``still-edge-cut``) when it is cut."""
        index = self.piece.edge_index(edge)
        whole = self.piece.outline[index].length
        for number, arc in enumerate(self.arcs):
            for span in arc:
                if span.edge == index and span.end - span.start >= whole - TOLERANCES.join:
                    return self.part_of_arc[number]
        raise StepRefused("still-edge-cut", edge=spoken(edge), piece=spoken(self.piece.name))

    def beside(self, label: str) -> tuple[int, int]:
        """The parts before and after a cut, in the direction of the outline where the cut begins."""
        index = next(
            index for index, gate in enumerate(self.gates) if gate.label == label and not gate.is_far_end
        )
        return self.part_of_arc[index], self.part_of_arc[(index + 1) % len(self.gates)]


def divide(piece: Piece, cuts: tuple[Cut, ...]) -> Division:
    """The piece divided by the cuts.

    StepRefused ``slash-leaves-piece`` when one meets the outline elsewhere than at its ends,
    ``slashes-cross`` when two meet elsewhere than in a pivot of both.
    """
    gates = tuple(sorted((gate for cut in cuts for gate in _gates(piece, cut)), key=lambda gate: gate.before))
    _require_clear(piece, gates)
    arcs = tuple(_arc(piece, gates[index - 1].after, gate.before) for index, gate in enumerate(gates))
    leaves = [_leave(gates, index) for index in range(len(gates))]
    part_of_arc = [-1] * len(gates)
    regions: list[Path] = []
    for first in range(len(gates)):
        if part_of_arc[first] >= 0:
            continue
        arc = first
        segments: list[Segment] = []
        while part_of_arc[arc] < 0:
            part_of_arc[arc] = len(regions)
            for span in arcs[arc]:
                segments.extend(_span_path(piece, span).segments)
            segments.extend(_through(gates[arc], gates[leaves[arc]]))
            arc = (leaves[arc] + 1) % len(gates)
        regions.append(Path(tuple(segments)))
    return Division(piece, gates, arcs, tuple(part_of_arc), tuple(regions))


def _span_path(piece: Piece, span: Span) -> Path:
    return piece.outline[span.edge].path.between(span.start, span.end)


def _through(entered: Gate, left: Gate) -> tuple[Segment, ...]:
    """The way from the outline in along one gate and out of another."""
    if entered.pivot is None:
        return entered.inward.segments
    return (*entered.inward.segments, *left.outward.segments)


def _gates(piece: Piece, cut: Cut) -> tuple[Gate, ...]:
    if isinstance(cut, DartCut):
        first, second = piece.edge_index(cut.intake.first_leg), piece.edge_index(cut.intake.second_leg)
        mouths = piece.outline[first].path.start, piece.outline[second].path.end
        before, after = (first, 0.0), (second, piece.outline[second].length)
        return (_pivoted(cut, before, after, mouths, cut.pivot),)
    if isinstance(cut, Wedge):
        before, after = _place(piece, cut.first), _place(piece, cut.second)
        return (_pivoted(cut, before, after, (cut.first.position, cut.second.position), cut.point),)
    start = _place(piece, cut.start)
    if isinstance(cut.end, Point):
        return (Gate(cut, start, start, cut.path, cut.path.reversed(), cut.end),)
    end, back = _place(piece, cut.end), cut.path.reversed()
    return (Gate(cut, start, start, cut.path, back, None), Gate(cut, end, end, back, cut.path, None, True))


def _pivoted(
    cut: Cut, before: tuple[int, float], after: tuple[int, float], mouths: tuple[Point, Point], pivot: Point
) -> Gate:
    return Gate(cut, before, after, Path.line(mouths[0], pivot), Path.line(pivot, mouths[1]), pivot)


def _place(piece: Piece, place: Located) -> tuple[int, float]:
    """The place, at an end exactly where it is one."""
    index = piece.edge_index(place.edge.name)
    length = piece.outline[index].length
    if place.distance <= TOLERANCES.join:
        return index, 0.0
    return index, length if place.distance >= length - TOLERANCES.join else place.distance


def _leave(gates: tuple[Gate, ...], index: int) -> int:
    """The gate by which a walk leaves that came in at this one."""
    gate = gates[index]
    if gate.pivot is None:
        return next(other for other, found in enumerate(gates) if found.cut is gate.cut and other != index)
    at_pivot = [
        other
        for other, found in enumerate(gates)
        if found.pivot is not None and found.pivot.distance_to(gate.pivot) <= TOLERANCES.join
    ]
    return at_pivot[at_pivot.index(index) - 1]


def _arc(piece: Piece, start: tuple[int, float], end: tuple[int, float]) -> tuple[Span, ...]:
    """The stretches of edges from one place counter-clockwise to another; all round when they are one."""
    count = len(piece.outline)
    index, place = start
    steps = (end[0] - index) % count
    if steps == 0 and end[1] <= place:
        steps = count
    spans: list[Span] = []
    for step in range(steps + 1):
        number = (index + step) % count
        length = piece.outline[number].length
        begin = place if step == 0 else 0.0
        stop = end[1] if step == steps else length
        if stop - begin > TOLERANCES.join or (length <= TOLERANCES.join and 0 < step < steps):
            spans.append(Span(number, begin, stop))
    return tuple(spans)


def _require_clear(piece: Piece, gates: tuple[Gate, ...]) -> None:
    for gate, following in pairwise((*gates, gates[0])):
        if gate is not following and gate.before == following.before:
            raise StepRefused("slashes-cross", piece=spoken(piece.name))
    lines = [side for gate in gates for side in _sides(gate)]
    legs = {gate.label: _own_legs(gate) for gate in gates}
    for label, line in lines:
        _require_inside(piece, line, legs[label])
    for index, (label, line) in enumerate(lines):
        for other_label, other in lines[index + 1 :]:
            if label != other_label and _cross(line, other):
                raise StepRefused("slashes-cross", piece=spoken(piece.name))


def _sides(gate: Gate) -> list[tuple[str, Path]]:
    """The lines along which a gate is cut; the second end of a slash brings none of its own."""
    if isinstance(gate.cut, Slash):
        return [(gate.label, gate.inward)] if gate.inward is gate.cut.path else []
    return [(gate.label, gate.inward), (gate.label, gate.outward)]


def _own_legs(gate: Gate) -> frozenset[str]:
    """The legs of a dart that is cut anew: where it takes up nothing, its new legs run along them."""
    if not isinstance(gate.cut, DartCut):
        return frozenset()
    return frozenset((gate.cut.intake.first_leg, gate.cut.intake.second_leg))


def _require_inside(piece: Piece, line: Path, besides: frozenset[str]) -> None:
    """The line runs inside the piece: it meets the outline at its own ends alone, some edges left out."""
    ends = TOLERANCES.closure
    crossed = next(
        (
            edge.name
            for edge in piece.outline
            if edge.name not in besides
            and any(ends < one.at_self < line.length - ends for one in line.intersections(edge.path))
        ),
        None,
    )
    middle = line.point_at(line.length / 2.0)
    if crossed is not None or (line.length > ends and not piece.sew_line.contains(middle)):
        edge = piece.outline[0].name if crossed is None else crossed
        raise StepRefused("slash-leaves-piece", piece=spoken(piece.name), edge=spoken(edge))


def _cross(line: Path, other: Path) -> bool:
    """Whether two cuts meet elsewhere than at an end of both."""
    ends = TOLERANCES.closure
    for crossing in line.intersections(other):
        at_end = min(crossing.at_self, line.length - crossing.at_self) <= ends
        other_end = min(crossing.at_other, other.length - crossing.at_other) <= ends
        if not (at_end and other_end):
            return True
    return False
