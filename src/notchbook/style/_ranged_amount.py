"""An amount that a step is asked for, within what is made in the trade."""

from notchbook.errors import StepRefused
from notchbook.recipe import StepContext
from notchbook.recipe.style_figure import RangedFigure


def ranged(context: StepContext, amount: str | None, figure: RangedFigure, field: str) -> float:
    """The amount asked for, mm, else the figure; StepRefused ``amount-outside-trade`` outside its limits."""
    value = figure.value if amount is None else context.mm(amount)
    if not figure.least <= value <= figure.most:
        said, least, most = field.replace("_", " "), figure.least, figure.most
        raise StepRefused("amount-outside-trade", field=said, value=value, least=least, most=most)
    return value
