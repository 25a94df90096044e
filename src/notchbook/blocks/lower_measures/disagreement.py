"""Two measures of the lower body that do not go together, and the one value that would explain both."""

from dataclasses import dataclass
from typing import Literal

Kind = Literal["crotch", "other-waist", "parts", "thigh", "ruled-out"]
"""``crotch``: crotch length and rise; ``other-waist``: the crotch length went to another waist, it seems;
``parts``: its two parts do not make the whole; ``thigh``: thigh and hip; ``ruled-out``: by arithmetic."""


@dataclass(frozen=True, slots=True)
class LowerDisagreement:
    """Two taken measures that disagree, by their keys.

    ``key`` is the one that explains it, ``given`` its value and ``explaining`` what it would be, mm.
    ``deviations`` is how many standard deviations it lies off what the others let expect, None where
    arithmetic alone judges. ``lower``: of another waist, whether it is a lower one. ``is_sure``: it was read
    more than once.
    """

    kind: Kind
    first: str
    second: str
    key: str
    given: float
    explaining: float
    deviations: float | None = None
    lower: bool = False
    is_sure: bool = False

    @property
    def amount(self) -> float:
        """How much larger the value is than the one that explains both, mm."""
        return self.given - self.explaining
