"""Add, save, undo, redo, rename, retire, find; every change is one event."""

from datetime import UTC, datetime
from pathlib import Path

import pytest

from notchbook.book import Book, EntryKind, EntryStatus
from notchbook.errors import BookError
from support.books import add_style, settings


def code(refused: pytest.ExceptionInfo[BookError]) -> str:
    return refused.value.code


def test_an_entry_begins_at_version_1(book: Book) -> None:
    style = add_style(book)
    assert (style.version, style.latest_version, style.content) == (1, 1, "[0]")
    assert (style.kind, style.number, style.status) == (EntryKind.STYLE, "S-104", EntryStatus.WORKING)
    assert not style.can_undo
    assert not style.can_redo
    [event] = book.history(style.id)
    assert (event.kind, event.actor, event.note) == ("add", "Ines", "from a sketch")
    assert (event.version_before, event.version_after) == (0, 1)
    assert event.at == datetime(2026, 3, 2, 9, 0, tzinfo=UTC) == style.changed_at


def test_saved_contents_stay_readable_at_every_version(book: Book) -> None:
    style = add_style(book)
    for version in range(1, 6):
        book.save(style.id, f"[{version}]", version, "move-dart", f"round {version}", "Teo")
    assert [book.read(style.id, version).content for version in range(1, 7)] == [
        "[0]", "[1]", "[2]", "[3]", "[4]", "[5]",
    ]  # fmt: skip
    past = book.read(style.id, 3)
    assert (past.version, past.latest_version) == (3, 6)
    assert past.changed_at == book.history(style.id)[2].at
    assert [event.actor for event in book.history(style.id)] == ["Ines", *["Teo"] * 5]
    for version in (0, 7, -1):
        with pytest.raises(BookError, match="book-version-missing"):
            book.read(style.id, version)


def test_the_same_content_again_is_no_edit(book: Book) -> None:
    style = add_style(book)
    assert book.save(style.id, "[0]", 1, "move-dart") == style
    with pytest.raises(BookError, match="book-conflict"):
        book.save(style.id, "[0]", 2, "move-dart")


def test_a_conflict_says_what_changed_since(book: Book) -> None:
    style = add_style(book)
    book.save(style.id, "[1]", 1, "move-dart", actor="Teo")
    book.rename(style.id, "Gored skirt, short", 2)
    with pytest.raises(BookError) as refused:
        book.save(style.id, "[mine]", 1, "add-seam")
    assert code(refused) == "book-conflict"
    assert refused.value.facts["events"] == book.history(style.id)[1:]
    assert "move-dart by Teo (version 2), rename by Ines (version 3)" in str(refused.value)
    assert book.read(style.id).content == "[1]"


@pytest.mark.parametrize("act", ["undo", "redo", "retire", "bring_back"])
def test_every_change_names_the_version_that_was_seen(book: Book, act: str) -> None:
    style = add_style(book)
    with pytest.raises(BookError, match="book-conflict"):
        getattr(book, act)(style.id, 9)


def test_undo_and_redo_walk_along_the_edits(book: Book) -> None:
    style = add_style(book)
    now = style
    for number in (1, 2, 3):
        now = book.save(style.id, f"[{number}]", now.version, "move-dart")
    seen = []
    for act in (book.undo, book.undo, book.redo, book.undo, book.undo):
        now = act(style.id, now.version)
        seen.append((now.content, now.can_undo, now.can_redo))
    assert seen == [
        ("[2]", True, True),
        ("[1]", True, True),
        ("[2]", True, True),
        ("[1]", True, True),
        ("[0]", False, True),
    ]
    with pytest.raises(BookError) as refused:
        book.undo(style.id, now.version)
    assert code(refused) == "book-nothing-to-undo"
    now = book.redo(style.id, now.version)
    now = book.save(style.id, "[other]", now.version, "add-seam")
    assert not now.can_redo
    with pytest.raises(BookError) as refused:
        book.redo(style.id, now.version)
    assert code(refused) == "book-nothing-to-redo"
    assert book.undo(style.id, now.version).content == "[1]"


def test_undo_writes_an_event_and_takes_none_out(book: Book) -> None:
    style = add_style(book)
    book.save(style.id, "[1]", 1, "move-dart")
    book.undo(style.id, 2, note="too wide")
    events = book.history(style.id)
    assert [event.kind for event in events] == ["add", "move-dart", "undo"]
    assert events[2].what == {"from": 2, "to": 1, "edit": "add"}
    assert events[2].content_hash == events[0].content_hash
    assert events[2].note == "too wide"


def test_undo_passes_over_renaming(book: Book) -> None:
    style = add_style(book)
    book.save(style.id, "[1]", 1, "move-dart")
    book.rename(style.id, "Another", 2)
    undone = book.undo(style.id, 3)
    assert (undone.content, undone.name, undone.version) == ("[0]", "Another", 4)


def test_renaming_keeps_the_number_and_is_found(book: Book) -> None:
    style = add_style(book)
    renamed = book.rename(style.id, " Jupe à godets ", 1)
    assert (renamed.name, renamed.number, renamed.version) == ("Jupe à godets", "S-104", 2)
    assert book.rename(style.id, "Jupe à godets", 2).version == 2
    assert [line.name for line in book.list(text="GODETS a")] == ["Jupe à godets"]
    assert book.list(text="gored") == ()
    assert book.history(style.id)[1].what == {"from": "Gored skirt", "to": "Jupe à godets"}


def test_retired_entries_stay_readable_and_come_back(book: Book) -> None:
    style = add_style(book)
    retired = book.retire(style.id, 1)
    assert (retired.status, retired.version, retired.content) == (EntryStatus.RETIRED, 2, "[0]")
    assert book.retire(style.id, 2).version == 2
    assert book.save(style.id, "[1]", 2, "move-dart").status == EntryStatus.RETIRED
    back = book.bring_back(style.id, 3)
    assert (back.status, back.version) == (EntryStatus.WORKING, 4)
    assert [event.kind for event in book.history(style.id)][-1] == "bring-back"


def test_the_library_is_listed_by_number(book: Book) -> None:
    for kind, number, name in (
        ("style", "S-1000", "Wrap skirt"),
        ("style", "S-99", "Gored skirt"),
        ("block", "B-3", "Skirt block"),
        ("measures", "M-7", "Form 100 % wool_ [a]"),
    ):
        book.add(kind, number, name, "{}")
    assert [line.number for line in book.list()] == ["B-3", "M-7", "S-99", "S-1000"]
    assert [line.number for line in book.list("style")] == ["S-99", "S-1000"]
    assert [line.number for line in book.list(text="skirt s-")] == ["S-99", "S-1000"]
    assert [line.number for line in book.list(text="s-99")] == ["S-99"]
    for sign in ("%", "_", "[A]"):
        assert [line.number for line in book.list(text=sign)] == ["M-7"]
    assert book.list(EntryKind.BLOCK, "wrap") == ()


def test_numbers_are_given_once(book: Book) -> None:
    assert book.next_number("s") == "S-101"
    add_style(book, book.next_number("S"))
    add_style(book, "S-250")
    assert book.next_number("S") == "S-251"
    assert book.next_number("B") == "B-101"
    with pytest.raises(BookError) as refused:
        add_style(book, "s-0101", "Another")
    assert code(refused) == "book-number-taken"
    assert "Gored skirt" in str(refused.value)
    assert len(book.list()) == 2


def test_an_entry_is_found_by_its_number(book: Book) -> None:
    style = add_style(book)
    assert book.find("s-0104") == style
    with pytest.raises(BookError, match="book-number-missing"):
        book.find("S-1")


def test_documents_that_are_not_there(book: Book) -> None:
    for act in (book.read, book.history, book.revisions):
        with pytest.raises(BookError, match="book-document-missing"):
            act(5)


@pytest.mark.parametrize(
    "content", ["", "\x00", "a\x00b", "\r\n", "ß裁🧵", "'; DROP TABLE entries; --", "x" * 10**6]
)
def test_any_text_comes_back_as_it_was(book: Book, content: str) -> None:
    assert add_style(book, content=content).content == content
    assert book.verify() == ()


def test_what_is_refused_leaves_nothing_behind(book: Book) -> None:
    entries = [("garment", "S-1", "x", "{}"), ("style", "S-1", "", "{}"), ("style", "1", "x", "{}")]
    for entry in [*entries, ("style", "S-1", "x", "\ud800")]:
        with pytest.raises(BookError):
            book.add(*entry)
    with pytest.raises(BookError, match="book-text-unreadable"):
        book.add("style", "S-1", "x", "{}", note="\ud800")
    style = add_style(book)
    for content, kind in (("[1]", "undo"), ("\ud800", "move-dart")):
        with pytest.raises(BookError):
            book.save(style.id, content, 1, kind)
    with pytest.raises(BookError, match="book-name-refused"):
        book.rename(style.id, "", 1)
    assert book.read(style.id) == style
    assert len(book.history(style.id)) == 1
    assert book.verify() == ()


def test_everything_is_there_after_reopening(book_path: Path) -> None:
    with Book.open(book_path, settings()) as book:
        style = add_style(book)
        book.save(style.id, "[1]", 1, "move-dart")
        before = (book.list(), book.history(style.id), book.read(style.id))
    with Book.open(book_path, settings()) as again:
        assert (again.list(), again.history(style.id), again.read(style.id)) == before
