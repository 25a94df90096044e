"""Cleaning a file after an erasure: nothing of what was removed stays in free pages, log or copies.

What is to be done is written down in the transaction of the erasure itself, so that a program that was
stopped in between leaves it to the next opening.
Source: sqlite.org/lang_vacuum.html (VACUUM builds the file anew, without free pages) and
sqlite.org/pragma.html (wal_checkpoint TRUNCATE empties the log).
"""

import json
import sqlite3
from collections.abc import Iterable, Sequence
from contextlib import closing
from pathlib import Path

from sqlalchemy.orm import Session

from notchbook.book.connecting import Journal, connect, settle
from notchbook.book.copies import delete_copy
from notchbook.book.models import SweepRow
from notchbook.book.records import Swept
from notchbook.book.settings import Settings


def ask_for_sweep(session: Session, copies: Iterable[Path], marks: Iterable[str]) -> None:
    """Write down that the file is to be cleaned, and which copies beside it are to go."""
    names = [path.name for path in copies]
    session.add(SweepRow(copies=json.dumps(names), marks=json.dumps(list(marks))))
    session.flush()


def sweep(path: Path, settings: Settings, journal: Journal) -> Swept:
    """Do the cleanings that were asked for. One that another program holds up stays asked for."""
    with closing(connect(path, settings)) as connection:
        settle(connection, journal)
        asked = connection.execute("SELECT id, copies, marks FROM sweeps ORDER BY id").fetchall()
        if not asked:
            return Swept(file=True)
        left = tuple(
            place
            for _id, copies, marks in asked
            for place in (path.with_name(Path(name).name) for name in json.loads(copies))
            if not delete_copy(place, json.loads(marks), settings)
        )
        clean = _clean(connection, [row[0] for row in asked])
    return Swept(clean, left)


def _clean(connection: sqlite3.Connection, asked: Sequence[int]) -> bool:
    """Build the file anew, empty its log, and note that it is done; False when another program or a full
    disk is in the way."""
    try:
        connection.execute("VACUUM")
        if not _empty_log(connection):
            return False
        connection.executemany("DELETE FROM sweeps WHERE id = ?", [(key,) for key in asked])
        _empty_log(connection)
    except sqlite3.OperationalError:
        return False
    return True


def _empty_log(connection: sqlite3.Connection) -> bool:
    """Move all of the log into the file and cut it to nothing; False when a reader still needs it."""
    busy, _pages, _moved = connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    return not busy
