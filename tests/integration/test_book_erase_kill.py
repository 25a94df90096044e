"""A program that is killed while it erases: all of it is done after the next opening, or nothing was.

The writer that is killed is that of test_book_kill.py.
"""

import json
import os
import signal
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from integration.test_book_kill import Writer, writer
from notchbook.book import Book
from notchbook.errors import BookError
from support.books import add_style, files_in, settings, use_rollback_journal

__all__ = ["writer"]

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork and SIGKILL")

NAME = "Rosa Quillfeather"
LAST = 14
"""So many boundaries from the end, each is tried: the erasure is stored, and its cleaning goes on."""


def hers(folder: Path) -> set[str]:
    """The files of a folder in which the name stands."""
    return {name for name, content in files_in(folder).items() if NAME.encode() in content}


def pending(path: Path) -> int:
    """How many cleanings the book still asks for."""
    with closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as connection:
        return int(connection.execute("SELECT count(*) FROM sweeps").fetchone()[0])


def book_with_a_client(path: Path) -> int:
    """A book with a style and with her, some pages of text, and a copy of it; her document."""
    with Book.create(path, settings()) as book:
        add_style(book)
        content = json.dumps({"name": NAME, "note": f"{NAME} " * 900})
        client = book.add("measures", "M-101", NAME, content, note=f"{NAME} came by")
        book.save(client.id, content.replace("900", "901") + " ", 1, "set-measure")
        book.backup(path.with_name("copy.notchbook"))
    return client.id


@pytest.mark.parametrize("rollback", [False, True], ids=["write-ahead log", "rollback journal"])
def test_killed_while_it_erases(
    tmp_path: Path, writer: Writer, monkeypatch: pytest.MonkeyPatch, rollback: bool
) -> None:
    if rollback:
        use_rollback_journal(monkeypatch.setattr)
    outcomes = {"nothing": 0, "all": 0, "left to the next opening": 0}
    total = erase_until(tmp_path / "whole", writer, None, outcomes, rollback)
    for kill_at in (*range(30, total - LAST, 25), *range(total - LAST, total + 1)):
        erase_until(tmp_path / f"killed at {kill_at}", writer, kill_at, outcomes, rollback)
    assert min(outcomes.values()) >= 2, outcomes


def erase_until(
    folder: Path, writer: Writer, kill_at: int | None, outcomes: dict[str, int], rollback: bool
) -> int:
    """Erase her in a new folder, killed at a boundary or not; counts the outcome, gives the boundaries."""
    folder.mkdir()
    path = folder / "a.notchbook"
    client = book_with_a_client(path)
    writer.order(job="erase", path=path, document=client, kill_at=kill_at, rollback_journal=rollback)
    *lines, ended = writer.rest()
    assert ended == ["ended", "0" if kill_at is None else str(-signal.SIGKILL)]
    outcomes["left to the next opening"] += pending(path) > 0
    outcomes[check(path, client)] += 1
    return int(lines[-1][1]) if lines else 0


def check(path: Path, client: int) -> str:
    """Open the book; it is sound, and she is there whole or gone from every file."""
    with Book.open(path, settings()) as book:
        assert book.verify() == ()
        try:
            whole = len(book.history(client)) == 2 and book.read(client).name == NAME
        except BookError as error:
            assert error.code == "book-document-missing"
            assert [line.number for line in book.erased()] == ["M-101"]
            assert hers(path.parent) == set()
            return "all"
    assert whole
    assert hers(path.parent) >= {"a.notchbook", "copy.notchbook"}
    return "nothing"


def test_the_name_would_be_found(tmp_path: Path) -> None:
    """Else the test above could not fail: without the cleaning, her name stays in the file or its log."""
    path = tmp_path / "a.notchbook"
    book_with_a_client(path)
    with closing(sqlite3.connect(path)) as connection, connection:
        for guard in ("guard_contents_delete", "guard_contents_update"):
            connection.execute(f"DROP TRIGGER {guard}")
        connection.execute("PRAGMA secure_delete = OFF")
        connection.execute("UPDATE contents SET text = 'x'")
    path.with_name("copy.notchbook").unlink()
    assert hers(tmp_path)
