"""What the book hands out and takes in: frozen records, never rows of the database."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
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
class NewEntry:
    """An entry to be added: its name and its content."""

    name: str
    content: str


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


class Place(StrEnum):
    """Where the book holds a text of hers."""

    NAME = "name"
    CONTENT = "content"
    MEASURES = "measures"
    """The measures that a revision was run on."""
    GEOMETRY = "geometry"
    """The shapes that a revision serves."""
    NOTE = "note"
    """The words beside a line of the journal."""
    FACTS = "facts"
    """The facts of a line of the journal, as JSON."""
    ACTOR = "actor"
    REASON = "reason"
    """Why a revision was frozen."""
    FROZEN_BY = "frozen-by"
    APPROVED_BY = "approved-by"


@dataclass(frozen=True, slots=True)
class StoredText:
    """A text that belongs to a document. ``key`` says which: the hash of a content, the id of a line."""

    document_id: int
    place: Place
    key: int | str
    text: str


Reworded = Callable[[StoredText], str]
"""Gives each stored text as it is to stand from now on, most of them unchanged."""


@dataclass(frozen=True, slots=True)
class NewContent:
    """A content that a document gets within a larger act; ``kind`` is the word for the edit."""

    content: str
    expected_version: int
    kind: str


@dataclass(frozen=True, slots=True)
class Erasure:
    """What is to be erased, all in one act.

    ``documents`` are erased with their journals and revisions: id and the version that was seen.
    ``revisions`` (ids) are taken out of documents that stay, ``contents`` are new contents of such,
    ``reworded`` changes texts that stay. ``copies`` are files beside the book, deleted after it. ``seen`` is
    the last line of the journal that was known when all this was chosen.
    """

    documents: Mapping[int, int]
    seen: int
    revisions: tuple[int, ...] = ()
    contents: Mapping[int, NewContent] = field(default_factory=dict)
    reworded: Reworded | None = None
    copies: tuple[Path, ...] = ()


@dataclass(frozen=True, slots=True)
class UnderCode:
    """How a name gives way to a code: the entry and the version that was seen, and the texts as they become.

    ``seen`` and ``copies`` as in :class:`Erasure`.
    """

    document_id: int
    expected_version: int
    seen: int
    reworded: Reworded
    copies: tuple[Path, ...] = ()


@dataclass(frozen=True, slots=True)
class Erased:
    """A line that says that an entry was erased."""

    kind: EntryKind
    number: str
    actor: str
    at: datetime


@dataclass(frozen=True, slots=True)
class Copy:
    """A copy of the book that lies beside it. ``readable`` False: it could not be looked into."""

    path: Path
    readable: bool


@dataclass(frozen=True, slots=True)
class Swept:
    """How far the cleaning after an erasure went.

    ``file`` says that free pages and log hold nothing old any more; False: another program has the book
    open, and the next opening finishes it. ``copies_left`` could not be deleted.
    """

    file: bool
    copies_left: tuple[Path, ...] = ()
