"""Adding many entries within one transaction."""

from collections.abc import Callable, Sequence
from typing import Final

from sqlalchemy import insert, select
from sqlalchemy.orm import Session

from notchbook.book.journal import Signature
from notchbook.book.kinds import BookEvent, EntryKind, EntryStatus
from notchbook.book.models import ContentRow, DocumentRow, EntryRow, EventRow
from notchbook.book.numbers import EntryNumber, parse_number
from notchbook.book.reading import next_number
from notchbook.book.records import Listed, NewEntry
from notchbook.book.settings import time_of
from notchbook.book.texts import check_name, check_text, digest, search_text

_AT_ONCE: Final = 500
"""Entries stored between two calls of ``told``: enough to be fast, few enough to stop soon."""


def add_many(
    session: Session,
    kind: EntryKind,
    series: str,
    entries: Sequence[NewEntry],
    signature: Signature,
    told: Callable[[int], None],
) -> tuple[Listed, ...]:
    """New entries under the next free numbers of a series, each with its document at version 1.

    ``told`` hears how many are in; what it raises ends the transaction, and nothing is added.
    """
    first = parse_number(next_number(session, series))
    made: list[Listed] = []
    for start in range(0, len(entries), _AT_ONCE):
        some = entries[start : start + _AT_ONCE]
        serials = range(first.serial + start, first.serial + start + len(some))
        numbers = [parse_number(EntryNumber(first.series, serial).text) for serial in serials]
        made += _add(session, kind, numbers, some, signature)
        told(len(made))
    return tuple(made)


def _add(
    session: Session,
    kind: EntryKind,
    numbers: Sequence[EntryNumber],
    entries: Sequence[NewEntry],
    signature: Signature,
) -> list[Listed]:
    hashes = _keep(session, [entry.content for entry in entries])
    rows = [
        _entry_row(kind, number, entry, signature) for number, entry in zip(numbers, entries, strict=True)
    ]
    session.add_all(rows)
    session.flush()
    documents = [
        DocumentRow(entry_id=row.id, version=1, state=1, content_hash=key, changed_at=signature.at)
        for row, key in zip(rows, hashes, strict=True)
    ]
    session.add_all(documents)
    session.flush()
    session.execute(insert(EventRow), [_event(document, signature) for document in documents])
    made = [
        _listed(document.id, kind, number, row.name, signature)
        for document, number, row in zip(documents, numbers, rows, strict=True)
    ]
    session.expunge_all()
    return made


def _keep(session: Session, texts: Sequence[str]) -> list[str]:
    """Store those of the texts that are not there yet; their hashes in order."""
    by_hash = {digest(check_text(text, "content")): text for text in texts}
    known = set(session.scalars(select(ContentRow.hash).where(ContentRow.hash.in_(by_hash))))
    new = [{"hash": key, "text": text} for key, text in by_hash.items() if key not in known]
    if new:
        session.execute(insert(ContentRow), new)
    return [digest(text) for text in texts]


def _entry_row(kind: EntryKind, number: EntryNumber, entry: NewEntry, signature: Signature) -> EntryRow:
    name = check_name(entry.name)
    return EntryRow(
        kind=kind,
        series=number.series,
        serial=number.serial,
        name=name,
        status=EntryStatus.WORKING,
        search_text=search_text(number.text, name),
        created_at=signature.at,
    )


def _event(document: DocumentRow, signature: Signature) -> dict[str, object]:
    return {
        "document_id": document.id,
        "version_before": 0,
        "version_after": 1,
        "kind": BookEvent.ADD,
        "actor": signature.actor,
        "at": signature.at,
        "note": signature.note,
        "what": "{}",
        "content_hash": document.content_hash,
        "state_before": None,
        "state": 1,
    }


def _listed(document: int, kind: EntryKind, number: EntryNumber, name: str, signature: Signature) -> Listed:
    return Listed(document, kind, number.text, name, EntryStatus.WORKING, 1, time_of(signature.at))
