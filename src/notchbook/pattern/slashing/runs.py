"""The runs of a new outline (stretches of edges, bridges, legs of darts) and how they become edges."""

from dataclasses import dataclass, field, replace
from typing import Literal

from notchbook.geometry import Path, Point, Transform
from notchbook.pattern.names import child_name
from notchbook.pattern.piece import Edge, Piece
from notchbook.pattern.slashing.dividing import Span
from notchbook.pattern.slashing.naming import DartNames
from notchbook.units import TOLERANCES

RunKind = Literal["stretch", "bridge", "shut", "leg"]

Splits = dict[str, tuple[str, ...]]
Carried = dict[str, tuple[tuple[float, float, float], ...]]
"""Edge -> where its old stretches (from, to) begin now, all in mm along the edge."""


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of the new outline. ``edge`` is the edge that it is a part of, or the leg that it is.

    ``begins`` and ``ends`` are the names of its end points, empty where the run is not at an end of its edge.
    ``span`` is the stretch of the old edge. Where a gap is shut, ``from_still`` says that what comes before
    lies still, so that the other side gives way.
    """

    kind: RunKind
    edge: Edge
    path: Path
    begins: str = ""
    ends: str = ""
    span: tuple[float, float] | None = None
    from_still: bool = True

    @staticmethod
    def bridge(edge: Edge, start: Point, end: Point) -> "Run":
        """Cloth that fills a gap of an edge."""
        return Run("bridge", edge, Path.line(start, end))

    @staticmethod
    def shut(edge: Edge, start: Point, end: Point, from_still: bool) -> "Run":
        """A gap that is closed: at most the thickness of a pencil line is left of it."""
        return Run("shut", edge, Path.line(start, end), from_still=from_still)

    @staticmethod
    def leg(name: str, path: Path, begins: str, ends: str) -> "Run":
        """A leg of a dart."""
        return Run("leg", Edge(name, path, begins, ends, "leg"), path, begins, ends)


def moved_runs(piece: Piece, arc: tuple[Span, ...], motion: Transform) -> list[Run]:
    """The stretches of an arc, moved with its part."""
    found: list[Run] = []
    for span in arc:
        edge = piece.outline[span.edge]
        at_start, at_end = span.start <= 0.0, span.end >= edge.length
        path = edge.path if at_start and at_end else edge.path.between(span.start, span.end)
        begins, ends = edge.start if at_start else "", edge.end if at_end else ""
        found.append(Run("stretch", edge, path.transformed(motion), begins, ends, (span.start, span.end)))
    return found


@dataclass
class _Draft:
    """An edge of the new outline in the making."""

    edge: Edge
    path: Path
    begins: str
    ends: str
    is_leg: bool = False
    spans: list[tuple[float, float, float]] = field(default_factory=list)

    def add(self, run: Run) -> None:
        """Carry the edge on by a run that starts where it ends."""
        if run.span is not None:
            self.spans.append((*run.span, self.path.length))
        self.path = self.path.joined(run.path.with_start(self.path.end))
        self.ends = run.ends or self.ends


def grouped(
    piece: Piece, runs: list[Run], children: dict[str, list[DartNames]]
) -> tuple[tuple[Edge, ...], Carried, Splits]:
    """The edges of the new outline, where their old places are now, and which edges became several.

    ``children`` has for each edge in which darts open their names in the direction of the edge.
    """
    drafts = _drafts(_rotated(piece, runs))
    splits: Splits = {}
    names = {edge: _child_names(edge, found, splits) for edge, found in children.items()}
    outline: list[Edge] = []
    carried: Carried = {}
    for draft in drafts:
        waiting = names.get(draft.edge.name, []) if not draft.is_leg else []
        name = waiting.pop(0) if waiting else draft.edge.name
        outline.append(Edge(name, draft.path, draft.begins, draft.ends, draft.edge.kind))
        if name == draft.edge.name and draft.spans:
            carried[name] = tuple(draft.spans)
    return _named_ends(outline), carried, splits


def _rotated(piece: Piece, runs: list[Run]) -> list[Run]:
    """The runs from the first edge of the old outline that still begins where it began."""
    order = {edge.name: index for index, edge in enumerate(piece.outline)}
    starts = [index for index, run in enumerate(runs) if run.kind == "stretch" and run.begins]
    first = min(starts, key=lambda index: order[runs[index].edge.name])
    return [*runs[first:], *runs[:first]]


def _drafts(runs: list[Run]) -> list[_Draft]:
    drafts: list[_Draft] = []
    for index, run in enumerate(runs):
        last = drafts[-1] if drafts else None
        if run.kind == "shut":
            _snap(runs, index, drafts)
        elif last is not None and run.kind != "leg" and last.edge.name == run.edge.name and not last.is_leg:
            if run.path.length > TOLERANCES.join:
                last.add(run)
        elif run.kind != "bridge" or run.path.length > TOLERANCES.join:
            spans = [] if run.span is None else [(*run.span, 0.0)]
            begins = run.begins or (run.edge.start if run.kind == "bridge" else "")
            drafts.append(_Draft(run.edge, run.path, begins, run.ends, run.kind == "leg", spans))
    return drafts


def _snap(runs: list[Run], index: int, drafts: list[_Draft]) -> None:
    """Close what is left of a gap that was shut: the side that moved gives way."""
    gap = runs[index]
    following = (index + 1) % len(runs)
    if gap.from_still or following == 0:
        runs[following] = replace(runs[following], path=runs[following].path.with_start(gap.path.start))
        if following == 0:
            drafts[0].path = drafts[0].path.with_start(gap.path.start)
    else:
        drafts[-1].path = drafts[-1].path.with_end(gap.path.end)


def _child_names(edge: str, found: list[DartNames], splits: Splits) -> list[str]:
    """The names of the parts of an edge between its darts, each cut dividing what the one before left."""
    names: list[str] = []
    rest = edge
    for dart in found:
        before, after = (child_name(rest, role) for role in dart.roles)
        splits[rest] = (before, after)
        names.append(before)
        rest = after
    return [*names, rest]


def _named_ends(outline: list[Edge]) -> tuple[Edge, ...]:
    """Every edge with the names of its ends, from its neighbour where it was cut, and joined exactly."""
    named = list(outline)
    for index, edge in enumerate(named):
        before, after = named[index - 1], named[(index + 1) % len(named)]
        start = before.end if before.kind == "leg" else edge.start or before.end
        end = after.start if after.kind == "leg" else edge.end or after.start
        if edge.kind != "leg":
            named[index] = replace(edge, start=start, end=end)
    for index, edge in enumerate(named):
        goal = named[(index + 1) % len(named)].path.start
        if edge.path.end != goal and edge.path.end.distance_to(goal) <= TOLERANCES.join:
            named[index] = replace(edge, path=edge.path.with_end(goal))
    return tuple(named)
