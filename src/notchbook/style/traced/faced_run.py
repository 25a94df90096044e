"""The run of edges of one piece that is traced off, its darts closed."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Transform
from notchbook.pattern import Edge, Pattern, Piece, closed_motions, require, spoken
from notchbook.pattern.sewn import closing_motion, drawn_in
from notchbook.style.lines.truing import LOST_AT_MOUTH, with_round_corners


@dataclass(frozen=True, slots=True)
class Faced:
    """One edge or group that is traced off: its name as it was given, the end from which it is walked, its
    path with the darts in it closed (counter-clockwise), and how deep the piece reaches there, mm.

    ``trim`` was taken off the path at its start and at its end, ``less`` is how much shorter it became
    besides, mm. ``faces``: it is sewn to the edge that it was traced from.
    """

    name: str
    starts_at: str
    members: tuple[Edge, ...]
    path: Path
    depth: float
    trim: tuple[float, float] = (0.0, 0.0)
    less: float = 0.0
    faces: bool = True


@dataclass(frozen=True, slots=True)
class Beside:
    """What follows a run at one of its ends: the edge there, and the line that the outline runs on along,
    away from the run, its darts closed."""

    edge: Edge
    path: Path


@dataclass(frozen=True, slots=True)
class FacedRun:
    """The traced edges of one piece in counter-clockwise order, laid with the first of them still.

    ``forward``: they were given in this order. ``motions``: how each living edge of the run was moved.
    """

    owner: Piece
    faced: tuple[Faced, ...]
    before: Beside
    after: Beside
    forward: bool
    motions: tuple[Transform, ...]

    def moved(self, motion: Transform) -> "FacedRun":
        """The run laid elsewhere."""
        return FacedRun(
            self.owner,
            tuple(replace(one, path=one.path.transformed(motion)) for one in self.faced),
            Beside(self.before.edge, self.before.path.transformed(motion)),
            Beside(self.after.edge, self.after.path.transformed(motion)),
            self.forward,
            tuple(one.then(motion) for one in self.motions),
        )

    @property
    def start(self) -> str:
        """The name of the point where the run begins."""
        return self.faced[0].members[0].start

    @property
    def end(self) -> str:
        """The name of the point where the run ends."""
        return self.faced[-1].members[-1].end


@dataclass(frozen=True, slots=True)
class Asked:
    """An edge as it was asked for: its name, the end where its walk begins, its depth in mm; whether the
    traced piece is sewn to it."""

    edge: str
    starts_at: str
    depth: float
    faces: bool = True


def faced_runs(pattern: Pattern, asked: Sequence[Asked]) -> tuple[FacedRun, ...]:
    """The edges as asked for, gathered to one run for each stretch of neighbors on one piece, in order.

    StepRefused ``facing-edge-broken``, ``facing-end-elsewhere``, ``facing-edges-apart``,
    ``facing-on-fold``, ``facing-drawn-in``.
    """
    runs: list[list[Asked]] = []
    for one in asked:
        if runs and _goes_on(pattern, runs[-1][-1], one):
            runs[-1].append(one)
        else:
            runs.append([one])
    return tuple(_run(pattern, run) for run in runs)


def _ends(pattern: Pattern, one: Asked) -> tuple[str, str, bool]:
    """The points where the walk begins and ends, and whether it goes counter-clockwise."""
    members = require(pattern, one.edge)
    first, last = pattern.edges[members[0]].start, pattern.edges[members[-1]].end
    if one.starts_at not in (first, last):
        raise StepRefused("facing-end-elsewhere", edge=spoken(one.edge), point=spoken(one.starts_at))
    return (first, last, True) if one.starts_at == first else (last, first, False)


def _goes_on(pattern: Pattern, one: Asked, other: Asked) -> bool:
    carriers = {pattern.carriers[require(pattern, asked.edge)[0]] for asked in (one, other)}
    return len(carriers) == 1 and _ends(pattern, one)[1] == other.starts_at


def _run(pattern: Pattern, asked: list[Asked]) -> FacedRun:
    forward = _ends(pattern, asked[0])[2]
    if any(_ends(pattern, one)[2] != forward for one in asked):
        raise StepRefused("facing-edges-apart", first=spoken(asked[0].edge), second=spoken(asked[-1].edge))
    in_order = asked if forward else asked[::-1]
    members = [require(pattern, one.edge) for one in in_order]
    owner = pattern.piece_of(members[0][0])
    for one, names in zip(in_order, members, strict=True):
        if {pattern.carriers[name] for name in names} != {owner.name}:
            raise StepRefused("facing-edge-broken", edge=spoken(one.edge), piece=spoken(owner.name))
        if any(owner.edge(name).kind == "fold" for name in names):
            raise StepRefused("facing-on-fold", edge=spoken(one.edge))
        if any(drawn_in(pattern, name) > 0.0 for name in names):
            raise StepRefused("facing-drawn-in", edge=spoken(one.edge))
    motions = closed_motions(owner, members[0][0], members[-1][-1])
    names_all = [name for names in members for name in names]
    if set(names_all) != motions.keys():
        raise StepRefused("facing-edge-broken", edge=spoken(in_order[0].edge), piece=spoken(owner.name))
    faced = tuple(
        Faced(
            one.edge,
            one.starts_at,
            tuple(owner.edge(name) for name in names),
            _closed(owner, names, motions),
            one.depth,
            faces=one.faces,
        )
        for one, names in zip(in_order, members, strict=True)
    )
    return FacedRun(
        owner,
        faced,
        _before(owner, names_all[0]),
        _after(owner, names_all[-1], motions[names_all[-1]]),
        forward,
        tuple(dict.fromkeys(motions.values())),
    )


def _closed(owner: Piece, names: Sequence[str], motions: dict[str, Transform]) -> Path:
    """One line along the edges; where a dart was closed it is drawn fair, as long as before."""
    stretches: list[Path] = []
    last: Transform | None = None
    for name in names:
        path = owner.edge(name).path.transformed(motions[name])
        if last is not None and motions[name] == last:
            stretches[-1] = stretches[-1].joined(path)
        else:
            stretches.append(path.with_start(stretches[-1].end) if stretches else path)
        last = motions[name]
    return with_round_corners(stretches, LOST_AT_MOUTH) if len(stretches) > 1 else stretches[0]


def _after(owner: Piece, last: str, motion: Transform) -> Beside:
    """The outline beyond the end of the run, over the darts that open in the edge there."""
    darts = {dart.first_leg: dart for dart in owner.intakes if dart.has_legs}
    index, count = owner.edge_index(last) + 1, len(owner.outline)
    first: Edge | None = None
    whole: Path | None = None
    while True:
        edge = owner.outline[index % count]
        if edge.name in darts:
            motion = closing_motion(owner, darts[edge.name]).then(motion)
            index += 2
            continue
        path = edge.path.transformed(motion)
        first = first or edge
        whole = path if whole is None else whole.joined(path.with_start(whole.end))
        index += 1
        if owner.outline[index % count].name not in darts:
            return Beside(first, whole)


def _before(owner: Piece, first: str) -> Beside:
    """The outline before the start of the run, walked away from it."""
    darts = {dart.second_leg: dart for dart in owner.intakes if dart.has_legs}
    index, count = owner.edge_index(first) - 1, len(owner.outline)
    motion = Transform.identity()
    nearest: Edge | None = None
    whole: Path | None = None
    while True:
        edge = owner.outline[index % count]
        if edge.name in darts:
            motion = closing_motion(owner, darts[edge.name]).inverse().then(motion)
            index -= 2
            continue
        path = edge.path.transformed(motion).reversed()
        nearest = nearest or edge
        whole = path if whole is None else whole.joined(path.with_start(whole.end))
        index -= 1
        if owner.outline[index % count].name not in darts:
            return Beside(nearest, whole)
