"""A rule is set aside only for one line, by its code, and with the reason beside it."""

import io
import re
import tokenize
from collections.abc import Iterator

import pytest

from house import ROOT
from measure_house import sources

FOLDERS = ("src", "tests", "tools", "benchmarks", "examples")
WHOLE_FILE = re.compile(r"#\s*(ruff:\s*(noqa|disable)|flake8:\s*noqa|mypy:\s*ignore-errors)", re.IGNORECASE)
STYLE = re.compile(r"#\s*noqa\b", re.IGNORECASE)
STYLE_WITH_REASON = re.compile(r"# noqa: [A-Z]+[0-9]+(, ?[A-Z]+[0-9]+)* - \S+.*\S")
TYPES = re.compile(r"#\s*type:\s*ignore\b")
TYPES_WITH_REASON = re.compile(r"# type: ignore\[[a-z0-9, -]+\]  # \S+.*\S")


def comments(text: str) -> Iterator[tuple[int, str]]:
    """The comments of a Python text with their lines; strings that look like comments are none."""
    for token in tokenize.generate_tokens(io.StringIO(text).readline):
        if token.type == tokenize.COMMENT:
            yield token.start[0], token.string


def is_bare(comment: str) -> bool:
    """True for a comment that sets a rule aside without its code or without a reason."""
    if WHOLE_FILE.search(comment):
        return True
    if STYLE.search(comment) and not STYLE_WITH_REASON.search(comment):
        return True
    return bool(TYPES.search(comment)) and not TYPES_WITH_REASON.search(comment)


def test_no_rule_is_set_aside_without_a_reason() -> None:
    bare = [
        f"{item.place}:{line} {comment}"
        for folder in FOLDERS
        for item in sources(ROOT / folder)
        for line, comment in comments(item.text)
        if is_bare(comment)
    ]
    assert not bare, f"write `# noqa: CODE - reason` or `# type: ignore[code]  # reason`: {bare}"


@pytest.mark.parametrize(
    "comment",
    [
        "# noqa",
        "# NOQA",
        "# noqa: E501",
        "#noqa:E501 - glued",
        "# type: ignore",
        "# type: ignore[arg-type]",
        "# ruff: noqa: E501",
        "# mypy: ignore-errors",
    ],
)
def test_bare_suppressions_are_found(comment: str) -> None:
    assert is_bare(comment)


@pytest.mark.parametrize(
    "comment",
    [
        "# noqa: E501 - one row of a table",
        "# type: ignore[arg-type]  # the stubs lack this form",
        "# the type of the ignored seam",
    ],
)
def test_reasoned_suppressions_pass(comment: str) -> None:
    assert not is_bare(comment)


def test_a_string_is_no_comment() -> None:
    assert list(comments("words = '# noqa'  # a note\n")) == [(1, "# a note")]
