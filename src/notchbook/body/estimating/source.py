"""Of whom one measure was learned: not every measure was taken in the survey."""

from dataclasses import dataclass
from functools import cache
from typing import Final, Literal

from notchbook.body.measure_set import PopulationName
from notchbook.body.population import Population, definitions
from notchbook.body.population.definitions import regressions

SourceKind = Literal["survey", "sample", "table"]

SOURCE_WORDS: Final[dict[SourceKind, str]] = {
    "survey": "survey",
    "sample": "Spanish sample",
    "table": "size table",
}
"""The sources as they stand in a column of a table."""

_SURVEY: Final = "ANSUR II (2012)"

_PEOPLE: Final[dict[SourceKind, str]] = {
    "sample": "600 women of a published Spanish sample",
    "table": "a size table of women, ASTM D5585-11e1",
}


@dataclass(frozen=True, slots=True)
class Source:
    """What a measure was learned from. ``people`` is short enough to stand beside a value; ``grade`` says
    how sure the way from the source to the measure of the book is."""

    kind: SourceKind
    people: str
    grade: str

    @property
    def words(self) -> str:
        """The source in a word or two."""
        return SOURCE_WORDS[self.kind]


def in_short(people: Population) -> str:
    """Who they are, short enough to stand beside a value: ``993 women of ANSUR II (2012)``."""
    return f"{people.size:,} {people.name} of {_SURVEY}"


def source_of(people: Population, key: str) -> Source:
    """The source of a measure that this population can judge."""
    return _source(people.name, key, in_short(people))


@cache
def _source(name: PopulationName, key: str, survey: str) -> Source:
    definition = definitions(name)[key]
    if definition.regression is None:
        return Source("survey", survey, definition.grade)
    kind: SourceKind = regressions()[definition.regression]["source"]
    return Source(kind, _PEOPLE[kind], definition.grade)
