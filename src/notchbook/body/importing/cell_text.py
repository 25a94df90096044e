"""Cells as they come: what counts as empty, and what looks like a value."""

import re
from typing import Final

_EMPTY_WORDS: Final = frozenset({"-", "--", "---", "\u2013", "\u2014", "\u2212", "n/a", "na", "?", "."})
"""What people write where nothing was measured (common practice)."""

_VALUE: Final = re.compile(r"[-+\u2212]?[.,]?[0-9\u00bc-\u00be\u2150-\u215e]")

_BLANKS: Final = re.compile(r"[\s\u200b\u2060\ufeff]+")


def clean_cell(text: str) -> str:
    """The cell in one line, trimmed; a dash or ``n/a`` alone is an empty cell."""
    line = _BLANKS.sub(" ", text).strip()
    return "" if line.lower() in _EMPTY_WORDS else line


def looks_like_value(text: str) -> bool:
    """Whether the cell begins as a number does."""
    return _VALUE.match(text) is not None
