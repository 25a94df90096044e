"""Erasing a client: first what it would take, then the act."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from notchbook.app.personal_data.hers import Hers, gather
from notchbook.app.personal_data.mentions import Mention, is_own, mentions, without_name
from notchbook.app.personal_data.naming import spelling_of
from notchbook.book import Book, Copy, Document, EntryKind, Erasure, NewContent, Revision, StoredText
from notchbook.errors import InputError
from notchbook.recipe import canonical_json

ERASED_NAME: Final = "(erased)"
"""Stands for her name in texts of other entries, where it is taken out."""

BEYOND: Final = (
    "paper: measure sheets, cards and patterns that were printed",
    "files that were made from the book: exports, style files, measure files, printed PDFs",
    "copies of the book in other folders, on other disks or computers, and those that a backup program keeps",
    "what the disk itself still holds of deleted files, until it is written over",
)
"""What no erasure in the book can reach."""


@dataclass(frozen=True, slots=True)
class FrozenLine:
    """A revision that was made on her measures; ``number`` is that of its entry."""

    id: int
    document_id: int
    number: str
    revision: int
    reason: str
    approved: bool


@dataclass(frozen=True, slots=True)
class StyleLine:
    """A style that is drafted for her now, and the lines of its journal."""

    id: int
    number: str
    name: str
    version: int
    journal_lines: int


@dataclass(frozen=True, slots=True)
class ErasurePlan:
    """What holds her measures or her name.

    ``journal_lines`` and ``texts`` belong to her entry. ``own_revisions`` are frozen states of her
    measures, ``frozen`` those of other entries made on them. ``mentions`` are texts of other entries with
    her name, ``copies`` files beside the book. ``beyond`` says what erasing does not reach.
    """

    id: int
    number: str
    name: str
    version: int
    journal_lines: int
    texts: int
    own_revisions: tuple[FrozenLine, ...]
    styles: tuple[StyleLine, ...]
    frozen: tuple[FrozenLine, ...]
    mentions: tuple[Mention, ...]
    copies: tuple[Copy, ...]
    beyond: tuple[str, ...] = BEYOND


@dataclass(frozen=True, slots=True)
class ErasureWish:
    """How she wants it.

    Styles that are for her are erased too (``also_styles``) or go on for ``other_body``: one of both is
    needed where there are such. ``keep_frozen``: revisions made on her measures stay in styles that stay,
    with her measures and shape in them. ``in_other_texts``: her name is taken out of texts of other
    entries, ``further`` spellings too. ``delete_copies``: the copies beside the book go too.
    """

    also_styles: bool = False
    other_body: int | None = None
    keep_frozen: bool = False
    in_other_texts: bool = False
    further: tuple[str, ...] = ()
    delete_copies: bool = False


@dataclass(frozen=True, slots=True)
class ErasureReport:
    """What came of it: the numbers that are erased, and what of her is still there.

    ``changed`` are texts of other entries that her name was taken out of, ``kept`` revisions that she kept,
    ``mentions`` texts with her name, ``copies`` files beside the book.
    ``clean`` False: the file is cleaned of what was removed at the next opening.
    """

    erased: tuple[str, ...]
    changed: tuple[Mention, ...]
    kept: tuple[FrozenLine, ...]
    mentions: tuple[Mention, ...]
    copies: tuple[Copy, ...]
    clean: bool

    @property
    def whole(self) -> bool:
        """Whether nothing of her that erasing could reach is left."""
        return self.clean and not (self.kept or self.mentions or self.copies)


def erasure_plan(book: Book, body: int, further: tuple[str, ...] = ()) -> ErasurePlan:
    """What erasing a body would take; nothing is changed. InputError ``entry-not-body``."""
    hers = gather(book, body)
    document = hers.document
    return ErasurePlan(
        id=document.id,
        number=document.number,
        name=document.name,
        version=document.version,
        journal_lines=len(book.history(body)),
        texts=sum(stored.document_id == body for stored in hers.texts),
        own_revisions=_lines(book.revisions(body)),
        styles=tuple(_style_line(book, style) for style in hers.styles),
        frozen=_lines(hers.frozen),
        mentions=mentions(hers.texts, hers, spelling_of(hers.names, ERASED_NAME, further)),
        copies=book.copies_with(body, *hers.style_ids),
    )


def erase_client(book: Book, body: int, expected_version: int, wish: ErasureWish) -> ErasureReport:
    """Erase a body with all that holds her measures, as she wishes: all of it, or nothing.

    Refused: ``erasure-styles-undecided``, ``erasure-other-body``, ``book-conflict``, ``book-moved-on``.
    """
    hers = gather(book, body)
    _check_decided(book, hers, wish)
    spelling = spelling_of(hers.names, ERASED_NAME, wish.further)
    gone = {body: expected_version}
    if wish.also_styles:
        gone |= {style.id: style.version for style in hers.styles}
    staying = tuple(revision for revision in hers.frozen if revision.document_id not in gone)
    copies = book.copies_with(*gone)
    going = tuple(copy.path for copy in copies if copy.readable) if wish.delete_copies else ()

    def reworded(stored: StoredText) -> str:
        return stored.text if is_own(stored, hers) else without_name(stored, hers, spelling)

    numbers = tuple(document.number for document in (hers.document, *hers.styles) if document.id in gone)
    swept = book.erase(
        Erasure(
            documents=gone,
            seen=hers.seen,
            revisions=() if wish.keep_frozen else tuple(revision.id for revision in staying),
            contents={} if wish.also_styles else _moved(hers.styles, wish.other_body),
            reworded=reworded if wish.in_other_texts else None,
            copies=going,
        )
    )
    found = mentions(hers.texts, hers, spelling) if wish.in_other_texts else ()
    return ErasureReport(
        erased=numbers,
        changed=tuple(one for one in found if one.changes and one.number not in numbers),
        kept=_lines(staying) if wish.keep_frozen else (),
        mentions=mentions(book.texts(), hers, spelling),
        copies=tuple(copy for copy in copies if copy.path not in going or copy.path in swept.copies_left),
        clean=swept.file,
    )


def _check_decided(book: Book, hers: Hers, wish: ErasureWish) -> None:
    """Styles for her need a word of hers, and another body that there is."""
    if wish.also_styles or not hers.styles:
        return
    if wish.other_body is None:
        styles = tuple(f"{style.number} {style.name}" for style in hers.styles)
        raise InputError("erasure-styles-undecided", name=hers.document.name, styles=styles)
    other = book.read(wish.other_body)
    if other.id == hers.document.id or other.kind is not EntryKind.MEASURES:
        raise InputError("erasure-other-body", number=other.number, name=other.name)


def _moved(styles: Iterable[Document], body: int | None) -> Mapping[int, NewContent]:
    """The styles drafted for another body."""
    return {
        style.id: NewContent(
            canonical_json({**json.loads(style.content), "body": body}), style.version, "set-body"
        )
        for style in styles
    }


def _style_line(book: Book, style: Document) -> StyleLine:
    return StyleLine(style.id, style.number, style.name, style.version, len(book.history(style.id)))


def _lines(revisions: Iterable[Revision]) -> tuple[FrozenLine, ...]:
    return tuple(
        FrozenLine(r.id, r.document_id, r.number, r.revision, r.reason, r.approved) for r in revisions
    )
