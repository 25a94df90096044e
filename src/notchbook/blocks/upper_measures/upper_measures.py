"""What a bodice reads of a body, as plain numbers: taken and estimated values apart."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from notchbook.body import PopulationName, WaistLevel


@dataclass(frozen=True, slots=True)
class Estimate:
    """A value that nobody took, with its ± (half width): mm, degrees for an angle."""

    value: float
    error: float


@dataclass(frozen=True)
class UpperMeasures:
    """The measures of one upper body, both sides together, by the keys of the measure table.

    ``taken`` are mm (degrees for the slope) that a tape or a chart says, ``estimated`` what was foretold from
    others. ``sure`` names what was read more than once, its readings agreeing. ``population`` is whose
    body it is, None where nobody said so; ``is_child``: no population fits. ``waist_drop`` is mm from the
    natural waist down to the waist that the lengths were taken to, 0 where it is not known.
    """

    taken: Mapping[str, float]
    estimated: Mapping[str, Estimate] = field(default_factory=dict)
    sure: frozenset[str] = frozenset()
    population: PopulationName | None = None
    is_child: bool = False
    waist_level: WaistLevel = "natural"
    waist_drop: float = 0.0

    def __post_init__(self) -> None:
        object.__setattr__(self, "taken", MappingProxyType(dict(self.taken)))
        object.__setattr__(self, "estimated", MappingProxyType(dict(self.estimated)))

    def find(self, key: str) -> float | None:
        """The value, taken or estimated; None where there is neither."""
        if key in self.taken:
            return self.taken[key]
        found = self.estimated.get(key)
        return None if found is None else found.value

    def with_value(self, key: str, value: float) -> "UpperMeasures":
        """The same with this value in place of what stood there, taken or estimated."""
        if key in self.taken:
            return replace(self, taken={**self.taken, key: value})
        error = self.estimated[key].error
        return replace(self, estimated={**self.estimated, key: Estimate(value, error)})
