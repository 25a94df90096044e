"""How the measures of the book follow from the survey: the table ``definitions.toml``, read once."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from notchbook.body.measure_set import POPULATIONS, PopulationName


@dataclass(frozen=True, slots=True)
class Definition:
    """How one measure follows from the survey, for one population.

    ``columns`` maps columns of the survey to their weights, the waist at the navel; ``regression`` names
    what foretells a measure of the book that the survey does not have. ``in_survey``: a record of the
    survey holds this measure. ``offset`` is book minus survey, ``at_waist`` what is added at the natural
    waist, both mm; ``doubt`` the SD of both, ``tape`` that of one reading.
    """

    key: str
    columns: Mapping[str, float]
    regression: str | None
    in_survey: bool
    offset: float
    at_waist: float
    doubt: float
    tape: float
    source: str
    grade: str


@cache
def definitions(name: PopulationName) -> Mapping[str, Definition]:
    """The definitions of all measures that this population can judge, by key, in the order of the file."""
    table = _read("definitions.toml")
    found = {key: _definition(key, entry, name) for key, entry in table.items() if _fits(entry, name)}
    return MappingProxyType(found)


@cache
def regressions() -> Mapping[str, Mapping[str, Any]]:
    """The regressions for measures that the survey does not have, by key."""
    return MappingProxyType(_read("regressions.toml"))


def _read(file: str) -> dict[str, Any]:
    text = files("notchbook.body.population").joinpath(file).read_text(encoding="utf-8")
    return tomllib.loads(text)


def _fits(entry: Mapping[str, Any], name: PopulationName) -> bool:
    return bool(entry.get("only", name) == name)


def _definition(key: str, entry: Mapping[str, Any], name: PopulationName) -> Definition:
    columns = entry.get("columns", {})

    def number(field: str) -> float:
        return float(_for_population(entry.get(field, 0.0), name) or 0.0)

    return Definition(
        key=key,
        columns=MappingProxyType({column: float(weight) for column, weight in columns.items()}),
        regression=_for_population(entry.get("regression"), name),
        in_survey=bool(columns) and entry.get("in_survey", True),
        offset=number("offset"),
        at_waist=number("at_waist"),
        doubt=number("doubt"),
        tape=number("tape"),
        source=entry["source"],
        grade=entry["grade"],
    )


def _for_population(given: Any, name: PopulationName) -> Any:
    """The entry itself, or the one of this population where they differ."""
    if isinstance(given, dict) and set(given) <= set(POPULATIONS):
        return given.get(name)
    return given
