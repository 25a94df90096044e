"""Reading: a document at a version, the lines of the library, the next free number."""

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from notchbook.book.contents import text_of
from notchbook.book.journal import at_version, document_row, newest_state, state_after, state_before
from notchbook.book.kinds import EntryKind, EntryStatus
from notchbook.book.models import ContentRow, DocumentRow, EntryRow, ErasureRow
from notchbook.book.numbers import FIRST_SERIAL, EntryNumber, parse_number, parse_series
from notchbook.book.records import Document, Listed
from notchbook.book.settings import time_of
from notchbook.book.texts import search_form
from notchbook.errors import BookError


def read(session: Session, document_id: int, version: int | None = None) -> Document:
    """A document with its content, of now or of an earlier version."""
    row, entry = document_row(session, document_id)
    key, changed_at = row.content_hash, row.changed_at
    if version is not None and version != row.version:
        event = at_version(session, document_id, version)
        key, changed_at = event.content_hash, event.at
    return Document(
        id=row.id,
        kind=EntryKind(entry.kind),
        number=EntryNumber(entry.series, entry.serial).text,
        name=entry.name,
        status=EntryStatus(entry.status),
        version=row.version if version is None else version,
        latest_version=row.version,
        content=text_of(session, key),
        content_hash=key,
        changed_at=time_of(changed_at),
        can_undo=state_before(session, document_id, row.state) is not None,
        can_redo=newest_state(session, document_id) != row.state,
    )


def numbered(session: Session, number: str) -> int:
    """The id of the document with this number."""
    parsed = parse_number(number)
    query = select(DocumentRow.id).join(EntryRow, EntryRow.id == DocumentRow.entry_id)
    found = session.scalar(query.where(EntryRow.series == parsed.series, EntryRow.serial == parsed.serial))
    if found is None:
        raise BookError("book-number-missing", number=parsed.text)
    return found


def lines(session: Session, kind: EntryKind | None, text: str | None) -> tuple[Listed, ...]:
    """The lines of the library by number; ``text`` has words that all stand in the number or the name."""
    query = select(
        DocumentRow.id,
        EntryRow.kind,
        EntryRow.series,
        EntryRow.serial,
        EntryRow.name,
        EntryRow.status,
        DocumentRow.version,
        DocumentRow.changed_at,
    ).join(EntryRow, EntryRow.id == DocumentRow.entry_id)
    if kind is not None:
        query = query.where(EntryRow.kind == kind)
    for word in search_form(text or "").split():
        query = query.where(func.instr(EntryRow.search_text, word) > 0)
    found = session.execute(query.order_by(EntryRow.series, EntryRow.serial))
    return tuple(
        Listed(
            id=row.id,
            kind=EntryKind(row.kind),
            number=EntryNumber(row.series, row.serial).text,
            name=row.name,
            status=EntryStatus(row.status),
            version=row.version,
            changed_at=time_of(row.changed_at),
        )
        for row in found
    )


def contents_of(session: Session, kind: EntryKind) -> dict[int, str]:
    """The content of now of every document of a kind, by its id."""
    query = (
        select(DocumentRow.id, ContentRow.text)
        .join(EntryRow, EntryRow.id == DocumentRow.entry_id)
        .join(ContentRow, ContentRow.hash == DocumentRow.content_hash)
        .where(EntryRow.kind == kind)
    )
    return {row.id: row.text for row in session.execute(query)}


def undo_leads_to(session: Session, document_id: int) -> int | None:
    """The version whose content undo would restore; None when there is nothing to undo."""
    row, _entry = document_row(session, document_id)
    return state_before(session, document_id, row.state)


def redo_leads_to(session: Session, document_id: int) -> int | None:
    """The version whose content redo would restore; None when there is nothing to redo."""
    row, _entry = document_row(session, document_id)
    return state_after(session, document_id, row.state)


def next_number(session: Session, series: str) -> str:
    """The number after the highest of a series, erased ones too; S-101 when there is none."""
    letters = parse_series(series)
    rows = (EntryRow, ErasureRow)
    highest = (session.scalar(select(func.max(row.serial)).where(row.series == letters)) for row in rows)
    return EntryNumber(letters, max((serial + 1 for serial in highest if serial), default=FIRST_SERIAL)).text
