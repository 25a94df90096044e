"""A figure of the trade that a step takes where nothing else is said, with its source and its grade."""

from dataclasses import dataclass

from notchbook.recipe.usual_ease import Grade


@dataclass(frozen=True, slots=True)
class StyleFigure:
    """A figure with what it means, where it comes from and how sure it is; mm, or what its meaning says."""

    value: float
    meaning: str
    source: str
    grade: Grade

    @property
    def amount(self) -> str:
        """The value as an amount in the trade's notation."""
        return f"{self.value:g} mm"


@dataclass(frozen=True, slots=True)
class RangedFigure(StyleFigure):
    """A figure with its usual range, from ``least`` to ``most``."""

    least: float
    most: float
