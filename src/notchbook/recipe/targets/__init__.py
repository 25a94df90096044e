"""Make it measure: what is to come out, which number of which step gives it, and whether it still does.

Solving runs the recipe again and again and writes a plain number; running a recipe never solves anything.
"""

from notchbook.recipe.targets.keeping import KeptTarget, kept_targets
from notchbook.recipe.targets.making import (
    Made,
    Order,
    begun,
    make_it_measure,
    orders_with_kept,
    solve_again,
    without_target,
)
from notchbook.recipe.targets.numbers import StepNumber, number_named, numbers_of
from notchbook.recipe.targets.quantity import Quantity, measured, said_quantity
from notchbook.recipe.targets.reading import read_quantity, read_wish
from notchbook.recipe.targets.trials import Known, Tell, Trials
from notchbook.recipe.targets.wish import Wish

__all__ = [
    "KeptTarget",
    "Known",
    "Made",
    "Order",
    "Quantity",
    "StepNumber",
    "Tell",
    "Trials",
    "Wish",
    "begun",
    "kept_targets",
    "make_it_measure",
    "measured",
    "number_named",
    "numbers_of",
    "orders_with_kept",
    "read_quantity",
    "read_wish",
    "said_quantity",
    "solve_again",
    "without_target",
]
