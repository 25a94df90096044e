"""Erasing entries: what goes, what stays as it was, what is refused."""

import json
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from notchbook.book import Book, Document, Erasure, Event, NewContent, Settings, StoredText
from notchbook.errors import BookError
from support.books import add_style, files_in, frozen, settings, ticking_clock

NAME = "Rosa Quillfeather"
HERS = json.dumps({"name": NAME, "waist": 733.125})


@pytest.fixture
def client(book: Book) -> Document:
    """A client, edited once."""
    made = book.add("measures", "M-101", NAME, HERS, note="came by")
    return book.save(made.id, HERS.replace("733", "734"), 1, "set-measure")


def erasure(book: Book, *documents: Document) -> Erasure:
    """Of these documents and nothing else."""
    return Erasure({document.id: document.version for document in documents}, book.last_line())


def names_in(folder: Path, *words: str) -> set[str]:
    """The files in which one of the words stands."""
    found = files_in(folder).items()
    return {name for name, content in found if any(word.encode() in content for word in words)}


def everything_of(book: Book, document: int) -> tuple[Document, tuple[Event, ...], list[str]]:
    """All that the book says of a document."""
    hashes = [revision.hash for revision in book.revisions(document)]
    return book.read(document), book.history(document), hashes


def test_nothing_of_an_erased_entry_is_left_in_any_file(book: Book, client: Document) -> None:
    folder = book.path.parent
    assert names_in(folder, NAME), "it stands there before, or the test could not fail"
    swept = book.erase(erasure(book, client))
    assert swept.file
    assert not names_in(folder, NAME, "733.125", "734.125", "came by")
    book.close()
    assert not names_in(folder, NAME, "733.125", "734.125", "came by")


def test_without_the_cleaning_old_pages_would_hold_it(
    book: Book, client: Document, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as lazy:
        lazy.setattr(Book, "_sweep", lambda _book: None)
        book.erase(erasure(book, client))
    assert names_in(book.path.parent, NAME)


def test_all_else_stays_as_it_was(book: Book, client: Document) -> None:
    style = add_style(book)
    made = book.freeze_revision(style.id, 1, frozen(), "first")
    book.approve(made.id, 2)
    other = book.add("measures", "M-102", "Ada T.", '{"waist":700}')
    before = [everything_of(book, style.id), everything_of(book, other.id)]
    book.erase(erasure(book, client))
    assert [everything_of(book, style.id), everything_of(book, other.id)] == before
    assert book.verify() == ()


def test_a_text_that_another_entry_has_too_stays(book: Book, client: Document) -> None:
    twin = book.add("measures", "M-102", "Ada T.", client.content)
    book.erase(erasure(book, client))
    assert book.read(twin.id).content == client.content
    assert book.verify() == ()


def test_a_line_says_that_it_was_erased_and_its_number_is_not_given_again(
    book: Book, client: Document
) -> None:
    book.erase(erasure(book, client), actor="Teo")
    [line] = book.erased()
    assert (line.kind, line.number, line.actor) == ("measures", "M-101", "Teo")
    assert book.next_number("M") == "M-102"
    with pytest.raises(BookError) as refused:
        book.add("measures", "M-101", "Ada T.", "{}")
    assert refused.value.code == "book-number-erased"
    assert book.add("measures", "M-102", "Ada T.", "{}").id != client.id, "an old reference would lead to her"


def test_a_number_given_again_by_another_program_is_found(book: Book, client: Document) -> None:
    book.erase(erasure(book, client))
    made = book.add("measures", "M-102", "Ada T.", "{}")
    with closing(sqlite3.connect(book.path)) as connection, connection:
        connection.execute("UPDATE entries SET serial = 101 WHERE name = 'Ada T.'")
    assert book.verify() == ("the number M-101 was given again after an erasure",)
    assert made.number == "M-102"


def test_an_erased_entry_is_missing(book: Book, client: Document) -> None:
    book.erase(erasure(book, client))
    with pytest.raises(BookError) as refused:
        book.read(client.id)
    assert refused.value.code == "book-document-missing"
    with pytest.raises(BookError) as refused:
        book.save(client.id, "{}", client.version, "set-measure")
    assert refused.value.code == "book-document-missing"


def test_an_edit_in_between_is_a_conflict(book: Book, client: Document) -> None:
    chosen = erasure(book, client)
    book.save(client.id, "{}", client.version, "set-measure")
    for seen in (chosen.seen, book.last_line()):
        with pytest.raises(BookError) as refused:
            book.erase(replace(chosen, seen=seen))
        assert refused.value.code in ("book-moved-on", "book-conflict")
    assert book.read(client.id).content == "{}"
    assert book.verify() == ()


def test_an_edit_of_anything_in_between_is_told(book: Book, client: Document) -> None:
    """The plan may not fit any more: a style may have been drafted for her since."""
    chosen = erasure(book, client)
    add_style(book)
    with pytest.raises(BookError) as refused:
        book.erase(chosen)
    assert refused.value.code == "book-moved-on"
    assert book.history(client.id)


def test_revisions_are_taken_out_of_a_document_that_stays(book: Book, client: Document) -> None:
    style = add_style(book)
    first = book.freeze_revision(style.id, 1, replace(frozen(), measures=HERS), "on her")
    book.approve(first.id, 2)
    kept = book.freeze_revision(style.id, 3, frozen(geometry="[1]"), "on the form")
    book.erase(replace(erasure(book, client), revisions=(first.id,)))
    [left] = book.revisions(style.id)
    assert left == kept
    document = book.read(style.id)
    assert (document.status, document.version) == ("working", 5)
    event = book.history(style.id)[-1]
    assert (event.kind, dict(event.what)) == ("erase", {"revisions": [1]})
    assert not names_in(book.path.parent, NAME)
    assert book.verify() == ()
    again = book.freeze_revision(style.id, 5, frozen(geometry="[2]"), "again")
    assert again.revision == 3, "the number of an erased revision is not given again"


def test_styles_go_on_in_the_same_act(book: Book, client: Document) -> None:
    style = add_style(book, content='{"body":7}')
    chosen = replace(
        erasure(book, client), contents={style.id: NewContent('{"body":1}', style.version, "set-body")}
    )
    book.erase(chosen)
    assert book.read(style.id).content == '{"body":1}'
    assert book.history(style.id)[-1].kind == "set-body"


def test_a_conflict_in_a_style_that_goes_on_leaves_everything(book: Book, client: Document) -> None:
    style = add_style(book)
    chosen = replace(erasure(book, client), contents={style.id: NewContent("{}", 9, "set-body")})
    with pytest.raises(BookError) as refused:
        book.erase(chosen)
    assert refused.value.code == "book-conflict"
    assert book.read(client.id).name == NAME
    assert book.verify() == ()


def test_a_name_is_taken_out_of_texts_that_stay(book: Book, client: Document) -> None:
    style = add_style(book, name=f"Skirt for {NAME}", content=json.dumps({"name": f"Skirt for {NAME}"}))

    def reworded(stored: StoredText) -> str:
        return stored.text.replace(NAME, "(erased)")

    book.erase(replace(erasure(book, client), reworded=reworded))
    document = book.read(style.id)
    assert (document.name, document.version) == ("Skirt for (erased)", 2)
    assert book.list(text="quillfeather") == ()
    assert not names_in(book.path.parent, NAME, NAME.casefold())
    with pytest.raises(BookError) as refused:
        book.save(style.id, style.content, style.version, "rename-style")
    assert refused.value.code == "book-conflict", "whoever still has the old text must not bring it back"


@pytest.fixture
def copies(book: Book, client: Document) -> Iterator[Path]:
    """A copy with her, one of before her, another book, and a file that only looks like one."""
    folder = book.path.parent
    book.backup(folder / "with her.notchbook")
    later = Settings("Ines", ticking_clock(datetime(2026, 5, 4, tzinfo=UTC)))
    for name in ("another.notchbook", "else.notchbook"):
        with Book.create(folder / name, later) as other:
            other.add("measures", "M-101", "Somebody else", "{}")
    damaged = (folder / "with her.notchbook").read_bytes()[:5000] + NAME.encode()
    (folder / "damaged.notchbook").write_bytes(damaged)
    (folder / "notes.txt").write_text(NAME)
    yield folder
    book.close()


def test_copies_beside_the_book_are_found_by_what_they_hold(
    book: Book, client: Document, copies: Path
) -> None:
    found = {copy.path.name: copy.readable for copy in book.copies_with(client.id)}
    assert found == {"with her.notchbook": True, "damaged.notchbook": False}


def test_copies_are_deleted_when_she_says_so(book: Book, client: Document, copies: Path) -> None:
    chosen = tuple(copy.path for copy in book.copies_with(client.id))
    swept = book.erase(replace(erasure(book, client), copies=chosen))
    assert [path.name for path in swept.copies_left] == ["damaged.notchbook"]
    assert names_in(copies, NAME) == {"damaged.notchbook", "notes.txt"}
    assert (copies / "another.notchbook").exists()


def test_a_file_that_does_not_hold_her_is_never_deleted(book: Book, client: Document, copies: Path) -> None:
    """Whatever the book asks for: a book that was made by somebody else could ask for anything."""
    wanted = tuple(copies / name for name in ("another.notchbook", "notes.txt", "gone.notchbook"))
    swept = book.erase(replace(erasure(book, client), copies=wanted))
    assert [path.name for path in swept.copies_left] == ["another.notchbook", "notes.txt"]
    assert (copies / "another.notchbook").exists()
    assert (copies / "notes.txt").exists()


def test_a_reader_holds_the_cleaning_up_until_the_next_opening(book: Book, client: Document) -> None:
    with closing(sqlite3.connect(book.path, isolation_level=None)) as reader:
        reader.execute("BEGIN")
        reader.execute("SELECT * FROM contents").fetchall()
        with Book.open(book.path, settings(busy_timeout_s=0.1)) as impatient:
            swept = impatient.erase(erasure(book, client))
        assert not swept.file
    assert names_in(book.path.parent, NAME)
    book.close()
    with Book.open(book.path, settings()) as again:
        assert not names_in(book.path.parent, NAME)
        assert again.verify() == ()


def test_a_failed_erasure_leaves_the_guards(book: Book, client: Document) -> None:
    add_style(book)

    def fails(_stored: StoredText) -> str:
        return "\ud800"

    with pytest.raises(BookError) as refused:
        book.erase(replace(erasure(book, client), reworded=fails))
    assert refused.value.code == "book-text-unreadable"
    assert book.verify() == ()
    assert book.read(client.id).name == NAME


def test_a_book_for_reading_only_erases_nothing(book: Book, client: Document) -> None:
    chosen = erasure(book, client)
    path = book.path
    book.close()
    with Book.open(path, settings(), read_only=True) as archived:
        with pytest.raises(BookError) as refused:
            archived.erase(chosen)
        assert refused.value.code == "book-read-only"
        assert archived.read(client.id).name == NAME
