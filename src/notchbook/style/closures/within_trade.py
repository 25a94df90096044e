"""Amounts of closures held against what is usual in the trade: one far off is told, and still drawn."""

from collections.abc import Iterator, Mapping

from notchbook.pattern import Finding
from notchbook.recipe.style_figure import RangedFigure
from notchbook.style import _ranged_amount
from notchbook.style.closures.usual_amounts import USUAL_AMOUNTS

CHECK = "closure-amounts"


def told_outside(
    piece: str, field: str, value: float, figure: RangedFigure, *, of: float = 1.0, check: str = CHECK
) -> Iterator[Finding]:
    """To look at, where the amount (mm) lies outside the range of its figure.

    ``of``: what a figure that is a share is taken of, mm; ``field``: the parameter, or what else is meant.
    """
    return _ranged_amount.told_outside(check, piece, field, value, figure, of=of)


def told_unusual(piece: str, operation: str, amounts: Mapping[str, float]) -> Iterator[Finding]:
    """To look at, where one of these amounts of a step (mm, by parameter) is not as closures are made."""
    for field, value in amounts.items():
        yield from told_outside(piece, field, value, USUAL_AMOUNTS[operation, field])
