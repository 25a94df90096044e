"""The catalogue of messages: read from its files, each code once, facts put into the words."""

import importlib
import importlib.resources
from collections.abc import Iterator
from pathlib import Path

import pytest

from notchbook.errors import Entry, catalogue, entry
from notchbook.errors import catalogue as read_catalogue
from notchbook.errors.catalogue import fill, length_in_mm

catalogue_module = importlib.import_module("notchbook.errors.catalogue")

WORDS = '[{code}]\nmessage = "It is {{gap:length}} open."\nnext = "Close it."\nwhy = "First. Second."\n'


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A catalogue folder of the test's own."""
    monkeypatch.setattr(importlib.resources, "files", lambda package: tmp_path)
    (tmp_path / "messages").mkdir()
    read_catalogue.cache_clear()
    yield tmp_path / "messages"
    read_catalogue.cache_clear()


def test_messages_of_all_layers_are_read_and_other_files_left(folder: Path) -> None:
    (folder / "units.toml").write_text(WORDS.format(code="number-odd"))
    (folder / "pattern.toml").write_text(WORDS.format(code="seam-open"))
    (folder / "notes.txt").write_text("no message")
    assert set(catalogue()) == {"number-odd", "seam-open"}
    assert entry("seam-open") == Entry(
        "seam-open", "It is {gap:length} open.", "Close it.", "First. Second.", "pattern"
    )


def test_a_code_that_stands_twice_is_refused(folder: Path) -> None:
    (folder / "units.toml").write_text(WORDS.format(code="seam-open"))
    (folder / "pattern.toml").write_text(WORDS.format(code="seam-open"))
    with pytest.raises(KeyError, match="twice"):
        catalogue()


def test_a_message_without_a_next_step_is_refused(folder: Path) -> None:
    (folder / "units.toml").write_text('[seam-open]\nmessage = "Open."\nwhy = "First. Second."\n')
    with pytest.raises(KeyError):
        catalogue()


def test_facts_are_written_as_a_reader_expects() -> None:
    facts = {"keys": ["bust", "waist"], "gap": 3, "count": 2.5}
    assert fill("{keys}; {gap:length}; {count:.2f}", facts) == "bust, waist; 3.0 mm; 2.50"


def test_an_absent_fact_is_our_fault() -> None:
    with pytest.raises(KeyError):
        fill("{gap:length}", {})


def test_length_in_mm_rounds_to_a_tenth() -> None:
    assert length_in_mm(12.34) == "12.3 mm"
