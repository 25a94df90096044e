"""Gathers, eases and folds beside a line: what it may not cut, and on which part each goes on."""

from collections.abc import Collection

from notchbook.errors import StepRefused
from notchbook.pattern import Intake, Pattern, Piece, spoken
from notchbook.pattern.resolve import expand


def taken_edges(pattern: Pattern, intake: Intake) -> frozenset[str]:
    """The edges that an intake takes up: its legs, or every edge of the stretch that is drawn in."""
    if intake.is_drawn_in:
        return frozenset(expand(pattern, intake.edge)[0])
    return frozenset((intake.first_leg, intake.second_leg))


def lies_on(pattern: Pattern, intake: Intake, edges: Collection[str]) -> bool:
    """Whether the intake lies on these edges. A line never cuts what is taken up, so all of it or none."""
    return taken_edges(pattern, intake) <= set(edges)


def require_no_fullness(pattern: Pattern, piece: Piece, *edges: str) -> None:
    """StepRefused ``line-through-fullness`` where one of the edges that a line cuts is gathered, eased or a
    fold."""
    for intake in piece.intakes:
        taken = taken_edges(pattern, intake)
        for edge in edges:
            if edge in taken:
                raise StepRefused("line-through-fullness", edge=spoken(edge), intake=spoken(intake.name))
