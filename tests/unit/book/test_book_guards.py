"""The file itself refuses to change what never changes, whichever program writes to it."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from notchbook.book import Book, Erasure
from notchbook.book.guards import GUARDS
from support.books import add_style, frozen, settings

HASH = "0" * 64
EVENT = "2, 0, 1, 'add', 'x', 'x', '', '{}', '0', NULL, 1"

# Each statement with the guard that must refuse it. The book has a style (document 1) whose revision 1 is
# approved and whose revision 2 is not, made from the revision 1 of a block (document 2, revision id 3).
REFUSED = [
    ("guard_contents_update", "UPDATE contents SET text = 'x'"),
    ("guard_contents_delete", "DELETE FROM contents"),
    ("guard_contents_insert", "INSERT OR REPLACE INTO contents SELECT hash, 'x' FROM contents"),
    ("guard_events_update", "UPDATE events SET note = 'x'"),
    ("guard_events_delete", "DELETE FROM events WHERE id = 1"),
    ("guard_events_insert", f"INSERT OR REPLACE INTO events SELECT 1, {EVENT}"),
    ("guard_events_insert", f"INSERT OR REPLACE INTO events SELECT NULL, {EVENT}"),
    ("guard_revisions_update", "UPDATE revisions SET approved_by = 'x' WHERE id = 1"),
    ("guard_revisions_update", "UPDATE revisions SET approved_at = NULL, approved_by = NULL WHERE id = 1"),
    ("guard_revisions_update", "UPDATE revisions SET geometry_hash = content_hash WHERE id = 2"),
    ("guard_revisions_update", "UPDATE revisions SET step_versions = '{}' WHERE id = 2"),
    ("guard_revisions_update", "UPDATE revisions SET reason = 'x' WHERE id = 2"),
    ("guard_revisions_delete", "DELETE FROM revisions WHERE id = 2"),
    ("guard_revisions_insert", "INSERT OR REPLACE INTO revisions SELECT * FROM revisions WHERE id = 1"),
    ("guard_revision_blocks_approved", f"INSERT INTO revision_blocks VALUES (1, '{HASH}')"),
    ("guard_revision_blocks_insert", "INSERT OR REPLACE INTO revision_blocks SELECT * FROM revision_blocks"),
    ("guard_revision_blocks_update", "UPDATE revision_blocks SET revision_id = 2"),
    ("guard_revision_blocks_delete", "DELETE FROM revision_blocks"),
    ("guard_documents_delete", "DELETE FROM documents"),
    ("guard_documents_version", "UPDATE documents SET version = version + 2"),
    ("guard_documents_version", f"UPDATE documents SET content_hash = '{HASH}'"),
    ("guard_documents_insert", "INSERT OR REPLACE INTO documents SELECT * FROM documents"),
    ("guard_entries_delete", "DELETE FROM entries"),
    ("guard_entries_insert", "INSERT OR REPLACE INTO entries SELECT * FROM entries"),
    ("guard_erasures_update", "UPDATE erasures SET actor = 'x'"),
    ("guard_erasures_delete", "DELETE FROM erasures"),
    ("guard_erasures_insert", "INSERT OR REPLACE INTO erasures SELECT * FROM erasures"),
    (
        "guard_erasures_insert",
        "INSERT OR REPLACE INTO erasures SELECT 9, kind, series, serial, 'x', at FROM erasures",
    ),
]


@pytest.fixture
def other_program(book_path: Path) -> Iterator[sqlite3.Connection]:
    """A connection with the settings that a plain program has, so without foreign keys."""
    with Book.open(book_path, settings()) as book:
        style = add_style(book)
        block = book.add("block", "B-101", "Skirt block", "{}")
        first = book.freeze_revision(style.id, 1, frozen(), "first")
        book.approve(first.id, 2)
        book.freeze_revision(style.id, 3, frozen(geometry="[2]"), "second")
        old = book.freeze_revision(block.id, 1, frozen(), "block")
        book.freeze_revision(style.id, 4, frozen(old.hash), "third")
        gone = book.add("measures", "M-101", "Form 40", "{}")
        book.erase(Erasure({gone.id: 1}, book.last_line()))
    with closing(sqlite3.connect(book_path, isolation_level=None)) as connection:
        yield connection


def contents(connection: sqlite3.Connection) -> list[str]:
    return list(connection.iterdump())


@pytest.mark.parametrize(("guard", "statement"), REFUSED)
def test_a_change_from_outside_is_refused(
    other_program: sqlite3.Connection, guard: str, statement: str
) -> None:
    before = contents(other_program)
    words = GUARDS[guard].split("'")[1]
    with pytest.raises(sqlite3.IntegrityError, match=words):
        other_program.execute(statement)
    assert contents(other_program) == before


@pytest.mark.parametrize(("guard", "statement"), REFUSED)
def test_without_its_guard_the_change_would_go_through(
    other_program: sqlite3.Connection, guard: str, statement: str
) -> None:
    other_program.execute(f"DROP TRIGGER {guard}")
    for neighbor in {"guard_revision_blocks_insert", "guard_revision_blocks_approved"} - {guard}:
        other_program.execute(f"DROP TRIGGER {neighbor}")
    before = contents(other_program)
    other_program.execute(statement)
    # Replacing a row by itself leaves no trace; that it is not refused any more is enough.
    assert "SELECT *" in statement or contents(other_program) != before


def test_every_guard_was_tried() -> None:
    assert {guard for guard, _statement in REFUSED} == set(GUARDS)


def test_what_the_book_does_itself_is_allowed(other_program: sqlite3.Connection) -> None:
    other_program.execute("UPDATE documents SET version = version + 1 WHERE id = 1")
    other_program.execute("UPDATE revisions SET approved_at = 'now', approved_by = 'x' WHERE id = 2")
    other_program.execute("INSERT INTO contents VALUES ('1', 'x')")
