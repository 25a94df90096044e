"""Revisions: freeze a document with its reason, approve it once, find where a block was used."""

import json
from collections.abc import Mapping

from sqlalchemy import func, select, update
from sqlalchemy.orm import Session

from notchbook.book.contents import keep, text_of
from notchbook.book.editing import follow_content
from notchbook.book.journal import Change, Signature, expected_row, record
from notchbook.book.kinds import BookEvent, EntryKind
from notchbook.book.models import DocumentRow, EntryRow, EventRow, RevisionBlockRow, RevisionRow
from notchbook.book.numbers import EntryNumber
from notchbook.book.records import Frozen, Revision, RevisionContents
from notchbook.book.settings import time_of
from notchbook.book.texts import canonical_json, digest
from notchbook.errors import BookError


def freeze(
    session: Session, document_id: int, expected_version: int, frozen: Frozen, signature: Signature
) -> int:
    """Freeze the content of now with its measures, geometry, step versions and blocks; the revision's id."""
    document, entry = expected_row(session, document_id, expected_version)
    _check_whole(session, entry, frozen)
    row = _frozen_row(session, document, frozen, signature)
    _refuse_same(session, row, entry)
    session.add(row)
    session.flush()
    for block in sorted(set(frozen.block_revisions)):
        session.add(RevisionBlockRow(revision_id=row.id, block_hash=block))
    what = {"revision": row.revision, "hash": row.hash}
    record(
        session, document, Change(BookEvent.FREEZE, document.content_hash, document.state, what), signature
    )
    return row.id


def approve(session: Session, revision_id: int, expected_version: int, signature: Signature) -> None:
    """Approve a revision; from then on it can never change."""
    row = revision_row(session, revision_id)
    document, entry = expected_row(session, row.document_id, expected_version)
    if row.approved_at is not None:
        raise BookError(
            "book-revision-approved", number=_number(entry), revision=row.revision, actor=row.approved_by
        )
    session.execute(
        update(RevisionRow)
        .where(RevisionRow.id == revision_id)
        .values(approved_at=signature.at, approved_by=signature.actor)
    )
    what = {"revision": row.revision, "hash": row.hash}
    record(
        session, document, Change(BookEvent.APPROVE, document.content_hash, document.state, what), signature
    )
    follow_content(session, document, entry)


def revision_row(session: Session, revision_id: int) -> RevisionRow:
    """The stored revision."""
    row = session.get(RevisionRow, revision_id)
    if row is None:
        raise BookError("book-revision-missing", revision=revision_id)
    return row


def one_revision(session: Session, revision_id: int) -> Revision:
    """A revision by its id."""
    revision_row(session, revision_id)
    return _revisions(session, revision_id=revision_id)[0]


def revisions_of(session: Session, document_id: int) -> tuple[Revision, ...]:
    """The revisions of a document, oldest first."""
    return _revisions(session, document_id=document_id)


def all_revisions(session: Session) -> tuple[Revision, ...]:
    """All revisions of the book, document by document, oldest first."""
    return _revisions(session)


def revisions_with(session: Session, block_hash: str) -> tuple[Revision, ...]:
    """The revisions that were made from a block revision."""
    return _revisions(session, block_hash=block_hash)


def contents_of(session: Session, revision_id: int) -> RevisionContents:
    """The frozen texts of a revision."""
    row = revision_row(session, revision_id)
    return RevisionContents(
        content=text_of(session, row.content_hash),
        measures=None if row.measures_hash is None else text_of(session, row.measures_hash),
        geometry=None if row.geometry_hash is None else text_of(session, row.geometry_hash),
    )


def manifest_hash(row: RevisionRow, steps: Mapping[str, int], blocks: tuple[str, ...]) -> str:
    """The hash of all that is frozen in a revision, which names it wherever it is used."""
    manifest = {
        "blocks": sorted(set(blocks)),
        "content": row.content_hash,
        "geometry": row.geometry_hash,
        "measures": row.measures_hash,
        "steps": dict(steps),
    }
    return digest(canonical_json(manifest))


def _check_whole(session: Session, entry: EntryRow, frozen: Frozen) -> None:
    """A style or block is frozen with measures and geometry; every block that it names is in the book."""
    if entry.kind != EntryKind.MEASURES:
        absent = [name for name in ("measures", "geometry") if getattr(frozen, name) is None]
        if absent:
            raise BookError("book-revision-incomplete", number=_number(entry), absent=tuple(absent))
    for block in frozen.block_revisions:
        if session.scalar(select(RevisionRow.id).where(RevisionRow.hash == block).limit(1)) is None:
            raise BookError("book-block-revision-missing", number=_number(entry), hash=block)


def _frozen_row(session: Session, document: DocumentRow, frozen: Frozen, signature: Signature) -> RevisionRow:
    # Counted in the journal: the number of an erased revision is not given again.
    freezings = (EventRow.document_id == document.id, EventRow.kind == BookEvent.FREEZE)
    count = session.scalar(select(func.count()).select_from(EventRow).where(*freezings))
    row = RevisionRow(
        document_id=document.id,
        revision=int(count or 0) + 1,
        document_version=document.version,
        reason=signature.note,
        frozen_by=signature.actor,
        frozen_at=signature.at,
        content_hash=document.content_hash,
        measures_hash=None if frozen.measures is None else keep(session, frozen.measures),
        geometry_hash=None if frozen.geometry is None else keep(session, frozen.geometry),
        step_versions=canonical_json(frozen.step_versions),
    )
    row.hash = manifest_hash(row, frozen.step_versions, frozen.block_revisions)
    return row


def _refuse_same(session: Session, row: RevisionRow, entry: EntryRow) -> None:
    same = select(RevisionRow.revision).where(
        RevisionRow.document_id == row.document_id, RevisionRow.hash == row.hash
    )
    number = session.scalar(same)
    if number is not None:
        raise BookError("book-revision-unchanged", number=_number(entry), revision=number)


def _revisions(
    session: Session,
    revision_id: int | None = None,
    document_id: int | None = None,
    block_hash: str | None = None,
) -> tuple[Revision, ...]:
    query = (
        select(RevisionRow, EntryRow)
        .join(DocumentRow, DocumentRow.id == RevisionRow.document_id)
        .join(EntryRow, EntryRow.id == DocumentRow.entry_id)
        .order_by(RevisionRow.document_id, RevisionRow.revision)
    )
    if revision_id is not None:
        query = query.where(RevisionRow.id == revision_id)
    if document_id is not None:
        query = query.where(RevisionRow.document_id == document_id)
    if block_hash is not None:
        used = select(RevisionBlockRow.revision_id).where(RevisionBlockRow.block_hash == block_hash)
        query = query.where(RevisionRow.id.in_(used))
    return tuple(_revision(row, entry, blocks_of(session, row.id)) for row, entry in session.execute(query))


def blocks_of(session: Session, revision_id: int) -> tuple[str, ...]:
    """The hashes of the block revisions that a revision was made from, sorted."""
    query = select(RevisionBlockRow.block_hash).where(RevisionBlockRow.revision_id == revision_id)
    return tuple(session.scalars(query.order_by(RevisionBlockRow.block_hash)))


def _revision(row: RevisionRow, entry: EntryRow, blocks: tuple[str, ...]) -> Revision:
    return Revision(
        id=row.id,
        document_id=row.document_id,
        number=_number(entry),
        revision=row.revision,
        hash=row.hash,
        document_version=row.document_version,
        reason=row.reason,
        frozen_by=row.frozen_by,
        frozen_at=time_of(row.frozen_at),
        approved_by=row.approved_by,
        approved_at=None if row.approved_at is None else time_of(row.approved_at),
        content_hash=row.content_hash,
        measures_hash=row.measures_hash,
        geometry_hash=row.geometry_hash,
        step_versions=json.loads(row.step_versions),
        block_revisions=blocks,
    )


def _number(entry: EntryRow) -> str:
    return EntryNumber(entry.series, entry.serial).text
