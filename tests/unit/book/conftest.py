"""A new book for each test, copied from one that is made once."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from notchbook.book import Book
from support.books import settings


@pytest.fixture(scope="session")
def empty_book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The file of a book without entries."""
    path = tmp_path_factory.mktemp("books") / "empty.notchbook"
    Book.create(path, settings()).close()
    return path


@pytest.fixture
def book_path(empty_book: Path, tmp_path: Path) -> Path:
    """A book of its own in a folder with a blank and letters beyond ASCII in its name."""
    folder = tmp_path / "Studio Łódź 裁断"
    folder.mkdir()
    return Path(shutil.copy(empty_book, folder / "the book.notchbook"))


@pytest.fixture
def book(book_path: Path) -> Iterator[Book]:
    """The same, open."""
    with Book.open(book_path, settings()) as opened:
        yield opened
