"""Any sequence of edits gives what a simple model in memory gives: two stacks for undo and redo."""

import shutil
import tempfile
from pathlib import Path

import pytest
from hypothesis import settings as run_settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from notchbook.book import Book, Erasure
from notchbook.errors import BookError
from support.books import frozen, settings

FOLDER = tempfile.TemporaryDirectory(prefix="notchbook-")
TEMPLATE = Path(FOLDER.name) / "empty.notchbook"
CONTENTS = st.sampled_from(["[]", "[1]", "[2]", "[3]"]) | st.text(max_size=5)


def empty_book(folder: Path) -> Path:
    """A copy of a book without entries, which is made once."""
    if not TEMPLATE.exists():
        Book.create(TEMPLATE, settings()).close()
    return Path(shutil.copy(TEMPLATE, folder / "a.notchbook"))


class BookMachine(RuleBasedStateMachine):
    """One document in a book, and the same in memory."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp(prefix="notchbook-"))
        self.book = Book.open(empty_book(self.folder), settings())

    @initialize(content=CONTENTS)
    def begin(self, content: str) -> None:
        self.document = self.book.add("style", "S-101", "Skirt", content).id
        self.versions = [content]
        self.before: list[str] = []
        self.now = content
        self.undone: list[str] = []
        self.approved: set[str] = set()

    def changed(self) -> None:
        self.versions.append(self.now)

    @rule(content=CONTENTS)
    def save(self, content: str) -> None:
        self.book.save(self.document, content, len(self.versions), "move-dart")
        if content != self.now:
            self.before.append(self.now)
            self.undone.clear()
            self.now = content
            self.changed()

    @rule(content=CONTENTS, stale=st.integers(-1, 9))
    def save_on_a_stale_version(self, content: str, stale: int) -> None:
        if stale == len(self.versions):
            return
        with pytest.raises(BookError) as refused:
            self.book.save(self.document, content, stale, "move-dart")
        assert refused.value.code == "book-conflict"

    @rule()
    def undo(self) -> None:
        if not self.before:
            with pytest.raises(BookError, match="book-nothing-to-undo"):
                self.book.undo(self.document, len(self.versions))
            return
        self.book.undo(self.document, len(self.versions))
        self.undone.append(self.now)
        self.now = self.before.pop()
        self.changed()

    @rule()
    def redo(self) -> None:
        if not self.undone:
            with pytest.raises(BookError, match="book-nothing-to-redo"):
                self.book.redo(self.document, len(self.versions))
            return
        self.book.redo(self.document, len(self.versions))
        self.before.append(self.now)
        self.now = self.undone.pop()
        self.changed()

    @rule()
    def rename(self) -> None:
        self.book.rename(self.document, f"Skirt {len(self.versions)}", len(self.versions))
        self.changed()

    @precondition(lambda self: self.now not in self.approved)
    @rule()
    def freeze_and_approve(self) -> None:
        parts = frozen(geometry=str(len(self.versions)))
        made = self.book.freeze_revision(self.document, len(self.versions), parts, "why")
        self.changed()
        self.book.approve(made.id, len(self.versions))
        self.changed()
        self.approved.add(self.now)

    @rule(content=CONTENTS)
    def erase_a_neighbor(self, content: str) -> None:
        """One that has the same texts as the document: what both have must stay."""
        client = self.book.add("measures", self.book.next_number("M"), "Client", content)
        self.book.save(client.id, f"{content} hers", 1, "set-measure")
        self.book.erase(Erasure({client.id: 2}, self.book.last_line()))

    @rule()
    def close_and_open(self) -> None:
        self.book.close()
        self.book = Book.open(self.folder / "a.notchbook", settings())

    @invariant()
    def agrees(self) -> None:
        found = self.book.read(self.document)
        assert (found.content, found.version) == (self.now, len(self.versions))
        assert (found.can_undo, found.can_redo) == (bool(self.before), bool(self.undone))
        assert (found.status == "approved") == (self.now in self.approved)

    def teardown(self) -> None:
        if hasattr(self, "versions"):
            past = [self.book.read(self.document, 1 + index).content for index in range(len(self.versions))]
            assert past == self.versions
            assert self.book.verify() == ()
        self.book.close()
        shutil.rmtree(self.folder)


TestBookMachine = BookMachine.TestCase
TestBookMachine.settings = run_settings(max_examples=12, stateful_step_count=25, deadline=None)
