"""Copies of a book that lie beside it: found by what they hold, not by their names."""

import sqlite3
from collections.abc import Collection, Iterator
from contextlib import closing, suppress
from pathlib import Path
from typing import Final

from notchbook.book.connecting import connect
from notchbook.book.looking import is_marked
from notchbook.book.placing import SIDE_FILES
from notchbook.book.records import Copy
from notchbook.book.settings import Settings
from notchbook.book.texts import digest

_ENTRIES: Final = "SELECT series, serial, created_at FROM entries"


def mark_of(series: str, serial: int, created_at: str) -> str:
    """What tells an entry from all others, in any copy: the hash of its number and of when it was made."""
    return digest(f"{series}-{serial} {created_at}")


def copies_with(book: Path, marks: Collection[str], settings: Settings) -> tuple[Copy, ...]:
    """The other books in the folder of this one that hold an entry with one of the marks, and those that
    could not be looked into; unfinished copies that a stopped program left are among them."""
    found = []
    for path in _books_beside(book):
        held = _marks_in(path, settings)
        if held is None or held & set(marks):
            found.append(Copy(path, readable=held is not None))
    return tuple(found)


def delete_copy(path: Path, marks: Collection[str], settings: Settings) -> bool:
    """Delete a copy with all that belongs to it, if it still holds one of the marks; whether it is gone."""
    if not path.exists():
        return True
    if not is_marked(path) or not (_marks_in(path, settings) or set()) & set(marks):
        return False
    try:
        # The file of the copy last: while it is there, the next sweep finds what is left to do.
        for place in (*(path.with_name(path.name + side) for side in SIDE_FILES), path):
            place.unlink(missing_ok=True)
    except OSError:
        return False
    return True


def _books_beside(book: Path) -> Iterator[Path]:
    with suppress(OSError):
        for path in sorted(book.parent.iterdir()):
            if path.is_file() and not path.is_symlink() and is_marked(path) and not path.samefile(book):
                yield path


def _marks_in(path: Path, settings: Settings) -> set[str] | None:
    """The marks of all entries of a book at rest or in use; None when it cannot be read."""
    mode = "mode=ro" if path.with_name(path.name + "-wal").exists() else "mode=ro&immutable=1"
    try:
        with closing(connect(path, settings, mode)) as connection:
            return {mark_of(*row) for row in connection.execute(_ENTRIES)}
    except sqlite3.Error:
        return None
