"""The library: light to import, whole, and the same names for people and for the type checker."""

import ast
import runpy
import subprocess
import sys
from pathlib import Path

import pytest

import notchbook
from house import ROOT

SOURCE = ast.parse((ROOT / "src/notchbook/__init__.py").read_text(encoding="utf-8"))
PUBLIC = [name for name in notchbook.__all__ if name != "__version__"]


@pytest.mark.parametrize("name", PUBLIC)
def test_every_public_name_is_there(name: str) -> None:
    assert getattr(notchbook, name).__doc__


def test_the_type_checker_sees_the_same_names_from_the_same_homes() -> None:
    seen = {
        alias.name: node.module
        for block in SOURCE.body
        if isinstance(block, ast.If)
        for node in block.body
        if isinstance(node, ast.ImportFrom)
        for alias in node.names
    }
    assert seen == notchbook._HOMES
    assert sorted(seen) == sorted(PUBLIC)


def test_importing_it_loads_nothing_else() -> None:
    script = "import sys, notchbook; print(*(name for name in sys.modules if name.startswith('notchbook.')))"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == ""


def test_a_name_that_is_not_there_is_an_attribute_error() -> None:
    with pytest.raises(AttributeError, match="trousseau"):
        _ = notchbook.trousseau  # type: ignore[attr-defined]  # the point of this test
    assert set(dir(notchbook)) == set(notchbook.__all__)


def test_the_example_of_measures_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    runpy.run_path(str(ROOT / "examples/python/look_over.py"))
    said = capsys.readouterr().out
    assert "stop: Arm length of 48.0 cm" in said
    assert "looked over: fine" in said
    assert "hip_girth: 1 layers in front, 1 behind" in said


def test_the_example_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    runpy.run_path(str(ROOT / "examples/python/first_skirt.py"))
    said = capsys.readouterr().out
    assert "body 705.0 + ease 15.0 = 720.0 mm" in said
    assert (tmp_path / "skirt.pdf").read_bytes().startswith(b"%PDF-")
    assert notchbook.read_style(tmp_path / "skirt.json").measures.name == "Form A"
