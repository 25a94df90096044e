"""Texts that enter the book: checked, hashed, made searchable."""

import hashlib
import json
import unicodedata
from collections.abc import Mapping
from typing import Any, Final

from notchbook.errors import BookError

LONGEST_NAME: Final = 200
"""Characters; a name is a line on a label, not a page."""


def digest(text: str) -> str:
    """The sha256 of a text in UTF-8, as 64 hexadecimal digits."""
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def check_text(text: str, where: str) -> str:
    """The text, or a refusal when it cannot be written as UTF-8 (half of a surrogate pair)."""
    try:
        text.encode("utf-8")
    except UnicodeEncodeError as error:
        raise BookError("book-text-unreadable", where=where, position=error.start) from None
    return text


def check_name(text: str) -> str:
    """A name without surrounding blanks; one line, not empty, at most 200 characters."""
    name = check_text(text, "name").strip()
    if not name or len(name) > LONGEST_NAME or any(unicodedata.category(sign) == "Cc" for sign in name):
        raise BookError("book-name-refused", name=text[:40], longest=LONGEST_NAME)
    return name


def search_form(text: str) -> str:
    """A text as it is searched: without case and accents (``Café`` is found by ``cafe``)."""
    parts = unicodedata.normalize("NFKD", text.casefold())
    return "".join(sign for sign in parts if not unicodedata.combining(sign))


def search_text(number: str, name: str) -> str:
    """What an entry is found by: its number and its name."""
    return search_form(f"{number} {name}")


def canonical_json(value: Mapping[str, Any]) -> str:
    """One text for one value: sorted keys, no blanks, ASCII."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), allow_nan=False)
