"""Older books are opened for ever; an upgrade is whole or not at all, after a copy."""

import hashlib
import json
import shutil
import sqlite3
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from pathlib import Path

import pytest

from notchbook.book import Book, EntryStatus, Erasure
from notchbook.errors import BookError
from support.books import NEXT, files_in, plant_schema, settings, use_rollback_journal

GOLDEN = Path(__file__).parents[1] / "golden"
RELEASES = sorted(GOLDEN.glob("book-*.sqlite"))


def facts(book: Book) -> dict[str, object]:
    """Everything that a book hands out, as JSON would have it."""
    documents = [book.read(line.id) for line in book.list()]
    revisions = [revision for document in documents for revision in book.revisions(document.id)]
    found = {
        "entries": [[line.number, line.kind, line.name, line.status, line.version] for line in book.list()],
        "contents": [
            [document.number, event.version_after, book.read(document.id, event.version_after).content]
            for document in documents
            for event in book.history(document.id)
        ],
        "journal": [
            [document.number, event.kind, event.actor, event.at.isoformat(), event.note, dict(event.what)]
            for document in documents
            for event in book.history(document.id)
        ],
        "revisions": [
            [item.number, item.revision, item.hash, item.reason, item.approved_by, list(item.block_revisions)]
            for item in revisions
        ],
        "geometry": [book.revision_contents(item.id).geometry for item in revisions],
    }
    plain: dict[str, object] = json.loads(json.dumps(found))
    return plain


@pytest.fixture
def golden(tmp_path: Path) -> Path:
    """A copy of the newest golden book, which is of the schema of now."""
    folder = tmp_path / "books"
    folder.mkdir()
    return Path(shutil.copy(RELEASES[-1], folder / "studio.notchbook"))


def test_there_are_golden_books() -> None:
    assert RELEASES


@pytest.mark.parametrize("release", RELEASES, ids=lambda path: path.stem)
def test_a_book_of_every_release_opens_with_all_that_was_in_it(release: Path, tmp_path: Path) -> None:
    wanted = json.loads(release.with_suffix(".json").read_text(encoding="utf-8"))
    with Book.open(shutil.copy(release, tmp_path / "a.notchbook"), settings()) as book:
        assert facts(book) == wanted
        assert book.verify() == ()
        document = book.find("S-104")
        assert book.redo(document.id, document.version).content == '{"dart":30}'
        assert document.status == EntryStatus.APPROVED


def test_the_book_of_the_first_schema_is_copied_before_it_is_upgraded(tmp_path: Path) -> None:
    """And it takes what it could not hold before: a size chart, and ids that are never given again."""
    old = (GOLDEN / "book-0.1.sqlite").read_bytes()
    path = tmp_path / "studio.notchbook"
    path.write_bytes(old)
    with Book.open(path, settings()) as book:
        copy = book.before_upgrade
        chart = book.add("chart", "C-101", "House chart", "{}")
        assert book.erased() == ()
        book.erase(Erasure({chart.id: 1}, book.last_line()))
        assert book.add("chart", "C-102", "House chart", "{}").id == chart.id + 1
        assert book.verify() == ()
    assert copy == tmp_path / "studio-before-schema-2.notchbook"
    with closing(sqlite3.connect(copy)) as plain:
        assert plain.execute("PRAGMA user_version").fetchone() == (1,)
        with pytest.raises(sqlite3.IntegrityError, match="kind"):
            plain.execute("INSERT INTO entries VALUES (99, 'chart', 'C', 101, 'x', 'working', 'x', 'x')")


def test_the_book_of_the_second_schema_has_a_chart_a_code_and_an_erasure(golden: Path) -> None:
    with Book.open(golden, settings()) as book:
        assert [line.name for line in book.list("chart")] == ["House chart (invented)"]
        assert [line.name for line in book.list("measures")] == ["Form 40 (invented)", "K-102"]
        assert [line.number for line in book.erased()] == ["M-103"]
        assert book.next_number("M") == "M-104"
    assert b"Ada T." not in golden.read_bytes()
    assert b"Rosa Q." not in golden.read_bytes()


def test_an_upgrade_keeps_everything_and_a_copy(
    golden: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with Book.open(golden, settings()) as book:
        before = facts(book)
        assert book.before_upgrade is None
    old = golden.read_bytes()
    with monkeypatch.context() as newer:
        plant_schema(newer.setattr, tmp_path)
        with Book.open(golden, settings()) as book:
            assert facts(book) == before
            assert book.verify() == (), "a copied table must have its guards again"
            copy = book.before_upgrade
        with Book.open(golden, settings()) as again:
            assert again.before_upgrade is None
    assert copy == golden.with_name(f"studio-before-schema-{NEXT}.notchbook")
    with closing(sqlite3.connect(golden)) as plain:
        assert plain.execute("PRAGMA user_version").fetchone() == (NEXT,)
        assert "planted" in str(
            plain.execute("SELECT sql FROM sqlite_master WHERE name='revisions'").fetchone()
        )
    with Book.open(copy, settings()) as still_old:
        assert facts(still_old) == before
    with pytest.raises(BookError, match="book-newer"):
        Book.open(golden, settings())
    assert hashlib.sha256(golden.read_bytes()).digest() != hashlib.sha256(old).digest()


def test_a_second_copy_does_not_replace_the_first(
    golden: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plant_schema(monkeypatch.setattr, tmp_path)
    golden.with_name(f"studio-before-schema-{NEXT}.notchbook").write_text("hers")
    with Book.open(golden, settings()) as book:
        assert book.before_upgrade == golden.with_name(f"studio-before-schema-{NEXT}-2.notchbook")
    assert golden.with_name(f"studio-before-schema-{NEXT}.notchbook").read_text() == "hers"


@pytest.mark.parametrize("rollback", [False, True], ids=["write-ahead log", "rollback journal"])
@pytest.mark.parametrize(
    "line",
    [
        'op.execute("UPDATE nothing SET x = 1")',
        "raise sa.exc.InvalidRequestError('planted')",
        'op.execute("DELETE FROM contents")',
    ],
    ids=["wrong statement", "error of ours", "lost reference"],
)
def test_a_failed_upgrade_changes_nothing(
    golden: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, line: str, rollback: bool
) -> None:
    """The planted migration has already copied a table when it fails: that must be rolled back too."""
    if rollback:
        use_rollback_journal(monkeypatch.setattr)
    with Book.open(golden, settings()) as book:
        before = facts(book)
    with monkeypatch.context() as newer:
        plant_schema(newer.setattr, tmp_path, line)
        with pytest.raises(BookError) as refused:
            Book.open(golden, settings())
    assert refused.value.code == "book-migration-failed"
    with Book.open(golden, settings()) as book:
        assert facts(book) == before
        assert book.verify() == ()


def test_an_upgrade_without_room_is_told_as_a_full_disk(
    golden: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    old = files_in(golden.parent)
    plant_schema(
        monkeypatch.setattr, tmp_path, 'op.execute("CREATE TABLE big AS SELECT zeroblob(9000000) AS x")'
    )
    with closing(sqlite3.connect(golden)) as plain:
        [pages] = plain.execute("PRAGMA page_count").fetchone()
    with pytest.raises(BookError) as refused:
        Book.open(golden, settings(page_limit=pages + 20))
    assert refused.value.code == "book-disk-full"
    assert files_in(golden.parent)["studio.notchbook"] == old["studio.notchbook"]


def test_two_programs_upgrade_at_once(golden: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    plant_schema(monkeypatch.setattr, tmp_path)
    with ThreadPoolExecutor(2) as pool:
        books = list(pool.map(lambda _: Book.open(golden, settings(busy_timeout_s=30)), range(2)))
    assert sum(book.before_upgrade is not None for book in books) == 1
    for book in books:
        assert book.verify() == ()
        book.close()
