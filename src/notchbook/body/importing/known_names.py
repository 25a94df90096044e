"""Names that a book has already: the rows of a list that would stand in it twice."""

import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import replace

from notchbook.body.importing.mapping import TableMapping
from notchbook.body.importing.preview_rows import PreviewRow

KnownNames = Mapping[str, str]
"""Folded names, as :func:`fold_name` gives them, and the number of the entry that has each."""


def fold_name(name: str) -> str:
    """The name without capitals, accents and further blanks, as names are compared."""
    letters = unicodedata.normalize("NFKD", name.casefold())
    return " ".join("".join(sign for sign in letters if not unicodedata.combining(sign)).split())


def with_known(
    rows: Sequence[PreviewRow], known: KnownNames, mapping: TableMapping
) -> tuple[PreviewRow, ...]:
    """The rows, each whose name is known with the number of that entry and with what she said of it."""
    found = []
    for row in rows:
        number = known.get(fold_name(row.name), "") if row.measures is not None or row.other_unit else ""
        if number:
            row = replace(row, in_book=number, choice=row.choice or mapping.again)
        found.append(row)
    return tuple(found)
