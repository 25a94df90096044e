"""A program that is killed while it writes loses no edit that it had confirmed.

This kills processes (SIGKILL), not the power: whether the disk keeps its word about what it has written
cannot be tried here.
"""

import json
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import IO

import pytest

from house import ROOT
from notchbook.book import Book
from support.books import NEXT, add_style, files_in, lost, plant_schema, settings, use_rollback_journal

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork and SIGKILL")

SEED = 20260302
EDIT_BOUNDARIES = 120
"""So many boundaries are passed in about the first four edits of a process, its opening included."""


class Writer:
    """The program that writes, and is killed."""

    def __init__(self, process: subprocess.Popen[str], orders: IO[str], answers: IO[str]) -> None:
        self.process, self._orders, self._answers = process, orders, answers

    def order(self, **words: object) -> int:
        """Give an order; the process that does it."""
        self._orders.write(json.dumps(words, default=str) + "\n")
        self._orders.flush()
        word, process = self._answers.readline().split()
        assert word == "pid"
        return int(process)

    def line(self) -> list[str]:
        """The next line of the process."""
        return self._answers.readline().split()

    def rest(self) -> list[list[str]]:
        """All lines up to the one that says how the process ended."""
        lines = [self.line()]
        while lines[-1][0] != "ended":
            lines.append(self.line())
        return lines


@pytest.fixture(scope="module")
def writer() -> Iterator[Writer]:
    command = [sys.executable, "-m", "support.book_writer"]
    variables = {**os.environ, "PYTHONPATH": os.pathsep.join(str(ROOT / name) for name in ("tests", "tools"))}
    with subprocess.Popen(
        command, env=variables, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as process:
        assert process.stdin is not None
        assert process.stdout is not None
        yield Writer(process, process.stdin, process.stdout)
        process.stdin.close()


def confirmations(lines: list[list[str]]) -> list[tuple[int, str]]:
    """The edits that were confirmed: version and hash."""
    return [(int(version), key) for version, key in lines[:-1]]


def check_after_kill(path: Path, document_id: int, confirmed: list[tuple[int, str]], before: int) -> int:
    """Every confirmed edit is there, at most one more, and the book is sound; its version."""
    with Book.open(path, settings()) as book:
        assert book.verify() == ()
        assert lost(book, document_id, confirmed) == []
        version = book.read(document_id).version
    last = confirmed[-1][0] if confirmed else before
    assert version in {last, last + 1}
    return version


@pytest.mark.parametrize("rollback", [False, True], ids=["write-ahead log", "rollback journal"])
def test_killed_at_boundaries_of_writing(
    tmp_path: Path, writer: Writer, monkeypatch: pytest.MonkeyPatch, rollback: bool
) -> None:
    """Two times 20 boundaries between two statements, or around a commit and its confirmation."""
    if rollback:
        use_rollback_journal(monkeypatch.setattr)
    path = tmp_path / "a b.notchbook"
    with Book.create(path, settings()) as book:
        style = add_style(book)
    chance = random.Random(SEED + rollback)
    version, in_the_middle, total = 1, 0, 0
    for seed in range(20):
        kill_at = chance.randrange(1, EDIT_BOUNDARIES)
        writer.order(
            job="write", path=path, document=style.id, seed=seed, kill_at=kill_at, rollback_journal=rollback
        )
        lines = writer.rest()
        assert lines[-1] == ["ended", str(-signal.SIGKILL)]
        left = path.with_name(path.name + ("-journal" if rollback else "-wal"))
        in_the_middle += left.exists() and left.stat().st_size > 0
        confirmed = confirmations(lines)
        total += len(confirmed)
        version = check_after_kill(path, style.id, confirmed, version)
    assert in_the_middle >= 3, "the kills must hit open transactions"
    assert total >= 20


def test_killed_at_any_moment(tmp_path: Path, writer: Writer) -> None:
    """10 kills from outside, at seeded times after a seeded number of confirmations."""
    path = tmp_path / "a.notchbook"
    with Book.create(path, settings()) as book:
        style = add_style(book)
    chance = random.Random(SEED)
    version = 1
    for seed in range(10):
        process = writer.order(job="write", path=path, document=style.id, seed=seed)
        first = [writer.line() for _ in range(chance.randrange(1, 8))]
        time.sleep(chance.uniform(0, 0.01))
        os.kill(process, signal.SIGKILL)
        version = check_after_kill(path, style.id, confirmations(first + writer.rest()), version)


def test_a_lost_edit_would_be_found(tmp_path: Path) -> None:
    path = tmp_path / "a.notchbook"
    with Book.create(path, settings()) as book:
        style = add_style(book)
        book.backup(tmp_path / "older.notchbook")
        saved = book.save(style.id, "[1]", 1, "move-dart")
    with Book.open(tmp_path / "older.notchbook", settings()) as older:
        assert lost(older, style.id, [(1, style.content_hash)]) == []
        assert lost(older, style.id, [(2, saved.content_hash)]) == [(2, saved.content_hash)]
    with pytest.raises(AssertionError):
        check_after_kill(tmp_path / "older.notchbook", style.id, [(2, saved.content_hash)], 1)


def test_killed_while_a_book_is_made(tmp_path: Path, writer: Writer) -> None:
    """The book is there whole, or not at all."""
    whole = []
    for kill_at in (1, 2, 5, 11, 23, 41, 60, 70, 10_000):
        path = tmp_path / f"{kill_at}.notchbook"
        writer.order(job="create", path=path, kill_at=kill_at)
        writer.rest()
        whole.append(path.exists())
        if path.exists():
            with Book.open(path, settings()) as book:
                assert book.verify() == ()
    assert whole[-1]
    assert whole.count(False) >= 4


def test_killed_while_a_book_is_upgraded(
    tmp_path: Path, writer: Writer, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The book has the old schema or the new one, its content is the same, and a copy lies beside it."""
    path = tmp_path / "books" / "a.notchbook"
    path.parent.mkdir()
    with Book.create(path, settings()) as book:
        style = add_style(book)
        history = book.history(style.id)
    old = files_in(path.parent)["a.notchbook"]
    plant_schema(monkeypatch.setattr, tmp_path)
    for kill_at in (2, 7, 19, 31, 43, 55):
        path.write_bytes(old)
        writer.order(job="upgrade", path=path, scripts=tmp_path, kill_at=kill_at)
        assert writer.rest()[-1] == ["ended", str(-signal.SIGKILL)]
        with Book.open(path, settings()) as book:
            assert book.verify() == ()
            assert book.history(style.id) == history
    copies = [name for name in files_in(path.parent) if f"before-schema-{NEXT}" in name and name[0] != "."]
    assert copies


@pytest.mark.skipif(not hasattr(os, "getuid"), reason="needs the rights of POSIX")
def test_a_user_without_rights(writer: Writer) -> None:
    """A real folder without write permission, as a user that is bound by it."""
    folder = Path(tempfile.gettempdir()) / f"notchbook-{os.getpid()}-readable"
    folder.mkdir()
    path = folder / "a.notchbook"
    try:
        Book.create(path, settings()).close()
        path.chmod(0o444)
        folder.chmod(0o555)
        before = files_in(folder)
        writer.order(job="without_rights", path=path, read_only=False)
        assert writer.rest() == [["refused", "book-read-only"], ["ended", "0"]]
        writer.order(job="without_rights", path=path, read_only=True)
        assert writer.rest() == [["ended", "0"]]
        assert files_in(folder) == before
    finally:
        folder.chmod(0o755)
        path.unlink(missing_ok=True)
        folder.rmdir()


@pytest.mark.parametrize("rollback", [False, True], ids=["write-ahead log", "rollback journal"])
def test_a_file_that_the_system_lets_grow_no_further(tmp_path: Path, writer: Writer, rollback: bool) -> None:
    """A write that the system refuses for real, by a limit on the size of files."""
    path = tmp_path / "a.notchbook"
    with Book.create(path, settings()) as book:
        style = add_style(book)
    limit = max(200_000, path.stat().st_size + 50_000)
    writer.order(job="small_files", path=path, document=style.id, limit=limit, rollback_journal=rollback)
    [told, ended] = writer.rest()
    assert told[0] == "refused"
    assert told[1] in {"book-disk-fails", "book-disk-full"}
    assert ended == ["ended", "0"]
    with Book.open(path, settings()) as book:
        assert book.read(style.id) == style
        assert book.verify() == ()
