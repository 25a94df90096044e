"""What is no sound book of a known schema is refused with a code, and left as it is."""

import os
import random
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from notchbook.book import Book, migrating
from notchbook.book.models import APPLICATION_ID, SCHEMA
from notchbook.errors import BookError
from support.books import add_style, files_in, plant_schema, settings


def code_of_opening(path: Path, *, read_only: bool = False) -> str:
    """The code with which opening is refused; the folder must be as before."""
    before = files_in(path.parent)
    with pytest.raises(BookError) as refused:
        Book.open(path, settings(), read_only=read_only)
    assert files_in(path.parent) == before
    assert str(path) in str(refused.value)
    return refused.value.code


def test_a_missing_file(tmp_path: Path) -> None:
    assert code_of_opening(tmp_path / "no.notchbook") == "book-missing"


def test_a_folder(tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    assert code_of_opening(tmp_path / "folder") == "book-is-folder"
    with pytest.raises(BookError, match="book-is-folder"):
        Book.create(tmp_path / "folder")


@pytest.mark.parametrize("read_only", [False, True])
@pytest.mark.parametrize(
    ("content", "code"),
    [
        (b"", "book-empty"),
        (b"SQLite format 3\x00", "book-not-a-book"),
        (b"%PDF-1.7 an invoice", "book-not-a-book"),
        (random.Random(7).randbytes(40_000), "book-not-a-book"),
    ],
)
def test_files_that_are_no_books(tmp_path: Path, content: bytes, code: str, read_only: bool) -> None:
    (tmp_path / "some.notchbook").write_bytes(content)
    assert code_of_opening(tmp_path / "some.notchbook", read_only=read_only) == code


def test_another_programs_database(tmp_path: Path) -> None:
    path = tmp_path / "other.sqlite"
    with closing(sqlite3.connect(path)) as other:
        other.execute("CREATE TABLE entries (id)")
        other.commit()
    assert code_of_opening(path) == "book-not-a-book"


@pytest.mark.parametrize("seed", range(5))
def test_noise_after_the_header(book_path: Path, seed: int) -> None:
    whole = book_path.read_bytes()
    noise = random.Random(seed).randbytes(len(whole) - 100)
    book_path.write_bytes(whole[:100] + noise)
    assert code_of_opening(book_path) in {"book-damaged", "book-not-a-book"}


@pytest.mark.parametrize("share", [0.1, 0.5, 0.95])
def test_a_copy_that_was_cut_short(book_path: Path, share: float) -> None:
    whole = book_path.read_bytes()
    book_path.write_bytes(whole[: int(len(whole) * share)])
    assert code_of_opening(book_path) in {"book-damaged", "book-not-a-book"}


def test_a_missing_table(book_path: Path) -> None:
    with closing(sqlite3.connect(book_path)) as other:
        other.execute("DROP TABLE events")
        other.commit()
    assert code_of_opening(book_path) == "book-damaged"


@pytest.mark.parametrize(("schema", "code"), [(SCHEMA + 1, "book-newer"), (0, "book-damaged")])
def test_schemas_that_are_not_known(book_path: Path, schema: int, code: str) -> None:
    with closing(sqlite3.connect(book_path)) as other:
        other.execute(f"PRAGMA user_version = {schema}")
    assert code_of_opening(book_path) == code


def test_a_file_that_may_not_be_written(book_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "access", lambda path, _mode: path != book_path)
    assert code_of_opening(book_path) == "book-read-only"


def test_a_folder_that_may_not_be_written(book_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "access", lambda path, _mode: path != book_path.parent)
    assert code_of_opening(book_path) == "book-read-only"


def test_a_file_that_may_not_be_read(book_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(_path: Path, _mode: str) -> None:
        raise PermissionError(13, "Permission denied")

    with monkeypatch.context() as closed:
        closed.setattr(Path, "open", refuse)
        with pytest.raises(BookError) as refused:
            Book.open(book_path)
    assert refused.value.code == "book-cannot-open"


def test_reading_only_changes_nothing(book_path: Path) -> None:
    with Book.open(book_path, settings()) as book:
        style = add_style(book)
    before = files_in(book_path.parent)
    with Book.open(book_path, settings(), read_only=True) as still:
        assert still.read(style.id).content == "[0]"
        assert still.verify() == ()
        assert still.notice is None
        with pytest.raises(BookError) as refused:
            still.save(style.id, "[1]", 1, "move-dart")
        assert refused.value.code == "book-read-only"
        assert files_in(book_path.parent) == before
    assert files_in(book_path.parent) == before


def test_reading_only_refuses_an_older_book(
    book_path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plant_schema(monkeypatch.setattr, tmp_path)
    assert code_of_opening(book_path, read_only=True) == "book-older"


def test_a_new_book_is_marked(empty_book: Path) -> None:
    header = empty_book.read_bytes()[:100]
    assert header.startswith(b"SQLite format 3\x00")
    assert int.from_bytes(header[68:72], "big") == APPLICATION_ID
    assert header[68:72] == b"NTCH"
    assert int.from_bytes(header[60:64], "big") == SCHEMA


@pytest.mark.parametrize("links", [True, False])
def test_creating_never_takes_the_place_of_a_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, links: bool
) -> None:
    """Also not of one that comes while the book is made, and where the file system has no links."""
    path = tmp_path / "mine.notchbook"
    if not links:

        def no_links(_source: Path, _target: Path) -> None:
            raise PermissionError(1, "Operation not permitted")

        monkeypatch.setattr(os, "link", no_links)
    build = migrating.build

    def build_slowly(draft: Path, chosen: object) -> None:
        build(draft, settings())
        path.write_text("her letter")

    with monkeypatch.context() as slow:
        slow.setattr(migrating, "build", build_slowly)
        with pytest.raises(BookError, match="book-exists"):
            Book.create(path)
    assert files_in(tmp_path) == {"mine.notchbook": b"her letter"}
    with pytest.raises(BookError, match="book-exists"):
        Book.create(path)
    path.unlink()
    Book.create(path).close()
    assert list(files_in(tmp_path)) == ["mine.notchbook"]


def test_creating_in_a_missing_folder(tmp_path: Path) -> None:
    with pytest.raises(BookError, match="book-folder-missing"):
        Book.create(tmp_path / "no" / "a.notchbook")


def test_a_system_that_refuses_the_new_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(_handle: int) -> None:
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(os, "fsync", fail)
    with pytest.raises(BookError) as refused:
        Book.create(tmp_path / "a.notchbook")
    assert refused.value.code == "book-cannot-make"
    assert files_in(tmp_path) == {}


def test_open_or_create(tmp_path: Path) -> None:
    path = tmp_path / "a.notchbook"
    with Book.open_or_create(path, settings()) as book:
        add_style(book)
    with Book.open_or_create(path, settings()) as again:
        assert len(again.list()) == 1
    path.write_bytes(b"noise")
    with pytest.raises(BookError, match="book-not-a-book"):
        Book.open_or_create(path)


def test_closing_lets_go_of_the_file(book_path: Path) -> None:
    book = Book.open(book_path, settings())
    add_style(book)
    book.close()
    book.close()
    assert [path.name for path in book_path.parent.iterdir()] == [book_path.name]
    book_path.rename(book_path.with_name("elsewhere"))
    for use in (book.list, lambda: add_style(book), lambda: book.backup(book_path)):
        with pytest.raises(BookError, match="book-closed"):
            use()
