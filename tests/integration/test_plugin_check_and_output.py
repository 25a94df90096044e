"""A check and an output that live in a package of their own."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from notchbook.checks import Subject, check_sources, run_checks
from notchbook.finish import finish, production_table
from notchbook.output.paper_info import PaperInfo
from notchbook.output.registry import output, output_sources
from notchbook.pattern import Notch, Place
from support.hand_skirt import hand_skirt
from support.plugin import installed


@pytest.fixture
def example(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Iterator[None]:
    yield from installed(monkeypatch, tmp_path)


def test_without_the_example_neither_is_known() -> None:
    assert "hem-marked" not in check_sources()
    assert ".txt" not in output_sources()


@pytest.mark.usefixtures("example")
def test_the_check_finds_a_bare_hem_and_is_silent_on_a_marked_one() -> None:
    bare = hand_skirt()
    found = run_checks(Subject(bare), ["hem-marked"]).findings
    assert [finding.where for finding in found] == ["skirt.back/hem", "skirt.front/hem"]
    middle = Place("skirt.back/hem", bare.edges["skirt.back/hem"].start, 0.5, "fraction")
    marked = bare.with_notches(Notch("marks.back/hem_notch", middle))
    found = run_checks(Subject(marked), ["hem-marked"]).findings
    assert [finding.where for finding in found] == ["skirt.front/hem"]


@pytest.mark.usefixtures("example")
def test_the_output_writes_its_file(tmp_path: Path) -> None:
    pieces = finish(hand_skirt(), production_table())
    output(".txt").write(pieces, PaperInfo("T-1", "Test"), tmp_path / "pieces.txt", "both")
    lines = (tmp_path / "pieces.txt").read_text(encoding="utf-8").splitlines()
    assert lines == ["T-1 Test", "1\tSkirt front\t1", "2\tSkirt back\t2"]
