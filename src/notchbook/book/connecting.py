"""Connections to the file of a book: every one has the same settings, every transaction a real BEGIN.

Python's sqlite3 module begins transactions by itself, too late and not for changes of tables, so that a
failed migration would stay half done. It is told to leave that alone, and BEGIN is sent by us
(SQLAlchemy, "SQLite: serializable isolation, savepoints, transactional DDL").
"""

import os
import sqlite3
from enum import StrEnum
from pathlib import Path
from typing import Final
from urllib.parse import quote

from sqlalchemy import Connection, Engine, QueuePool, create_engine, event

from notchbook.book.folder import folder_of
from notchbook.book.settings import Settings

WRITES: Final = "notchbook_writes"
"""Execution option of a connection whose transactions take the write lock at once."""

_EXTRA, _FULL = "EXTRA", "FULL"


class Journal(StrEnum):
    """How SQLite keeps a transaction whole."""

    WRITE_AHEAD = "wal"
    ROLLBACK = "delete"


def journal_for(path: Path) -> Journal:
    """The journal that is right for the folder: the write-ahead log only where all users share memory."""
    return Journal.WRITE_AHEAD if folder_of(path).local else Journal.ROLLBACK


def file_uri(path: Path, mode: str) -> str:
    """The file as SQLite's URI; ``mode`` is its query, such as ``mode=rw`` (which never makes a file)."""
    place = path.as_posix()
    rooted = place if place.startswith("/") else f"/{place}"
    return f"file://{quote(os.fsencode(rooted))}?{mode}"


def connect(path: Path, settings: Settings, mode: str = "mode=rw") -> sqlite3.Connection:
    """A plain connection, for what is done to the file as a whole."""
    return sqlite3.connect(
        file_uri(path, mode),
        uri=True,
        timeout=settings.busy_timeout_s,
        isolation_level=None,
        check_same_thread=False,
    )


def settle(connection: sqlite3.Connection, journal: Journal, page_limit: int | None = None) -> None:
    """The settings of every connection.

    With the write-ahead log, FULL has an edit on disk before the transaction is told done; with the
    rollback journal that needs EXTRA, which also writes the folder (sqlite.org/pragma.html, synchronous).
    What is deleted is overwritten in its page at once (secure_delete, same source).
    """
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("PRAGMA recursive_triggers = ON")
    connection.execute("PRAGMA trusted_schema = OFF")
    connection.execute("PRAGMA secure_delete = ON")
    connection.execute("PRAGMA fullfsync = ON")
    connection.execute("PRAGMA checkpoint_fullfsync = ON")
    connection.execute(f"PRAGMA synchronous = {_FULL if journal is Journal.WRITE_AHEAD else _EXTRA}")
    if page_limit is not None:
        connection.execute(f"PRAGMA max_page_count = {page_limit:d}")


def make_engine(path: Path, settings: Settings, journal: Journal, mode: str = "mode=rw") -> Engine:
    """An engine on the file; nothing is opened before it is used."""

    def opened() -> sqlite3.Connection:
        connection = connect(path, settings, mode)
        try:
            settle(connection, journal, settings.page_limit)
        except sqlite3.Error:
            connection.close()
            raise
        return connection

    engine = create_engine("sqlite://", creator=opened, poolclass=QueuePool, pool_timeout=30.0)
    event.listen(engine, "begin", _begin)
    return engine


def _begin(connection: Connection) -> None:
    writes = connection.get_execution_options().get(WRITES, False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
