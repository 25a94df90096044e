"""The glossary: each word once, in order of the alphabet within its chapter, each with a meaning."""

import re
from collections.abc import Iterator
from itertools import pairwise

from house import ROOT

GLOSSARY = ROOT / "docs" / "glossary.md"
LINE = re.compile(r"- \*\*(?P<word>[^*]+)\*\*: (?P<meaning>\S.*)")


def chapters(text: str) -> dict[str, list[str]]:
    """The words of each chapter in their order; a list line that is no entry raises AssertionError."""
    found: dict[str, list[str]] = {}
    chapter = ""
    for line in text.splitlines():
        if line.startswith("## "):
            chapter = line.removeprefix("## ")
            found[chapter] = []
        elif line.startswith("- "):
            entry = LINE.fullmatch(line)
            assert entry, f"write `- **word**: meaning`: {line}"
            found[chapter].append(entry["word"].lower())
    return found


def repeated(words: list[str]) -> set[str]:
    """The words that stand more than once."""
    return {word for word in words if words.count(word) > 1}


def unsorted_words(words: list[str]) -> Iterator[tuple[str, str]]:
    """Neighbors that stand in the wrong order."""
    return ((first, second) for first, second in pairwise(words) if first > second)


def test_each_word_has_one_meaning() -> None:
    words = [word for chapter in chapters(GLOSSARY.read_text(encoding="utf-8")).values() for word in chapter]
    assert len(words) > 60
    assert not repeated(words)


def test_words_stand_in_order() -> None:
    for chapter, words in chapters(GLOSSARY.read_text(encoding="utf-8")).items():
        assert not list(unsorted_words(words)), chapter


def test_the_glossary_checks_can_fail() -> None:
    words = chapters("## One\n- **Seam**: joins.\n## Two\n- **seam**: again.\n- **edge**: a side.\n")
    assert repeated([*words["One"], *words["Two"]]) == {"seam"}
    assert list(unsorted_words(words["Two"])) == [("seam", "edge")]
