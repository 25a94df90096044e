"""The tables of a book. Their comments are the source of docs/formats/book.md.

A change here needs a new migration in ``migrations/versions`` and a new ``SCHEMA``.
"""

from typing import Final

from sqlalchemy import CheckConstraint, ForeignKey, Index, Integer, MetaData, String, Text, UniqueConstraint
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

SCHEMA: Final = 2
"""The schema that this version of Notchbook writes; stands in the file as ``user_version``."""

APPLICATION_ID: Final = 0x4E544348
"""Marks the file as a book ("NTCH"); stands in the file as ``application_id``."""

_HASH: Final = String(64)
_TIME: Final = String(27)

_NAMES: Final = {
    "pk": "pk_%(table_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
}


class Base(DeclarativeBase):
    """Names every constraint, because a later migration must be able to name it."""

    metadata = MetaData(naming_convention=_NAMES)


class ContentRow(Base):
    """A text, stored once under its hash; never changed, and removed by an erasure alone."""

    __tablename__ = "contents"
    __table_args__ = (
        {"comment": "Texts, each stored once under its hash. Never changed; removed by erasures alone."},
    )

    hash: Mapped[str] = mapped_column(_HASH, primary_key=True, comment="sha256 of the text in UTF-8, in hex")
    text: Mapped[str] = mapped_column(Text, comment="canonical JSON, as it was given")


class EntryRow(Base):
    """A line of the pattern library."""

    __tablename__ = "entries"
    __table_args__ = (
        UniqueConstraint("series", "serial"),
        CheckConstraint("kind IN ('style', 'block', 'measures', 'chart')", name="kind"),
        CheckConstraint("status IN ('working', 'approved', 'retired')", name="status"),
        {"comment": "The lines of the pattern library.", "sqlite_autoincrement": True},
    )

    id: Mapped[int] = mapped_column(Integer, primary_key=True)
    kind: Mapped[str] = mapped_column(String(8), comment="style, block, measures or chart")
    series: Mapped[str] = mapped_column(String(6), comment="letters of the number: S of S-104")
    serial: Mapped[int] = mapped_column(Integer, comment="digits of the number: 104 of S-104")
    name: Mapped[str] = mapped_column(String(200), comment="what she calls it")
    status: Mapped[str] = mapped_column(
        String(8), comment="working, approved (the content is that of an approved revision) or retired"
    )
    search_text: Mapped[str] = mapped_column(Text, comment="number and name without case and accents")
    created_at: Mapped[str] = mapped_column(_TIME, comment="UTC, ISO 8601, with microseconds")


class DocumentRow(Base):
    """The document of an entry as it is now. Everything here also follows from the journal."""

    __tablename__ = "documents"
    __table_args__ = (
        UniqueConstraint("entry_id"),
        {
            "comment": "The document of each entry as it is now; follows from the journal.",
            "sqlite_autoincrement": True,
        },
    )

    id: Mapped[int] = mapped_column(Integer, primary_key=True)
    entry_id: Mapped[int] = mapped_column(ForeignKey("entries.id"), comment="its entry; one document each")
    version: Mapped[int] = mapped_column(Integer, comment="rises by one with each event (compare and swap)")
    state: Mapped[int] = mapped_column(Integer, comment="the version that first had the content of now")
    content_hash: Mapped[str] = mapped_column(ForeignKey("contents.hash"), comment="the content of now")
    changed_at: Mapped[str] = mapped_column(_TIME, comment="time of the last event")


class EventRow(Base):
    """A line of the journal, which only grows (see ErasureRow for the one exception)."""

    __tablename__ = "events"
    __table_args__ = (
        UniqueConstraint("document_id", "version_after"),
        CheckConstraint("version_after = version_before + 1", name="one_version"),
        {"comment": "The journal. Only grows (but for an erasure).", "sqlite_autoincrement": True},
    )

    id: Mapped[int] = mapped_column(Integer, primary_key=True, comment="order of the journal")
    document_id: Mapped[int] = mapped_column(ForeignKey("documents.id"), comment="its document")
    version_before: Mapped[int] = mapped_column(
        Integer, comment="version that the event was made on; first 0"
    )
    version_after: Mapped[int] = mapped_column(Integer, comment="version that the event made")
    kind: Mapped[str] = mapped_column(
        String(60),
        comment="add, undo, redo, rename, retire, bring-back, freeze, approve, erase, keep-under-code, "
        "or the word of an edit",
    )
    actor: Mapped[str] = mapped_column(String(200), comment="who did it")
    at: Mapped[str] = mapped_column(_TIME, comment="UTC, ISO 8601, with microseconds")
    note: Mapped[str] = mapped_column(Text, comment="her words, may be empty")
    what: Mapped[str] = mapped_column(Text, comment="facts of the event, a JSON object")
    content_hash: Mapped[str] = mapped_column(ForeignKey("contents.hash"), comment="the content after it")
    state_before: Mapped[int | None] = mapped_column(
        Integer, comment="state that it was made on; none for add. Undo of state n goes to this of event n"
    )
    state: Mapped[int] = mapped_column(
        Integer, comment="version whose content is in effect after it; its own version when it is an edit"
    )


class RevisionRow(Base):
    """A frozen state of a document; an approved one never changes."""

    __tablename__ = "revisions"
    __table_args__ = (
        UniqueConstraint("document_id", "revision"),
        UniqueConstraint("document_id", "hash"),
        CheckConstraint("(approved_at IS NULL) = (approved_by IS NULL)", name="approval_whole"),
        Index("ix_revisions_hash", "hash"),
        {
            "comment": "Frozen states of documents. Can only be approved, once; approved ones never change.",
            "sqlite_autoincrement": True,
        },
    )

    id: Mapped[int] = mapped_column(Integer, primary_key=True)
    document_id: Mapped[int] = mapped_column(ForeignKey("documents.id"), comment="its document")
    revision: Mapped[int] = mapped_column(Integer, comment="counts from 1 in each document")
    hash: Mapped[str] = mapped_column(
        _HASH, comment="sha256 of the manifest: hashes of the texts and blocks, step versions"
    )
    document_version: Mapped[int] = mapped_column(Integer, comment="version of the document that was frozen")
    reason: Mapped[str] = mapped_column(Text, comment="why it was frozen")
    frozen_by: Mapped[str] = mapped_column(String(200), comment="who froze it")
    frozen_at: Mapped[str] = mapped_column(_TIME, comment="UTC, ISO 8601, with microseconds")
    approved_by: Mapped[str | None] = mapped_column(String(200), comment="who approved it, or nothing")
    approved_at: Mapped[str | None] = mapped_column(_TIME, comment="when it was approved, or nothing")
    content_hash: Mapped[str] = mapped_column(
        ForeignKey("contents.hash"), comment="the document's content: a recipe, or measures"
    )
    measures_hash: Mapped[str | None] = mapped_column(
        ForeignKey("contents.hash"), comment="the measures it was run on; none for an entry of measures"
    )
    geometry_hash: Mapped[str | None] = mapped_column(
        ForeignKey("contents.hash"), comment="the geometry that is served; none for an entry of measures"
    )
    step_versions: Mapped[str] = mapped_column(Text, comment="JSON object: operation to its version")


class RevisionBlockRow(Base):
    """A block revision that a revision was made from."""

    __tablename__ = "revision_blocks"
    __table_args__ = (
        Index("ix_revision_blocks_block_hash", "block_hash"),
        {"comment": "The block revisions that a revision was made from (where-used)."},
    )

    revision_id: Mapped[int] = mapped_column(ForeignKey("revisions.id"), primary_key=True)
    block_hash: Mapped[str] = mapped_column(_HASH, primary_key=True, comment="`revisions.hash` of the block")


class ErasureRow(Base):
    """What is left of an erased entry: that there was one, and its number, which is not given again."""

    __tablename__ = "erasures"
    __table_args__ = (
        UniqueConstraint("series", "serial"),
        {
            "comment": "Entries that were erased, without anything of what they held. Only grows.",
            "sqlite_autoincrement": True,
        },
    )

    id: Mapped[int] = mapped_column(Integer, primary_key=True)
    kind: Mapped[str] = mapped_column(String(8), comment="what it was: style, block, measures or chart")
    series: Mapped[str] = mapped_column(String(6), comment="letters of its number, never given again")
    serial: Mapped[int] = mapped_column(Integer, comment="digits of its number")
    actor: Mapped[str] = mapped_column(String(200), comment="who erased it")
    at: Mapped[str] = mapped_column(_TIME, comment="UTC, ISO 8601, with microseconds")


class SweepRow(Base):
    """A cleaning of the file that is still to be done; the row goes when it is."""

    __tablename__ = "sweeps"
    __table_args__ = (
        {
            "comment": "Cleanings that an erasure or a code asked for, still to be done (at the next opening "
            "at the latest): free pages and log are emptied, copies beside the book deleted."
        },
    )

    id: Mapped[int] = mapped_column(Integer, primary_key=True)
    copies: Mapped[str] = mapped_column(
        Text, comment="file names beside the book that are to go, a JSON list"
    )
    marks: Mapped[str] = mapped_column(
        Text, comment="JSON list of sha256: a copy goes only while it holds an entry with one of these marks"
    )
