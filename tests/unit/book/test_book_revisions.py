"""Frozen revisions: whole, traceable, and never changed once approved."""

import hashlib
import json

import pytest

from notchbook.book import Book, Document, EntryStatus, Frozen
from notchbook.errors import BookError
from support.books import add_style, frozen


@pytest.fixture
def style(book: Book) -> Document:
    return add_style(book)


def test_a_revision_keeps_everything(book: Book, style: Document) -> None:
    book.save(style.id, "[1]", 1, "move-dart")
    made = book.freeze_revision(style.id, 2, frozen(), "for the muslin", "Teo")
    assert (made.revision, made.number, made.document_version, made.approved) == (1, "S-104", 2, False)
    assert (made.reason, made.frozen_by, made.step_versions) == ("for the muslin", "Teo", {"draft-skirt": 1})
    book.save(style.id, "[2]", 3, "move-dart")
    texts = book.revision_contents(made.id)
    assert (texts.content, texts.measures, texts.geometry) == ("[1]", frozen().measures, frozen().geometry)
    assert book.revisions(style.id) == (made,)
    assert book.history(style.id)[2].what == {"revision": 1, "hash": made.hash}


def test_the_hash_of_a_revision_is_as_documented(book: Book, style: Document) -> None:
    """Made here again from docs/formats/book.md, with the standard library alone."""
    made = book.freeze_revision(style.id, 1, frozen(), "why")
    hashes = {
        "content": "[0]",
        "geometry": '{"outline":[0,0,250,600]}',
        "measures": '{"waist":720}',
    }
    manifest: dict[str, object] = {
        name: hashlib.sha256(text.encode()).hexdigest() for name, text in hashes.items()
    }
    manifest |= {"blocks": [], "steps": {"draft-skirt": 1}}
    text = json.dumps(manifest, sort_keys=True, separators=(",", ":"))
    assert made.hash == hashlib.sha256(text.encode()).hexdigest()


def test_approving_happens_once(book: Book, style: Document) -> None:
    made = book.freeze_revision(style.id, 1, frozen(), "why")
    with pytest.raises(BookError, match="book-conflict"):
        book.approve(made.id, 1)
    approved = book.approve(made.id, 2, "fits", "Teo")
    assert (approved.approved, approved.approved_by) == (True, "Teo")
    assert (approved.hash, approved.frozen_by) == (made.hash, "Ines")
    with pytest.raises(BookError) as refused:
        book.approve(made.id, 3)
    assert refused.value.code == "book-revision-approved"
    assert "Teo" in str(refused.value)
    assert book.revisions(style.id) == (approved,)
    assert [event.kind for event in book.history(style.id)] == ["add", "freeze", "approve"]


def test_an_entry_is_approved_while_its_content_is(book: Book, style: Document) -> None:
    made = book.freeze_revision(style.id, 1, frozen(), "why")
    assert book.read(style.id).status == EntryStatus.WORKING
    book.approve(made.id, 2)
    assert book.read(style.id).status == EntryStatus.APPROVED
    assert book.save(style.id, "[1]", 3, "move-dart").status == EntryStatus.WORKING
    assert book.undo(style.id, 4).status == EntryStatus.APPROVED
    assert book.retire(style.id, 5).status == EntryStatus.RETIRED
    assert book.bring_back(style.id, 6).status == EntryStatus.APPROVED


def test_approving_an_earlier_revision_does_not_approve_the_work_of_now(book: Book, style: Document) -> None:
    made = book.freeze_revision(style.id, 1, frozen(), "why")
    book.save(style.id, "[1]", 2, "move-dart")
    book.approve(made.id, 3)
    assert book.read(style.id).status == EntryStatus.WORKING


def test_blocks_are_named_by_their_revision_and_found_again(book: Book, style: Document) -> None:
    block = book.add("block", "B-101", "Skirt block", "{}")
    old = book.freeze_revision(block.id, 1, frozen(), "first")
    new = book.freeze_revision(block.id, 2, frozen(geometry="[2]"), "second")
    made = book.freeze_revision(style.id, 1, frozen(new.hash, old.hash, new.hash), "why")
    assert made.block_revisions == tuple(sorted((old.hash, new.hash)))
    assert book.where_used(new.hash) == (made,)
    assert book.where_used(made.hash) == ()
    with pytest.raises(BookError) as refused:
        book.freeze_revision(style.id, 2, frozen("0" * 64), "why")
    assert refused.value.code == "book-block-revision-missing"


def test_a_revision_that_changes_nothing_is_refused(book: Book, style: Document) -> None:
    book.freeze_revision(style.id, 1, frozen(), "why")
    with pytest.raises(BookError, match="book-revision-unchanged"):
        book.freeze_revision(style.id, 2, frozen(), "again")
    again = book.freeze_revision(style.id, 2, frozen(geometry="[other]"), "new step version")
    assert again.revision == 2


@pytest.mark.parametrize(
    ("parts", "absent"), [(Frozen(), "measures, geometry"), (Frozen(measures="{}"), "geometry")]
)
def test_a_style_is_not_frozen_without_geometry(
    book: Book, style: Document, parts: Frozen, absent: str
) -> None:
    with pytest.raises(BookError) as refused:
        book.freeze_revision(style.id, 1, parts, "why")
    assert refused.value.code == "book-revision-incomplete"
    assert f"without: {absent}." in str(refused.value)
    assert book.revisions(style.id) == ()
    assert book.read(style.id).version == 1


def test_measures_are_frozen_alone(book: Book) -> None:
    body = book.add("measures", "M-101", "Form 40", '{"bust":880}')
    made = book.freeze_revision(body.id, 1, Frozen(), "measured in March")
    assert made.geometry_hash is None
    assert book.revision_contents(made.id).content == '{"bust":880}'


def test_a_missing_revision(book: Book) -> None:
    for act in (book.revision_contents, lambda number: book.approve(number, 1)):
        with pytest.raises(BookError, match="book-revision-missing"):
            act(3)
