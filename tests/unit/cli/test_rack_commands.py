"""The commands on styles of the rack and on style files: listed, drafted on a body, made for many."""

import csv
import json
from pathlib import Path

import pytest

from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.app.rack.styles import rack_style
from notchbook.app.style_file import read_style
from notchbook.body import set_from_data, write_measures
from notchbook.recipe import recipe_to_json
from support.command import typed


@pytest.fixture(autouse=True)
def folder(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.chdir(tmp_path)
    write_measures(set_from_data(BODY_OF_PICTURES), Path("body.json"))


def test_the_rack_is_listed() -> None:
    told = typed("rack")
    assert told.code == 0
    assert all(f"S-{number}" in told.out for number in range(201, 213))


def test_one_style_is_shown_with_steps_and_measures() -> None:
    told = typed("rack", "S-206", "--json")
    data = json.loads(told.out)["styles"][0]
    assert data["name"] == "Pleated yoke skirt"
    assert data["needed"] == ["waist_girth", "hip_girth", "hip_depth"]
    assert "Pleats:" in typed("rack", "s-206").out


def test_a_style_of_the_rack_is_drafted_on_a_body_and_goes_on_as_a_style() -> None:
    made = typed("draft", "S-206", "-m", "body.json", "--set", "skirt.length=70", "--out", "skirt.json")
    assert made.code in (0, 1), made.err
    assert read_style(Path("skirt.json")).recipe.step("skirt-1").parameters["length"] == "70 cm"
    assert typed("cut", "skirt.json").code == 0


def test_a_style_file_and_a_bare_recipe_are_run_on_another_body() -> None:
    Path("own.json").write_text(recipe_to_json(rack_style("S-206").recipe), encoding="utf-8")
    assert typed("draft", "own.json", "-m", "body.json", "--out", "style.json").code == 0
    assert typed("draft", "style.json", "-m", "body.json", "--out", "again.json").code == 0
    assert read_style(Path("again.json")).recipe == read_style(Path("style.json")).recipe


def test_a_style_is_never_written_over_itself() -> None:
    Path("own.json").write_text(recipe_to_json(rack_style("S-206").recipe), encoding="utf-8")
    told = typed("draft", "own.json", "-m", "body.json", "--out", "own.json")
    assert told.code == 2
    assert "output-over-input" in told.err


def test_a_style_is_made_for_every_body_of_a_file() -> None:
    Path("bodies.csv").write_text(
        "id,unit,waist_girth,hip_girth,hip_depth\na,cm,74,98,20.5\nb,cm,82,106,21\nc,cm,7,98,20\n",
        encoding="utf-8",
    )
    told = typed("mtm", "S-206", "--bodies", "bodies.csv", "--report", "report.csv", "--cores", "1")
    assert "3 bodies: 2 drafted, 1 refused" in told.out
    with Path("report.csv").open(encoding="utf-8", newline="") as file:
        assert [row["ok"] for row in csv.DictReader(file)] == ["yes", "yes", "no"]


def test_one_style_says_what_can_be_set_of_each_step() -> None:
    told = " ".join(typed("rack", "S-205").out.split())
    assert "--set STEP.NAME=VALUE" in told
    assert "waist_ease as usual" in told
    assert "waistband cut_in=two, depth=35 mm, ease=0 mm, underlap=44 mm" in told
    made = typed("draft", "S-205", "-m", "body.json", "--set", "waistband.depth=4", "--out", "trousers.json")
    assert made.code in (0, 1), made.err
    assert read_style(Path("trousers.json")).recipe.step("waistband-1").parameters["depth"] == "4 cm"


def test_beside_a_refusal_stands_what_was_set_by_hand() -> None:
    told = typed("draft", "S-205", "-m", "body.json", "--set", "trousers.waist_ease=-500")
    assert told.code == 2
    assert "Set by hand: trousers-1.waist_ease=-500 cm." in told.err
    plain = typed("draft", "S-205", "-m", "body.json", "--take", "no-such-cure")
    assert plain.code == 2
    assert "Set by hand" not in plain.err


@pytest.mark.parametrize(
    "words",
    [
        ("print", "S-205", "--out", "a.pdf"),
        ("check", "s-205"),
        ("cut", "S-205"),
        ("sewing-order", "S-205"),
        ("explain", "S-205"),
        ("compare", "S-205", "style.json"),
        ("compare", "style.json", "S-205"),
        ("make-it-measure", "S-205"),
    ],
)
def test_a_number_of_the_rack_in_the_place_of_a_file_is_told_the_way(words: tuple[str, ...]) -> None:
    told = typed(*words)
    assert told.code == 2
    assert "[style-of-rack]" in told.err
    assert "notchbook draft S-205 --measures FILE --out style.json" in told.err
    assert not Path("a.pdf").exists()


def test_a_file_called_as_a_style_of_the_rack_is_read_as_a_file() -> None:
    Path("S-205").write_text("no style", encoding="utf-8")
    assert "[style-not-json]" in typed("cut", "S-205").err
    assert "[style-file-unreadable]" in typed("cut", "S-999").err


@pytest.mark.parametrize("given", ["style.json", "recipe.json"])
def test_a_style_in_the_place_of_measures_is_said_to_be_one(given: str) -> None:
    typed("draft", "S-206", "-m", "body.json", "--out", "style.json")
    Path("recipe.json").write_text(recipe_to_json(rack_style("S-206").recipe), encoding="utf-8")
    told = typed("draft", "skirt", "-m", given)
    assert told.code == 2
    assert "[measures-are-style]" in told.err
    assert "style" in told.err.splitlines()[0]


def test_pattern_and_card_in_one_file_are_refused_and_nothing_is_written() -> None:
    typed("draft", "S-206", "-m", "body.json", "--out", "style.json")
    told = typed("print", "style.json", "--out", "a.pdf", "--card", "./a.pdf")
    assert told.code == 2
    assert "[outputs-same-file]" in told.err
    assert not Path("a.pdf").exists()


def test_what_a_check_sends_to_is_the_finding_that_weighs_most() -> None:
    """The shirt has notes first and then something to look at; the note is not what comes next."""
    typed("draft", "S-204", "-m", "body.json", "--out", "shirt.json")
    data = json.loads(typed("check", "shirt.json", "--json").out)
    found = data["report"]["findings"]
    assert found[0]["severity"] == "note"
    first = next(one for one in found if one["severity"] == "look")
    assert data["next_step"] == f"notchbook why {first['code']}"
