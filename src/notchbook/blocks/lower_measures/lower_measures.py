"""What trousers read of a body, as plain numbers: taken and estimated values apart."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from notchbook.body import PopulationName, WaistLevel


@dataclass(frozen=True)
class LowerMeasures:
    """The measures of one side of a lower body, by the keys of the measure table, mm.

    ``taken`` is what a tape or a chart says, ``estimated`` what was foretold from others. ``sure`` names what
    was read more than once, its readings agreeing. ``population`` is whose body it is, None where nobody said
    so; ``is_child``: no population fits. ``waist_drop`` is mm from the natural waist down to the waist that
    the lengths were taken from, 0 where it is not known.
    """

    taken: Mapping[str, float]
    estimated: Mapping[str, float] = field(default_factory=dict)
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
        return self.taken.get(key, self.estimated.get(key))

    def with_taken(self, key: str, value: float) -> "LowerMeasures":
        """The same with this value as if it had been taken."""
        return replace(self, taken={**self.taken, key: value})
