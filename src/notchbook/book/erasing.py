"""Erasing: the one way in which something leaves the book (docs/decisions/0009-erasure.md).

The guards are taken off and put back within the transaction, so no other program ever sees the file
without them.
"""

from collections.abc import Iterable, Iterator
from contextlib import contextmanager

from sqlalchemy import delete, func, select, union
from sqlalchemy.orm import Session

from notchbook.book import editing
from notchbook.book.copies import mark_of
from notchbook.book.guards import put_on_guards, take_off_guards
from notchbook.book.journal import Change, Signature, document_row, expected_row, record
from notchbook.book.kinds import BookEvent, EntryKind
from notchbook.book.models import (
    ContentRow,
    DocumentRow,
    ErasureRow,
    EventRow,
    RevisionBlockRow,
    RevisionRow,
)
from notchbook.book.numbers import EntryNumber
from notchbook.book.records import Erased, Erasure, UnderCode
from notchbook.book.revising import revision_row
from notchbook.book.settings import time_of
from notchbook.book.stored_texts import reword
from notchbook.book.sweeping import ask_for_sweep
from notchbook.errors import BookError


def erase(session: Session, erasure: Erasure, signature: Signature) -> None:
    """All of the erasure, within one transaction; the cleaning of the file is asked for in it."""
    check_seen(session, erasure.seen)
    for document, version in erasure.documents.items():
        expected_row(session, document, version)
    with _without_guards(session):
        for document, new in erasure.contents.items():
            editing.save(session, document, new.content, new.expected_version, new.kind, signature)
        marks = [mark(session, document) for document in erasure.documents]
        _take_out_revisions(session, erasure.revisions, signature)
        for document in erasure.documents:
            _remove(session, document, signature)
        if erasure.reworded is not None:
            reword(session, erasure.reworded, BookEvent.ERASE, signature)
        _forget_unused(session)
        ask_for_sweep(session, erasure.copies, marks)


def put_under_code(session: Session, renaming: UnderCode, signature: Signature) -> None:
    """Change texts wherever they stand, old versions and frozen revisions too, within one transaction."""
    check_seen(session, renaming.seen)
    expected_row(session, renaming.document_id, renaming.expected_version)
    with _without_guards(session):
        reword(session, renaming.reworded, BookEvent.UNDER_CODE, signature)
        _forget_unused(session)
        ask_for_sweep(session, renaming.copies, [mark(session, renaming.document_id)])


def last_line(session: Session) -> int:
    """The id of the last line of the whole journal, 0 in an empty book."""
    return int(session.scalar(select(func.max(EventRow.id))) or 0)


def check_seen(session: Session, seen: int) -> None:
    """Refuse (``book-moved-on``) when anything was written since: what was chosen may not fit any more."""
    last = last_line(session)
    if last != seen:
        raise BookError("book-moved-on", seen=seen, last=last)


def erased(session: Session) -> tuple[Erased, ...]:
    """The lines that say what was erased, oldest first."""
    return tuple(
        Erased(EntryKind(row.kind), EntryNumber(row.series, row.serial).text, row.actor, time_of(row.at))
        for row in session.scalars(select(ErasureRow).order_by(ErasureRow.id))
    )


@contextmanager
def _without_guards(session: Session) -> Iterator[None]:
    take_off_guards(session.connection())
    yield
    session.flush()
    put_on_guards(session.connection())


def mark(session: Session, document_id: int) -> str:
    """What tells this entry from all others, in any copy of the book."""
    _document, entry = document_row(session, document_id)
    return mark_of(entry.series, entry.serial, entry.created_at)


def _take_out_revisions(session: Session, revisions: Iterable[int], signature: Signature) -> None:
    """Remove single revisions; their documents stay, and say so in their journals."""
    by_document: dict[int, list[int]] = {}
    for key in revisions:
        row = revision_row(session, key)
        by_document.setdefault(row.document_id, []).append(row.revision)
        session.execute(delete(RevisionBlockRow).where(RevisionBlockRow.revision_id == key))
        session.delete(row)
        session.flush()
    for document_id, numbers in by_document.items():
        document, entry = document_row(session, document_id)
        what = {"revisions": sorted(numbers)}
        change = Change(BookEvent.ERASE, document.content_hash, document.state, what)
        record(session, document, change, signature)
        editing.follow_content(session, document, entry)


def _remove(session: Session, document_id: int, signature: Signature) -> None:
    """An entry with its document, journal and revisions; a line says that there was one."""
    document, entry = document_row(session, document_id)
    session.add(
        ErasureRow(
            kind=entry.kind, series=entry.series, serial=entry.serial, actor=signature.actor, at=signature.at
        )
    )
    own = select(RevisionRow.id).where(RevisionRow.document_id == document_id)
    session.execute(delete(RevisionBlockRow).where(RevisionBlockRow.revision_id.in_(own)))
    session.execute(delete(RevisionRow).where(RevisionRow.document_id == document_id))
    session.execute(delete(EventRow).where(EventRow.document_id == document_id))
    session.delete(document)
    session.flush()
    session.delete(entry)
    session.flush()


def _forget_unused(session: Session) -> None:
    """Remove the texts that nothing names any more."""
    users = (
        EventRow.content_hash,
        DocumentRow.content_hash,
        RevisionRow.content_hash,
        RevisionRow.measures_hash,
        RevisionRow.geometry_hash,
    )
    used = union(*(select(user).where(user.is_not(None)) for user in users))
    session.execute(
        delete(ContentRow).where(ContentRow.hash.not_in(used)),
        execution_options={"synchronize_session": False},
    )
