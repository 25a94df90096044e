"""Reading a book through finds each kind of damage."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from notchbook.book import Book
from notchbook.book.guards import GUARDS
from notchbook.errors import BookError
from support.books import add_style, frozen, settings

# Statements of another program after it removed the guards, and a part of the line that must tell of it.
PLANTED = [
    ("UPDATE contents SET text = text || ' '", "was changed"),
    ("DELETE FROM events WHERE version_after = 2", "does not have the versions 1 to 5"),
    ("DELETE FROM events WHERE version_after = 5", "does not have the versions 1 to 5"),
    ("UPDATE documents SET version = 6", "does not have the versions 1 to 6"),
    ("UPDATE documents SET state = 1", "differs from the last line of its journal"),
    ("UPDATE documents SET changed_at = 'x'", "differs from the last line of its journal"),
    ("UPDATE events SET state = 2 WHERE version_after = 3", "version 3 does not follow"),
    ("UPDATE events SET state = 9 WHERE version_after = 3", "version 3 does not follow"),
    ("UPDATE events SET state_before = 2 WHERE version_after = 4", "version 4 does not follow"),
    ("UPDATE revisions SET step_versions = '{}'", "revision 1 of document 1 is not what was frozen"),
    ("UPDATE revisions SET geometry_hash = content_hash", "is not what was frozen"),
    ("INSERT INTO revision_blocks VALUES (1, 'x')", "is not what was frozen"),
    (
        "INSERT INTO revision_blocks VALUES (7, 'x')",
        "names a missing row of revisions",
    ),
    ("UPDATE entries SET kind = 'garment'", "CHECK constraint failed in entries"),
]


@pytest.fixture
def full_book(book_path: Path) -> Path:
    with Book.open(book_path, settings()) as book:
        style = add_style(book)
        book.save(style.id, "[1]", 1, "move-dart")
        book.undo(style.id, 2)
        book.redo(style.id, 3)
        book.freeze_revision(style.id, 4, frozen(), "why")
        assert book.verify() == ()
    return book_path


@pytest.mark.parametrize(("statement", "told"), PLANTED)
def test_planted_damage_is_found(full_book: Path, statement: str, told: str) -> None:
    with closing(sqlite3.connect(full_book, isolation_level=None)) as other:
        other.execute("PRAGMA ignore_check_constraints = ON")
        for guard in GUARDS:
            other.execute(f"DROP TRIGGER {guard}")
        other.execute(statement)
        for guard in GUARDS.values():
            other.execute(guard)
    try:
        with Book.open(full_book, settings()) as book:
            lines = book.verify()
    except BookError as error:
        # Opening looks at the constraints too.
        lines = (str(error),)
    assert any(told in line for line in lines), lines


def test_a_removed_guard_is_found(full_book: Path) -> None:
    with closing(sqlite3.connect(full_book, isolation_level=None)) as other:
        other.execute("DROP TRIGGER guard_events_update")
    with Book.open(full_book, settings()) as book:
        assert book.verify() == ("the guard guard_events_update is missing or changed",)


def test_a_changed_text_is_not_handed_out(full_book: Path) -> None:
    with closing(sqlite3.connect(full_book, isolation_level=None)) as other:
        other.execute("DROP TRIGGER guard_contents_update")
        other.execute("UPDATE contents SET text = '[9]' WHERE text = '[1]'")
    with Book.open(full_book, settings()) as book:
        assert book.read(1, 1).content == "[0]"
        for act in (book.read, book.revision_contents):
            with pytest.raises(BookError) as refused:
                act(1)
            assert refused.value.code == "book-text-damaged"
            assert "was changed outside" in str(refused.value)


def test_a_lost_text_is_told(full_book: Path) -> None:
    with closing(sqlite3.connect(full_book, isolation_level=None)) as other:
        other.execute("DROP TRIGGER guard_contents_delete")
        other.execute("DELETE FROM contents WHERE text = '[0]'")
    with Book.open(full_book, settings()) as book:
        with pytest.raises(BookError, match="is missing"):
            book.read(1, 1)
        assert any("names a missing row of contents" in line for line in book.verify())
