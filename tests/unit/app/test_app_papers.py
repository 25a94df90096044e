"""The gate, the style file, and sets of files that are written together or not at all."""

import json
from pathlib import Path

import pytest

from notchbook.app import papers
from notchbook.app.demo import demo_form, demo_recipe
from notchbook.app.papers import cut_ready, job_of, write_draft, write_papers, write_pattern
from notchbook.app.staging import refuse_over_input, staged
from notchbook.app.style_file import read_style, run_style, write_style
from notchbook.body import set_to_data
from notchbook.errors import InputError, OutputError
from notchbook.pattern import pattern_to_data
from notchbook.recipe import Replay, add_step, replay

DAY = "2026-03-31"


@pytest.fixture(scope="module")
def good() -> Replay:
    """The demonstration."""
    form = demo_form()
    return replay(demo_recipe(form), form)


@pytest.fixture(scope="module")
def spoiled() -> Replay:
    """The demonstration with a front 2 cm longer than its back: the side seam does not walk."""
    form = demo_form()
    longer = {"hems": ["skirt.front/hem"], "amount": "2 cm"}
    return replay(add_step(demo_recipe(form), "change_length", longer, base=form), form)


def test_a_style_file_gives_back_what_was_written(good: Replay, tmp_path: Path) -> None:
    write_style(good, tmp_path / "a.json")
    read = read_style(tmp_path / "a.json")
    assert read.recipe == good.recipe
    assert set_to_data(read.measures) == set_to_data(good.measures)
    assert read.pattern is not None
    assert pattern_to_data(read.pattern) == pattern_to_data(good.pattern)
    write_style(run_style(read), tmp_path / "b.json")
    assert (tmp_path / "a.json").read_bytes() == (tmp_path / "b.json").read_bytes()


def test_a_style_file_is_plain_json_that_says_what_it_is(good: Replay, tmp_path: Path) -> None:
    write_style(good, tmp_path / "a.json")
    data = json.loads((tmp_path / "a.json").read_text(encoding="utf-8"))
    assert (data["format"], data["format_version"]) == ("notchbook style", 1)
    assert data["step_versions"]["skirt"] >= 1


def test_the_gate_refuses_what_would_spoil_cloth(spoiled: Replay, tmp_path: Path) -> None:
    job = job_of(spoiled, DAY)
    for write in (
        lambda: cut_ready(job),
        lambda: write_draft(job, tmp_path / "a.pdf"),
        lambda: write_draft(job, tmp_path / "a.svg"),
        lambda: write_pattern(job, tmp_path / "a.pdf", None),
        lambda: write_papers(job, tmp_path / "new"),
    ):
        with pytest.raises(OutputError) as caught:
            write()
        assert caught.value.code == "papers-refused"
        assert "seam" in str(caught.value.facts["first"])
    assert not list(tmp_path.iterdir())


def test_the_work_itself_can_always_be_kept(spoiled: Replay, tmp_path: Path) -> None:
    assert write_draft(job_of(spoiled, DAY), tmp_path / "a.json").stops
    assert read_style(tmp_path / "a.json").recipe == spoiled.recipe


def test_she_can_open_the_gate(spoiled: Replay) -> None:
    ready = cut_ready(job_of(spoiled, DAY, despite_findings=True))
    assert ready.report.stops
    assert len(ready.pieces) == 3


def test_papers_carry_number_title_size_and_date(good: Replay) -> None:
    info = job_of(good, DAY).info
    assert (info.style_number, info.title, info.size, info.date) == ("S-101", "Straight skirt", "Form A", DAY)


@pytest.mark.parametrize(("name", "code"), [("a.txt", "suffix-unknown"), ("a", "suffix-missing")])
def test_a_pattern_is_a_pdf(name: str, code: str, good: Replay, tmp_path: Path) -> None:
    for places in ((tmp_path / name, None), (tmp_path / "a.pdf", tmp_path / name)):
        with pytest.raises(InputError, match=code):
            write_pattern(job_of(good, DAY), *places)
    assert not list(tmp_path.iterdir())


def test_pattern_and_card_are_never_one_file(good: Replay, tmp_path: Path) -> None:
    """By its name, on a way round, or through a link; the file that was there stays as it was."""
    (tmp_path / "folder").mkdir()
    way_round = tmp_path / "folder" / ".." / "a.pdf"
    with pytest.raises(InputError, match="outputs-same-file"):
        write_pattern(job_of(good, DAY), tmp_path / "a.pdf", way_round)
    assert not (tmp_path / "a.pdf").exists()
    (tmp_path / "a.pdf").write_text("old")
    (tmp_path / "link.pdf").symlink_to(tmp_path / "a.pdf")
    with pytest.raises(InputError, match="outputs-same-file"):
        write_pattern(job_of(good, DAY), tmp_path / "a.pdf", tmp_path / "link.pdf")
    assert (tmp_path / "a.pdf").read_text() == "old"


@pytest.mark.parametrize("name", ["folder", "folder.pdf"])
def test_a_folder_in_the_place_of_a_file_is_said_to_be_one(name: str, good: Replay, tmp_path: Path) -> None:
    folder = tmp_path / name
    folder.mkdir()
    job = job_of(good, DAY)
    for write in (lambda: write_draft(job, folder), lambda: write_pattern(job, folder, None)):
        with pytest.raises(OutputError) as caught:
            write()
        assert caught.value.code == "output-is-folder"
        assert f"{folder}/" in caught.value.next_step()


def test_a_draft_without_an_ending_is_told_the_endings(good: Replay, tmp_path: Path) -> None:
    with pytest.raises(InputError, match="suffix-missing") as caught:
        write_draft(job_of(good, DAY), tmp_path / "skirt")
    assert all(ending in caught.value.next_step() for ending in (".json", ".pdf", ".svg", ".png"))


def test_a_set_is_written_whole_or_not_at_all(tmp_path: Path) -> None:
    """The second file fails: the first one is not put in its place, and the old ones stay."""
    targets = {"one": tmp_path / "one.pdf", "two": tmp_path / "two.pdf"}
    targets["one"].write_text("old")

    class TornError(Exception):
        pass

    with pytest.raises(TornError), staged(targets) as places:
        places["one"].write_text("new")
        raise TornError
    assert {path.name: path.read_text() for path in tmp_path.iterdir()} == {"one.pdf": "old"}
    with staged(targets) as places:
        for name, place in places.items():
            place.write_text(name)
    assert {path.name: path.read_text() for path in tmp_path.iterdir()} == {
        "one.pdf": "one",
        "two.pdf": "two",
    }


def test_a_refusal_inside_a_set_names_the_file_that_was_asked_for(tmp_path: Path) -> None:
    target = tmp_path / "one.pdf"
    with pytest.raises(OutputError) as caught, staged({"one": target}) as places:
        raise OutputError("output-disk-full", path=str(places["one"]), folder="x")
    assert caught.value.facts["path"] == str(target)
    with (
        pytest.raises(OutputError, match="output-folder-missing"),
        staged({"one": tmp_path / "no" / "one.pdf"}),
    ):
        pass


def test_what_is_read_is_not_written_over(tmp_path: Path) -> None:
    path = tmp_path / "form.json"
    refuse_over_input(path, (path,))
    path.write_text("{}")
    (tmp_path / "link.json").symlink_to(path)
    for out in (path, tmp_path / "link.json", tmp_path / "." / "form.json"):
        with pytest.raises(InputError, match="output-over-input"):
            refuse_over_input(out, (tmp_path / "other.json", path))
    refuse_over_input(tmp_path / "skirt.json", (path,))


def test_new_folders_are_taken_away_when_the_papers_fail(
    good: Replay, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*words: object) -> None:
        raise OutputError("output-disk-full", path="x", folder="y")

    monkeypatch.setattr(papers, "write_style", fails)
    with pytest.raises(OutputError):
        write_papers(job_of(good, DAY), tmp_path / "a" / "b")
    assert not list(tmp_path.iterdir())
