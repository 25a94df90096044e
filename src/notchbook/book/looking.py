"""A look at a file before it is used as a book. Whatever is refused here is left untouched."""

import os
import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from notchbook.book.connecting import Journal, connect, journal_for
from notchbook.book.faults import told_in_words
from notchbook.book.models import APPLICATION_ID, SCHEMA
from notchbook.book.settings import Settings
from notchbook.errors import BookError

# The header of a database file: sqlite.org/fileformat2.html, section 1.3.
_MAGIC: Final = b"SQLite format 3\x00"
_HEADER_BYTES: Final = 100
_APPLICATION_ID_AT: Final = slice(68, 72)
_OWN_MARK: Final = APPLICATION_ID.to_bytes(4, "big")
_READ_VERSION_AT: Final = 19
_WRITE_AHEAD_FORMAT: Final = 2


@dataclass(frozen=True, slots=True)
class Condition:
    """What was found: the schema of the file, the journal in use, and how the file is to be opened."""

    schema: int
    journal: Journal
    mode: str


def look_at(path: Path, settings: Settings, *, read_only: bool) -> Condition:
    """Refuse what is no sound book of a known schema; else set the journal that its folder needs."""
    header = _header(path)
    if not read_only:
        check_writable(path)
    mode = _mode(path, read_only=read_only)
    with told_in_words(path), closing(connect(path, settings, mode)) as connection:
        wanted = journal_for(path)
        if wanted is Journal.ROLLBACK and header[_READ_VERSION_AT] == _WRITE_AHEAD_FORMAT and not read_only:
            # Without shared memory a write-ahead log is read under an exclusive lock only.
            connection.execute("PRAGMA locking_mode = EXCLUSIVE")
        schema = _schema(connection, path)
        _check_sound(connection, path)
        journal = _journal(connection) if read_only else _use_journal(connection, wanted)
    return Condition(schema, journal, mode)


def _header(path: Path) -> bytes:
    """The first bytes of the file, by plain reading, so that nothing beside it is made."""
    if path.is_dir():
        raise BookError("book-is-folder", path=str(path))
    try:
        with path.open("rb") as file:
            header = file.read(_HEADER_BYTES)
    except FileNotFoundError:
        raise BookError("book-missing", path=str(path)) from None
    except OSError as error:
        raise BookError("book-cannot-open", path=str(path), detail=error.strerror) from error
    if not header:
        raise BookError("book-empty", path=str(path))
    marked = header[_APPLICATION_ID_AT] == _OWN_MARK
    if len(header) < _HEADER_BYTES or not header.startswith(_MAGIC) or not marked:
        raise BookError("book-not-a-book", path=str(path), detail="its first bytes are not those of a book")
    return header


def is_marked(path: Path) -> bool:
    """Whether a file says of itself that it is a book; False too when it cannot be read."""
    try:
        with path.open("rb") as file:
            header = file.read(_HEADER_BYTES)
    except OSError:
        return False
    return header.startswith(_MAGIC) and header[_APPLICATION_ID_AT] == _OWN_MARK


def check_writable(path: Path) -> None:
    """Refuse a file that may not be written, or a folder in which no journal can be made."""
    if not os.access(path, os.W_OK) or not os.access(path.parent, os.W_OK):
        raise BookError("book-read-only", path=str(path), detail="the file or its folder may not be written")


def _mode(path: Path, *, read_only: bool) -> str:
    if not read_only:
        return "mode=rw"
    # Reading a book with a write-ahead log makes files beside it, and fails where none can be made. Where
    # no log lies, nobody has it open, and the file alone is the whole book.
    return "mode=ro" if path.with_name(path.name + "-wal").exists() else "mode=ro&immutable=1"


def _schema(connection: sqlite3.Connection, path: Path) -> int:
    schema = int(connection.execute("PRAGMA user_version").fetchone()[0])
    if schema > SCHEMA:
        raise BookError("book-newer", path=str(path), schema=schema, known=SCHEMA)
    if schema < 1:
        raise BookError("book-damaged", path=str(path), detail=f"it says that its schema is {schema}")
    return schema


def _check_sound(connection: sqlite3.Connection, path: Path) -> None:
    found = str(connection.execute("PRAGMA quick_check(1)").fetchone()[0])
    if found != "ok":
        raise BookError("book-damaged", path=str(path), detail=" ".join(found.split()))
    tables = {
        str(row[0]) for row in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")
    }
    if not {"entries", "documents", "events", "contents"} <= tables:
        raise BookError("book-damaged", path=str(path), detail="a table is missing")


def _journal(connection: sqlite3.Connection) -> Journal:
    mode = str(connection.execute("PRAGMA journal_mode").fetchone()[0])
    return Journal.WRITE_AHEAD if mode == "wal" else Journal.ROLLBACK


def _use_journal(connection: sqlite3.Connection, wanted: Journal) -> Journal:
    """Switch the journal; SQLite answers with the one that is in use from now on."""
    used = str(connection.execute(f"PRAGMA journal_mode = {wanted}").fetchone()[0])
    return Journal.WRITE_AHEAD if used == "wal" else Journal.ROLLBACK
