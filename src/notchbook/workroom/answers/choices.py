"""What the fields of a step may be filled with: the names that live on the pattern when it runs."""

from collections.abc import Iterator

from notchbook.errors import NotchbookError
from notchbook.pattern import Pattern, require, sewn_length, spoken
from notchbook.recipe import Replay
from notchbook.workroom.answers.form import Answer, Named
from notchbook.workroom.reader import Reader


class EdgeChoice(Answer):
    """An edge, or the group that it has become, with its two ends and its length as sewn."""

    name: str
    said: str
    length_text: str
    members: tuple[str, ...]
    ends: tuple[Named, Named]


class NameChoices(Answer):
    """Everything that a step may refer to."""

    edges: tuple[EdgeChoice, ...]
    levels: tuple[Named, ...]
    intakes: tuple[Named, ...]
    pieces: tuple[Named, ...]
    notches: tuple[Named, ...]
    inner_darts: tuple[Named, ...]
    pivots: tuple[Named, ...]
    seams: tuple[Named, ...]


def choices_by_step(replay: Replay, reader: Reader) -> dict[str, NameChoices]:
    """The names for each step by its id, and under ``""`` those for a step that is added at the end.

    A recipe speaks of one side for both, so the names are those of the wearer's right side until the
    garment is laid together.
    """
    last = replay.right.pattern if replay.left is not None else replay.pattern
    found = {"": name_choices(last, reader)}
    for record in replay.recipe.ordered():
        found[record.id] = name_choices(_before(replay, record.id), reader)
    return found


def _before(replay: Replay, step: str) -> Pattern:
    """The pattern on which a step runs; for one that has not run, the last good one."""
    whole = replay.whole if replay.left is None else None  # else it speaks of one side for both
    for track in (replay.right, replay.left, whole):
        pattern = None if track is None else track.start
        for state in () if track is None else track.states:
            if state.record.id == step and pattern is not None:
                return pattern
            pattern = state.pattern
    return replay.pattern if replay.left is None else replay.right.pattern


def name_choices(pattern: Pattern, reader: Reader) -> NameChoices:
    """The names on this pattern, edges in the order of the pieces, groups after them; no dart legs."""
    plain = [edge.name for edge in pattern.edges.values() if edge.kind != "leg"]
    found = [_edge(pattern, name, reader) for name in (*plain, *pattern.groups)]
    return NameChoices(
        edges=tuple(edge for edge in found if edge is not None),
        levels=tuple(Named(name=name, said=spoken(name)) for name in _levels(pattern)),
        intakes=tuple(Named(name=name, said=spoken(name)) for name in pattern.intakes),
        pieces=tuple(Named(name=piece.name, said=piece.title) for piece in pattern.pieces.values()),
        notches=tuple(Named(name=name, said=spoken(name)) for name in pattern.notches),
        inner_darts=tuple(
            Named(name=dart.name, said=spoken(dart.name))
            for piece in pattern.pieces.values()
            for dart in piece.inner_darts
        ),
        pivots=tuple(Named(name=name, said=spoken(name)) for name in _pivots(pattern)),
        seams=tuple(Named(name=name, said=spoken(name)) for name in pattern.seams),
    )


def _levels(pattern: Pattern) -> Iterator[str]:
    """The levels and centers drawn on the pieces; of one that darts or cuts divide, its whole first."""
    lines = [line for piece in pattern.pieces.values() for line in piece.lines]
    parts = {line.name for line in lines if line.kind in ("level", "match")}
    yield from (name for name, group in pattern.groups.items() if parts & set(group.members))
    yield from (line.name for line in lines if line.name in parts)


def _pivots(pattern: Pattern) -> Iterator[str]:
    """The points inside the pieces: marks, and the points of darts."""
    for piece in pattern.pieces.values():
        yield from (mark.name for mark in piece.marks if mark.kind != "datum")
        yield from (dart.point for dart in piece.darts)


def _edge(pattern: Pattern, name: str, reader: Reader) -> EdgeChoice | None:
    try:
        members = require(pattern, name)
        length = sewn_length(pattern, name)
    except NotchbookError:
        return None  # a group of pieces, or one that has lost a part: not an edge to be chosen
    ends = (pattern.edges[members[0]].start, pattern.edges[members[-1]].end)
    return EdgeChoice(
        name=name,
        said=spoken(name),
        length_text=reader.text(length),
        members=members,
        ends=(Named(name=ends[0], said=_end(ends[0])), Named(name=ends[1], said=_end(ends[1]))),
    )


def _end(name: str) -> str:
    return spoken(name).split(", ", 1)[-1]
