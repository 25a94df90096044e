"""Fullness that is taken up again when sewn: a stretch of an edge becomes a gather or an ease."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Literal

from notchbook.pattern import (
    Edge,
    EdgeUse,
    Intake,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    child_name,
    directed,
    part_name,
    piece_name,
    require,
    split_side,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.sewn import run_of, sewn_edge_length
from notchbook.units import TOLERANCES

TakeUp = Literal["none", "gather", "ease"]
"""What is done with fullness where an edge is sewn: nothing, drawn in to small folds, eased in flat."""

_WORDS = {"gather": "gathered", "ease": "eased"}
_SAID = {"gather": "gathers", "ease": "ease"}


@dataclass(frozen=True, slots=True)
class Stretch:
    """What is taken up: from ``begin`` to ``finish`` (mm, as sewn before it opened) along ``edge`` (or group)
    from its end ``from_point``, as ``take`` says."""

    edge: str
    from_point: str
    begin: float
    finish: float
    take: Literal["gather", "ease"]


@dataclass(frozen=True, slots=True)
class TakenUp:
    """The pattern with its fullness taken up, and which edges became several."""

    pattern: Pattern
    splits: Mapping[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class _Range:
    """Where on one member of the edge the fullness lies, mm along the member as it was, in its direction."""

    member: Edge
    low: float
    high: float
    forward: bool


def taken_up(before: Pattern, after: Pattern, slug: str, stretch: Stretch) -> TakenUp:
    """``after`` with what it is longer by than ``before``, within the stretch, declared as drawn in.

    As sewn the edge is then as long as before. A part of it that opened by nothing has its intake all the
    same, of 0, so that names do not depend on the body. Where the stretch ends within an edge, the edge is
    divided under its own name: a notch comes there by itself; its mate is set on what is sewn to the edge.
    """
    splits: dict[str, tuple[str, ...]] = {}
    for found in _ranges(before, stretch):
        piece = after.piece_of(found.member.name)
        opened = max(piece.edge(found.member.name).length - found.member.length, 0.0)
        owner = piece_name(slug, last_word(piece.name))
        drawn, piece = _divided(piece, found, owner, opened, stretch.take, splits)
        words = _words(found.member.name)
        intake = Intake(
            part_name(owner, f"{words}_{stretch.take}"),
            stretch.edge,
            kind=stretch.take,
            edge=drawn,
            amount=opened,
        )
        after = after.with_pieces(replace(piece, intakes=(*piece.intakes, intake)))
    after = after.with_notches(*_mates(before, slug, stretch))
    return TakenUp(after, splits)


def _words(edge: str) -> str:
    """All words of an edge's name in one."""
    return split_side(edge)[0].split("/", 1)[1].replace("/", "_")


def _ranges(before: Pattern, stretch: Stretch) -> Iterator[_Range]:
    travelled = 0.0
    for step in directed(before, stretch.edge, stretch.from_point):
        sewn = sewn_edge_length(before, step.edge)
        low, high = max(stretch.begin - travelled, 0.0), min(stretch.finish - travelled, sewn)
        travelled += sewn
        if high - low <= TOLERANCES.closure:
            continue
        scale = step.edge.length / sewn
        low, high = low * scale, high * scale
        if not step.forward:
            low, high = step.edge.length - high, step.edge.length - low
        yield _Range(step.edge, low, high, step.forward)


def _divided(
    piece: Piece,
    found: _Range,
    owner: str,
    opened: float,
    take: Literal["gather", "ease"],
    splits: dict[str, tuple[str, ...]],
) -> tuple[str, Piece]:
    """The edge that is drawn in, and the piece with the edge divided where the stretch ends within it."""
    edge = piece.edge(found.member.name)
    first, last = ("near", "far") if found.forward else ("far", "near")
    marks = ("begin", "finish") if found.forward else ("finish", "begin")
    cuts = [(found.low, first, marks[0]), (found.high + opened, last, marks[1])]
    parts: list[Edge] = []
    rest, travelled = replace(edge, name=child_name(edge.name, _WORDS[take])), 0.0
    low, high = cuts
    if low[0] > TOLERANCES.closure:
        before, after = rest.path.split_at(low[0])
        point = part_name(owner, f"{_words(edge.name)}_{take}_{low[2]}")
        parts.append(replace(edge, name=child_name(edge.name, low[1]), path=before, end=point))
        rest, travelled = replace(rest, path=after, start=point), low[0]
    if high[0] < edge.length - TOLERANCES.closure:
        before, after = rest.path.split_at(high[0] - travelled)
        point = part_name(owner, f"{_words(edge.name)}_{take}_{high[2]}")
        parts.append(replace(rest, path=before, end=point))
        parts.append(replace(edge, name=child_name(edge.name, high[1]), path=after, start=point))
    else:
        parts.append(rest)
    if len(parts) == 1:
        return edge.name, piece
    splits[edge.name] = tuple(part.name for part in parts)
    index = piece.edge_index(edge.name)
    outline = (*piece.outline[:index], *parts, *piece.outline[index + 1 :])
    return rest.name, replace(piece, outline=outline)


def _mates(before: Pattern, slug: str, stretch: Stretch) -> Iterator[Notch]:
    """Where the stretch ends within the edge: a notch across the seam, on what it is drawn in to."""
    walk = directed(before, stretch.edge, stretch.from_point)
    whole = sum(sewn_edge_length(before, step.edge) for step in walk)
    seam = seam_of(before, stretch.edge)
    if seam is None:
        return
    for word, distance in (("begin", stretch.begin), ("finish", stretch.finish)):
        if not TOLERANCES.closure < distance < whole - TOLERANCES.closure:
            continue
        for place in _mate(before, seam, Place(stretch.edge, stretch.from_point, distance)):
            owner = piece_name(slug, last_word(before.carriers[place.edge]))
            name = part_name(owner, f"{_words(stretch.edge)}_{stretch.take}_{word}_notch")
            yield Notch(name, place, purpose=f"{_SAID[stretch.take]} {word}")


def seam_of(pattern: Pattern, edge: str) -> Seam | None:
    """The seam that sews the edge to others; None where none does, or more than one."""
    members = set(require(pattern, edge))
    found = [
        seam
        for seam in pattern.seams.values()
        if members & {step.edge.name for run in (seam.first, seam.second) for step in run_of(pattern, run)}
    ]
    return found[0] if len(found) == 1 else None


def _mate(pattern: Pattern, seam: Seam, place: Place) -> Iterator[Place]:
    """The place across the seam, as sewn; none where the seam sews the edge to itself."""
    members = set(require(pattern, place.edge))
    for run, other in ((seam.first, seam.second), (seam.second, seam.first)):
        distance = _along_run(pattern, run, members, place)
        if distance is None:
            continue
        for step in run_of(pattern, other):
            sewn = sewn_edge_length(pattern, step.edge)
            if step.edge.name in members:
                return
            if distance <= sewn + TOLERANCES.sew_length:
                yield Place(step.edge.name, step.start, min(distance, sewn))
                return
            distance -= sewn


def _along_run(pattern: Pattern, run: tuple[EdgeUse, ...], members: set[str], place: Place) -> float | None:
    """How far along a run the place lies, as sewn; None where the run does not hold the edge."""
    steps = run_of(pattern, run)
    inside = [index for index, step in enumerate(steps) if step.edge.name in members]
    if not inside:
        return None
    before = sum(sewn_edge_length(pattern, step.edge) for step in steps[: inside[0]])
    within = sum(sewn_edge_length(pattern, steps[index].edge) for index in inside)
    starts_there = steps[inside[0]].start == place.from_point
    return before + (place.amount if starts_there else within - place.amount)
