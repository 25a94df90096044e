"""Every link inside the documents leads to a file, and every decision stands in the list."""

import re
from pathlib import Path

from house import ROOT

LINK = re.compile(r"\]\((?!https?:|mailto:|#)(?P<target>[^)#\s]+)(?:#[^)]*)?\)")


def documents(root: Path) -> list[Path]:
    """The documents at the root and below docs/ and examples/."""
    found = [*root.glob("*.md")]
    for folder in ("docs", "examples"):
        found += (root / folder).rglob("*.md")
    return sorted(found)


def broken_links(root: Path) -> list[str]:
    """The links that lead nowhere, as `document -> target`."""
    return [
        f"{page.relative_to(root).as_posix()} -> {match['target']}"
        for page in documents(root)
        for match in LINK.finditer(page.read_text(encoding="utf-8"))
        if not (page.parent / match["target"]).exists()
    ]


def test_links_lead_somewhere() -> None:
    assert not broken_links(ROOT)


def test_every_decision_is_listed_and_has_a_status() -> None:
    folder = ROOT / "docs" / "decisions"
    listed = (folder / "README.md").read_text(encoding="utf-8")
    records = sorted(folder.glob("[0-9]*.md"))
    assert records
    for number, record in enumerate(records, start=1):
        text = record.read_text(encoding="utf-8")
        assert record.name.startswith(f"{number:04}-"), "numbers run without a gap"
        assert f"]({record.name})" in listed, f"list {record.name} in docs/decisions/README.md"
        assert text.startswith(f"# {number:04}: ")
        assert re.search(r"^Status: (accepted|replaced by \[\d{4}\])", text, re.MULTILINE), record.name


def test_a_broken_link_is_found(tmp_path: Path) -> None:
    (tmp_path / "docs").mkdir()
    (tmp_path / "README.md").write_text(
        "[a](docs/there.md) [b](docs/gone.md#part) [c](https://example.org/x)"
    )
    (tmp_path / "docs" / "there.md").write_text("[up](../README.md) [here](#title)")
    assert broken_links(tmp_path) == ["README.md -> docs/gone.md"]
