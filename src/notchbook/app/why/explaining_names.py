"""Why an edge is as it is: which steps made it, from which measures, and by how much each moved it."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from notchbook.app.drift import edge_drift
from notchbook.body import Measure
from notchbook.errors import InputError
from notchbook.geometry import Path
from notchbook.pattern import Pattern, spoken
from notchbook.pattern.names import last_word, split_side
from notchbook.pattern.pattern import NameKind
from notchbook.pattern.resolve import expand
from notchbook.recipe import LedgerEntry, Replay, StepRecord, StepState
from notchbook.recipe.track import Track
from notchbook.units import quoted, suggestion

Deed = Literal["made", "changed", "divided", "joined"]
"""What a step did to it: gave the name, moved or reshaped it, made parts of it, put it into another."""


@dataclass(frozen=True, slots=True)
class MeasureRead:
    """A measure that a step asked for; ``measure`` is None where the body does not have it."""

    key: str
    measure: Measure | None


@dataclass(frozen=True, slots=True)
class Doing:
    """What one step did.

    ``names`` are those that it touched, ``came_from`` those that it divided or joined into them; ``moved`` is
    the largest way that a line or point of them went, mm, in the frame of its piece, None where they were
    made here.
    """

    record: StepRecord
    deed: Deed
    names: tuple[str, ...]
    came_from: tuple[str, ...]
    moved: float | None
    reads: tuple[MeasureRead, ...]


@dataclass(frozen=True, slots=True)
class WhySo:
    """A name with its history, the first step first; ``lines`` are the edges and points behind it."""

    name: str
    kind: NameKind
    lines: tuple[str, ...]
    doings: tuple[Doing, ...]

    @property
    def said(self) -> str:
        """The name as it is said."""
        return spoken(self.name)


def why_so(run: Replay, word: str) -> WhySo:
    """The history of an edge, point, dart, seam, notch or piece of a run, by its name or a single word of it.

    InputError ``explain-name-unknown`` (with the nearest), ``explain-name-ambiguous``.
    """
    pattern = run.pattern
    name = named(pattern, word)
    lines = lines_of(pattern, name)
    found: list[Doing] = []
    known = {name, *lines}
    for state, before, side_apart in _backward(run, name):
        if side_apart:
            known = {split_side(one)[0] for one in known}
        doing, known = _doing(run, state, before, known)
        if doing is not None:
            found.append(doing)
    return WhySo(name, pattern.index[name], lines, tuple(reversed(found)))


def named(pattern: Pattern, word: str) -> str:
    """The one living name that a word means."""
    if word in pattern.index:
        return word
    found = [name for name in pattern.index if last_word(name) == word]
    if len(found) > 1:
        raise InputError("explain-name-ambiguous", word=quoted(word), known=tuple(found))
    if not found:
        near = suggestion(word, tuple(pattern.index))
        raise InputError("explain-name-unknown", word=quoted(word), suggestion=near)
    return found[0]


def lines_of(pattern: Pattern, name: str) -> tuple[str, ...]:
    """The edges, lines and points that a name stands for."""
    kind = pattern.index[name]
    if kind == "group":
        return expand(pattern, name)[0]
    if kind == "piece":
        return tuple(edge.name for edge in pattern.pieces[name].outline)
    if kind == "intake":
        intake = pattern.intakes[name]
        legs = (intake.first_leg, intake.second_leg, intake.edge, intake.point)
        return tuple(one for one in legs if one)
    if kind == "inner_dart":
        dart = next(one for one in pattern.piece_of(name).inner_darts if one.name == name)
        return (dart.center_leg, dart.side_leg)
    if kind == "seam":
        uses = (*pattern.seams[name].first, *pattern.seams[name].second)
        return tuple(dict.fromkeys(one for use in uses for one in expand(pattern, use.edge)[0]))
    return (name,)


def _backward(run: Replay, name: str) -> Iterator[tuple[StepState, Pattern, bool]]:
    """Each state, the last first, with the pattern before it, and whether here the sides are apart."""
    side = run.left if run.left is not None and split_side(name)[1] == "left" else run.right
    for track in (run.whole, side):
        if track is not None:
            for state, before in _states(track):
                yield state, before, track is side and run.left is not None


def _states(track: Track) -> Iterator[tuple[StepState, Pattern]]:
    for index in range(len(track.states) - 1, -1, -1):
        yield track.states[index], track.states[index - 1].pattern if index else track.start


def _doing(run: Replay, state: StepState, before: Pattern, known: set[str]) -> tuple[Doing | None, set[str]]:
    """What a step did to these names, and the names from which they came."""
    entry = state.entry
    parents = _parents(entry, known)
    touched = [name for name in (*entry.created, *entry.modified) if name in known]
    came_from = (known - set(entry.created)) | parents
    if not touched and not parents:
        return None, came_from
    reads = tuple(
        dict.fromkeys(MeasureRead(key, run.measures.find(key, side)) for key, side, _ in state.reads)
    )
    moved = _moved(before, state.pattern, parents | known)
    deed = _deed(entry, known, parents)
    return Doing(state.record, deed, tuple(touched), tuple(sorted(parents)), moved, reads), came_from


def _parents(entry: LedgerEntry, known: set[str]) -> set[str]:
    """The names that were divided into these, or joined into them."""
    split = {old for old, parts in entry.split if known & {old, *parts}}
    return split | {old for old, heirs in entry.merged if known & set(heirs)}


def _deed(entry: LedgerEntry, known: set[str], parents: set[str]) -> Deed:
    if parents & {old for old, _ in entry.split}:
        return "divided"
    if parents:
        return "joined"
    return "changed" if known & set(entry.modified) else "made"


def _moved(before: Pattern, after: Pattern, names: set[str]) -> float | None:
    """The largest way that one of the named lines and points went, mm; None where none was there before."""
    ways = [way for name in names if (way := line_moved(before, after, name)) is not None]
    return max(ways, default=None)


def line_moved(before: Pattern, after: Pattern, name: str) -> float | None:
    """How far an edge, line or point went, mm, in the frames of its pieces; None where it is not in both.

    Of an edge that was divided: how far its parts lie from where it ran.
    """
    old = _shape(before, name)
    if old is None:
        return None
    now = _shape(after, name)
    if now is None:
        parts = [_shape(after, part) for part in expand(after, name)[0]] if name in after.groups else []
        gaps = [_farthest(part, old) for part in parts if part is not None]
        return max(gaps, default=None)
    return 0.0 if now == old else edge_drift(old, now)


def _farthest(part: Path, old: Path) -> float:
    places = [part.length * share / 24 for share in range(25)]
    return max(old.nearest(part.point_at(place)).gap for place in places)


def _shape(pattern: Pattern, name: str) -> Path | None:
    """The line of an edge or internal line, a point as a line of no length."""
    carrier = pattern.carriers.get(name)
    if carrier is None:
        return None
    piece = pattern.pieces[carrier]
    if name in pattern.edges:
        return pattern.edges[name].path
    if name in piece.points:
        return Path.line(piece.points[name], piece.points[name])
    return next((line.path for line in piece.lines if line.name == name), None)
