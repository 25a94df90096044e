"""Every error of the database becomes a refusal in words."""

import sqlite3
from pathlib import Path

import pytest
from sqlalchemy import create_engine, text
from sqlalchemy.exc import IntegrityError, OperationalError
from sqlalchemy.exc import TimeoutError as PoolTimeout

from notchbook.book import Book
from notchbook.book.faults import refusal, told_in_words
from notchbook.errors import BookError, HouseFault
from support.books import add_style

PATH = Path("her.notchbook")


def error_of(number: int) -> sqlite3.Error:
    error = sqlite3.OperationalError("words of the database")
    error.sqlite_errorcode, error.sqlite_errorname = number, "SQLITE_SOMETHING"
    return error


# The numbers are those of sqlite.org/rescode.html.
@pytest.mark.parametrize(
    ("number", "code"),
    [
        (5, "book-busy"),
        (517, "book-busy"),
        (6, "book-busy"),
        (8, "book-read-only"),
        (1032, "book-read-only"),
        (10, "book-disk-fails"),
        (778, "book-disk-fails"),
        (11, "book-damaged"),
        (13, "book-disk-full"),
        (14, "book-cannot-open"),
        (26, "book-not-a-book"),
        (1811, "book-never-changes"),
    ],
)
def test_result_codes(number: int, code: str) -> None:
    with pytest.raises(BookError) as refused, told_in_words(PATH):
        raise OperationalError("SELECT", {}, error_of(number))
    assert refused.value.code == code
    assert "her.notchbook" in refused.value.text()


@pytest.mark.parametrize("number", [1, 19, 2067])
def test_what_was_not_foreseen_is_our_fault(number: int) -> None:
    told = refusal(error_of(number), PATH)
    assert isinstance(told, HouseFault)
    assert "SQLITE_SOMETHING" in str(told)


def test_an_error_without_a_number_is_our_fault() -> None:
    assert isinstance(refusal(sqlite3.ProgrammingError("closed"), PATH), HouseFault)


def test_errors_of_others_pass() -> None:
    with pytest.raises(KeyError), told_in_words(PATH):
        raise KeyError
    with pytest.raises(IntegrityError), told_in_words(PATH):
        raise IntegrityError("SELECT", {}, ValueError())


def test_too_many_users_at_once() -> None:
    with pytest.raises(BookError, match="book-busy"), told_in_words(PATH):
        raise PoolTimeout


def test_a_wrong_statement_gives_no_traceback_of_the_database() -> None:
    engine = create_engine("sqlite://")
    with pytest.raises(HouseFault), told_in_words(PATH), engine.connect() as connection:
        connection.execute(text("SELECT nothing"))


def test_a_guard_is_told_in_words(book: Book) -> None:
    style = add_style(book)
    with pytest.raises(BookError) as refused, book._writing() as session:
        session.execute(text("UPDATE events SET note = 'x'"))
    assert refused.value.code == "book-never-changes"
    assert "a line of the journal is never changed" in str(refused.value)
    assert book.read(style.id) == style
