"""What the look at an upper body came to: pairs that disagree, values that were replaced, what is trusted."""

from dataclasses import dataclass
from typing import Literal

from notchbook.blocks.upper_measures.agreement_table import Pair
from notchbook.blocks.upper_measures.dart_outlook import DartOutlook
from notchbook.blocks.upper_measures.upper_measures import UpperMeasures
from notchbook.body import PopulationName

Kind = Literal["pair", "two-waists", "other-waist", "lost-dart"]
"""``two-waists``: the two end at different waists, it seems; ``other-waist``: all lengths went to another;
``lost-dart``: each alone may be so, but together they leave no bust dart."""


@dataclass(frozen=True, slots=True)
class Disagreement:
    """Two taken measures that do not go together, and the one value that would explain both.

    ``key`` is the measure that explains it, ``given`` its value and ``explaining`` what it would be (mm;
    degrees for an angle); ``keys`` are all that would have to change along with it. ``deviations`` is how
    many standard deviations the value lies off what the others let expect, None where arithmetic alone
    judges. ``other`` is a second measure that would explain it nearly as well. ``read_again`` is whose
    second reading decides. ``lower``: of another waist, whether it is a lower one. ``dart`` is the bust dart
    as it stands (``angle``) and with the explaining value (``expected``), where the pair shapes it.
    """

    kind: Kind
    pair: Pair
    key: str
    keys: tuple[str, ...]
    given: float
    explaining: float
    read_again: str
    deviations: float | None = None
    other: str | None = None
    lower: bool = False
    dart: DartOutlook | None = None

    @property
    def asks_waist(self) -> bool:
        """Whether it is to be asked to which waist the lengths went."""
        return self.kind != "pair"

    @property
    def amount(self) -> float:
        """How much larger the value is than the one that explains both, mm or degrees."""
        return self.given - self.explaining


@dataclass(frozen=True, slots=True)
class Substitute:
    """A value that the draft uses in place of the one that stands in the set (mm, degrees).

    ``was_taken``: it was measured, and no draft could stand on it; else it was an estimate that does not
    follow from what was measured.
    """

    key: str
    given: float
    used: float
    was_taken: bool


@dataclass(frozen=True)
class Trusted:
    """What the draft takes of the measures. ``measures`` holds the values that it uses.

    ``dart`` compares the bust dart that these leave with what such a body usually has; None where a
    measure is lacking or no population tells.
    """

    measures: UpperMeasures
    disagreements: tuple[Disagreement, ...] = ()
    substitutes: tuple[Substitute, ...] = ()
    dart: DartOutlook | None = None

    @property
    def population(self) -> PopulationName | None:
        """Whose body it is, for the words of its measures."""
        return self.measures.population

    def value(self, key: str, otherwise: float) -> float:
        """The value that the draft uses: a substitute where there is one, else ``otherwise``."""
        return next((one.used for one in self.substitutes if one.key == key), otherwise)
