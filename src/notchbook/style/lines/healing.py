"""A cut that is joined again heals: where nothing was told of its two parts, an edge is one again."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

from notchbook.geometry import Path
from notchbook.pattern import Edge, InternalLine, Pattern, Piece, child_name
from notchbook.style.lines.truing import turn_between
from notchbook.units import TOLERANCES

WHOLE = "whole"
"""What an edge or line is called, under the name that it had before the cut, when it is one again."""

_RUNS_ON = 0.01
"""Degrees; two parts of one cut edge run on into each other but for arithmetic."""

ONE_AGAIN = "the edge that was cut there is one again"


@dataclass(frozen=True)
class Healed:
    """The pattern with the edges and lines that are one again, and the account of their names."""

    pattern: Pattern
    splits: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    merges: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    removals: Mapping[str, str] = field(default_factory=dict)


def healed(pattern: Pattern, piece: str, corners: tuple[str, str]) -> Healed:
    """The joined piece healed at the corners where the join ends, and along the lines that run across it.

    An edge stays in two parts where it has a corner there, or where a seam, notch, allowance, elastic or
    intake is told of one of its parts alone.
    """
    done = Healed(pattern)
    for corner in corners:
        done = _healed_at(done, piece, corner)
    for group, members in _divided_lines(done.pattern, piece):
        done = _with_line(done, piece, group, members)
    return done


def _healed_at(done: Healed, piece_name: str, corner: str) -> Healed:
    pattern = done.pattern
    piece = pattern.pieces[piece_name]
    before = next(edge for edge in piece.outline if edge.end == corner)
    after = next(edge for edge in piece.outline if edge.start == corner)
    group = _group_of(pattern, before.name, after.name)
    told = {before.name, after.name, corner} & _told_of(pattern)
    runs_on = before.kind == after.kind and abs(turn_between(before.path, after.path)) < _RUNS_ON
    if group is None or told or not runs_on:
        return done
    name = child_name(group, WHOLE)
    whole = Edge(name, before.path.joined(after.path), before.start, after.end, before.kind)
    outline = tuple(whole if edge is before else edge for edge in piece.outline if edge is not after)
    return _recorded(
        done, replace(piece, outline=outline), group, (before.name, after.name), {corner: ONE_AGAIN}
    )


def _recorded(
    done: Healed, piece: Piece, group: str, parts: tuple[str, str], removals: Mapping[str, str]
) -> Healed:
    """The account of two members of a group that are one again."""
    name = child_name(group, WHOLE)
    members = done.splits.get(group, done.pattern.groups[group].members)
    kept = tuple(dict.fromkeys(name if member in parts else member for member in members))
    return Healed(
        done.pattern.with_pieces(piece),
        {**done.splits, group: kept},
        {**done.merges, **dict.fromkeys(parts, (name,))},
        {**done.removals, **removals},
    )


def _group_of(pattern: Pattern, first: str, second: str) -> str | None:
    """The group in which the two stand side by side."""
    for name, group in pattern.groups.items():
        for pair in zip(group.members, group.members[1:], strict=False):
            if set(pair) == {first, second}:
                return name
    return None


def _told_of(pattern: Pattern) -> set[str]:
    """The edges and points of which something is told by their own name."""
    told = {use.edge for seam in pattern.seams.values() for use in (*seam.first, *seam.second)}
    told |= {use.starts_at for seam in pattern.seams.values() for use in (*seam.first, *seam.second)}
    told |= {
        name for notch in pattern.notches.values() for name in (notch.place.edge, notch.place.from_point)
    }
    told |= {edge for elastic in pattern.elastics.values() for edge in elastic.edges}
    told |= {name for intake in pattern.intakes.values() for name in (intake.mouth, intake.edge)}
    return told | set(pattern.allowances) | set(pattern.corners)


def _divided_lines(pattern: Pattern, piece_name: str) -> Iterator[tuple[str, tuple[str, str]]]:
    """Groups of two internal lines of the piece that meet end to end."""
    lines = {line.name: line for line in pattern.pieces[piece_name].lines}
    for name, group in pattern.groups.items():
        if len(group.members) == 2 and set(group.members) <= set(lines):
            first, second = (lines[member] for member in group.members)
            if first.path.end.distance_to(second.path.start) <= TOLERANCES.join:
                yield name, (first.name, second.name)


def _with_line(done: Healed, piece_name: str, group: str, parts: tuple[str, str]) -> Healed:
    piece = done.pattern.pieces[piece_name]
    first, second = (piece.line(part) for part in parts)
    path = Path((*first.path.segments, *second.path.segments))
    whole = InternalLine(child_name(group, WHOLE), path, first.kind)
    lines = tuple(whole if line is first else line for line in piece.lines if line is not second)
    intakes = tuple(one.relined(dict.fromkeys(parts, whole.name)) for one in piece.intakes)
    return _recorded(done, replace(piece, lines=lines, intakes=intakes), group, parts, {})
