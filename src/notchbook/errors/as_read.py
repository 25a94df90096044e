"""A message without a case: how it reads in a help page."""

import string
from collections.abc import Callable
from typing import Final

OPTIONAL: Final = frozenset({"where", "hint", "suggestion"})
"""Facts that many a case does not have; the words read well without them."""

_WORDS: Final = string.Formatter()

_STOPS: Final = (".", "?", ":")
"""After these a fact that begins a sentence of its own follows without a blank: it brings it along."""


def as_read(template: str) -> str:
    """The template with ``…`` for every fact of a case, in single blanks: for a line in a list."""
    return _read(template, lambda _: "…")


def with_facts_named(template: str) -> str:
    """The template with each fact of a case called by its name, as ``‹bust›``: for a help page, where many
    blanks could not be told apart."""
    return _read(template, lambda fact: f"‹{fact.replace('_', ' ')}›")


def _read(template: str, named: Callable[[str], str]) -> str:
    found = []
    for words, fact, _, _ in _WORDS.parse(template):
        found.append(words)
        if fact is not None and fact not in OPTIONAL:
            found += [" "] if words.endswith(_STOPS) else []
            found.append(named(fact))
    text = " ".join("".join(found).split())
    return text[:1].upper() + text[1:]
