"""Copies of a book, also while it is written to: made by SQLite's backup, then read through."""

from pathlib import Path

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from notchbook.book.connecting import Journal, make_engine
from notchbook.book.copying import copy_file
from notchbook.book.faults import told_in_words
from notchbook.book.models import DocumentRow, EventRow
from notchbook.book.placing import made_beside
from notchbook.book.records import BackupReport
from notchbook.book.settings import Settings
from notchbook.book.verifying import problems
from notchbook.errors import BookError


def back_up(source: Path, target: Path, settings: Settings, mode: str) -> BackupReport:
    """Copy a book to a new file; the file takes its name only after it was read through.

    ``mode`` is how the source is open, as in its URI.
    """
    with made_beside(target) as draft:
        with told_in_words(source):
            copy_file(source, draft, settings, mode)
        documents, events = _read_through(draft, target, settings)
        size = draft.stat().st_size
    return BackupReport(target, documents, events, size)


def _read_through(draft: Path, target: Path, settings: Settings) -> tuple[int, int]:
    engine = make_engine(draft, settings, Journal.ROLLBACK, "mode=ro")
    try:
        with told_in_words(target), Session(engine) as session:
            found = problems(session)
            documents = session.scalar(select(func.count()).select_from(DocumentRow)) or 0
            events = session.scalar(select(func.count()).select_from(EventRow)) or 0
    finally:
        engine.dispose()
    if found:
        raise BookError("book-backup-unsound", path=str(target), problems=found)
    return documents, events
