"""The parts of a divided piece laid together again, each moved, and what fills the gaps between them."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern.names import spoken
from notchbook.pattern.piece import Edge, Intake, Piece
from notchbook.pattern.slashing.cuts import DartCut
from notchbook.pattern.slashing.dividing import Division, Gate
from notchbook.pattern.slashing.inside import Inside, carry_inside
from notchbook.pattern.slashing.naming import DartNames
from notchbook.pattern.slashing.runs import Run, grouped, moved_runs
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class Bridge:
    """Where the parts come apart, cloth fills the gap: a straight line joins them, for the caller to true.

    The edge keeps its one name.
    """


@dataclass(frozen=True, slots=True)
class Shut:
    """The parts meet here: the cut, wedge or dart is closed; a dart goes, with its legs and point.

    Legs that differ by no more than ``within`` mm may meet; the side that moved gives way.
    """

    within: float = TOLERANCES.closure


@dataclass(frozen=True, slots=True)
class Keep:
    """A dart of the piece that stays, wider or narrower, with straight legs to its pivot."""


@dataclass(frozen=True, slots=True)
class Legs:
    """A dart opens here; the edge is divided under the names' roles.

    Between two edges none is divided, and the point where they met becomes two. ``fold_first`` says that it
    is pressed toward its first leg, ``mouth`` how the edge is called that it opens from (empty: as the edge).
    """

    names: DartNames
    fold_first: bool = False
    mouth: str = ""


@dataclass(frozen=True, slots=True)
class Fold:
    """Cloth for a fold fills the gap: two edges of kind ``leg`` by way of ``middle`` (None: half way).

    The edge is divided under the names' roles. The intake and its lines are the caller's to add.
    """

    names: DartNames
    middle: Point | None = None


Filling = Bridge | Shut | Keep | Legs | Fold

Fillings = Mapping[str, Filling | tuple[Filling, Filling]]
"""By the label of the cut; two where a slash goes through and its ends are filled differently."""


@dataclass(frozen=True)
class Assembled:
    """The piece laid together anew, and the account of its names.

    ``splits``, ``merges`` and ``removals`` are as a step declares them. ``carried`` tells for each edge that
    kept its name where its old places are now.
    """

    piece: Piece
    splits: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    merges: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    removals: Mapping[str, str] = field(default_factory=dict)
    carried: Mapping[str, tuple[tuple[float, float, float], ...]] = field(default_factory=dict)

    def place_now(self, edge: str, distance: float) -> float:
        """Where a place of an edge lies now, mm from its start; on an edge that kept its name."""
        for start, end, begins in self.carried.get(edge, ()):
            if start - TOLERANCES.join <= distance <= end + TOLERANCES.join:
                return begins + distance - start
        return distance


def assemble(division: Division, motions: Mapping[int, Transform], fillings: Fillings) -> Assembled:
    """The parts moved and joined. ``motions`` are by part (left out: it stays), ``fillings`` by cut.

    StepRefused ``gap-stays-open`` where a cut that should be shut does not close.
    """
    builder = _Builder(division, motions, fillings)
    outline, carried, splits = grouped(division.piece, builder.runs(), builder.children())
    inside = carry_inside(division, motions, builder.roles())
    piece = _with_inside(division.piece, outline, builder, inside)
    return Assembled(
        piece,
        splits={**splits, **builder.points, **inside.splits},
        merges=builder.merges,
        removals=builder.removals,
        carried=carried,
    )


def _with_inside(piece: Piece, outline: tuple[Edge, ...], builder: "_Builder", inside: Inside) -> Piece:
    beside_mouth = {line: parts[0] for line, parts in inside.splits.items()}
    kept = tuple(one.relined(beside_mouth) for one in piece.intakes if one.name not in builder.removals)
    called = {merged: into[0] for merged, into in builder.merges.items()}
    return replace(
        piece,
        outline=tuple(
            replace(edge, start=called.get(edge.start, edge.start), end=called.get(edge.end, edge.end))
            for edge in outline
        ),
        intakes=(*kept, *builder.intakes),
        lines=inside.lines,
        marks=inside.marks,
    )


class _Builder:
    """Collects the runs of the new outline, gate by gate."""

    def __init__(self, division: Division, motions: Mapping[int, Transform], fillings: Fillings) -> None:
        self.division = division
        self.fillings = fillings
        self.motions = [motions.get(part, Transform.identity()) for part in division.parts]
        self.intakes: list[Intake] = []
        self.points: dict[str, tuple[str, ...]] = {}
        self.merges: dict[str, tuple[str, ...]] = {}
        self.removals: dict[str, str] = {}

    def runs(self) -> list[Run]:
        """The runs of the outline in order, beginning with the arc that follows the last gate."""
        found: list[Run] = []
        for index, gate in enumerate(self.division.gates):
            arc = self.division.arcs[index]
            found.extend(moved_runs(self.division.piece, arc, self._motion_before(index)))
            found.extend(self._filling(index, gate))
        return found

    def children(self) -> dict[str, list[DartNames]]:
        """For each edge in which darts open: their names in the direction of the edge."""
        found: dict[str, list[DartNames]] = {}
        for gate in self.division.gates:
            filling = self._filled_with(gate)
            if isinstance(filling, Legs | Fold) and self._corner(gate) is None:
                found.setdefault(self._edge(gate).name, []).append(filling.names)
        return found

    def roles(self) -> dict[str, tuple[str, str]]:
        """For each cut at which a dart opens: the roles of what lies before and after it."""
        return {
            label: filling.names.roles
            for label, filling in self.fillings.items()
            if isinstance(filling, Legs)
        }

    def _motion_before(self, index: int) -> Transform:
        return self.motions[self.division.part_of_arc[index]]

    def _motion_after(self, index: int) -> Transform:
        return self.motions[self.division.part_of_arc[(index + 1) % len(self.division.gates)]]

    def _filled_with(self, gate: Gate) -> Filling:
        filling = self.fillings[gate.label]
        return filling[gate.is_far_end] if isinstance(filling, tuple) else filling

    def _corner(self, gate: Gate) -> str | None:
        """The point of the outline where a cut begins that divides no edge; None where it divides one."""
        edge, place = self._edge(gate), gate.before[1]
        if isinstance(gate.cut, DartCut) or gate.before != gate.after or 0.0 < place < edge.length:
            return None
        return edge.start if place <= 0.0 else edge.end

    def _open_corner(self, gate: Gate, names: DartNames) -> None:
        """A dart opens between two edges: the point where they met becomes the two ends of its mouth."""
        corner = self._corner(gate)
        if corner is not None:
            self.points[corner] = (names.first_mouth, names.second_mouth)

    def _edge(self, gate: Gate) -> Edge:
        return self.division.piece.outline[gate.before[0]]

    def _filling(self, index: int, gate: Gate) -> list[Run]:
        before, after = self._motion_before(index), self._motion_after(index)
        start, end = before.apply(gate.inward.start), after.apply(gate.outward.end)
        match self._filled_with(gate):
            case Bridge():
                return [Run.bridge(self._edge(gate), start, end)]
            case Shut(within):
                if start.distance_to(end) > within:
                    raise StepRefused(
                        "gap-stays-open",
                        piece=spoken(self.division.piece.name),
                        gap=start.distance_to(end),
                    )
                self._shut(gate, before)
                return [Run.shut(self._edge(gate), start, end, before == Transform.identity())]
            case Keep():
                return self._kept_legs(gate, before, after)
            case Legs() as legs:
                return self._new_legs(gate, legs, before, after)
            case Fold(names, middle):
                self._open_corner(gate, names)
                return _fold_runs(names, start, middle or start.lerp(end, 0.5), end)

    def _shut(self, gate: Gate, before: Transform) -> None:
        """A dart that is closed goes; its mouth is one point, called as on the side that lies still."""
        if not isinstance(gate.cut, DartCut):
            return
        intake = gate.cut.intake
        piece = self.division.piece
        first, second = piece.edge(intake.first_leg).start, piece.edge(intake.second_leg).end
        still = before == Transform.identity()
        kept, merged = (first, second) if still else (second, first)
        self.merges[merged] = (kept,)
        gone = (intake.name, intake.first_leg, intake.second_leg, intake.point)
        self.removals.update(dict.fromkeys(gone, "the dart was closed"))

    def _kept_legs(self, gate: Gate, before: Transform, after: Transform) -> list[Run]:
        piece = self.division.piece
        intake = gate.cut.intake if isinstance(gate.cut, DartCut) else None
        assert intake is not None, "only a dart of the piece can be kept"
        first, second = piece.edge(intake.first_leg), piece.edge(intake.second_leg)
        return _leg_runs(
            gate, before, after, (first.name, second.name), (first.start, intake.point, second.end)
        )

    def _new_legs(self, gate: Gate, legs: Legs, before: Transform, after: Transform) -> list[Run]:
        names = legs.names
        self._open_corner(gate, names)
        self.intakes.append(
            Intake(
                names.intake,
                legs.mouth or self._edge(gate).name,
                names.first_leg,
                names.second_leg,
                names.point,
                "first_leg" if legs.fold_first else "second_leg",
            )
        )
        points = (names.first_mouth, names.point, names.second_mouth)
        return _leg_runs(gate, before, after, (names.first_leg, names.second_leg), points)


def _leg_runs(
    gate: Gate, before: Transform, after: Transform, names: tuple[str, str], points: tuple[str, str, str]
) -> list[Run]:
    """The two legs of a dart, moved with what lies on their sides; they meet where the first one ends."""
    first = gate.inward.transformed(before)
    second = gate.outward.transformed(after)
    return [
        Run.leg(names[0], first, points[0], points[1]),
        Run.leg(names[1], second.with_start(first.end), points[1], points[2]),
    ]


def _fold_runs(names: DartNames, start: Point, middle: Point, end: Point) -> list[Run]:
    return [
        Run.leg(names.first_leg, Path.line(start, middle), names.first_mouth, names.point),
        Run.leg(names.second_leg, Path.line(middle, end), names.point, names.second_mouth),
    ]
