"""A disk that is full or may not be written: a message, and every file that was there is as it was."""

import errno
import importlib.util
import os
import subprocess
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Any, NoReturn

import pytest

from notchbook.app.demo import demo_form, demo_recipe
from notchbook.app.style_file import write_style
from notchbook.body import write_measures
from notchbook.recipe import replay
from support.command import PROGRAM, contents, typed, typed_in_process

COMMANDS = {
    "style": ("draft", "skirt", "--measures", "form.json", "--out", "out.json"),
    "drawing": ("draft", "skirt", "--measures", "form.json", "--out", "out.svg"),
    "picture": ("draft", "skirt", "--measures", "form.json", "--out", "out.png"),
    "papers": ("print", "style.json", "--out", "out.pdf", "--card", "out-card.pdf"),
    "demo": ("demo", "--out", "new/out"),
    "report": ("mtm", "skirt", "--bodies", "bodies.csv", "--report", "out.csv", "--cores", "1"),
}
OLD = {"out.json", "out.svg", "out.png", "out.pdf", "out-card.pdf", "out.csv"}


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with what the commands read, and older files under the names that they write."""
    form = demo_form()
    write_measures(form, tmp_path / "form.json")
    write_style(replay(demo_recipe(form), form), tmp_path / "style.json")
    (tmp_path / "bodies.csv").write_text("id,unit,waist_girth,hip_girth,hip_depth\n1,cm,70,98,20\n")
    for name in OLD:
        (tmp_path / name).write_text("an older file")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def failing(number: int, times: int) -> Callable[..., Any]:
    """A function of the system that works a few times and then fails with this error."""
    done = 0
    real = os.fsync

    def fails(handle: int) -> None:
        nonlocal done
        done += 1
        if done > times:
            raise OSError(number, os.strerror(number))
        real(handle)

    return fails


@pytest.mark.parametrize(("name", "times"), [*((name, 0) for name in COMMANDS), ("papers", 1), ("demo", 3)])
def test_a_full_disk_leaves_everything_as_it_was(
    name: str, times: int, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = contents(folder)
    monkeypatch.setattr(os, "fsync", failing(errno.ENOSPC, times))
    ended = typed(*COMMANDS[name])
    assert ended.code == 2
    assert "[output-disk-full]" in ended.err
    assert "no room left on the disk" in ended.err
    assert ".papers-" not in ended.err
    assert contents(folder) == before


@pytest.mark.parametrize("name", COMMANDS)
def test_a_folder_that_may_not_be_written_leaves_everything_as_it_was(
    name: str, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Read-only is simulated where files are made: the tests may run with all rights."""

    def refused(*words: Any, **more: Any) -> NoReturn:
        raise OSError(errno.EROFS, os.strerror(errno.EROFS))

    before = contents(folder)
    monkeypatch.setattr(tempfile, "mkstemp", refused)
    monkeypatch.setattr(tempfile, "mkdtemp", refused)
    ended = typed(*COMMANDS[name])
    assert ended.code == 2
    assert "[output-forbidden]" in ended.err
    assert contents(folder) == before


@pytest.mark.parametrize("name", ["papers", "demo"])
def test_a_rename_that_fails_is_a_refusal(name: str, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(self: Path, target: Path) -> NoReturn:
        raise OSError(errno.EACCES, os.strerror(errno.EACCES))

    before = contents(folder)
    monkeypatch.setattr(Path, "replace", refused)
    ended = typed(*COMMANDS[name])
    assert (ended.code, "[output-forbidden]" in ended.err) == (2, True)
    assert contents(folder) == before


def test_the_commands_do_write_when_nothing_fails(folder: Path) -> None:
    """Else the tests above could not fail."""
    for words in COMMANDS.values():
        assert typed(*words).code in (0, 1)
    changed = {
        path.name for path in folder.iterdir() if path.is_file() and path.read_bytes()[:8] != b"an older"
    }
    assert changed >= OLD
    assert (folder / "new/out/preview.png").is_file()
    assert not list(folder.rglob(".*"))


@pytest.mark.parametrize("words", [("blocks",), ("demo", "--out", "new/out", "--json"), ("--help",)])
def test_a_full_disk_under_the_answer_itself(words: tuple[str, ...], folder: Path) -> None:
    """Into the device that is always full, as a real process (Linux has it; see full(4))."""
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run(
            [*PROGRAM, *words], cwd=folder, stdout=full, stderr=subprocess.PIPE, check=False
        )
    complaint = done.stderr.decode()
    assert done.returncode == 2
    assert "[answer-not-written]" in complaint
    assert "Traceback" not in complaint


def test_a_missing_page_is_refused_in_words(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(importlib.util, "find_spec", lambda name: None)
    ended = typed("open", "--no-browser")
    assert (ended.code, "[page-missing]" in ended.err) == (2, True)
    assert typed_in_process("--version", folder=folder).out == "notchbook 0.1.0\n"
