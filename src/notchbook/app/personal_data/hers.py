"""What in a book is of one body: her measures, the styles for her, what was frozen on her measures."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from notchbook.book import Book, Document, EntryKind, Place, Revision, StoredText
from notchbook.errors import InputError


@dataclass(frozen=True)
class Hers:
    """All that a book holds of a body.

    ``names`` are all that she had in the book, that of now first. ``styles`` are drafted for her now,
    ``frozen`` are revisions of other entries that were made on her measures, ``measures`` the hashes of the
    measures in them. ``others`` are the ids of all other entries of measures. ``texts`` are all texts of the
    book, ``numbers`` those of its entries by their ids, and ``seen`` the last line of its journal, when this
    was gathered.
    """

    document: Document
    names: tuple[str, ...]
    styles: tuple[Document, ...]
    frozen: tuple[Revision, ...]
    measures: frozenset[str]
    others: frozenset[int]
    texts: tuple[StoredText, ...]
    numbers: Mapping[int, str]
    seen: int

    @property
    def style_ids(self) -> frozenset[int]:
        """The ids of the styles drafted for her now."""
        return frozenset(style.id for style in self.styles)


def gather(book: Book, body: int) -> Hers:
    """What the book holds of this body; InputError ``entry-not-body`` when it is something else."""
    document = book.read(body)
    if document.kind is not EntryKind.MEASURES:
        raise InputError("entry-not-body", number=document.number, name=document.name)
    seen = book.last_line()
    texts = book.texts()
    lines = [line for line in book.list() if line.id != body]
    styles = tuple(book.read(line.id) for line in lines if line.kind is EntryKind.STYLE)
    by_hash, sets = _by_hash(texts), _sets_of(texts, body)
    others = (revision for revision in book.all_revisions() if revision.document_id != body)
    frozen = tuple(one for one in others if _made_on(one, body, by_hash, sets))
    return Hers(
        document=document,
        names=_names(texts, document),
        styles=tuple(style for style in styles if _body_of(style.content) == body),
        frozen=frozen,
        others=frozenset(line.id for line in lines if line.kind is EntryKind.MEASURES),
        measures=frozenset(revision.measures_hash for revision in frozen if revision.measures_hash),
        texts=texts,
        numbers={document.id: document.number} | {line.id: line.number for line in lines},
        seen=seen,
    )


def _names(texts: tuple[StoredText, ...], document: Document) -> tuple[str, ...]:
    """Every name that the body had, the newest first: in the library, in its content, in its renamings."""
    found = [document.name]
    for stored in texts:
        if stored.document_id == document.id and stored.place in (Place.CONTENT, Place.FACTS):
            data = json.loads(stored.text)
            found += [data[key] for key in ("name", "from", "to") if isinstance(data.get(key), str)]
    return tuple(dict.fromkeys(found))


def _by_hash(texts: tuple[StoredText, ...]) -> Mapping[int | str, str]:
    return {stored.key: stored.text for stored in texts if stored.place in (Place.CONTENT, Place.MEASURES)}


def _sets_of(texts: tuple[StoredText, ...], body: int) -> list[Any]:
    """The measures of the body at all times, as data."""
    own = (stored for stored in texts if stored.document_id == body and stored.place is Place.CONTENT)
    return [json.loads(stored.text) for stored in own]


def _made_on(revision: Revision, body: int, by_hash: Mapping[int | str, str], sets: list[Any]) -> bool:
    """Whether it was frozen on her measures: it says that it is for her, or it holds what she measured."""
    measures = by_hash.get(revision.measures_hash or "")
    if measures is not None and json.loads(measures) in sets:
        return True
    return _body_of(by_hash.get(revision.content_hash, "")) == body


def _body_of(content: str) -> int | None:
    """The body that the content of a style names."""
    try:
        data = json.loads(content)
    except ValueError:
        return None
    body = data.get("body") if isinstance(data, dict) else None
    return body if isinstance(body, int) else None
