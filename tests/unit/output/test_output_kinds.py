"""Kinds of output are found by the ending of the file."""

from pathlib import Path

import pytest

from notchbook.errors import HouseFault, InputError
from notchbook.finish import finish, production_table
from notchbook.output import registry
from notchbook.output.definition import OutputDefinition
from notchbook.output.paper_info import PaperInfo
from support.hand_skirt import hand_skirt


def test_every_kind_of_the_house_writes_a_file(tmp_path: Path) -> None:
    pieces = finish(hand_skirt(), production_table())
    for suffix in registry.output_sources():
        path = tmp_path / f"skirt{suffix}"
        registry.output(suffix).write(pieces, PaperInfo("T-1", "Test"), path, "both")
        assert path.stat().st_size > 1000


def test_an_ending_in_capitals_is_the_same_kind() -> None:
    assert registry.output(".SVG") is registry.output(".SVG")
    assert registry.output(".SVG").suffix == ".svg"


def test_an_unknown_ending_is_refused_with_those_known() -> None:
    with pytest.raises(InputError) as refusal:
        registry.output(".doc")
    assert refusal.value.code == "suffix-unknown"
    assert ".svg" in str(refusal.value)


def test_a_kind_under_a_wrong_name_is_our_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    sources = {".bmp": "notchbook.output.kinds.svg:OUTPUT"}
    monkeypatch.setattr(registry, "output_sources", lambda: sources)
    with pytest.raises(HouseFault) as fault:
        registry.output(".bmp")
    assert fault.value.code == "output-misnamed"


def test_definitions_say_what_they_are() -> None:
    for suffix in registry.output_sources():
        found = registry.output(suffix)
        assert isinstance(found, OutputDefinition)
        assert len(found.title) > 5
