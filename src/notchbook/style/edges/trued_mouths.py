"""The mouths of darts whose legs were cut and spread: closed, the edge runs smooth over them as before."""

from collections.abc import Iterable
from dataclasses import replace

from notchbook.geometry import Path
from notchbook.pattern import Edge, Intake, Piece
from notchbook.pattern.closing import close_run
from notchbook.style.lines.truing import trued, turn_between

_LEAST_TURN = 0.3
"""Degrees below which a corner is left as it is: a protractor does not show it."""

_MOST_TURN = 20.0
"""Degrees above which the edge was not meant to be smooth there. Own judgment."""

_LOST = 0.005
"""mm that a mouth may cost: with eight darts a waist is then as long as was promised, to half a tenth."""


def trued_mouths(before: Piece, after: Piece, darts: Iterable[Intake]) -> Piece:
    """The piece with the mouths of these darts drawn smooth where they were so before the darts were spread.

    A longer dart of the same width takes a smaller angle: closed, the edges beside it meet at a corner. Both
    are drawn anew over a hand's breadth at most, and the legs end on the new line, each as long as the other.
    """
    for dart in darts:
        if (
            abs(_corner(before, dart)) <= _LEAST_TURN
            and _LEAST_TURN < abs(_corner(after, dart)) <= _MOST_TURN
        ):
            after = _trued(after, dart)
    return after


def _run(piece: Piece, dart: Intake) -> tuple[Edge, Edge, Edge, Edge]:
    first, second = piece.edge(dart.first_leg), piece.edge(dart.second_leg)
    return piece.edge_before(first.name), first, second, piece.edge_after(second.name)


def _corner(piece: Piece, dart: Intake) -> float:
    """By how many degrees the edge turns at the mouth with the dart closed."""
    laid = close_run(_run(piece, dart), (dart,), 0).edges
    return turn_between(laid[0].path, laid[-1].path)


def _trued(piece: Piece, dart: Intake) -> Piece:
    before, first, second, after = _run(piece, dart)
    closed = close_run((before, first, second, after), (dart,), 0)
    laid = trued([closed.edges[0].path, closed.edges[-1].path], _LOST)
    drawn: dict[str, Path] = {
        before.name: laid[0],
        after.name: laid[1].transformed(closed.motions[1].inverse()),
    }
    drawn[first.name] = first.path.with_start(drawn[before.name].end)
    drawn[second.name] = second.path.with_end(drawn[after.name].start)
    # The far end of the edge that was laid back is where it was, but for the arithmetic.
    drawn[after.name] = drawn[after.name].with_end(after.path.end)
    return replace(
        piece, outline=tuple(replace(edge, path=drawn.get(edge.name, edge.path)) for edge in piece.outline)
    )
