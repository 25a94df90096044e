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
