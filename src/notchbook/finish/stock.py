"""In which lengths a thing is sold, such as a kind of zip."""

from dataclasses import dataclass

from notchbook.units import Unit


@dataclass(frozen=True, slots=True)
class Stock:
    """Lengths in which a kind is sold, mm, the shortest first: ``metric`` where it is sold by centimeters,
    ``inches`` where by inches; source and grade as of a row of the house table."""

    metric: tuple[float, ...]
    inches: tuple[float, ...]
    source: str
    grade: str

    def lengths(self, unit: Unit) -> tuple[float, ...]:
        """The lengths for a reader of this unit."""
        return self.inches if unit == "in" else self.metric

    def longer(self, length: float, unit: Unit) -> float | None:
        """The shortest that is not shorter, to half a millimeter; None where all are."""
        return next((one for one in self.lengths(unit) if one >= length - _ALIKE), None)

    def shorter(self, length: float, unit: Unit) -> float | None:
        """The longest that is not longer, to half a millimeter; None where all are."""
        return next((one for one in reversed(self.lengths(unit)) if one <= length + _ALIKE), None)


_ALIKE = 0.5
"""mm by which a length may differ from that which is sold."""
