"""A style file keeps the closures that were measured when it was written."""

import json
from pathlib import Path

import pytest

from notchbook.app.demo import demo_form, demo_recipe
from notchbook.app.examining import subject_of
from notchbook.app.style_file import read_style, write_style
from notchbook.checks import closures
from notchbook.errors import InputError
from notchbook.recipe import Replay, replay


@pytest.fixture(scope="module")
def drafted() -> Replay:
    """The demonstration."""
    form = demo_form()
    return replay(demo_recipe(form), form)


def test_the_closures_are_stored_and_read(drafted: Replay, tmp_path: Path) -> None:
    write_style(drafted, tmp_path / "a.json")
    stored = read_style(tmp_path / "a.json").closures
    measured = closures(subject_of(drafted))
    assert [one.name for one in stored] == [one.name for one in measured]
    assert stored and all(one.agrees for one in stored)
    for one, other in zip(stored, measured, strict=True):
        assert one.measured == pytest.approx(other.measured, abs=1e-6)


def test_a_file_of_an_older_release_has_none(drafted: Replay, tmp_path: Path) -> None:
    write_style(drafted, tmp_path / "a.json")
    data = json.loads((tmp_path / "a.json").read_text(encoding="utf-8"))
    del data["closures"]
    (tmp_path / "old.json").write_text(json.dumps(data), encoding="utf-8")
    old = read_style(tmp_path / "old.json")
    assert old.closures == ()
    assert old.pattern is not None


def test_damaged_closures_are_refused_and_not_guessed(drafted: Replay, tmp_path: Path) -> None:
    write_style(drafted, tmp_path / "a.json")
    data = json.loads((tmp_path / "a.json").read_text(encoding="utf-8"))
    data["closures"][0]["measured"] = "wide"
    (tmp_path / "bad.json").write_text(json.dumps(data), encoding="utf-8")
    with pytest.raises(InputError) as refused:
        read_style(tmp_path / "bad.json")
    assert refused.value.code == "closures-damaged"
