"""The catalogue of messages: code -> words, why it matters, what to do next."""

import string
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from notchbook.errors.rarity import rarity

LengthText = Callable[[float], str]
"""Writes a length given in mm in the unit of the reader."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One message of the catalogue.

    ``message`` says what is wrong, with the facts in braces; ``{amount:length}`` marks a fact in
    mm that is written in the reader's unit. ``next_step`` says what to do; ``why`` is the help page.
    """

    code: str
    message: str
    next_step: str
    why: str
    layer: str


def length_in_mm(value: float) -> str:
    """The plain way to write a length: mm with one decimal."""
    return f"{value:.1f} mm"


class _Words(string.Formatter):
    """Formats facts; ``length`` as format marks mm to be written in the reader's unit, ``rarity`` standard
    deviations to be said as how many bodies are so."""

    def __init__(self, length_text: LengthText) -> None:
        self._length_text = length_text

    def format_field(self, value: Any, format_spec: str) -> str:
        if format_spec == "length":
            if isinstance(value, str):
                # Whoever raised it knew the reader's unit.
                return value
            return self._length_text(float(value))
        if format_spec == "rarity":
            return rarity(float(value))
        if isinstance(value, (tuple, list)):
            return ", ".join(str(part) for part in value) or "none"
        return str(super().format_field(value, format_spec))


@cache
def catalogue() -> Mapping[str, Entry]:
    """All messages by code, from every TOML file in ``messages/``; a code stands once."""
    # Imported here: most runs refuse nothing, and these two are most of the time that errors take to load.
    import tomllib
    from importlib.resources import files

    found: dict[str, Entry] = {}
    folder = files("notchbook.errors") / "messages"
    for resource in sorted(folder.iterdir(), key=lambda item: item.name):
        if not resource.name.endswith(".toml"):
            continue
        layer = resource.name.removesuffix(".toml")
        for code, words in tomllib.loads(resource.read_text(encoding="utf-8")).items():
            if code in found:
                raise KeyError(f"the message {code} stands twice in the catalogue")
            found[code] = Entry(code, words["message"], words["next"], words["why"], layer)
    return found


def entry(code: str) -> Entry:
    """The message with this code; KeyError when the catalogue does not know it (our fault)."""
    return catalogue()[code]


def fill(template: str, facts: Mapping[str, object], length_text: LengthText = length_in_mm) -> str:
    """The template with the facts put in."""
    return _Words(length_text).vformat(template, (), facts)
