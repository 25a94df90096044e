"""Where a value stands among the others of its set."""

from dataclasses import dataclass
from typing import Final

NINE_OF_TEN: Final = 1.6448536269514722
"""Standard deviations on either side within which 90 % of a normal distribution lie."""


@dataclass(frozen=True, slots=True)
class Standing:
    """A value, what the others let expect in its place with its SD, and how many SD it lies off (``z``).

    Units as the measure's: mm, degrees, kg.
    """

    key: str
    value: float
    expected: float
    sd: float
    z: float

    @property
    def low(self) -> float:
        """The least that nine of ten have; never below 0."""
        return max(0.0, self.expected - NINE_OF_TEN * self.sd)

    @property
    def high(self) -> float:
        """The most that nine of ten have; never below 0."""
        return max(0.0, self.expected + NINE_OF_TEN * self.sd)
