"""`notchbook client`: the plan first, the act with --yes, and what is left is told."""

import json
import shutil
import zipfile
from pathlib import Path

import pytest

from notchbook.app.studio import Studio
from notchbook.body import MeasureSet
from support.clients import NAME, WAIST, files_with, furnished
from support.command import typed


@pytest.fixture(scope="module")
def furnished_book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    room = furnished(tmp_path_factory.mktemp("clients"))
    room.studio.close()
    return room.path


@pytest.fixture
def book(furnished_book: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of a book with a client, alone in the folder in which the command is typed."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("NOTCHBOOK_BOOK", "book.notchbook")
    return Path(shutil.copy(furnished_book, tmp_path / "book.notchbook"))


def names(book: Path) -> list[str]:
    studio = Studio.open_existing(book)
    try:
        return [entry.name for entry in studio.list_bodies()]
    finally:
        studio.close()


def test_without_yes_the_plan_is_shown_and_nothing_done(book: Path) -> None:
    for words in (("code", "M-102"), ("erase", "M-102", "--with-styles")):
        ended = typed("client", *words)
        assert ended.code == 1
        for said in (NAME, "S-101", "Nothing was changed.", "--yes"):
            assert said in ended.out
        told = json.loads(typed("client", *words, "--json").out)
        assert (told["done"], told["number"]) == (False, "M-102")
        assert told["mentions"]
    assert NAME in names(book)


def test_a_client_under_a_code(book: Path) -> None:
    ended = typed("client", "code", "M-102", "--in-other-texts", "--yes")
    assert (ended.code, ended.out.splitlines()[:2]) == (
        0,
        ["M-102 is kept as K-102.", "4 texts of other entries changed:"],
    )
    assert f"Skirt for {NAME} → Skirt for K-102" in ended.out
    assert names(book) == ["Form A", "K-102"]
    assert not files_with(book.parent, ["Quill"])


def test_the_name_of_another_client_is_listed_and_never_changed(book: Path) -> None:
    studio = Studio.open_existing(book)
    studio.new_body(MeasureSet("Rosalind Z."))
    studio.close()
    words = ("client", "code", "M-102", "--also", "Rosalind", "--in-other-texts")
    planned = typed(*words)
    assert "These will be changed" in planned.out
    assert f"Skirt for {NAME} → Skirt for K-102" in planned.out
    assert "never changed" in planned.out and "Rosalind Z." in planned.out
    assert "K-102 Z." not in planned.out
    told = json.loads(typed(*words, "--yes", "--json").out)
    left = {(one["entry"], one["text"], one["changes"]) for one in told["mentions"]}
    assert left == {("M-103", "Rosalind Z.", False)}
    assert len(told["changed"]) == 4
    assert names(book) == ["Form A", "K-102", "Rosalind Z."]


def test_an_erasure_changes_no_other_client(book: Path) -> None:
    studio = Studio.open_existing(book)
    studio.new_body(MeasureSet("Rosalind Z.", note="cousin of Rosalind"))
    studio.close()
    words = ("erase", "M-102", "--with-styles", "--also", "Rosalind", "--in-other-texts", "--yes", "--json")
    ended = typed("client", *words)
    told = json.loads(ended.out)
    assert (ended.code, names(book)) == (1, ["Form A", "Rosalind Z."])
    assert [(one["entry"], one["after"]) for one in told["changed"]] == [("M-103", "cousin of (erased)")]
    assert {one["text"] for one in told["mentions"]} == {"Rosalind Z."}


def test_without_the_flag_the_plan_says_what_it_would_change(book: Path) -> None:
    planned = typed("client", "code", "M-102").out
    assert "With --in-other-texts these would be changed" in planned
    assert "will be changed" not in planned


def test_what_still_says_the_name_is_told(book: Path) -> None:
    told = typed("client", "code", "M-102", "--code", "K-9", "--yes")
    assert told.code == 1
    assert f"Skirt for {NAME}" in told.out


def test_an_erasure_with_all_that_hangs_on_it(book: Path) -> None:
    shutil.copy(book, "copy.notchbook")
    ended = typed("client", "erase", "m-0102", "--with-styles", "--delete-copies", "--yes", "--json")
    told = json.loads(ended.out)
    assert (ended.code, told["done"], told["erased"]) == (0, True, ["M-102", "S-101"])
    assert any("printed" in place for place in told["not_reached"])
    assert not files_with(book.parent, ["Quill", WAIST])
    assert [path.name for path in book.parent.iterdir()] == ["book.notchbook"]


def test_styles_go_on_for_another_body(book: Path) -> None:
    ended = typed("client", "erase", "M-102", "--styles-to", "M-101", "--in-other-texts", "--yes")
    assert ended.code == 0, ended.err
    assert "erased: M-102" in ended.out
    assert not files_with(book.parent, ["Quill", WAIST])


def test_what_is_kept_is_told(book: Path) -> None:
    words = ("--styles-to", "M-101", "--keep-revisions", "--in-other-texts", "--yes")
    ended = typed("client", "erase", "M-102", *words)
    assert ended.code == 1
    assert "kept, with the measures in it: S-101 revision 1, approved" in ended.out


def test_refusals_change_nothing(book: Path) -> None:
    for words, code in (
        (("erase", "M-102", "--yes"), "erasure-styles-undecided"),
        (("erase", "M-999", "--yes"), "book-number-missing"),
        (("erase", "M-102", "--styles-to", "M-102", "--yes"), "erasure-other-body"),
        (("erase", "S-101", "--yes"), "entry-not-body"),
        (("code", "M-102", "--code", "Form A", "--yes"), "code-taken"),
        (("export", "M-102", "--out", "book.notchbook"), "export-ending"),
        (("export", "M-102", "--book", "no.notchbook", "--out", "x.zip"), "book-missing"),
    ):
        ended = typed("client", *words)
        assert (ended.code, code in ended.err) == (2, True), (words, ended.err)
        told = json.loads(typed("client", *words, "--json").out)
        assert (told["ok"], told["code"]) == (False, code)
    assert [path.name for path in book.parent.iterdir()] == ["book.notchbook"]
    assert NAME in names(book)


def test_an_export(book: Path) -> None:
    ended = typed("client", "export", "M-102", "--out", "hers.zip")
    assert (ended.code, "written: hers.zip" in ended.out) == (0, True)
    with zipfile.ZipFile("hers.zip") as archive:
        assert WAIST.encode() in archive.read("measures.csv")


@pytest.mark.parametrize(("answered", "left"), [(False, True), (True, False)])
def test_at_a_terminal_she_is_asked(
    book: Path, monkeypatch: pytest.MonkeyPatch, answered: bool, left: bool
) -> None:
    class Terminal:
        def isatty(self) -> bool:
            return True

    monkeypatch.setattr("sys.stdin", Terminal())
    monkeypatch.setattr("typer.confirm", lambda *_words, **_how: answered)
    ended = typed("client", "erase", "M-102", "--with-styles")
    assert "S-101" in ended.err, "the plan is shown before the question"
    assert (NAME in names(book)) == left


def test_the_group_alone_shows_its_verbs() -> None:
    ended = typed("client")
    assert ended.code == 0
    assert all(verb in ended.out for verb in ("code", "export", "erase"))
