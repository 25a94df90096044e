"""Changes of an entry: add, save, undo, redo, rename, retire, bring back. Each within a transaction."""

from sqlalchemy import select
from sqlalchemy.orm import Session

from notchbook.book.contents import keep
from notchbook.book.journal import (
    Change,
    Signature,
    at_version,
    begin,
    expected_row,
    record,
    state_after,
    state_before,
)
from notchbook.book.kinds import BookEvent, EntryKind, EntryStatus, check_edit_kind
from notchbook.book.models import DocumentRow, EntryRow, ErasureRow, RevisionRow
from notchbook.book.numbers import EntryNumber, parse_number
from notchbook.book.texts import check_name, search_text
from notchbook.errors import BookError


def add(session: Session, kind: EntryKind, number: str, name: str, content: str, signature: Signature) -> int:
    """A new entry with its document at version 1; the document's id."""
    parsed, title = parse_number(number), check_name(name)
    taken = select(EntryRow.name).where(EntryRow.series == parsed.series, EntryRow.serial == parsed.serial)
    other = session.scalar(taken)
    if other is not None:
        raise BookError("book-number-taken", number=parsed.text, name=other)
    gone = select(ErasureRow.id).where(ErasureRow.series == parsed.series, ErasureRow.serial == parsed.serial)
    if session.scalar(gone) is not None:
        raise BookError("book-number-erased", number=parsed.text)
    entry = EntryRow(
        kind=kind,
        series=parsed.series,
        serial=parsed.serial,
        name=title,
        status=EntryStatus.WORKING,
        search_text=search_text(parsed.text, title),
        created_at=signature.at,
    )
    session.add(entry)
    session.flush()
    document = DocumentRow(
        entry_id=entry.id, version=1, state=1, content_hash=keep(session, content), changed_at=signature.at
    )
    session.add(document)
    session.flush()
    begin(session, document, signature)
    return document.id


def save(
    session: Session, document_id: int, content: str, expected_version: int, kind: str, signature: Signature
) -> None:
    """A new content. The same content again is no edit: it makes no event."""
    check_edit_kind(kind)
    document, entry = expected_row(session, document_id, expected_version)
    key = keep(session, content)
    if key != document.content_hash:
        record(session, document, Change(kind, key, state=None), signature)
        follow_content(session, document, entry)


def undo(session: Session, document_id: int, expected_version: int, signature: Signature) -> None:
    """Restore the content that the state of now was made on."""
    document, entry = expected_row(session, document_id, expected_version)
    target = state_before(session, document_id, document.state)
    if target is None:
        raise BookError("book-nothing-to-undo", number=_number(entry), name=entry.name)
    _restore(session, document, entry, BookEvent.UNDO, target, signature)


def redo(session: Session, document_id: int, expected_version: int, signature: Signature) -> None:
    """Restore the content that was undone last, unless an edit was made since."""
    document, entry = expected_row(session, document_id, expected_version)
    target = state_after(session, document_id, document.state)
    if target is None:
        raise BookError("book-nothing-to-redo", number=_number(entry), name=entry.name)
    _restore(session, document, entry, BookEvent.REDO, target, signature)


def rename(
    session: Session, document_id: int, name: str, expected_version: int, signature: Signature
) -> None:
    """Another name for the entry; its number stays."""
    title = check_name(name)
    document, entry = expected_row(session, document_id, expected_version)
    if title == entry.name:
        return
    what = {"from": entry.name, "to": title}
    record(
        session, document, Change(BookEvent.RENAME, document.content_hash, document.state, what), signature
    )
    entry.name, entry.search_text = title, search_text(_number(entry), title)
    session.flush()


def file_away(
    session: Session, document_id: int, expected_version: int, signature: Signature, *, retired: bool
) -> None:
    """Retire an entry, or bring a retired one back."""
    document, entry = expected_row(session, document_id, expected_version)
    if retired == (entry.status == EntryStatus.RETIRED):
        return
    kind = BookEvent.RETIRE if retired else BookEvent.BRING_BACK
    record(session, document, Change(kind, document.content_hash, document.state), signature)
    entry.status = EntryStatus.RETIRED if retired else EntryStatus.WORKING
    session.flush()
    follow_content(session, document, entry)


def _restore(
    session: Session,
    document: DocumentRow,
    entry: EntryRow,
    kind: BookEvent,
    target: int,
    signature: Signature,
) -> None:
    made = at_version(session, document.id, target)
    what = {"from": document.state, "to": target, "edit": made.kind}
    record(session, document, Change(kind, made.content_hash, target, what), signature)
    follow_content(session, document, entry)


def follow_content(session: Session, document: DocumentRow, entry: EntryRow) -> None:
    """An entry is approved exactly while its content is that of an approved revision; retired stays."""
    if entry.status == EntryStatus.RETIRED:
        return
    query = select(RevisionRow.id).where(
        RevisionRow.document_id == document.id,
        RevisionRow.content_hash == document.content_hash,
        RevisionRow.approved_at.is_not(None),
    )
    approved = session.scalar(query.limit(1)) is not None
    entry.status = EntryStatus.APPROVED if approved else EntryStatus.WORKING
    session.flush()


def _number(entry: EntryRow) -> str:
    return EntryNumber(entry.series, entry.serial).text
