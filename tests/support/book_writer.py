"""A program that writes to a book until it is killed: `python -m support.book_writer`.

Each line of its input is an order (JSON). It forks a child for each order, so that the imports are paid
once; the child's lines and the end of the child go to the output.
"""

import json
import os
import random
import resource
import signal
import sqlite3
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

from sqlalchemy import Engine, event

from notchbook.book import Book, Document, Erasure, Settings, sweeping
from notchbook.book.connecting import connect
from notchbook.errors import NotchbookError
from support.books import plant_schema, settings, use_rollback_journal

Order = dict[str, Any]


class Boundaries:
    """Counts the places between two steps of a write, and ends the process at one of them."""

    def __init__(self, fatal: int | None) -> None:
        self._fatal = fatal
        self._passed = 0
        for name in ("before_cursor_execute", "after_cursor_execute", "commit", "rollback"):
            event.listen(Engine, name, self.passed)

    @property
    def count(self) -> int:
        """How many were passed."""
        return self._passed

    def passed(self, *_ignored: object) -> None:
        self._passed += 1
        if self._passed == self._fatal:
            os.kill(os.getpid(), signal.SIGKILL)


def say(*words: object) -> None:
    """One line, at once and without a buffer that a kill would lose."""
    os.write(1, (" ".join(str(word) for word in words) + "\n").encode())


def edit(book: Book, document: Document, chance: random.Random) -> Document:
    """One edit, undo, redo or renaming, by chance."""
    act = chance.choice(["save", "save", "save", "undo", "redo", "rename"])
    if act == "undo" and document.can_undo:
        return book.undo(document.id, document.version)
    if act == "redo" and document.can_redo:
        return book.redo(document.id, document.version)
    if act == "rename":
        return book.rename(document.id, f"Skirt {document.version}", document.version)
    content = json.dumps([document.version, "x" * chance.randrange(20_000)])
    return book.save(document.id, content, document.version, "move-dart")


def write(order: Order, boundaries: Boundaries) -> None:
    """Edit for ever, and confirm each edit after it was stored."""
    chance = random.Random(order["seed"])
    with Book.open(order["path"], settings()) as book:
        document = book.read(order["document"])
        while True:
            before = document.version
            document = edit(book, document, chance)
            boundaries.passed()
            if document.version != before:
                say(document.version, document.content_hash)
            boundaries.passed()


def create(order: Order, _boundaries: Boundaries) -> None:
    """Make a book."""
    Book.create(order["path"]).close()


def upgrade(order: Order, _boundaries: Boundaries) -> None:
    """Open a book with a program that is one schema newer."""
    plant_schema(setattr, Path(order["scripts"]))
    Book.open(order["path"]).close()


def erase(order: Order, boundaries: Boundaries) -> None:
    """Erase an entry and the copies beside the book; the cleaning of the file has its boundaries too."""

    def traced(path: Path, settings: Settings, mode: str = "mode=rw") -> sqlite3.Connection:
        connection = connect(path, settings, mode)
        connection.set_trace_callback(boundaries.passed)
        return connection

    plant = setattr
    plant(sweeping, "connect", traced)
    with Book.open(order["path"], settings()) as book:
        document = order["document"]
        copies = tuple(copy.path for copy in book.copies_with(document))
        version = book.read(document).version
        book.erase(Erasure({document: version}, book.last_line(), copies=copies))
    say("boundaries", boundaries.count)


def without_rights(order: Order, _boundaries: Boundaries) -> None:
    """Open as a user who may only read."""
    if os.getuid() == 0:
        os.setgid(65534)
        os.setuid(65534)
    Book.open(order["path"], read_only=order["read_only"]).close()


def small_files(order: Order, _boundaries: Boundaries) -> None:
    """Store a text larger than any file may get."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (order["limit"], order["limit"]))
    with Book.open(order["path"], settings()) as book:
        document = book.read(order["document"])
        book.save(document.id, "x" * order["limit"], document.version, "move-dart")


JOBS: dict[str, Callable[[Order, Boundaries], None]] = {
    job.__name__: job for job in (write, create, upgrade, erase, without_rights, small_files)
}


def child(order: Order) -> None:
    """Do one order; a refusal is told by its code."""
    say("pid", os.getpid())
    boundaries = Boundaries(order.get("kill_at"))
    if order.get("rollback_journal"):
        use_rollback_journal(setattr)
    try:
        JOBS[order["job"]](order, boundaries)
    except NotchbookError as error:
        say("refused", error.code)


def main() -> None:
    """Take orders until the input ends."""
    for line in sys.stdin:
        process = os.fork()
        if process == 0:
            try:
                child(json.loads(line))
            finally:
                os._exit(0)
        _process, status = os.waitpid(process, 0)
        say("ended", os.waitstatus_to_exitcode(status))


if __name__ == "__main__":
    main()
