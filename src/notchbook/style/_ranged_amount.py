"""Amounts that a step is asked for, held against what is made in the trade."""

from collections.abc import Iterator

from notchbook.errors import StepRefused
from notchbook.pattern import Finding, Measured, Severity, worded
from notchbook.recipe import StepContext
from notchbook.recipe.style_figure import RangedFigure
from notchbook.units import TOLERANCES


def ranged(context: StepContext, amount: str | None, figure: RangedFigure, field: str) -> float:
    """The amount asked for, mm, else the figure; StepRefused ``amount-outside-trade`` outside its limits."""
    value = figure.value if amount is None else context.mm(amount)
    if not figure.least <= value <= figure.most:
        said, least, most = field.replace("_", " "), figure.least, figure.most
        raise StepRefused("amount-outside-trade", field=said, value=value, least=least, most=most)
    return value


def told_outside(
    check: str, piece: str, field: str, value: float, figure: RangedFigure, *, of: float = 1.0
) -> Iterator[Finding]:
    """To look at, where an amount lies outside of what is usual; the piece is drawn as it was asked for.

    ``field``: the parameter, or what else is meant; ``of``: what a figure that is a share is taken of, mm.
    """
    least, most = figure.least * of, figure.most * of
    if least - TOLERANCES.sew_length <= value <= most + TOLERANCES.sew_length:
        return
    yield worded(
        check,
        "amount-unusual",
        Severity.LOOK,
        Measured(value, least if value < least else most),
        piece=piece,
        field=field.replace("_", " "),
        value=value,
        least=least,
        most=most,
    )
