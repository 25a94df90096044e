"""Which pieces of two sides are so alike that one piece, cut as on the half, serves both.

One sleeve pattern serves two arms where both armholes are one shape, and a front is cut on the fold where
only the sleeves differ; what differs by less than a pencil line shows is one shape.
"""

from dataclasses import replace

from notchbook.geometry import Path
from notchbook.pattern.cut import Notch
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.piece import Piece
from notchbook.pattern.resolve import expand
from notchbook.pattern.sewn import place_distance
from notchbook.units import TOLERANCES

_PLACES = tuple(step / 12 for step in range(13))
"""Where two lines are compared, as shares of their lengths: the ends and eleven places between."""

_ROUND = 4
"""A girth runs over so many half pieces, front and back, twice: its parts must agree this much better."""


def serving_both(right: Pattern, left: Pattern) -> frozenset[str]:
    """The names of the pieces that are alike on both sides, for the left drafted as a right one.

    Alike are pieces whose lines lie within 0.1 mm of each other, with the same notches and cut data.
    """
    return kept_together(right, {name for name in right.pieces if _is_alike(name, right, left)})


def kept_together(pattern: Pattern, alike: set[str]) -> frozenset[str]:
    """The pieces that may stay one for both sides: none that shares a group with a piece that does not."""
    kept = set(alike)
    while leaving := _grouped_with_others(pattern, kept):
        kept -= leaving
    return frozenset(kept)


def _is_alike(name: str, right: Pattern, left: Pattern) -> bool:
    piece, other = right.pieces[name], left.pieces.get(name)
    return (
        other is not None
        and _same_shape(piece, other)
        and _same_runs(right, left, piece)
        and _same_notches(right, left, piece)
        and _same_cut_data(right, left, piece)
    )


def _grouped_with_others(pattern: Pattern, alike: set[str]) -> set[str]:
    """Those that share a group with a piece that differs: its parts must be named alike."""
    found: set[str] = set()
    for name in pattern.groups:
        carriers = {pattern.carriers[member] for member in expand(pattern, name)[0]}
        if carriers - alike:
            found |= carriers & alike
    return found


def names_of_both(right: Pattern, pieces: frozenset[str]) -> frozenset[str]:
    """Every name that belongs to these pieces alone: what is on them, groups, notches, the seams between
    them, elastics, and what became of names that are gone."""
    plain = {part for name in pieces for part in right.pieces[name].names()}
    for name, group in right.groups.items():
        if group.members and set(expand(right, name)[0]) <= plain:
            plain.add(name)
    plain |= {notch.name for notch in right.notches.values() if notch.place.edge in plain}
    plain |= {elastic.name for elastic in right.elastics.values() if set(elastic.edges) <= plain}
    plain |= {
        seam.name
        for seam in right.seams.values()
        if {use.edge for use in (*seam.first, *seam.second)} <= plain
    }
    for name, fate in right.fates.items():
        if name.split("/", 1)[0] in pieces or (fate.into and set(fate.into) <= plain):
            plain.add(name)
    return frozenset(plain)


def _same_shape(right: Piece, left: Piece) -> bool:
    if _bare(right) != _bare(left):
        return False
    edges = zip(right.outline, left.outline, strict=True)
    lines = zip(right.lines, left.lines, strict=True)
    marks = zip(right.marks, left.marks, strict=True)
    drawn_in = zip(right.intakes, left.intakes, strict=True)
    return (
        all(abs(one.amount - other.amount) <= TOLERANCES.closure for one, other in drawn_in)
        and all(_one_line(one.path, other.path) for one, other in edges)
        and all(_one_line(one.path, other.path) for one, other in lines)
        and all(one.position.distance_to(other.position) <= TOLERANCES.closure for one, other in marks)
    )


def _bare(piece: Piece) -> tuple[object, ...]:
    """All that a piece is apart from where its lines lie."""
    return (
        [(edge.name, edge.start, edge.end, edge.kind) for edge in piece.outline],
        [(line.name, line.kind) for line in piece.lines],
        [(mark.name, mark.kind) for mark in piece.marks],
        piece.title,
        [replace(intake, amount=0.0) for intake in piece.intakes],
        piece.inner_darts,
        piece.grain,
        piece.cut,
        piece.side,
        piece.instructions,
        piece.rule,
        piece.stretches,
    )


def _one_line(first: Path, second: Path) -> bool:
    """Whether two lines are as long and lie on each other, within what a pencil line shows."""
    if abs(first.length - second.length) > TOLERANCES.closure:
        return False
    return all(
        first.point_at(share * first.length).distance_to(second.point_at(share * second.length))
        <= TOLERANCES.closure
        for share in _PLACES
    )


def _same_runs(right: Pattern, left: Pattern, piece: Piece) -> bool:
    """Whether what a girth is measured along, level lines and edges of many parts, agrees so well that the
    girth does: each part of such an edge may be off by less than a pencil line, and all together by more."""
    most = TOLERANCES.closure / _ROUND
    other = left.pieces[piece.name]
    own = {edge.name for edge in piece.outline}
    groups = (expand(right, name)[0] for name in right.groups)
    runs = [members for members in groups if members and set(members) <= own]
    return all(
        abs(sum(piece.edge(name).length - other.edge(name).length for name in run)) <= most for run in runs
    ) and all(
        abs(line.path.length - mate.path.length) <= most
        for line, mate in zip(piece.lines, other.lines, strict=True)
        if line.kind == "level"
    )


def _same_notches(right: Pattern, left: Pattern, piece: Piece) -> bool:
    first, second = (_notches_on(pattern, piece) for pattern in (right, left))
    return first.keys() == second.keys() and all(
        _same_notch(right, notch, left, second[name]) for name, notch in first.items()
    )


def _notches_on(pattern: Pattern, piece: Piece) -> dict[str, Notch]:
    own = {edge.name for edge in piece.outline}
    return {
        name: notch
        for name, notch in pattern.notches.items()
        if own & set(expand(pattern, notch.place.edge)[0])
    }


def _same_notch(right: Pattern, notch: Notch, left: Pattern, other: Notch) -> bool:
    if replace(notch, place=other.place) != other:
        return False
    if (notch.place.edge, notch.place.from_point) != (other.place.edge, other.place.from_point):
        return False
    away = place_distance(right, notch.place) - place_distance(left, other.place)
    return abs(away) <= TOLERANCES.closure


def _same_cut_data(right: Pattern, left: Pattern, piece: Piece) -> bool:
    names = set(piece.names()) | {
        name for name in right.groups if set(expand(right, name)[0]) & set(piece.names())
    }
    return all(
        right.allowances.get(name) == left.allowances.get(name)
        and right.corners.get(name) == left.corners.get(name)
        for name in names
    )
