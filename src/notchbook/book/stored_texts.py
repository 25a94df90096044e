"""Every text of hers that the book holds, with its place; and putting others in their stead."""

import json
from collections.abc import Iterator, Mapping
from typing import Any, Final

from sqlalchemy import Select, select, update
from sqlalchemy.orm import InstrumentedAttribute, Session

from notchbook.book.contents import keep
from notchbook.book.journal import Change, Signature, record
from notchbook.book.kinds import BookEvent
from notchbook.book.models import ContentRow, DocumentRow, EntryRow, EventRow, RevisionBlockRow, RevisionRow
from notchbook.book.numbers import EntryNumber
from notchbook.book.records import Place, Reworded, StoredText
from notchbook.book.revising import blocks_of, manifest_hash
from notchbook.book.texts import canonical_json, check_name, check_text, search_text

_OF_EVENTS: Final[Mapping[Place, InstrumentedAttribute[Any]]] = {
    Place.NOTE: EventRow.note,
    Place.FACTS: EventRow.what,
    Place.ACTOR: EventRow.actor,
}
_OF_REVISIONS: Final[Mapping[Place, InstrumentedAttribute[Any]]] = {
    Place.REASON: RevisionRow.reason,
    Place.FROZEN_BY: RevisionRow.frozen_by,
    Place.APPROVED_BY: RevisionRow.approved_by,
}
_WITH_CONTENT: Final = (
    (DocumentRow, DocumentRow.id),
    (EventRow, EventRow.document_id),
    (RevisionRow, RevisionRow.document_id),
)
_FROZEN: Final[Mapping[Place, InstrumentedAttribute[Any]]] = {
    Place.MEASURES: RevisionRow.measures_hash,
    Place.GEOMETRY: RevisionRow.geometry_hash,
}


def stored_texts(session: Session) -> Iterator[StoredText]:
    """All texts, each once for each document that it belongs to."""
    names = select(DocumentRow.id, EntryRow.name).join(EntryRow, DocumentRow.entry_id == EntryRow.id)
    for document, name in session.execute(names):
        yield StoredText(document, Place.NAME, document, name)
    yield from _contents(session, Place.CONTENT, EventRow.document_id, EventRow.content_hash)
    for place, column in _FROZEN.items():
        yield from _contents(session, place, RevisionRow.document_id, column)
    for place, column in _OF_EVENTS.items():
        yield from _words(session, place, select(EventRow.document_id, EventRow.id, column))
    for place, column in _OF_REVISIONS.items():
        yield from _words(session, place, select(RevisionRow.document_id, RevisionRow.id, column))


def reword(session: Session, reworded: Reworded, kind: BookEvent, signature: Signature) -> None:
    """Put other texts in the stead of those that ``reworded`` changes; the guards must be off.

    Each document that changes gets a line in its journal (``kind``) and a new version, so that nobody who
    still has the old text before him can bring it back. Revisions keep their approval and get the hash of
    what they hold now.
    """
    touched: set[int] = set()
    for stored in tuple(stored_texts(session)):
        text = reworded(stored)
        if text != stored.text:
            _put(session, stored, text)
            touched.add(stored.document_id)
    _hash_again(session)
    session.expire_all()
    for document in session.scalars(select(DocumentRow).where(DocumentRow.id.in_(sorted(touched)))).all():
        change = Change(kind, document.content_hash, document.state)
        record(session, document, change, signature)


def _contents(
    session: Session, place: Place, owner: InstrumentedAttribute[int], used: InstrumentedAttribute[Any]
) -> Iterator[StoredText]:
    found = select(owner, used, ContentRow.text).join(ContentRow, ContentRow.hash == used).distinct()
    for document, key, text in session.execute(found):
        yield StoredText(document, place, key, text)


def _words(session: Session, place: Place, said: Select[Any, Any, Any]) -> Iterator[StoredText]:
    for document, key, text in session.execute(said):
        yield StoredText(document, place, key, text or "")


def _put(session: Session, stored: StoredText, text: str) -> None:
    place = stored.place
    if place is Place.NAME:
        _put_name(session, stored.document_id, text)
    elif place is Place.CONTENT:
        key = keep(session, text)
        for table, owner in _WITH_CONTENT:
            old = (owner == stored.document_id, table.content_hash == stored.key)
            session.execute(update(table).where(*old).values(content_hash=key))
    elif place in _FROZEN:
        column = _FROZEN[place]
        mine = (RevisionRow.document_id == stored.document_id, column == stored.key)
        session.execute(update(RevisionRow).where(*mine).values({column: keep(session, text)}))
    elif place in _OF_EVENTS:
        new = {_OF_EVENTS[place]: check_text(text, place)}
        session.execute(update(EventRow).where(EventRow.id == stored.key).values(new))
    else:
        said = {_OF_REVISIONS[place]: check_text(text, place)}
        session.execute(update(RevisionRow).where(RevisionRow.id == stored.key).values(said))


def _put_name(session: Session, document: int, text: str) -> None:
    name = check_name(text)
    entry = session.scalars(
        select(EntryRow)
        .join(DocumentRow, DocumentRow.entry_id == EntryRow.id)
        .where(DocumentRow.id == document)
    ).one()
    entry.name, entry.search_text = name, search_text(EntryNumber(entry.series, entry.serial).text, name)
    session.flush()


def _hash_again(session: Session) -> None:
    """Give each revision the hash of what it holds, and have all that names it by the old one follow.

    A revision is made from older ones only, so one way through the revisions in their order is enough.
    """
    session.expire_all()
    changed: dict[str, str] = {}
    for row in session.scalars(select(RevisionRow).order_by(RevisionRow.id)).all():
        blocks = blocks_of(session, row.id)
        for old in set(blocks) & changed.keys():
            block = (RevisionBlockRow.revision_id == row.id, RevisionBlockRow.block_hash == old)
            session.execute(update(RevisionBlockRow).where(*block).values(block_hash=changed[old]))
        blocks = tuple(changed.get(block, block) for block in blocks)
        key = manifest_hash(row, json.loads(row.step_versions), blocks)
        if key != row.hash:
            changed[row.hash], row.hash = key, key
            session.flush()
    _follow_in_journal(session, changed)


def _follow_in_journal(session: Session, changed: Mapping[str, str]) -> None:
    kinds = (BookEvent.FREEZE, BookEvent.APPROVE)
    for event in session.scalars(select(EventRow).where(EventRow.kind.in_(kinds))).all():
        facts = json.loads(event.what)
        if facts.get("hash") in changed:
            event.what = canonical_json({**facts, "hash": changed[facts["hash"]]})
    session.flush()
