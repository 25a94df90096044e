"""A message without a case: how it reads in a help page."""

import string
from typing import Final

OPTIONAL: Final = frozenset({"where", "hint", "suggestion"})
"""Facts that many a case does not have; the words read well without them."""

_WORDS: Final = string.Formatter()


def as_read(template: str) -> str:
    """The template with ``…`` for every fact of a case, in single blanks."""
    found = []
    for words, fact, _, _ in _WORDS.parse(template):
        found.append(words)
        if fact is not None and fact not in OPTIONAL:
            found.append("…")
    text = " ".join("".join(found).split())
    return text[:1].upper() + text[1:]
