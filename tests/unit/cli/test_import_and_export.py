"""`notchbook measures import` and `export`: preview first, then all or nothing."""

import io
import json
import os
import signal
import sys
from pathlib import Path
from typing import Any

import pytest

from notchbook.app.studio import Studio
from support.book_dump import book_hash
from support.command import contents, typed

CLIENTS = "Invented clients\n\nName,Bust (in),Hip,Age\nAnna,37 1/2,39,30\nBea,4,38,41\n"


STORED = {"stored": 1, "left": 1, "left_out": 0, "numbers": ["M-101"], "files": []}


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "clients.csv").write_text(CLIENTS, encoding="utf-8")
    (tmp_path / "chart.csv").write_text("Size;8;10\nBust (cm);80;84,5\nWaist (cm);62;66\n", encoding="utf-8")
    Studio.open(tmp_path / "b.notchbook").close()
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_the_preview_says_what_is_meant_asked_and_refused(folder: Path) -> None:
    before = contents(folder)
    ended = typed("measures", "import", "clients.csv")
    assert ended.code == 1
    for said in (
        "header in line 3",
        "2 sets of kind body: 1 can be stored, 1 refused",
        "bust_girth",
        "“Hip” may be hip_girth or top_hip_girth",
        "--column 'Hip=hip_girth:in'",
        "line 5, Bust (in)",
        "--book FILE",
    ):
        assert said in ended.out, said
    assert contents(folder) == before


def test_nothing_is_stored_without_yes_where_nobody_can_be_asked(folder: Path) -> None:
    before = book_hash(folder / "b.notchbook")
    ended = typed("measures", "import", "chart.csv", "--book", "b.notchbook")
    assert (ended.code, "add --yes" in ended.out) == (0, True)
    assert book_hash(folder / "b.notchbook") == before


def test_with_yes_it_is_stored_whole(folder: Path) -> None:
    ended = typed("measures", "import", "chart.csv", "--book", "b.notchbook", "--yes")
    assert ended.code == 0, ended.err
    assert "stored: 2 sets in b.notchbook: C-101" in ended.out
    forms = typed("measures", "import", "chart.csv", "--book", "b.notchbook", "--yes", "--kind", "form")
    assert "stored: 2 sets in b.notchbook: M-101 to M-102" in forms.out


def test_a_chart_with_a_gap_is_looked_at_as_a_whole(folder: Path) -> None:
    rows = "Size;8;10;12;14;20\nBust (cm);80;84;88;92;104\nWaist (cm);62;66;70;74;86\n"
    (folder / "gap.csv").write_text(rows, encoding="utf-8")
    ended = typed("measures", "import", "gap.csv")
    assert (ended.code, "look again" in ended.out) == (1, True)
    assert json.loads(typed("measures", "import", "gap.csv", "--json").out)["chart_doubts"]
    assert not json.loads(typed("measures", "import", "chart.csv", "--json").out)["chart_doubts"]


def test_questions_and_refused_rows_end_a_yes(folder: Path) -> None:
    before = book_hash(folder / "b.notchbook")
    words = ("measures", "import", "clients.csv", "--book", "b.notchbook", "--yes")
    assert "[import-not-ready]" in typed(*words).err
    ended = typed(*words, "-c", "Hip=hip_girth:in")
    assert (ended.code, "[import-rows-refused]" in ended.err, ended.out) == (2, True, "")
    assert book_hash(folder / "b.notchbook") == before
    ended = typed(*words, "-c", "Hip=hip_girth:in", "--only-good", "--json")
    data = json.loads(ended.out)
    assert (ended.code, data["stored"]) == (1, STORED)


def test_the_preview_as_data(folder: Path) -> None:
    data = json.loads(typed("measures", "import", "clients.csv", "--skip", "Hip", "--json").out)
    assert (data["ok"], data["ready"], data["stored"], data["good"]) == (True, True, None, 1)
    assert data["lines"][1]["target"] == "bust_girth"
    assert data["rows"][1]["refusals"][0]["code"] == "measure-impossible"


def test_a_place_is_needed_and_one_alone(folder: Path) -> None:
    assert "[import-place]" in typed("measures", "import", "chart.csv", "--yes").err
    both = typed("measures", "import", "chart.csv", "--yes", "--book", "b.notchbook", "--out", "x")
    assert "[import-place]" in both.err
    assert not (folder / "x").exists()


def test_a_book_is_not_made_for_an_import_that_is_refused(folder: Path) -> None:
    assert typed("measures", "import", "clients.csv", "--yes", "--book", "new.notchbook").code == 2
    assert not (folder / "new.notchbook").exists()


def imported(*words: str) -> tuple[int, str]:
    ended = typed("measures", "import", *words, "--book", "b.notchbook")
    return ended.code, ended.out + ended.err


def test_what_it_proposes_answers_all(folder: Path) -> None:
    """Found by a stranger: its own advice led to a second question."""
    (folder / "hip.csv").write_text("Name,Hip,qqq\nAnna,39,5\nBea,38 1/2,6\n", encoding="utf-8")
    said = imported("hip.csv")[1]
    assert "--column 'Hip=hip_girth:in'" in said and "--column 'qqq=MEASURE:UNIT'" in said
    assert imported("hip.csv", "-c", "Hip=hip_girth:in", "--skip", "qqq", "--yes")[0] == 0


def test_the_same_list_again_is_asked_about(folder: Path) -> None:
    (folder / "list.csv").write_text("Name,Bust (cm)\nÁnna  B.,94\nBea,90\n", encoding="utf-8")
    (folder / "more.csv").write_text("Name,Bust (cm)\nANNA B.,95\nCleo,91\n", encoding="utf-8")
    assert imported("list.csv", "--yes") == (0, "stored: 2 sets in b.notchbook: M-101 to M-102\n")
    before = book_hash(folder / "b.notchbook")
    code, said = imported("list.csv", "--yes")
    assert code == 2 and "[import-not-ready]" in said
    assert "line 2, “Ánna B.”, as M-101" in said
    code, said = imported("list.csv")
    assert code == 1 and "already in the book as M-102" in said and "--again skip" in said
    assert "[import-all-left-out]" in imported("list.csv", "--again", "skip", "--yes")[1]
    assert book_hash(folder / "b.notchbook") == before
    code, said = imported("more.csv", "--again", "skip", "--yes")
    assert (code, said) == (
        0,
        "stored: 1 set in b.notchbook: M-103\nleft out: 1 row, as you said\n",
    )
    assert imported("more.csv", "--row", "2=add", "--row", "3=skip", "--yes")[0] == 0
    assert imported("more.csv", "--again", "add", "--yes")[0] == 0
    studio = Studio.open(folder / "b.notchbook")
    names = [entry.name for entry in studio.list_bodies()]
    studio.close()
    assert names == ["Ánna B.", "Bea", "Cleo", "ANNA B.", "ANNA B.", "Cleo"]


def test_answers_about_rows_that_say_nothing_are_refused(folder: Path) -> None:
    assert "[import-row-malformed]" in imported("chart.csv", "--row", "2=furlongs")[1]
    assert "[import-row-unknown]" in imported("chart.csv", "--row", "77=skip")[1]


def test_one_row_in_another_unit_is_answered_once(folder: Path) -> None:
    rows = "Anna,37,29,39\nBea,38,30,40\nCleo,94,74,98\n"
    (folder / "mixed.csv").write_text(f"Name,Bust (in),Waist (in),Full hip (in)\n{rows}", encoding="utf-8")
    code, said = imported("mixed.csv")
    assert code == 1 and "Line 4 looks like centimeters" in said and "--row 4=cm" in said
    assert "refused:" not in said and "1 waits for an answer" in said
    assert imported("mixed.csv", "--row", "4=cm", "--yes")[0] == 0
    studio = Studio.open(folder / "b.notchbook")
    cleo = studio.body_numbered("M-103").measures
    studio.close()
    assert cleo.value("bust_girth") == 940


def test_words_of_one(folder: Path) -> None:
    (folder / "one.csv").write_text("Name,Bust (cm)\nAnna,94\nBea,9\n", encoding="utf-8")
    _code, said = imported("one.csv", "--only-good", "--yes")
    assert "stored: 1 set in" in said and "left: 1 refused row\n" in said
    (folder / "alone.csv").write_text("Name,Bust (cm)\nAnna,94\n", encoding="utf-8")
    assert "1 set of kind body: 1 can be stored" in typed("measures", "import", "alone.csv").out


@pytest.mark.parametrize("late", [False, True])
def test_a_stop_is_told_truly(folder: Path, monkeypatch: pytest.MonkeyPatch, late: bool) -> None:
    """Ctrl-C while it is stored stops it; one that comes after all is in the book does not undo that."""
    from notchbook.book import Book

    add_many = Book.add_many

    def interrupted(book: Book, *words: Any) -> Any:
        if not late:
            os.kill(os.getpid(), signal.SIGINT)
        made = add_many(book, *words)
        os.kill(os.getpid(), signal.SIGINT)
        return made

    (folder / "list.csv").write_text("Name,Bust (cm)\nAnna,94\n", encoding="utf-8")
    monkeypatch.setattr(Book, "add_many", interrupted)
    code, said = imported("list.csv", "--yes")
    studio = Studio.open(folder / "b.notchbook")
    stored = len(studio.list_bodies())
    studio.close()
    if late:
        wanted = "The stop came when all was stored.\nstored: 1 set in b.notchbook: M-101\n"
        assert (code, stored, said) == (0, 1, wanted)
    else:
        assert (code, stored, said.startswith("Stopped.")) == (130, 0, True)
    assert signal.getsignal(signal.SIGINT) is signal.default_int_handler


def test_to_files(folder: Path) -> None:
    ended = typed("measures", "import", "chart.csv", "--out", "sizes", "--yes")
    assert "stored: 2 sets in 2 files" in ended.out
    assert sorted(path.name for path in (folder / "sizes").iterdir()) == ["chart-10.json", "chart-8.json"]
    again = typed("measures", "import", "chart.csv", "--out", "sizes", "--yes")
    assert (again.code, "[import-file-exists]" in again.err) == (2, True)


def test_pasted_text_is_read_from_the_input(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    pasted = io.TextIOWrapper(io.BytesIO(b"Bust\t94 cm\nWaist\t74,5 cm\n"))
    monkeypatch.setattr(sys, "stdin", pasted)
    ended = typed("measures", "import", "-", "--out", "pasted.csv", "--yes")
    assert ended.code == 0, ended.err
    assert "pasted,body,natural,940,745" in (folder / "pasted.csv").read_text(encoding="utf-8")


class Terminal(io.StringIO):
    """Somebody who sits there."""

    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(("said", "stored"), [("y\n", 2), ("n\n", 0), ("\n", 0)])
def test_she_is_asked_at_a_terminal(
    folder: Path, monkeypatch: pytest.MonkeyPatch, said: str, stored: int
) -> None:
    from notchbook.cli.main import run

    screen = Terminal()
    monkeypatch.setattr(sys, "stdin", Terminal(said))
    monkeypatch.setattr(sys, "stdout", screen)
    code = run(["measures", "import", "chart.csv", "--book", "b.notchbook"])
    assert code == 0
    assert "Store 2 sets in b.notchbook?" in screen.getvalue()
    studio = Studio.open(folder / "b.notchbook")
    assert len(studio.list_charts()) == (stored > 0)
    studio.close()


def test_export_and_back(folder: Path) -> None:
    typed("measures", "import", "chart.csv", "--book", "b.notchbook", "--yes", "--kind", "form")
    ended = typed("measures", "export", "--book", "b.notchbook", "--out", "all.csv", "--unit", "in")
    assert "written: all.csv (2 bodies)" in ended.out
    assert "33.26772" in (folder / "all.csv").read_text(encoding="utf-8")
    ended = typed("measures", "export", "M-102", "--book", "b.notchbook", "-o", "one.json", "--json")
    assert json.loads(ended.out)["numbers"] == ["M-102"]
    assert json.loads((folder / "one.json").read_text(encoding="utf-8"))["measures"]["bust_girth"] == 845


def test_an_export_makes_no_book(folder: Path) -> None:
    ended = typed("measures", "export", "--book", "none.notchbook", "--out", "x.csv")
    assert (ended.code, "[book-missing]" in ended.err) == (2, True)
    assert not (folder / "none.notchbook").exists()
