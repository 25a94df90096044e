"""The book of a studio: the one door to its file."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from types import TracebackType

from sqlalchemy.orm import Session

from notchbook.book import adding, editing, erasing, journal, reading, revising
from notchbook.book.backing_up import back_up
from notchbook.book.connecting import WRITES, Journal, make_engine
from notchbook.book.copies import copies_with
from notchbook.book.faults import told_in_words
from notchbook.book.folder import folder_of
from notchbook.book.kinds import EntryKind, entry_kind
from notchbook.book.looking import Condition, look_at
from notchbook.book.models import SCHEMA
from notchbook.book.placing import made_beside
from notchbook.book.records import (
    BackupReport,
    Copy,
    Document,
    Erased,
    Erasure,
    Event,
    Frozen,
    Listed,
    NewEntry,
    Revision,
    RevisionContents,
    StoredText,
    Swept,
    UnderCode,
)
from notchbook.book.settings import Settings, time_text
from notchbook.book.stored_texts import stored_texts
from notchbook.book.sweeping import sweep
from notchbook.book.verifying import problems
from notchbook.errors import BookError


class Book:
    """An open book. Use it in a ``with`` block, or call :meth:`close`; several threads may share it.

    Every change is one transaction: it is on disk when the method returns, or nothing of it is. A change
    names the version that the writer has seen; when the document has moved on, it is refused with
    ``book-conflict`` and what happened since. ``actor`` None means the actor of the settings.
    """

    def __init__(
        self, path: Path, settings: Settings, condition: Condition, before_upgrade: Path | None
    ) -> None:
        self.path = path
        self.before_upgrade = before_upgrade
        """The copy that was kept of the file as it was before this opening upgraded it, if it did."""
        self._settings = settings
        self._condition = condition
        self._engine = make_engine(path, settings, condition.journal, condition.mode)
        self._closed = threading.Event()

    # -- making, opening, closing

    @classmethod
    def create(cls, path: str | Path, settings: Settings | None = None) -> Book:
        """Make a new book and open it; a file that is there is never written over."""
        from notchbook.book.migrating import build  # loads much, and is seldom needed

        place = Path(path).resolve()
        chosen = settings or Settings()
        with made_beside(place) as draft:
            build(draft, chosen)
        return cls.open(place, chosen)

    @classmethod
    def open(cls, path: str | Path, settings: Settings | None = None, *, read_only: bool = False) -> Book:
        """Open a book after a look at its soundness; an older one is copied and upgraded first.

        ``read_only`` is for a book at rest, such as an archived copy: nothing is written, not even beside
        it, and what another program writes meanwhile may not be seen.
        """
        place = Path(path).resolve()
        chosen = settings or Settings()
        condition = look_at(place, chosen, read_only=read_only)
        copy = None
        if condition.schema < SCHEMA:
            if read_only:
                raise BookError("book-older", path=str(place), schema=condition.schema, known=SCHEMA)
            from notchbook.book.migrating import migrate  # loads much, and is seldom needed

            copy = migrate(place, chosen, condition.journal)
        opened = cls(place, chosen, condition, copy)
        if not read_only:
            opened._sweep()
        return opened

    @classmethod
    def open_or_create(cls, path: str | Path, settings: Settings | None = None) -> Book:
        """Open the book at ``path``, or make it when there is no file."""
        try:
            return cls.open(path, settings)
        except BookError as error:
            if error.code != "book-missing":
                raise
        try:
            return cls.create(path, settings)
        except BookError as error:
            if error.code != "book-exists":
                raise
            return cls.open(path, settings)

    def close(self) -> None:
        """Let go of the file; closing twice is fine."""
        self._closed.set()
        self._engine.dispose()

    def __enter__(self) -> Book:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    @property
    def notice(self) -> str | None:
        """What she should know about where the book lies; None when there is nothing to say."""
        if self._condition.journal is Journal.WRITE_AHEAD or self._condition.mode != "mode=rw":
            return None
        kind = folder_of(self.path).file_system
        return (
            f"The book does not lie on a disk of this computer (file system: {kind}). It is kept with the "
            "rollback journal: as safe, but slower, and one writer makes readers wait."
        )

    # -- reading

    def read(self, document_id: int, version: int | None = None) -> Document:
        """A document with its content: of now, or at an earlier version."""
        with self._reading() as session:
            return reading.read(session, document_id, version)

    def find(self, number: str) -> Document:
        """The document with this number, such as ``S-104``."""
        with self._reading() as session:
            return reading.read(session, reading.numbered(session, number))

    def list(self, kind: EntryKind | str | None = None, text: str | None = None) -> tuple[Listed, ...]:
        """The lines of the library by number, of one kind or all.

        ``text`` holds words that must all stand in the number or the name; case and accents do not matter.
        """
        wanted = None if kind is None else entry_kind(kind)
        with self._reading() as session:
            return reading.lines(session, wanted, text)

    def contents_of(self, kind: EntryKind | str) -> dict[int, str]:
        """The contents of now of all documents of a kind, by the document's id."""
        with self._reading() as session:
            return reading.contents_of(session, entry_kind(kind))

    def undo_leads_to(self, document_id: int) -> int | None:
        """The version whose content undo would restore; None when there is nothing to undo."""
        with self._reading() as session:
            return reading.undo_leads_to(session, document_id)

    def redo_leads_to(self, document_id: int) -> int | None:
        """The version whose content redo would restore; None when there is nothing to redo."""
        with self._reading() as session:
            return reading.redo_leads_to(session, document_id)

    def history(self, document_id: int) -> tuple[Event, ...]:
        """The journal of a document, oldest first."""
        with self._reading() as session:
            journal.document_row(session, document_id)
            return journal.events(session, document_id)

    def next_number(self, series: str) -> str:
        """A free number of a series (``S`` gives ``S-105`` after S-104). It is not reserved."""
        with self._reading() as session:
            return reading.next_number(session, series)

    # -- changing

    def add(
        self,
        kind: EntryKind | str,
        number: str,
        name: str,
        content: str,
        actor: str | None = None,
        note: str = "",
    ) -> Document:
        """A new entry; its document begins at version 1."""
        wanted = entry_kind(kind)
        with self._writing() as session:
            made = editing.add(session, wanted, number, name, content, self._sign(actor, note))
            return reading.read(session, made)

    def add_many(
        self,
        kind: EntryKind | str,
        series: str,
        entries: Sequence[NewEntry],
        note: str = "",
        told: Callable[[int], None] | None = None,
    ) -> tuple[Listed, ...]:
        """New entries under the next free numbers of a series, all of them or none.

        ``told`` hears now and then how many are in; what it raises leaves the book as it was.
        """
        wanted = entry_kind(kind)
        with self._writing() as session:
            sign = self._sign(None, note)
            return adding.add_many(session, wanted, series, entries, sign, told or (lambda _done: None))

    def save(
        self,
        document_id: int,
        content: str,
        expected_version: int,
        kind: str,
        note: str = "",
        actor: str | None = None,
    ) -> Document:
        """A new content. ``kind`` is the word for the edit, such as ``move-dart``.

        A content equal to the one of now is no edit: the document comes back unchanged.
        """
        with self._writing() as session:
            editing.save(session, document_id, content, expected_version, kind, self._sign(actor, note))
            return reading.read(session, document_id)

    def undo(
        self, document_id: int, expected_version: int, note: str = "", actor: str | None = None
    ) -> Document:
        """Restore the content before the last edit that is in effect, as an event of its own."""
        with self._writing() as session:
            editing.undo(session, document_id, expected_version, self._sign(actor, note))
            return reading.read(session, document_id)

    def redo(
        self, document_id: int, expected_version: int, note: str = "", actor: str | None = None
    ) -> Document:
        """Restore what was undone last; an edit in between ends that way."""
        with self._writing() as session:
            editing.redo(session, document_id, expected_version, self._sign(actor, note))
            return reading.read(session, document_id)

    def rename(
        self, document_id: int, name: str, expected_version: int, note: str = "", actor: str | None = None
    ) -> Document:
        """Another name; the number stays."""
        with self._writing() as session:
            editing.rename(session, document_id, name, expected_version, self._sign(actor, note))
            return reading.read(session, document_id)

    def retire(
        self, document_id: int, expected_version: int, note: str = "", actor: str | None = None
    ) -> Document:
        """File an entry away. It stays readable, and can be brought back."""
        with self._writing() as session:
            sign = self._sign(actor, note)
            editing.file_away(session, document_id, expected_version, sign, retired=True)
            return reading.read(session, document_id)

    def bring_back(
        self, document_id: int, expected_version: int, note: str = "", actor: str | None = None
    ) -> Document:
        """Take a retired entry back into work."""
        with self._writing() as session:
            sign = self._sign(actor, note)
            editing.file_away(session, document_id, expected_version, sign, retired=False)
            return reading.read(session, document_id)

    # -- revisions

    def freeze_revision(
        self, document_id: int, expected_version: int, frozen: Frozen, reason: str, actor: str | None = None
    ) -> Revision:
        """Freeze the content of now with what it was run on and what came out. The version rises by one."""
        with self._writing() as session:
            sign = self._sign(actor, reason)
            made = revising.freeze(session, document_id, expected_version, frozen, sign)
            return revising.one_revision(session, made)

    def approve(
        self, revision_id: int, expected_version: int, note: str = "", actor: str | None = None
    ) -> Revision:
        """Approve a revision: from now on it can never change. The document's version rises by one."""
        with self._writing() as session:
            revising.approve(session, revision_id, expected_version, self._sign(actor, note))
            return revising.one_revision(session, revision_id)

    def revisions(self, document_id: int) -> tuple[Revision, ...]:
        """The revisions of a document, oldest first."""
        with self._reading() as session:
            journal.document_row(session, document_id)
            return revising.revisions_of(session, document_id)

    def all_revisions(self) -> tuple[Revision, ...]:
        """The revisions of all documents, document by document, oldest first."""
        with self._reading() as session:
            return revising.all_revisions(session)

    def revision_contents(self, revision_id: int) -> RevisionContents:
        """The frozen texts of a revision, each checked against its hash."""
        with self._reading() as session:
            return revising.contents_of(session, revision_id)

    def where_used(self, block_revision_hash: str) -> tuple[Revision, ...]:
        """The revisions that were made from a block revision."""
        with self._reading() as session:
            return revising.revisions_with(session, block_revision_hash)

    # -- personal data

    def texts(self) -> tuple[StoredText, ...]:
        """Every text of hers in the whole book, with its place: names, contents, notes, reasons."""
        with self._reading() as session:
            return tuple(stored_texts(session))

    def last_line(self) -> int:
        """The id of the last line of the whole journal; an erasure is refused when it has moved on."""
        with self._reading() as session:
            return erasing.last_line(session)

    def erase(self, erasure: Erasure, actor: str | None = None) -> Swept:
        """Erase entries with all that belongs to them: one act, after which the file is cleaned of it.

        ``book-moved-on`` or ``book-conflict`` when something was written since it was chosen.
        """
        with self._writing() as session:
            erasing.erase(session, erasure, self._sign(actor, ""))
        return self._sweep()

    def put_under_code(self, renaming: UnderCode, actor: str | None = None) -> Swept:
        """Change texts wherever they stand, in old versions and revisions too; then the file is cleaned.

        Refused as :meth:`erase`.
        """
        with self._writing() as session:
            erasing.put_under_code(session, renaming, self._sign(actor, ""))
        return self._sweep()

    def erased(self) -> tuple[Erased, ...]:
        """The lines that say that an entry was erased, oldest first."""
        with self._reading() as session:
            return erasing.erased(session)

    def copies_with(self, *document_ids: int) -> tuple[Copy, ...]:
        """Copies in the folder of the book that hold one of these entries, or could not be looked into."""
        with self._reading() as session:
            marks = [erasing.mark(session, document) for document in document_ids]
        return copies_with(self.path, marks, self._settings)

    def _sweep(self) -> Swept:
        with told_in_words(self.path):
            return sweep(self.path, self._settings, self._condition.journal)

    # -- keeping

    def backup(self, path: str | Path) -> BackupReport:
        """A copy as one file, made while others may write, and read through before it gets its name."""
        self._check_open()
        return back_up(self.path, Path(path).resolve(), self._settings, self._condition.mode)

    def verify(self) -> tuple[str, ...]:
        """Read the whole book through; what is wrong, one line each."""
        with self._reading() as session:
            return problems(session)

    # -- transactions

    @contextmanager
    def _reading(self) -> Iterator[Session]:
        """One state of the whole book, whatever others write meanwhile."""
        self._check_open()
        with told_in_words(self.path), Session(self._engine) as session:
            yield session

    @contextmanager
    def _writing(self) -> Iterator[Session]:
        """All of the block or nothing; the write lock is taken at its beginning."""
        self._check_open()
        if self._condition.mode != "mode=rw":
            raise BookError("book-read-only", path=str(self.path), detail="it was opened for reading only")
        writer = self._engine.execution_options(**{WRITES: True})
        with told_in_words(self.path), Session(writer, expire_on_commit=False) as session, session.begin():
            yield session

    def _check_open(self) -> None:
        if self._closed.is_set():
            raise BookError("book-closed", path=str(self.path))

    def _sign(self, actor: str | None, note: str) -> journal.Signature:
        return journal.Signature(actor or self._settings.actor, time_text(self._settings.clock()), note)
