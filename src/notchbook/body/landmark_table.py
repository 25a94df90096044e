"""The words for places on the body: the levels and landmarks of ``landmarks.toml``, read once."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any


@dataclass(frozen=True, slots=True)
class Landmark:
    """A point or line of the body that is found before the tape is laid.

    ``standard`` is the word of ISO 8559-1:2017 where it differs from the trade's (from memory).
    """

    name: str
    definition: str
    standard: str | None = None


@cache
def level_table() -> Mapping[str, str]:
    """What each level of the body means, by its name, from the crown down."""
    return MappingProxyType(dict(_words()["levels"]))


@cache
def landmark_table() -> Mapping[str, Landmark]:
    """Every landmark by its name, from the crown down."""
    landmarks = _words()["landmarks"].items()
    return MappingProxyType({name: Landmark(name, **words) for name, words in landmarks})


@cache
def _words() -> dict[str, Any]:
    text = files("notchbook.body").joinpath("landmarks.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)
