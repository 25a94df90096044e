"""A client under a code: the book holds her measures, and who she is stands elsewhere."""

import json
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from notchbook.app.personal_data.hers import Hers, gather
from notchbook.app.personal_data.mentions import Mention, is_own, mentions, without_name
from notchbook.app.personal_data.naming import Spelling, spelling_of
from notchbook.body import set_from_data
from notchbook.book import Book, Copy, EntryKind, StoredText, UnderCode
from notchbook.book.kinds import BookEvent
from notchbook.errors import InputError

CODE_SERIES: Final = "K"
"""Letter of the codes that are offered: K-103 for M-103."""


@dataclass(frozen=True, slots=True)
class CodeWish:
    """How she wants it: the code; whether texts of other entries change too; ``further`` spellings of the
    name that are looked for as well; whether copies beside the book, which hold the name, are deleted."""

    code: str
    in_other_texts: bool = False
    further: tuple[str, ...] = ()
    delete_copies: bool = False


@dataclass(frozen=True, slots=True)
class CodeReport:
    """What came of it. ``changed`` are the texts of other entries that say the code now.

    ``mentions`` are where the old name still stands, ``copies`` the files beside the book that still hold it.
    ``clean`` False: the file is cleaned of the name at the next opening.
    """

    code: str
    changed: tuple[Mention, ...]
    mentions: tuple[Mention, ...]
    copies: tuple[Copy, ...]
    clean: bool


def free_code(book: Book, body: int) -> str:
    """A code that no entry has. It follows the number of the entry, which is never given again, so it
    cannot come to mean somebody else."""
    taken = _names_of_others(book, body)
    serial = int(book.read(body).number.partition("-")[2])
    while f"{CODE_SERIES}-{serial}" in taken:
        serial += 1
    return f"{CODE_SERIES}-{serial}"


def name_stands_in(book: Book, body: int, further: Sequence[str] = (), code: str = "") -> tuple[Mention, ...]:
    """Where the name of a body stands in texts of other entries, and what they become with the code."""
    hers = gather(book, body)
    return mentions(hers.texts, hers, spelling_of(hers.names, code, further))


def keep_under_code(book: Book, body: int, expected_version: int, wish: CodeWish) -> CodeReport:
    """Put the code in the stead of the name wherever the book holds it.

    Refused: ``book-conflict``, ``book-moved-on``, ``code-taken``, ``code-tells-name``, and what a name
    of measures may not be.
    """
    hers = gather(book, body)
    code = _checked_code(book, hers, wish.code)
    spelling = spelling_of(hers.names, code, wish.further)

    def reworded(stored: StoredText) -> str:
        if is_own(stored, hers) or wish.in_other_texts:
            return without_name(stored, hers, spelling)
        return stored.text

    copies = book.copies_with(body)
    going = tuple(copy.path for copy in copies if copy.readable) if wish.delete_copies else ()
    found = mentions(hers.texts, hers, spelling) if wish.in_other_texts else ()
    swept = book.put_under_code(UnderCode(body, expected_version, hers.seen, reworded, going))
    return CodeReport(
        code=code,
        changed=tuple(one for one in found if one.changes),
        mentions=mentions(book.texts(), replace(hers, measures=frozenset()), spelling),
        copies=tuple(copy for copy in copies if copy.path not in going or copy.path in swept.copies_left),
        clean=swept.file,
    )


def _checked_code(book: Book, hers: Hers, code: str) -> str:
    measures = set_from_data(json.loads(hers.document.content))
    name = replace(measures, name=code).name
    if name in _names_of_others(book, hers.document.id):
        raise InputError("code-taken", wanted=name)
    # The code that she has already may be given again, to look for a further spelling of her name.
    coded = any(event.kind == BookEvent.UNDER_CODE for event in book.history(hers.document.id))
    told = Spelling({old: "" for old in hers.names if not (coded and old == name)})
    if told.stands_in(name):
        raise InputError("code-tells-name", wanted=name)
    return name


def _names_of_others(book: Book, body: int) -> set[str]:
    return {line.name for line in book.list(EntryKind.MEASURES) if line.id != body}
