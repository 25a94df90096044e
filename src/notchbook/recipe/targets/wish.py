"""A wish: something is to measure so much, in the trade's notation."""

from dataclasses import dataclass

from notchbook.body import MeasureSet
from notchbook.recipe.context import StepContext
from notchbook.recipe.targets.quantity import Quantity, said_quantity

SIGN = " = "
"""Between what is measured and how much it is to be."""


@dataclass(frozen=True, slots=True)
class Wish:
    """``quantity`` is to be ``amount``, such as ``160 cm`` or ``waist + 2 cm``."""

    quantity: Quantity
    amount: str

    @property
    def text(self) -> str:
        """As it is kept with the number that was solved."""
        return f"{self.quantity.text}{SIGN}{self.amount}"

    @property
    def said(self) -> str:
        """In words, without the amount."""
        return said_quantity(self.quantity)

    def wanted(self, measures: MeasureSet) -> float:
        """The amount on this body, mm; InputError when a measure that it reads is missing."""
        return StepContext(measures, "wish", "wish").mm(self.amount, "both")
