"""The table of what must agree: ``agreements.toml``, read once."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from notchbook.body import PopulationName


@dataclass(frozen=True, slots=True)
class Pair:
    """Two measures that a bodice is drafted from together; ``what`` is made of them, in words."""

    first: str
    second: str
    what: str

    def __contains__(self, key: object) -> bool:
        return key in (self.first, self.second)

    def other(self, key: str) -> str:
        """The partner of a measure of the pair."""
        return self.second if key == self.first else self.first


@dataclass(frozen=True, slots=True)
class Limit:
    """A figure computed from measures, and between which values it may lie (mm, degrees, or a share).

    ``also`` are the measures of the figure beside the pair. ``judged`` names the populations that it holds
    for, ``nobody`` where there is none. ``replaces``: a draft cannot stand beyond it, so that the measure
    which explains it may be replaced.
    """

    name: str
    pair: Pair
    also: tuple[str, ...]
    least: float
    most: float
    judged: frozenset[str]
    replaces: bool

    @property
    def keys(self) -> tuple[str, ...]:
        """The measures of the figure, those of the pair first."""
        return (self.pair.first, self.pair.second, *self.also)


@dataclass(frozen=True, slots=True)
class Judge:
    """From where on the draft asks, and how wrong values usually are: see ``agreements.toml``."""

    asks_from: float
    slip: float
    slip_angle: float
    slip_girth: float
    slip_height: float
    waist: float


@cache
def pairs() -> tuple[Pair, ...]:
    """The pairs, in the order of the file."""
    return tuple(Pair(one["first"], one["second"], one["what"]) for one in _table()["pairs"])


@cache
def limits() -> tuple[Limit, ...]:
    """The limits, in the order of the file."""
    return tuple(_limit(name, one) for name, one in _table()["limits"].items())


@cache
def judge(population: PopulationName) -> Judge:
    """How bodies of this population are judged."""
    figures = _table()["judges"][population]
    return Judge(**{name: float(figures[name]) for name in Judge.__dataclass_fields__})


@cache
def _table() -> Mapping[str, Any]:
    text = files("notchbook.blocks.upper_measures").joinpath("agreements.toml").read_text(encoding="utf-8")
    return MappingProxyType(tomllib.loads(text))


def _limit(name: str, one: Mapping[str, Any]) -> Limit:
    pair = Pair(one["first"], one["second"], one["what"])
    judged, also = frozenset(one["for"]), tuple(one.get("also", ()))
    return Limit(name, pair, also, float(one["least"]), float(one["most"]), judged, one["replaces"])
