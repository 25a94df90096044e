"""Pieces of the wearer's two sides: whole pieces made of two halves, left and right ones of a pair."""

from collections.abc import Callable, Iterable
from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Point, Transform
from notchbook.pattern.cut import Notch
from notchbook.pattern.folding import edges_off_fold, fold_line, fold_points, folds
from notchbook.pattern.names import Side, spoken, with_side
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.piece import Edge, InternalLine, Piece
from notchbook.pattern.place import Place
from notchbook.units import TOLERANCES

_UPRIGHT = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))
"""The left side is drafted as a right side; across the grain it becomes a left."""


def namer(side: Side, plain: Iterable[str]) -> Callable[[str], str]:
    """Gives a name its side, but for the plain ones, which belong to both."""
    kept = frozenset(plain)
    return lambda name: name if name in kept else with_side(name, side)


def names_on_folds(pattern: Pattern) -> frozenset[str]:
    """Names that both halves of a piece on the fold share: its own and the ends of its fold."""
    found: set[str] = set()
    for piece in pattern.pieces.values():
        if piece.cut == "fold":
            found.add(piece.name)
            found |= fold_points(piece) | {fold.name for fold in folds(piece)}
    return frozenset(found)


def both_sides(right: Piece | None, left: Piece | None, shared: frozenset[str]) -> list[Piece]:
    """What becomes of a piece that is not alike on both sides; ``shared`` are the names on folds.

    Either may be missing: a step for one side made or removed it.
    """
    if right is not None and left is not None and right.cut == "fold":
        return [_whole(right, left, shared)]
    sides: tuple[tuple[Side, Piece | None], ...] = (("right", right), ("left", left))
    return [_sided(piece, side, shared) for side, piece in sides if piece is not None]


def center_notches(half: Piece) -> tuple[Notch, Notch]:
    """Notches at both ends of what was the fold: a whole piece needs its center marked."""
    run, around = folds(half), edges_off_fold(half)
    first, second = (
        Notch(f"{point}_notch", Place(with_side(edge.name, "right"), point, 0.0), purpose="center")
        for edge, point in ((around[-1], run[0].start), (around[0], run[-1].end))
    )
    return first, second


def _sided(piece: Piece, side: Side, shared: frozenset[str]) -> Piece:
    placed = piece.transformed(_UPRIGHT) if side == "left" else piece
    return replace(placed.renamed(namer(side, shared)), cut="single", side=side)


def _whole(right: Piece, left: Piece, shared: frozenset[str]) -> Piece:
    """The whole piece of two halves drawn to a fold; their folds must be the same line."""
    fold_right, fold_left = fold_line(right), fold_line(left)
    gap = max(fold_right.start.distance_to(fold_left.start), fold_right.end.distance_to(fold_left.end))
    if gap > TOLERANCES.closure:
        raise StepRefused(
            "fold-sides-differ",
            piece=spoken(right.name),
            right=fold_right.length,
            left=fold_left.length,
            gap=gap,
        )
    mirror = Transform.reflection(fold_right.start, fold_right.end)
    half = right.renamed(namer("right", shared))
    other = left.transformed(mirror).renamed(namer("left", shared))
    centers = tuple(InternalLine(fold.name, fold.path, "match") for fold in folds(right))
    return replace(
        half,
        name=right.name,
        outline=_snapped(list(edges_off_fold(half)), list(edges_off_fold(other))),
        intakes=(*half.intakes, *other.intakes),
        lines=(*half.lines, *other.lines, *centers),
        marks=(*half.marks, *other.marks),
        inner_darts=(*half.inner_darts, *other.inner_darts),
        cut="single",
    )


def _snapped(first: list[Edge], second: list[Edge]) -> tuple[Edge, ...]:
    """Two runs of edges laid end to end, the second snapped to the ends of the first."""
    head = replace(second[0], path=second[0].path.with_start(first[-1].path.end), start=first[-1].end)
    second = [head, *second[1:]]
    tail = replace(second[-1], path=second[-1].path.with_end(first[0].path.start), end=first[0].start)
    return (*first, *second[:-1], tail)
