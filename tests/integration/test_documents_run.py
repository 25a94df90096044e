"""The commands and snippets of the documents do what the documents say.

In a page, a block marked ``csv file=NAME`` (or json) is a file; in one marked ``sh`` each line after ``$``
is run, and the lines below it must come in the answer, in this order, blanks aside; ``python`` is run after
the blocks above it.
"""

import re
import shlex
from dataclasses import dataclass
from pathlib import Path

import pytest

from house import ROOT
from support.command import typed

PAGES = [
    ROOT / "README.md",
    ROOT / "docs/body-library.md",
    *sorted((ROOT / "docs/tutorial").glob("*.md")),
    *sorted((ROOT / "docs/tasks").glob("*.md")),
]
BLOCK = re.compile(r"^```(\w+)(?: file=(\S+))?\n(.*?)^```$", re.MULTILINE | re.DOTALL)


@dataclass(frozen=True)
class Block:
    """One fenced block of a page."""

    kind: str
    file: str
    text: str


def blocks(text: str) -> list[Block]:
    """The fenced blocks of a page that say what they are."""
    return [Block(kind, file or "", body) for kind, file, body in BLOCK.findall(text)]


def commands(text: str) -> list[tuple[list[str], list[str]]]:
    """Each command of a block with the lines that its answer must have."""
    found: list[tuple[list[str], list[str]]] = []
    for line in text.splitlines():
        if line.startswith("$ "):
            found.append((shlex.split(line[2:]), []))
        elif line.strip():
            found[-1][1].append(line)
    return found


def lacking(wanted: list[str], answer: str) -> list[str]:
    """The wanted lines that do not come in the answer in their order."""
    rest = " ".join(answer.split())
    missing = []
    for line in wanted:
        words = " ".join(line.split())
        _, found, after = rest.partition(words)
        if found:
            rest = after
        else:
            missing.append(line)
    return missing


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_the_page_does_what_it_says(page: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    names: dict[str, object] = {}
    for block in blocks(page.read_text(encoding="utf-8")):
        if block.file:
            (tmp_path / block.file).write_text(block.text, encoding="utf-8")
        elif block.kind == "python":
            exec(compile(block.text, page.name, "exec"), names)
        elif block.kind == "sh":
            run_commands(block.text)


def run_commands(text: str) -> None:
    """Run the commands of a block and compare."""
    for words, wanted in commands(text):
        assert words[0] == "notchbook", f"only commands of the house are run, not {words[0]}"
        ended = typed(*words[1:])
        assert ended.code in (0, 1), f"{shlex.join(words)}: {ended.err}"
        assert not lacking(wanted, ended.out), f"{shlex.join(words)} said:\n{ended.out}"


def test_the_pages_have_commands() -> None:
    """Else the test above could not fail."""
    count = sum(
        len(commands(block.text))
        for page in PAGES
        for block in blocks(page.read_text(encoding="utf-8"))
        if block.kind == "sh"
    )
    assert count >= 15


def test_a_page_that_is_wrong_is_caught() -> None:
    assert lacking(["waist  72.0", "hip"], "a hip\nwaist 72.0 cm") == ["hip"]
    assert not lacking(["waist  72.0", "hip"], "waist   72.0 cm\nhip")
    with pytest.raises(AssertionError, match="message-unknown"):
        run_commands("$ notchbook why measure-mising\n")
