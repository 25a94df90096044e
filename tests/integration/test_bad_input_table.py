"""Bad input ends with one clear message, a code and exit 2, and leaves the folder as it was."""

import json
import os
import random
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from notchbook.app.demo import demo_form, demo_recipe
from notchbook.app.style_file import style_data
from notchbook.body import write_measures
from notchbook.recipe import replay
from support.command import contents, typed, typed_in_process

TABLE: dict[str, dict[str, Any]] = tomllib.loads(Path(__file__).with_name("bad_input.toml").read_text())

MADE: dict[str, Callable[[], bytes]] = {
    "noise": lambda: b"\x00\xff" + random.Random(7).randbytes(4000),
    "utf16": lambda: '{"measure": 1}, value\n'.encode("utf-16"),
    "ten megabytes": lambda: b"x" * 10_000_000,
    "thirty megabytes": lambda: b"[" + b"1," * 15_000_000 + b"1]",
    "deep": lambda: b"[" * 200_000 + b"]" * 200_000,
    "digits": lambda: b'{"name": "A", "unit": "cm", "measures": {"waist_girth": ' + b"9" * 5000 + b"}}",
}

AS_PROCESS = ("waist-of-7-cm", "noise-style", "no-such-verb", "lost-reference", "report-into-nowhere")
"""Cases that are also run as processes of their own; the others run in this one, for speed."""


@pytest.fixture(scope="session")
def good_style() -> str:
    """The style file of the demonstration, as text."""
    form = demo_form()
    return json.dumps(style_data(replay(demo_recipe(form), form)))


@pytest.fixture
def folder(tmp_path: Path, good_style: str, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a good style, good measures, and a folder and a pipe with names of files."""
    (tmp_path / "style.json").write_text(good_style)
    (tmp_path / "folder.json").mkdir()
    os.mkfifo(tmp_path / "pipe.csv")
    write_measures(demo_form(), tmp_path / "form.json")
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.mark.parametrize("name", TABLE)
def test_bad_input_is_refused_in_words(name: str, folder: Path, good_style: str) -> None:
    case = TABLE[name]
    words = prepared(case, folder, good_style)
    before = contents(folder)
    ended = typed(*words)
    assert f"[{case['code']}]" in ended.err, ended.err
    assert ended.code == 2
    assert ended.out == ""
    for said in case["says"]:
        assert said in ended.err
    assert "Traceback" not in ended.err
    assert contents(folder) == before


@pytest.mark.parametrize("name", AS_PROCESS)
def test_bad_input_is_refused_by_the_real_command(name: str, folder: Path, good_style: str) -> None:
    words = prepared(TABLE[name], folder, good_style)
    before = contents(folder)
    ended = typed_in_process(*words, folder=folder)
    assert (ended.code, ended.out) == (2, "")
    assert f"[{TABLE[name]['code']}]" in ended.err
    assert "Traceback" not in ended.err
    assert contents(folder) == before


@pytest.mark.parametrize("name", ["missing-hip", "unknown-step", "no-such-verb", "no-such-message"])
def test_a_refusal_is_json_where_json_was_asked_for(name: str, folder: Path, good_style: str) -> None:
    ended = typed(*prepared(TABLE[name], folder, good_style), "--json")
    told = json.loads(ended.out)
    assert (ended.code, told["ok"], told["code"]) == (2, False, TABLE[name]["code"])
    assert told["message"] in ended.err
    assert told["next_step"] in ended.err


def prepared(case: dict[str, Any], folder: Path, good_style: str) -> list[str]:
    """The words of the case, its file made."""
    if "file" in case:
        (folder / case["file"]).write_bytes(content(case, good_style))
    places = {"FILE": case.get("file", ""), "STYLE": "style.json", "FORM": "form.json"}
    return [places.get(word, word) for word in case["words"]]


def content(case: dict[str, Any], good_style: str) -> bytes:
    """The bytes of the file of a case."""
    if "made" in case:
        return MADE[case["made"]]()
    if "patch" in case:
        return patched(json.loads(good_style), case["patch"])
    return str(case["text"]).encode()


def patched(data: Any, changes: dict[str, str]) -> bytes:
    """The data with values put in at paths of keys and numbers, as JSON."""
    for place, text in changes.items():
        *way, last = (int(part) if part.isdigit() else part for part in place.split("."))
        at = data
        for part in way:
            at = at[part]
        assert isinstance(last, int) or last in at, f"{place} is not in the style file"
        at[last] = json.loads(text)
    return json.dumps(data).encode()
