"""Reading a whole book through: is every text, event, version and revision what it must be?"""

import json
from collections.abc import Iterator
from itertools import groupby

from sqlalchemy import and_, select, text
from sqlalchemy.orm import Session

from notchbook.book.guards import GUARDS
from notchbook.book.models import ContentRow, DocumentRow, EntryRow, ErasureRow, EventRow, RevisionRow
from notchbook.book.revising import blocks_of, manifest_hash
from notchbook.book.texts import digest


def problems(session: Session) -> tuple[str, ...]:
    """What is wrong in the book, one line each; empty when it is sound."""
    return tuple(
        line
        for search in (_of_the_file, _of_guards, _of_texts, _of_documents, _of_revisions, _of_erasures)
        for line in search(session)
    )


def _of_the_file(session: Session) -> Iterator[str]:
    for row in session.execute(text("PRAGMA integrity_check")):
        if row[0] != "ok":
            yield f"the file: {row[0]}"
    for row in session.execute(text("PRAGMA foreign_key_check")):
        yield f"the file: row {row[1]} of {row[0]} names a missing row of {row[2]}"


def _of_guards(session: Session) -> Iterator[str]:
    query = "SELECT name, sql FROM sqlite_master WHERE type = 'trigger'"
    present = {str(row[0]): str(row[1]) for row in session.execute(text(query))}
    yield from (
        f"the guard {name} is missing or changed" for name in GUARDS if present.get(name) != GUARDS[name]
    )


def _of_texts(session: Session) -> Iterator[str]:
    query = select(ContentRow.hash, ContentRow.text).execution_options(yield_per=100)
    for key, stored in session.execute(query):
        if digest(stored) != key:
            yield f"the text {key[:12]} was changed"


def _of_documents(session: Session) -> Iterator[str]:
    rows = session.scalars(select(EventRow).order_by(EventRow.document_id, EventRow.version_after))
    journals = {key: tuple(group) for key, group in groupby(rows, key=lambda row: row.document_id)}
    for document in session.scalars(select(DocumentRow).order_by(DocumentRow.id)):
        yield from _of_journal(document, journals.get(document.id, ()))


def _of_journal(document: DocumentRow, journal: tuple[EventRow, ...]) -> Iterator[str]:
    """The versions follow each other, each restored content is that of its state, the last is the present."""
    who = f"document {document.id}"
    if [row.version_after for row in journal] != list(range(1, document.version + 1)):
        yield f"{who}: its journal does not have the versions 1 to {document.version}, each once"
        return
    state = None
    for row in journal:
        made = journal[row.state - 1] if 1 <= row.state <= row.version_after else None
        if made is None or made.content_hash != row.content_hash or row.state_before != state:
            yield f"{who}: version {row.version_after} does not follow from the journal"
        state = row.state
    last = journal[-1]
    if (document.content_hash, document.state, document.changed_at) != (
        last.content_hash,
        last.state,
        last.at,
    ):
        yield f"{who}: it differs from the last line of its journal"


def _of_revisions(session: Session) -> Iterator[str]:
    for row in session.scalars(select(RevisionRow).order_by(RevisionRow.id)):
        steps: dict[str, int] = json.loads(row.step_versions)
        if manifest_hash(row, steps, blocks_of(session, row.id)) != row.hash:
            yield f"revision {row.revision} of document {row.document_id} is not what was frozen"


def _of_erasures(session: Session) -> Iterator[str]:
    same = and_(EntryRow.series == ErasureRow.series, EntryRow.serial == ErasureRow.serial)
    for row in session.execute(select(EntryRow.series, EntryRow.serial).join(ErasureRow, same)):
        yield f"the number {row.series}-{row.serial} was given again after an erasure"
