"""`make-it-measure`, `explain` and `compare`: what they print, write and refuse."""

import json
from pathlib import Path

import pytest

from notchbook.app.demo import demo_form
from notchbook.body import write_measures
from support.command import typed

HEM = "around hem = 120"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a style of the invented form."""
    monkeypatch.chdir(tmp_path)
    write_measures(demo_form(), tmp_path / "form.json")
    assert typed("draft", "skirt", "-m", "form.json", "-o", "skirt.json").code == 0
    return tmp_path


def test_without_a_number_the_numbers_that_could_move_are_listed(folder: Path) -> None:
    ended = typed("make-it-measure", "skirt.json", HEM)
    assert ended.code == 0, ended.err
    assert "skirt-1.flare" in ended.out and "skirt-1.length" not in ended.out
    assert "--by skirt-1." in ended.out
    answer = json.loads(typed("make-it-measure", "skirt.json", HEM, "--json").out)
    assert answer["wish"] == "around skirt.front/hem, skirt.back/hem = 120 cm"
    stirs = [one["stirs"] for one in answer["candidates"] if one["refused"] is None]
    assert stirs == sorted(stirs)


def test_a_wish_that_no_number_gives_does_not_end_as_if_all_were_well(folder: Path) -> None:
    ended = typed("make-it-measure", "skirt.json", "around hem = 900")
    assert ended.code == 1 and "No number of this style gives it." in ended.out
    told = typed("make-it-measure", "skirt.json", "around hem = 900", "--json")
    assert told.code == 1 and all(one["refused"] for one in json.loads(told.out)["candidates"])


def test_a_number_is_written_only_when_it_is_told_where(folder: Path) -> None:
    before = (folder / "skirt.json").read_bytes()
    looked = typed("make-it-measure", "skirt.json", HEM, "--by", "flare")
    assert "Nothing is written yet" in looked.out and "side seam" in looked.out
    written = typed("make-it-measure", "skirt.json", HEM, "--by", "flare", "-o", "wide.json")
    assert written.code == 0, written.err
    assert (folder / "skirt.json").read_bytes() == before
    stored = json.loads((folder / "wide.json").read_text())["recipe"]["steps"][0]
    assert stored["targets"][0]["wish"] == "around skirt.front/hem, skirt.back/hem = 120 cm"
    assert stored["parameters"]["flare"] > 0.0
    # What was read is never written over.
    over = typed("make-it-measure", "skirt.json", HEM, "--by", "flare", "-o", "skirt.json")
    assert over.code == 2 and "output-over-input" in over.err


def test_a_kept_wish_is_told_by_check_and_solved_again(folder: Path) -> None:
    typed("make-it-measure", "skirt.json", HEM, "--by", "flare", "-o", "wide.json")
    hips = ("finished hip = 110", "--by", "hip_ease")
    broken = typed("make-it-measure", "wide.json", *hips, "-o", "eased.json")
    assert broken.code == 1 and "target-no-longer-holds" in broken.out
    checked = typed("check", "eased.json")
    assert checked.code == 1 and "target-no-longer-holds" in checked.out
    again = typed("make-it-measure", "eased.json", "--again", "-o", "again.json", "--json")
    solved = json.loads(again.out)["solved"]
    # mm: numbers are written with the fewest decimals that keep every wish to 0.01.
    assert [abs(one["measured"] - one["wanted"]) <= 0.01 for one in solved] == [True, True]
    held = json.loads(typed("make-it-measure", "wide.json", *hips, "--hold", "--json").out)
    assert held["broken"] == [] and len(held["solved"]) == 2
    freed = typed("make-it-measure", "eased.json", "--let-go", "flare", "-o", "free.json")
    assert freed.code == 0
    assert "target-no-longer-holds" not in typed("check", "free.json").out


def test_every_size_of_a_chart_is_solved_when_asked_for(folder: Path) -> None:
    ended = typed("make-it-measure", "skirt.json", HEM, "--by", "flare", "--sizes", "women", "--json")
    sizes = json.loads(ended.out)["sizes"]
    assert len(sizes) > 5 and sum(bool(one["solved"]) for one in sizes) > 5
    assert ended.code == (1 if any(one["refused"] for one in sizes) else 0)


@pytest.mark.parametrize(
    ("words", "code"),
    [
        ((HEM, "--by", "length"), "wish-not-moved"),
        (("around hem = 900", "--by", "flare"), "wish-out-of-reach"),
        (("hem 120", "--by", "flare"), "wish-not-understood"),
        ((), "wish-missing"),
        (("--again",), "no-targets"),
        (("--again", HEM, "--by", "flare"), "solve-again-alone"),
        ((HEM, HEM), "wishes-and-numbers"),
        ((HEM, "--by", "flare", "--by", "length"), "wishes-and-numbers"),
        ((HEM, "--by", "flare", "--sizes", "giants"), "chart-unknown"),
    ],
)
def test_what_cannot_be_done_is_refused_and_nothing_written(
    folder: Path, words: tuple[str, ...], code: str
) -> None:
    ended = typed("make-it-measure", "skirt.json", *words, "-o", "new.json")
    assert ended.code == 2 and code in ended.err, ended.out + ended.err
    assert not (folder / "new.json").exists()


def test_a_range_is_told_in_the_unit_that_was_asked_for(folder: Path) -> None:
    ended = typed("make-it-measure", "skirt.json", "around hem = 300", "--by", "flare", "-u", "in")
    assert '300"' in ended.err and "mm" not in ended.err.replace("measure", "")


def test_an_edge_is_explained(folder: Path) -> None:
    ended = typed("explain", "skirt.json", "skirt.front/side_seam")
    assert ended.code == 0
    for said in ("Draft skirt: made it", "hip girth 97.0 cm", "what moves it", "Draft skirt, length"):
        assert said in ended.out
    data = json.loads(typed("explain", "skirt.json", "skirt.front/side_seam", "--json").out)
    assert data["steps"][0]["step"] == "skirt-1" and data["moved_by"]
    unknown = typed("explain", "skirt.json", "sideseam")
    assert unknown.code == 2 and "explain-name-unknown" in unknown.err


def test_two_styles_are_compared(folder: Path) -> None:
    typed("make-it-measure", "skirt.json", HEM, "--by", "flare", "-o", "wide.json")
    ended = typed("compare", "skirt.json", "wide.json")
    assert ended.code == 0 and "Draft skirt, flare: 0 → " in ended.out and "front, hem" in ended.out
    assert "They are the same." in typed("compare", "skirt.json", "skirt.json").out
    data = json.loads(typed("compare", "skirt.json", "wide.json", "--json").out)
    assert [one["field"] for one in data["fields"]] == ["flare"]
    assert {"skirt.front/hem", "skirt.back/hem"} <= {one["name"] for one in data["moved"]}
