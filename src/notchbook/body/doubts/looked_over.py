"""What looking over a set of measures came to."""

from dataclasses import dataclass
from typing import Literal

from notchbook.body.doubts.doubt import Doubt, Suspect
from notchbook.body.doubts.standing import Standing
from notchbook.body.measure_set import PopulationName
from notchbook.errors import InputError

LookedOverLevel = Literal["stop", "check", "fine"]


@dataclass(frozen=True, slots=True)
class Unseen:
    """What cannot be seen in one value.

    ``slip`` is the smallest slip (mm, degrees, kg) that would be noticed as often as not, given the other
    values of the set; None where nothing could be held against it. ``readings`` is how often it was taken.
    ``twice``: it should be taken twice, and was not.
    """

    key: str
    slip: float | None
    readings: int
    twice: bool


@dataclass(frozen=True, slots=True)
class LookedOver:
    """All that is to be said about a set before it is used.

    ``doubts`` stand stops first. ``standings`` are the values against all others of their set, in the order
    of the measure table; empty where nothing was held against a population, and then ``not_held`` says why.
    ``population`` and ``population_words`` say against whom it was held. ``unseen`` is what this cannot see.
    ``cautions`` say why what was found means less for this set.
    """

    doubts: tuple[Doubt, ...]
    standings: tuple[Standing, ...]
    unseen: tuple[Unseen, ...]
    population: PopulationName | None
    population_words: str
    not_held: InputError | None
    cautions: tuple[InputError, ...] = ()

    @property
    def level(self) -> LookedOverLevel:
        """``stop`` when anything stops, ``check`` when anything is to be asked, else ``fine``."""
        if any(doubt.level == "stop" for doubt in self.doubts):
            return "stop"
        return "check" if self.doubts else "fine"

    @property
    def worst(self) -> Standing | None:
        """The value that lies furthest off what the others let expect."""
        return max(self.standings, key=lambda one: abs(one.z), default=None)

    @property
    def take_twice(self) -> tuple[str, ...]:
        """The measures that should be taken once more, since a slip in them would hardly be seen."""
        return tuple(one.key for one in self.unseen if one.twice)

    def suspects(self) -> tuple[Suspect, ...]:
        """The likeliest wrong value of each doubt, without doubling."""
        found: dict[str, Suspect] = {}
        for doubt in self.doubts:
            for suspect in doubt.suspects[:1]:
                found.setdefault(suspect.key, suspect)
        return tuple(found.values())
