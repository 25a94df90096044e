"""From an error of the database to a refusal in words."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Final

from sqlalchemy.exc import DBAPIError
from sqlalchemy.exc import TimeoutError as PoolTimeout

from notchbook.errors import BookError, HouseFault

_CODES: Final = {
    sqlite3.SQLITE_BUSY: "book-busy",
    sqlite3.SQLITE_LOCKED: "book-busy",
    sqlite3.SQLITE_PROTOCOL: "book-busy",
    sqlite3.SQLITE_FULL: "book-disk-full",
    sqlite3.SQLITE_READONLY: "book-read-only",
    sqlite3.SQLITE_PERM: "book-read-only",
    sqlite3.SQLITE_IOERR: "book-disk-fails",
    sqlite3.SQLITE_CANTOPEN: "book-cannot-open",
    sqlite3.SQLITE_CORRUPT: "book-damaged",
    sqlite3.SQLITE_NOTADB: "book-not-a-book",
    sqlite3.SQLITE_CONSTRAINT_TRIGGER: "book-never-changes",
}
"""Result codes of SQLite (sqlite.org/rescode.html) and ours."""

_PRIMARY: Final = 0xFF
"""The low byte of an extended result code is the primary one (same source)."""


@contextmanager
def told_in_words(path: Path) -> Iterator[None]:
    """Turn errors of the database in the block into coded refusals that name the book."""
    try:
        yield
    except DBAPIError as error:
        if not isinstance(error.orig, sqlite3.Error):
            raise
        raise refusal(error.orig, path) from error
    except sqlite3.Error as error:
        raise refusal(error, path) from error
    except PoolTimeout as error:
        raise BookError("book-busy", path=str(path), detail="too many users at once") from error


def refusal(error: sqlite3.Error, path: Path) -> BookError | HouseFault:
    """The refusal for an error of SQLite; one that we did not foresee is our own bug."""
    number = getattr(error, "sqlite_errorcode", None)
    if number is None:
        return HouseFault("book-fault", path=str(path), detail=str(error))
    code = _CODES.get(number) or _CODES.get(number & _PRIMARY)
    if code is None:
        return HouseFault("book-fault", path=str(path), detail=f"{error.sqlite_errorname}: {error}")
    return BookError(code, path=str(path), detail=str(error))
