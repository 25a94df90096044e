"""Several writers at once: the second is told, nothing is lost, nobody waits for ever."""

import multiprocessing
import sqlite3
import threading
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor, ThreadPoolExecutor
from contextlib import closing
from pathlib import Path

import pytest

from notchbook.book import Book
from notchbook.errors import BookError
from support.books import add_style, settings, write_in_a_process, write_with_patience

EDITS = 15


def check_all_there(path: Path, document_id: int, writers: str) -> None:
    """Every line of every writer stands in the content, in the order of its writer."""
    with Book.open(path, settings()) as book:
        words = book.read(document_id).content.split()
        assert len(words) == EDITS * len(writers) == book.read(document_id).version - 1
        for who in writers:
            assert [word for word in words if word[0] == who] == [f"{who}{number}" for number in range(EDITS)]
            assert sum(event.actor == who for event in book.history(document_id)) == EDITS
        assert book.verify() == ()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "a.notchbook"
    with Book.create(path, settings()) as book:
        add_style(book, content="")
    return path


def test_threads_that_share_a_book(path: Path) -> None:
    with Book.open(path, settings(busy_timeout_s=30)) as book, ThreadPoolExecutor(4) as pool:
        list(pool.map(lambda who: write_with_patience(book, 1, who, EDITS), "abcd"))
    check_all_there(path, 1, "abcd")


def test_processes_with_a_book_each(path: Path) -> None:
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(2, mp_context=context) as pool:
        list(pool.map(write_in_a_process, [path] * 2, [1] * 2, "ab", [EDITS] * 2, timeout=60))
    check_all_there(path, 1, "ab")


def test_of_two_writers_on_one_version_one_is_told(path: Path) -> None:
    """Both have read version 1, and save at the same moment."""
    ready = threading.Barrier(2)

    def save(who: str) -> str:
        with Book.open(path, settings(busy_timeout_s=30)) as book:
            ready.wait()
            try:
                book.save(1, who, 1, "move-dart", actor=who)
            except BookError as error:
                assert f"version 2 (move-dart by {'b' if who == 'a' else 'a'}" in str(error)
                return error.code
            return "saved"

    with ThreadPoolExecutor(2) as pool:
        assert sorted(pool.map(save, "ab")) == ["book-conflict", "saved"]


def test_two_programs_make_the_same_book(tmp_path: Path) -> None:
    """Both open or create it at once; there is one book in the end, and both have it."""
    path = tmp_path / "new.notchbook"
    ready = threading.Barrier(3)

    def begin(number: int) -> None:
        ready.wait()
        with Book.open_or_create(path, settings(busy_timeout_s=30)) as book:
            add_style(book, f"S-{number}")

    with ThreadPoolExecutor(3) as pool:
        list(pool.map(begin, (1, 2, 3)))
    with Book.open(path, settings()) as book:
        assert [line.number for line in book.list()] == ["S-1", "S-2", "S-3"]
    assert [item.name for item in tmp_path.iterdir()] == ["new.notchbook"]


def test_a_book_that_stays_locked_is_told_and_reading_goes_on(path: Path) -> None:
    with Book.open(path, settings(busy_timeout_s=0.1)) as book, closing(sqlite3.connect(path)) as other:
        other.execute("BEGIN IMMEDIATE")
        uses: tuple[Callable[[], object], ...] = (
            lambda: book.save(1, "x", 1, "move-dart"),
            lambda: add_style(book, "S-1"),
        )
        for use in uses:
            with pytest.raises(BookError) as refused:
                use()
            assert refused.value.code == "book-busy"
        assert book.read(1).version == 1
        other.rollback()
        assert book.save(1, "x", 1, "move-dart").version == 2


def test_a_reader_sees_one_state_of_the_book(path: Path) -> None:
    """While one transaction reads, another one's edit does not come in between."""
    with Book.open(path, settings()) as book, book._reading() as session:
        count = "SELECT count(*) FROM events"
        before = session.connection().exec_driver_sql(count).scalar_one()
        book.save(1, "x", 1, "move-dart")
        assert session.connection().exec_driver_sql(count).scalar_one() == before
