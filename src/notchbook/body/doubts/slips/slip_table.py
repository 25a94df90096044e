"""The kinds of slips with their priors: the table of ``slip_table.toml``, read once."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType

ANYTHING_ELSE = "anything-else"
TAKEN_ELSEWHERE = "taken-elsewhere"


@dataclass(frozen=True, slots=True)
class SlipKind:
    """One kind of slip: how often it is this one (0 to 1), and the question to ask."""

    name: str
    prior: float
    question: str


@cache
def slip_table() -> Mapping[str, SlipKind]:
    """Every kind of slip by name; the priors make 1 together."""
    text = files("notchbook.body.doubts.slips").joinpath("slip_table.toml").read_text(encoding="utf-8")
    return MappingProxyType({name: SlipKind(name, **words) for name, words in tomllib.loads(text).items()})
