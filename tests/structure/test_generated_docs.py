"""The generated pages are what the sources say, and the generator finds what is out of date."""

from pathlib import Path

import pytest

import make_docs
from notchbook.errors import Entry

ENTRY = Entry(
    "seam-open", "The seam is {gap:length} open.", "Close it\nby hand.", "First. Second.", "pattern"
)


def test_generated_docs_are_up_to_date() -> None:
    assert make_docs.out_of_date(make_docs.all_pages()) == [], "run `make docs`"


def test_a_message_page_holds_its_words() -> None:
    pages = make_docs.message_pages([ENTRY])
    page = pages["messages/seam-open.md"]
    assert "> The seam is ‹gap› open." in page
    assert "First. Second." in page
    assert "**What to do:** Close it by hand." in page
    assert "- [seam-open](seam-open.md): The seam is … open." in pages["messages/README.md"]


def test_absent_changed_and_left_over_pages_are_found_and_mended(tmp_path: Path) -> None:
    pages = make_docs.message_pages([ENTRY])
    assert make_docs.out_of_date(pages, tmp_path) == ["messages/README.md", "messages/seam-open.md"]
    make_docs.write(pages, tmp_path)
    assert make_docs.out_of_date(pages, tmp_path) == []
    (tmp_path / "messages" / "seam-open.md").write_text("changed by hand")
    (tmp_path / "messages" / "gone.md").write_text("its code is gone")
    assert make_docs.out_of_date(pages, tmp_path) == ["messages/gone.md", "messages/seam-open.md"]
    make_docs.write(pages, tmp_path)
    assert make_docs.out_of_date(pages, tmp_path) == []


def test_check_exits_with_1_and_names_the_page(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(make_docs, "all_pages", lambda: {"messages/README.md": "other words"})
    assert make_docs.main(["--check"]) == 1
    assert "docs/messages/README.md" in capsys.readouterr().out
