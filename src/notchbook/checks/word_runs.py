"""Whole edges found by the word that they are called by, as lines with their darts closed."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from notchbook.checks.measured import Dense, dense
from notchbook.pattern import Edge, Intake, Pattern, Piece, Side, split_side
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import expand
from notchbook.units import TOLERANCES

Spots = NDArray[np.complex128]
"""Places as complex numbers x + iy, mm: to turn them is to multiply."""


@dataclass(frozen=True, eq=False)
class WordRun:
    """An edge or group of one piece that is called by a word, darts in it closed.

    ``line`` lies in the frame of its first point; it runs with the outline (counter-clockwise round the
    piece) unless it was turned about. ``first_point`` and ``last_point`` are the names of its ends.
    """

    name: str
    piece: Piece
    edges: tuple[Edge, ...]
    line: Dense
    first_point: str
    last_point: str

    @property
    def goes_round(self) -> bool:
        """Whether it runs with the outline: then the piece lies on its left."""
        return self.first_point == self.edges[0].start

    @property
    def word(self) -> str:
        """What the edge is called by."""
        return last_word(self.name)

    @property
    def panel(self) -> str:
        """``front`` or ``back`` where the name of the piece says it, else ""."""
        words = last_word(self.piece.name).split("_")
        return next((word for word in words if word in ("front", "back")), "")

    @property
    def instance(self) -> str:
        """The block or step that named the piece."""
        return self.piece.name.split(".", 1)[0]

    @property
    def side(self) -> Side:
        """The wearer's side, where the two differ."""
        return split_side(self.name)[1]

    def from_point(self, word: str) -> "WordRun | None":
        """The run walked from the end that is called by this word; None when neither end is."""
        if last_word(self.first_point) == word:
            return self
        if last_word(self.last_point) != word:
            return None
        closed = _closed(self.piece, self.edges)
        if closed is None:
            return None
        spots = (closed.points[::-1] - closed.shift) / closed.turn
        return replace(self, line=_polyline(spots), first_point=self.last_point, last_point=self.first_point)


def word_runs(pattern: Pattern, *words: str) -> Iterator[WordRun]:
    """Every edge or group called by one of these words that lies whole on one piece.

    One that a style line has shared out between pieces is left out: it has no shape of its own there.
    """
    for name, kind in pattern.index.items():
        if kind not in ("edge", "group") or last_word(name) not in words:
            continue
        members, gone = expand(pattern, name)
        carriers = {pattern.carriers.get(member) for member in members}
        if gone or len(carriers) != 1 or any(pattern.index.get(m) != "edge" for m in members):
            continue
        piece = pattern.piece_of(members[0])
        edges = tuple(piece.edge(member) for member in members)
        closed = _closed(piece, edges)
        if closed is not None:
            yield WordRun(name, piece, edges, _polyline(closed.points), edges[0].start, edges[-1].end)


@dataclass(frozen=True, slots=True)
class _Turned:
    """The points of a run with its darts closed, and the turn and shift that laid its last edge there."""

    points: Spots
    turn: complex
    shift: complex


def _closed(piece: Piece, edges: tuple[Edge, ...]) -> _Turned | None:
    """The points along the edges, each dart or fold between two of them closed; None where anything else
    lies between."""
    turn, shift = complex(1.0), complex(0.0)
    rows = [_spots(edges[0])]
    for before, after in pairwise(edges):
        darts = _darts_between(piece, before, after)
        if darts is None:
            return None
        for intake in darts:
            closing, moved = _closing(piece, intake)
            shift += turn * moved
            turn *= closing
        rows.append(turn * _spots(after) + shift)
    return _Turned(np.concatenate(rows), turn, shift)


def _closing(piece: Piece, intake: Intake) -> tuple[complex, complex]:
    """The turn and then the shift that close an intake: a dart about its point, a fold line to line."""
    if intake.is_folded:
        still, moved = piece.line(intake.first_line).path, piece.line(intake.second_line).path
        onto, place = complex(still.start.x, still.start.y), complex(moved.start.x, moved.start.y)
        goal, wide = complex(still.end.x, still.end.y) - onto, complex(moved.end.x, moved.end.y) - place
    else:
        first, second = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
        onto = place = complex(second.start.x, second.start.y)
        goal, wide = complex(first.start.x, first.start.y) - onto, complex(second.end.x, second.end.y) - place
    if abs(wide) <= TOLERANCES.sew_length:
        return complex(1.0), onto - place
    turn = goal / wide
    turn /= abs(turn)
    return turn, onto - turn * place


def _darts_between(piece: Piece, before: Edge, after: Edge) -> list[Intake] | None:
    """The darts and folds met on the outline between two edges; None where another edge comes first."""
    by_leg = {intake.first_leg: intake for intake in piece.intakes if intake.has_legs}
    seconds = {intake.second_leg for intake in piece.intakes if intake.has_legs}
    count = len(piece.outline)
    index = piece.edge_index(before.name)
    found: list[Intake] = []
    for step in range(1, count):
        edge = piece.outline[(index + step) % count]
        if edge.name == after.name:
            return found
        if edge.name in by_leg:
            found.append(by_leg[edge.name])
        elif edge.name not in seconds:
            return None
    return None


def _spots(edge: Edge) -> Spots:
    points = dense(edge.path).points
    return np.asarray(points[:, 0] + 1j * points[:, 1])


def _polyline(spots: Spots) -> Dense:
    """The polyline through the places, those that stand twice taken once."""
    steps = np.abs(np.diff(spots))
    kept = np.concatenate(([True], steps > 0.0))
    points = np.column_stack([spots[kept].real, spots[kept].imag])
    return Dense(points, np.concatenate(([0.0], np.cumsum(steps[steps > 0.0]))))
