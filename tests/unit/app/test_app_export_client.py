"""A client's data to take away: an archive of plain files, read here with Python's own readers."""

import csv
import io
import json
import zipfile
from pathlib import Path

import pytest

from notchbook.app.style_file import read_style
from notchbook.body import read_measures
from notchbook.errors import InputError, OutputError
from support.clients import FIRST_NAME, NAME, WAIST, Room


@pytest.fixture
def archive(room: Room, tmp_path: Path) -> Path:
    """The export, unpacked."""
    written = room.studio.export_client(room.client, tmp_path / "her data.zip")
    with zipfile.ZipFile(written) as packed:
        assert packed.testzip() is None
        packed.extractall(tmp_path / "out")
    return tmp_path / "out"


def test_all_of_hers_is_in_it(archive: Path) -> None:
    assert {path.relative_to(archive).as_posix() for path in archive.rglob("*") if path.is_file()} == {
        "README.txt",
        "measures.csv",
        "measures.json",
        "history.csv",
        "history/measures-0001.json",
        "history/measures-0002.json",
        "history/measures-0004.json",
        "styles/S-101.json",
        "revisions/S-101-1.json",
    }
    readme = (archive / "README.txt").read_text(encoding="utf-8")
    assert readme.startswith(f"Measures of {NAME} (M-102)")
    for name in ("measures.csv", "measures.json", "history.csv", "history/", "styles/", "revisions/"):
        assert f"\n{name}" in readme


def test_her_measures_are_read_again_as_they_are(archive: Path, room: Room) -> None:
    for name in ("measures.json", "measures.csv"):
        assert read_measures(archive / name) == room.body().measures
    data = json.loads((archive / "measures.json").read_text(encoding="utf-8"))
    assert data["measures"]["waist_girth"] == float(WAIST)


def test_each_line_of_the_history_names_the_measures_of_its_state(archive: Path) -> None:
    lines = list(csv.DictReader(io.StringIO((archive / "history.csv").read_text(encoding="utf-8"))))
    assert [line["what"] for line in lines] == ["add", "rename-body", "rename", "set-measure"]
    names = [json.loads((archive / line["measures"]).read_text(encoding="utf-8"))["name"] for line in lines]
    assert names == [FIRST_NAME, NAME, NAME, NAME]


def test_a_style_of_hers_opens_with_her_measures(archive: Path, room: Room) -> None:
    style = read_style(archive / "styles" / "S-101.json")
    assert style.recipe == room.style_now().recipe
    assert style.measures == room.body().measures


def test_a_revision_of_hers_has_measures_and_shapes(archive: Path) -> None:
    frozen = json.loads((archive / "revisions" / "S-101-1.json").read_text(encoding="utf-8"))
    assert frozen["measures"]["measures"]["waist_girth"] == float(WAIST)
    assert frozen["shapes"]["outline"][0] == [0, 0]
    assert frozen["approved_by"]


def test_nothing_of_others_is_in_it(archive: Path) -> None:
    for path in archive.rglob("*"):
        if path.is_file():
            text = path.read_text(encoding="utf-8")
            assert "Form A" not in text
            assert "Plain skirt" not in text


def test_the_book_is_never_written_over(room: Room, tmp_path: Path) -> None:
    before = room.book.last_line()
    with pytest.raises(InputError) as refused:
        room.studio.export_client(room.client, room.path)
    assert refused.value.code == "export-ending"
    with pytest.raises(OutputError):
        room.studio.export_client(room.client, tmp_path / "nowhere" / "x.zip")
    assert room.book.last_line() == before
    assert room.book.verify() == ()


def test_the_same_book_gives_the_same_bytes(room: Room, tmp_path: Path) -> None:
    first, second = (
        room.studio.export_client(room.client, tmp_path / name).read_bytes() for name in ("a.zip", "b.zip")
    )
    assert first == second
