"""What a book holds, as one hash: every row of every table, as SQLite itself tells them."""

import hashlib
import sqlite3
from contextlib import closing
from pathlib import Path


def book_hash(path: Path) -> str:
    """The sha256 of all that the file holds; the same exactly while nothing in it has changed."""
    found = hashlib.sha256()
    with closing(sqlite3.connect(path)) as book:
        for line in book.iterdump():
            found.update(line.encode("utf-8"))
    return found.hexdigest()
