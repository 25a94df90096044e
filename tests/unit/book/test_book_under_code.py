"""Putting other words in the stead of a name: everywhere, revisions included, and the book stays sound."""

import json

import pytest

from notchbook.book import Book, Document, Frozen, Place, StoredText, UnderCode
from notchbook.errors import BookError
from support.books import add_style, files_in, frozen

NAME = "Łucja Óñate"
CODE = "K-101"


def content(name: str, waist: int = 733) -> str:
    """Measures as the app keeps them, so with letters beyond ASCII as they are."""
    return json.dumps({"name": name, "waist": waist}, ensure_ascii=False)


@pytest.fixture
def client(book: Book) -> Document:
    made = book.add("measures", "M-101", NAME, content(NAME), note=f"{NAME} came by")
    return book.rename(made.id, f"{NAME}-Paz", 1)


def reworded(stored: StoredText) -> str:
    """The name gives way to the code, in ASCII's spelling of JSON too."""
    escaped = json.dumps(NAME)[1:-1]
    return stored.text.replace(NAME, CODE).replace(escaped, CODE)


def renaming(book: Book, client: Document) -> UnderCode:
    return UnderCode(client.id, client.version, book.last_line(), reworded)


def spelled_in(book: Book) -> set[str]:
    """The files in which the name stands, in any form that the book writes."""
    forms = (NAME, json.dumps(NAME)[1:-1], "łucja onate", "lucja onate")
    found = files_in(book.path.parent).items()
    return {name for name, raw in found if any(form.encode() in raw for form in forms)}


def test_every_place_is_told(book: Book, client: Document) -> None:
    style = add_style(book)
    made = book.freeze_revision(style.id, 1, Frozen(content(NAME), "[]"), f"fits {NAME}")
    book.approve(made.id, 2, actor=NAME)
    escaped = json.dumps(NAME)[1:-1]
    places = {stored.place for stored in book.texts() if NAME in stored.text or escaped in stored.text}
    assert places == set(Place) - {Place.GEOMETRY, Place.FROZEN_BY}


def test_the_name_is_gone_from_the_file(book: Book, client: Document) -> None:
    style = add_style(book)
    book.freeze_revision(style.id, 1, Frozen(content(NAME), "[]"), f"fits {NAME}")
    assert spelled_in(book)
    assert book.put_under_code(renaming(book, client)).file
    assert not spelled_in(book)
    assert book.verify() == ()
    document = book.read(client.id)
    assert (document.name, document.version) == (f"{CODE}-Paz", client.version + 1)
    assert book.history(client.id)[-1].kind == "keep-under-code"
    assert [line.id for line in book.list(text="k-101-paz")] == [client.id]
    assert book.list(text="lucja") == ()


def test_undo_does_not_bring_the_name_back(book: Book, client: Document) -> None:
    edited = book.save(client.id, content(NAME, 740), client.version, "set-measure")
    book.put_under_code(renaming(book, edited))
    undone = book.undo(client.id, edited.version + 1)
    assert json.loads(undone.content) == {"name": CODE, "waist": 733}


def test_revisions_stay_approved_and_what_is_made_from_them_follows(book: Book, client: Document) -> None:
    block = book.add("block", "B-101", "Block", "{}")
    old = book.freeze_revision(block.id, 1, Frozen(content(NAME), "[]"), "first")
    book.approve(old.id, 2)
    style = add_style(book)
    made = book.freeze_revision(style.id, 1, frozen(old.hash), "of the block")
    untouched = book.freeze_revision(style.id, 2, frozen(geometry="[9]"), "plain")
    book.put_under_code(renaming(book, client))
    [new] = book.revisions(block.id)
    assert new.approved
    assert new.hash != old.hash
    assert json.loads(book.revision_contents(new.id).measures or "")["name"] == CODE
    assert [revision.id for revision in book.where_used(new.hash)] == [made.id]
    assert book.where_used(old.hash) == ()
    assert book.revisions(style.id)[1].hash == untouched.hash
    frozen_event = next(event for event in book.history(block.id) if event.kind == "freeze")
    assert frozen_event.what["hash"] == new.hash
    assert book.verify() == ()


def test_others_with_the_same_text_keep_it_when_they_are_not_meant(book: Book, client: Document) -> None:
    twin = book.add("measures", "M-102", NAME, content(NAME))

    def only_hers(stored: StoredText) -> str:
        return reworded(stored) if stored.document_id == client.id else stored.text

    book.put_under_code(UnderCode(client.id, client.version, book.last_line(), only_hers))
    assert json.loads(book.read(client.id).content)["name"] == CODE
    assert (book.read(twin.id).name, book.read(twin.id).content) == (NAME, content(NAME))
    assert book.read(twin.id).version == 1
    assert book.verify() == ()


def test_what_was_written_in_between_is_a_conflict(book: Book, client: Document) -> None:
    chosen = renaming(book, client)
    add_style(book)
    with pytest.raises(BookError) as refused:
        book.put_under_code(chosen)
    assert refused.value.code == "book-moved-on"
    edited = book.save(client.id, "{}", client.version, "set-measure")
    late = UnderCode(client.id, client.version, book.last_line(), reworded)
    with pytest.raises(BookError) as refused:
        book.put_under_code(late)
    assert refused.value.code == "book-conflict"
    assert book.read(client.id).version == edited.version
