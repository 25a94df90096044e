"""What the book hands out and takes in: frozen records, never rows of the database."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path

from notchbook.book.kinds import EntryKind, EntryStatus


@dataclass(frozen=True, slots=True)
class Listed:
    """One line of the pattern library; ``id`` is the document's, for reading it."""

    id: int
    kind: EntryKind
    number: str
    name: str
    status: EntryStatus
    version: int
    changed_at: datetime


@dataclass(frozen=True, slots=True)
class Document:
    """The content of an entry at ``version``.

    ``latest_version`` is the one to expect when saving. ``can_undo`` and ``can_redo`` speak of the latest.
    """

    id: int
    kind: EntryKind
    number: str
    name: str
    status: EntryStatus
    version: int
    latest_version: int
    content: str
    content_hash: str
    changed_at: datetime
    can_undo: bool
    can_redo: bool


@dataclass(frozen=True, slots=True)
class Event:
    """One line of the journal. ``state`` is the version whose content is in effect after it."""

    id: int
    document_id: int
    version_before: int
    version_after: int
    kind: str
    actor: str
    at: datetime
    note: str
    what: Mapping[str, object]
    content_hash: str
    state: int


@dataclass(frozen=True, slots=True)
class Frozen:
    """What is frozen beside a document's own content.

    ``measures`` and ``geometry`` are canonical JSON text; ``step_versions`` maps an operation to its
    version; ``block_revisions`` are the hashes of the block revisions that were used.
    """

    measures: str | None = None
    geometry: str | None = None
    step_versions: Mapping[str, int] = field(default_factory=dict)
    block_revisions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Revision:
    """A frozen state of a document with its reason; ``revision`` counts from 1 in each document.

    ``hash`` is the sha256 of everything that is frozen: two revisions with the same hash are the same.
    """

    id: int
    document_id: int
    number: str
    revision: int
    hash: str
    document_version: int
    reason: str
    frozen_by: str
    frozen_at: datetime
    approved_by: str | None
    approved_at: datetime | None
    content_hash: str
    measures_hash: str | None
    geometry_hash: str | None
    step_versions: Mapping[str, int]
    block_revisions: tuple[str, ...]

    @property
    def approved(self) -> bool:
        """Whether it is approved, and so can never change."""
        return self.approved_at is not None


@dataclass(frozen=True, slots=True)
class RevisionContents:
    """The texts of a revision: the document's content, the measures and the geometry."""

    content: str
    measures: str | None
    geometry: str | None


@dataclass(frozen=True, slots=True)
class BackupReport:
    """A copy that was opened and read through after it was written."""

    path: Path
    documents: int
    events: int
    size_bytes: int
