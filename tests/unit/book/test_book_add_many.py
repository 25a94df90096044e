"""Many entries in one transaction: numbered, signed, all of them or none."""

from pathlib import Path

import pytest

from notchbook.book import Book, NewEntry
from notchbook.errors import BookError
from support.book_dump import book_hash


def entries(count: int) -> list[NewEntry]:
    return [NewEntry(f"Invented {place}", f'{{"bust":{place % 3}}}') for place in range(count)]


def test_they_get_the_next_numbers_and_a_first_version(book: Book) -> None:
    book.add("measures", "M-104", "Earlier", "{}")
    told: list[int] = []
    made = book.add_many("measures", "M", entries(1203), "from a list", told.append)
    assert (made[0].number, made[-1].number, len(made)) == ("M-105", "M-1307", 1203)
    assert told == [500, 1000, 1203]
    document = book.find("M-107")
    assert (document.name, document.content, document.version) == ("Invented 2", '{"bust":2}', 1)
    assert not document.can_undo
    (event,) = book.history(document.id)
    assert (event.kind, event.actor, event.note, event.version_before) == ("add", "Ines", "from a list", 0)
    assert made[2] == next(line for line in book.list("measures") if line.number == "M-107")
    assert book.verify() == ()


def test_an_added_one_is_edited_like_any_other(book: Book) -> None:
    (made,) = book.add_many("measures", "M", entries(1))
    book.save(made.id, "{}", 1, "set-measure")
    assert book.undo(made.id, 2).content == '{"bust":0}'
    assert [line.number for line in book.list(text="invented")] == ["M-101"]


def test_none_is_stored_when_one_is_refused_or_somebody_stops(book: Book, book_path: Path) -> None:
    book.add("measures", "M-104", "Earlier", "{}")
    before = book_hash(book_path)
    with pytest.raises(BookError) as refusal:
        book.add_many("measures", "M", [*entries(600), NewEntry(" ", "{}")])
    assert refusal.value.code == "book-name-refused"

    def stop(done: int) -> None:
        raise KeyboardInterrupt(done)

    with pytest.raises(KeyboardInterrupt):
        book.add_many("measures", "M", entries(600), told=stop)
    assert book_hash(book_path) == before
    assert len(book.list()) == 1


def test_no_entries_are_no_change(book: Book, book_path: Path) -> None:
    before = book_hash(book_path)
    assert book.add_many("measures", "M", []) == ()
    assert book_hash(book_path) == before


def test_a_series_that_is_full_takes_none(book: Book) -> None:
    book.add("measures", "M-999998", "Last but one", "{}")
    with pytest.raises(BookError) as refusal:
        book.add_many("measures", "M", entries(3))
    assert refusal.value.code == "book-number-malformed"
    assert len(book.list()) == 1


def test_the_hash_of_a_book_sees_a_change(book: Book, book_path: Path) -> None:
    before = book_hash(book_path)
    book.add("measures", "M-101", "A", "{}")
    assert book_hash(book_path) != before
