"""Where a name stands in a text, and the same text with another word in its stead."""

import json
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Final

from notchbook.book.texts import canonical_json as ascii_json
from notchbook.recipe import canonical_json

PROSE: Final = frozenset(
    {"name", "title", "note", "by", "taken_by", "undergarment", "method", "label_size", "from", "to"}
)
"""Fields of stored data that hold words of hers. In all others a word is a key or a name of the pattern, and
putting another in its stead would break the drawing."""

_LOOSE_FROM: Final = 4
"""Letters; a shorter name is looked for in its own capitals only, or every "a" would be a client called A."""

Change = Callable[[str, str], str]
"""(field, text) -> text."""


@dataclass(frozen=True)
class Spelling:
    """The spellings of one person's name, each as a whole word, and the word that stands for each."""

    words: Mapping[str, str]

    def may_stand_in(self, text: str) -> bool:
        """False when none can, in the text or in data in it: a quick look, before it is taken apart."""
        folded = text.casefold()
        return "\\u" in folded or any(sign in folded for sign in self._signs)

    @cached_property
    def _signs(self) -> tuple[str, ...]:
        """The first letters of each spelling, up to a blank or sign."""
        return tuple(re.split(r"\W", spelling.casefold(), maxsplit=1)[0] for spelling in self.words)

    def replaced(self, text: str) -> str:
        """The text with the words put in."""
        for spelling, word in self.words.items():
            # Split and joined rather than substituted: a word is not read for signs of a pattern.
            text = word.join(_pattern(spelling).split(text))
        return text

    def stands_in(self, text: str) -> bool:
        """Whether one of the spellings stands in the text."""
        return self.begins_at(text) is not None

    def begins_at(self, text: str) -> int | None:
        """Where in the text the first of the spellings begins; None when none stands in it."""
        found = (_pattern(spelling).search(text) for spelling in self.words)
        return min((match.start() for match in found if match is not None), default=None)


def spelling_of(names: Sequence[str], word: str, further: Sequence[str] = ()) -> Spelling:
    """The names that a client has had, that of now first, and ``further`` spellings, with one word for all.

    Earlier names get a number behind it, so that two versions that differ in the name alone stay two. Longer
    spellings come first: a first name must not be taken out of the whole name.
    """
    words = {name: word if place == 0 else f"{word} ({place + 1})" for place, name in enumerate(names)}
    words |= {name: word for name in further if name.strip() and name not in words}
    changing = {spelling: said for spelling, said in words.items() if spelling != said}
    return Spelling(dict(sorted(changing.items(), key=lambda pair: -len(pair[0]))))


def strings_in(text: str) -> Iterator[tuple[str, str]]:
    """(field, text) for each string in stored data, keys too; a plain text is one string without a field."""
    data = _data(text)
    if data is None:
        yield "", text
        return
    waiting: list[tuple[str, Any]] = [("", data)]
    while waiting:
        field, value = waiting.pop()
        if isinstance(value, str):
            yield field, value
        elif isinstance(value, dict):
            waiting += [(str(key), part) for key, part in value.items()]
            waiting += [("", str(key)) for key in value]
        elif isinstance(value, list):
            waiting += [(field, part) for part in value]


def changed_text(text: str, change: Change) -> str:
    """The text with ``change`` applied to each string of its data, written in the same form as before."""
    data = _data(text)
    if data is None:
        return change("", text)
    new = _changed(data, "", change)
    if new == data:
        return text
    return ascii_json(new) if text == ascii_json(data) else canonical_json(new)


def _changed(value: Any, field: str, change: Change) -> Any:
    if isinstance(value, str):
        return change(field, value)
    if isinstance(value, dict):
        return {key: _changed(part, str(key), change) for key, part in value.items()}
    if isinstance(value, list):
        return [_changed(part, field, change) for part in value]
    return value


def _data(text: str) -> dict[str, Any] | None:
    """The JSON object that the text is, or None for plain words."""
    if not text.lstrip().startswith("{"):
        return None
    try:
        data = json.loads(text)
    except ValueError:
        return None
    return data if isinstance(data, dict) else None


def _pattern(spelling: str) -> re.Pattern[str]:
    words = r"\s+".join(re.escape(word) for word in spelling.split())
    letters = sum(sign.isalnum() for sign in spelling)
    return re.compile(rf"(?<!\w){words}(?!\w)", re.IGNORECASE if letters >= _LOOSE_FROM else 0)
