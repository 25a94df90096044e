"""What an estimate says, and what is said of a measure that cannot be estimated."""

from collections.abc import Mapping
from dataclasses import dataclass

from notchbook.body.estimate_method import estimate_method
from notchbook.body.estimating.source import Source
from notchbook.body.measure import Measure
from notchbook.body.measure_set import PopulationName
from notchbook.errors import InputError


@dataclass(frozen=True, slots=True)
class Estimate:
    """The estimate of one measure, mm (degrees, kg).

    Nine bodies of ten with the same other measures lie within ``value`` ± ``error``. ``given`` are the
    measures on which it rests, the strongest first; ``source`` says of whom this measure was learned,
    ``population`` in whose words it is said.
    """

    key: str
    value: float
    error: float
    given: tuple[str, ...]
    source: Source
    population: PopulationName

    @property
    def low(self) -> float:
        """The lower end of the interval."""
        return max(self.value - self.error, 0.0)

    @property
    def high(self) -> float:
        """The upper end of the interval."""
        return self.value + self.error

    @property
    def method(self) -> str:
        """Where it comes from, as it is kept beside the value."""
        return estimate_method(self.given, self.source.people, self.population)

    def measure(self) -> Measure:
        """The estimate as a measure of a set."""
        return Measure(self.value, "estimated", self.error, self.method)


@dataclass(frozen=True, slots=True)
class NotEstimable:
    """A measure that was asked for and is not filled in; ``problem`` says why."""

    key: str
    problem: InputError


@dataclass(frozen=True, slots=True)
class Estimates:
    """The estimates of one set by key, what could not be estimated, and whose bodies it was held against.

    ``people`` says in full who they are and who they are not; measures that their survey did not take have
    another source, which each estimate names. ``cautions`` say why the ± may not hold: a dress form or a
    chart is no body of any population, and a body may lie outside of this one.
    """

    found: Mapping[str, Estimate]
    left_out: tuple[NotEstimable, ...]
    people: str
    cautions: tuple[InputError, ...] = ()
