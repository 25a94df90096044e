"""The journal: every change of a document is one event, one version, in one transaction.

Undo works on *states*. A state is the version that first had a content; the event that made it says which
state it was made on. Undo goes back to that one, redo forward on the way to the newest edit, and both
write an event of their own: nothing is ever taken out.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field

from sqlalchemy import CursorResult, func, select, update
from sqlalchemy.orm import Session

from notchbook.book.kinds import BookEvent
from notchbook.book.models import DocumentRow, EntryRow, EventRow
from notchbook.book.numbers import EntryNumber
from notchbook.book.records import Event
from notchbook.book.settings import time_of
from notchbook.book.texts import canonical_json, check_text
from notchbook.errors import BookError, HouseFault


@dataclass(frozen=True, slots=True)
class Signature:
    """Who does something, when (as stored) and with which words."""

    actor: str
    at: str
    note: str

    def __post_init__(self) -> None:
        check_text(self.actor, "actor")
        check_text(self.note, "note")


@dataclass(frozen=True, slots=True)
class Change:
    """What an event does to a document; ``state`` None means a state of its own, as an edit makes."""

    kind: str
    content_hash: str
    state: int | None
    what: Mapping[str, object] = field(default_factory=dict)


def document_row(session: Session, document_id: int) -> tuple[DocumentRow, EntryRow]:
    """The document and its entry as they are now."""
    query = select(DocumentRow, EntryRow).join(EntryRow, EntryRow.id == DocumentRow.entry_id)
    found = session.execute(query.where(DocumentRow.id == document_id)).first()
    if found is None:
        raise BookError("book-document-missing", document=document_id)
    return found[0], found[1]


def expected_row(session: Session, document_id: int, expected_version: int) -> tuple[DocumentRow, EntryRow]:
    """The same, refused when the document is no longer at the version that the writer has seen."""
    document, entry = document_row(session, document_id)
    if document.version != expected_version:
        since = events(session, document_id, after=expected_version)
        raise BookError(
            "book-conflict",
            number=EntryNumber(entry.series, entry.serial).text,
            name=entry.name,
            expected=expected_version,
            version=document.version,
            changes=tuple(f"{item.kind} by {item.actor} (version {item.version_after})" for item in since),
            events=since,
        )
    return document, entry


def begin(session: Session, document: DocumentRow, signature: Signature) -> None:
    """Write the first event of a document that was just stored as version 1, state 1."""
    session.add(
        EventRow(
            document_id=document.id,
            version_before=0,
            version_after=1,
            kind=BookEvent.ADD,
            actor=signature.actor,
            at=signature.at,
            note=signature.note,
            what="{}",
            content_hash=document.content_hash,
            state_before=None,
            state=1,
        )
    )
    session.flush()


def record(session: Session, document: DocumentRow, change: Change, signature: Signature) -> None:
    """Write the event and give the document its next version (compare and swap)."""
    version = document.version
    state = version + 1 if change.state is None else change.state
    session.add(
        EventRow(
            document_id=document.id,
            version_before=version,
            version_after=version + 1,
            kind=change.kind,
            actor=signature.actor,
            at=signature.at,
            note=signature.note,
            what=canonical_json(change.what),
            content_hash=change.content_hash,
            state_before=document.state,
            state=state,
        )
    )
    session.flush()
    swapped = session.execute(
        update(DocumentRow)
        .where(DocumentRow.id == document.id, DocumentRow.version == version)
        .values(version=version + 1, state=state, content_hash=change.content_hash, changed_at=signature.at)
    )
    if not isinstance(swapped, CursorResult) or swapped.rowcount != 1:
        raise HouseFault("book-fault", path="", detail="a document changed under the write lock")
    session.refresh(document)


def events(session: Session, document_id: int, after: int = 0) -> tuple[Event, ...]:
    """The journal of a document in its order, from the version ``after`` on."""
    query = select(EventRow).where(EventRow.document_id == document_id, EventRow.version_after > after)
    return tuple(_event(row) for row in session.scalars(query.order_by(EventRow.version_after)))


def at_version(session: Session, document_id: int, version: int) -> EventRow:
    """The event that made a version of a document."""
    query = select(EventRow).where(EventRow.document_id == document_id, EventRow.version_after == version)
    row = session.scalar(query)
    if row is None:
        raise BookError("book-version-missing", document=document_id, version=version)
    return row


def newest_state(session: Session, document_id: int) -> int:
    """The state that the newest edit made: the end of the way of redo."""
    edits = (EventRow.document_id == document_id, EventRow.state == EventRow.version_after)
    return int(session.scalar(select(func.max(EventRow.state)).where(*edits)) or 0)


def state_before(session: Session, document_id: int, state: int) -> int | None:
    """The state that ``state`` was made on; None for the first."""
    return at_version(session, document_id, state).state_before


def state_after(session: Session, document_id: int, state: int) -> int | None:
    """The next state on the way to the newest edit; None at its end."""
    query = select(EventRow.state, EventRow.state_before)
    edits = query.where(EventRow.document_id == document_id, EventRow.state == EventRow.version_after)
    made_on = {row.state: row.state_before for row in session.execute(edits)}
    following, way = None, max(made_on)
    while way != state:
        following, way = way, made_on[way]
    return following


def _event(row: EventRow) -> Event:
    return Event(
        id=row.id,
        document_id=row.document_id,
        version_before=row.version_before,
        version_after=row.version_after,
        kind=row.kind,
        actor=row.actor,
        at=time_of(row.at),
        note=row.note,
        what=json.loads(row.what),
        content_hash=row.content_hash,
        state=row.state,
    )
