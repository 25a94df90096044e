"""The commands on trousers, skirts and stretch blocks: hyphens, cures, asked stretch, the words for men."""

from pathlib import Path

import pytest
import typer

from notchbook.app.style_file import read_style
from notchbook.body import MeasureSet, PopulationName, write_measures
from notchbook.cli import asking
from support.command import typed
from support.stretch_bodies import WHOLE_WOMAN
from support.trouser_bodies import MAN, WOMAN

WHOLE = WHOLE_WOMAN | WOMAN
CLOTH = ("--set", "across=10 cm to 14 cm", "--set", "along=50 %")


@pytest.fixture(autouse=True)
def folder(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.chdir(tmp_path)


def stored(values: dict[str, float] = WHOLE, population: PopulationName = "women", **other: float) -> str:
    write_measures(MeasureSet.from_mm("Invented body", values | other, population=population), Path("b.json"))
    return "b.json"


@pytest.mark.parametrize(
    "words",
    [
        ("trousers",),
        ("circle-skirt",),
        ("gored-skirt",),
        ("stretch-torso", *CLOTH),
        ("bodysuit", *CLOTH),
        ("leggings", *CLOTH),
    ],
)
def test_every_block_is_drafted_by_its_word(words: tuple[str, ...]) -> None:
    ended = typed("draft", words[0], "-m", stored(), *words[1:], "--out", "kept.json")
    assert ended.code in (0, 1), ended.err
    assert "checks passed; 0 to stop for" in ended.out
    assert read_style(Path("kept.json")).recipe.steps[-1].operation == words[0].replace("-", "_")


@pytest.mark.parametrize("block", ["trousers", "circle-skirt", "gored-skirt", "bodysuit", "leggings"])
def test_every_block_tells_its_measures_and_eases(block: str) -> None:
    ended = typed("blocks", block)
    assert ended.code == 0
    assert "Waist girth" in ended.out
    assert "drafted" in ended.out


def test_eases_and_closures_of_a_man_are_in_the_words_for_men() -> None:
    out = typed("draft", "trousers", "-m", stored(MAN, "men")).out
    assert "trousers, seat girth" in out
    assert "hip girth" not in out
    assert "trousers, hip girth" in typed("draft", "trousers", "-m", stored()).out


def test_a_crotch_that_is_too_short_is_refused_in_inches_and_cured_by_its_word() -> None:
    file = stored(crotch_length=560.0)
    ended = typed("draft", "trousers", "-m", file, "--unit", "in")
    assert ended.code == 2
    assert "The crotch length is too short" in ended.err
    assert " mm" not in ended.err
    assert '/16"' in ended.err or '/8"' in ended.err
    taken = typed("draft", "trousers", "-m", file, "--take", "trousers-crotch-short.2", "--out", "kept.json")
    assert taken.code in (0, 1), taken.err
    assert read_style(Path("kept.json")).recipe.step("trousers-1").parameters["crotch_ease"] is not None


def test_the_stretch_is_asked_for_and_a_test_of_ones_own_is_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    answers = ["9", "10 cm to 9 cm", "10 cm to 14 cm", "3"]
    monkeypatch.setattr(asking, "may_ask", lambda *, as_json: not as_json)
    monkeypatch.setattr(typer, "prompt", lambda *_words, **_options: answers.pop(0))
    ended = typed("draft", "bodysuit", "-m", stored(), "--out", "kept.json")
    assert ended.code in (0, 1), ended.err
    assert not answers
    kept = read_style(Path("kept.json")).recipe.step("bodysuit-1").parameters
    assert (kept["across"], kept["along"]) == ("10 cm to 14 cm", "50 %")
    assert "along, up and down the body" in ended.err


def test_without_a_terminal_the_stretch_is_refused_with_what_to_type() -> None:
    ended = typed("draft", "leggings", "-m", stored())
    assert ended.code == 2
    assert '--set "across=50 %"' in ended.err


def test_made_to_measure_asks_for_the_stretch_once_and_drafts_every_body() -> None:
    trunk = ("waist_girth", "hip_girth", "hip_depth", "standing_rise", "crotch_length")
    keys = (*trunk, "inside_leg", "thigh_girth", "knee_girth", "ankle_girth")
    rows = [",".join(["id", "unit", "population", *keys])]
    rows += [",".join([str(n), "mm", "women", *(str(WHOLE[key]) for key in keys)]) for n in (1, 2)]
    Path("bodies.csv").write_text("\n".join(rows), encoding="utf-8")
    words = ("mtm", "leggings", "--bodies", "bodies.csv", "--report", "report.csv", "--cores", "1")
    refused = typed(*words)
    assert (refused.code, refused.err.count("is not said")) == (2, 1)
    done = typed(*words, "--set", "across=50 %")
    assert "2 bodies: 2 drafted" in done.out, done.err
