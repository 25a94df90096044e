"""`notchbook measures estimate` and `notchbook draft --estimate`, as they are typed."""

import json
from pathlib import Path
from typing import Any

import pypdfium2
import pytest

from notchbook.body import read_measures, write_measures
from support.bodies import four_measures
from support.command import Ended, typed

MEASURE_NEXT = "Take hip depth: it is needed, and it moves"


@pytest.fixture
def client(tmp_path: Path) -> Path:
    file = tmp_path / "client.json"
    write_measures(four_measures(), file)
    return file


def data(ended: Ended) -> dict[str, Any]:
    return dict(json.loads(ended.out))


def pdf_words(file: Path) -> list[str]:
    document = pypdfium2.PdfDocument(file.read_bytes())
    said = [" ".join(page.get_textpage().get_text_range().split()) for page in document]
    document.close()
    return said


def test_estimates_come_with_their_range_and_population(client: Path) -> None:
    ended = typed("measures", "estimate", client, "--for", "skirt")
    assert ended.code == 0, ended.err
    assert "women of the U.S. Army survey ANSUR II (2012)" in ended.out
    assert "not a civilian population" in ended.out
    assert "hip_depth" in ended.out
    assert "±" in ended.out
    assert "Not estimated: front waist arc, front hip arc" in ended.out
    assert MEASURE_NEXT in ended.out


def test_the_unit_is_the_readers(client: Path) -> None:
    ended = typed("measures", "estimate", client, "--for", "skirt", "--unit", "in")
    assert '" to ' in ended.out
    assert " cm" not in ended.out


def test_a_set_without_population_is_refused_until_one_is_named(tmp_path: Path) -> None:
    file = tmp_path / "client.csv"
    write_measures(four_measures(None), file)
    ended = typed("measures", "estimate", file)
    assert ended.code == 2
    assert "Whose body" in ended.err
    assert typed("measures", "estimate", file, "--population", "women").code == 0


def test_for_programs_it_is_data(client: Path) -> None:
    told = data(typed("measures", "estimate", client, "--json"))
    by_key = {one["measure"]: one for one in told["estimates"]}
    hip_depth = by_key["hip_depth"]
    assert hip_depth["low"] == hip_depth["value"] - hip_depth["error"]
    assert hip_depth["given"][0] == "height"
    assert told["population"] == "women"
    assert {"measure", "reason", "words", "moves_mm", "before_mm"} <= set(told["next_measures"][0])
    assert "forward_shoulder" in {one["measure"] for one in told["not_estimated"]}


def test_the_filled_measures_are_written_and_stale_ones_are_told(client: Path, tmp_path: Path) -> None:
    out = tmp_path / "filled.json"
    assert typed("measures", "estimate", client, "--out", out).code == 0
    filled = read_measures(out)
    assert filled.values["inside_leg"].status == "estimated"
    assert filled.values["height"].status == "measured"
    write_measures(filled.with_value("outside_leg", 1130.0), out)
    ended = typed("measures", "estimate", out)
    assert ended.code == 1
    assert "no longer follows: inside leg" in ended.out
    assert typed("measures", "estimate", client, "--out", client).code == 2


def test_a_form_is_said_to_be_no_body(tmp_path: Path) -> None:
    file = tmp_path / "form.csv"
    file.write_text(
        "measure,value,unit\nname,Form (invented),\nkind,form,\nhip_girth,98,cm\n", encoding="utf-8"
    )
    ended = typed("measures", "estimate", file, "--population", "women")
    assert "This is a dress form, estimated as if it were one of" in ended.out


def test_bodies_need_a_place_for_their_estimates(tmp_path: Path, client: Path) -> None:
    file = tmp_path / "bodies.csv"
    file.write_text(
        "id,unit,population,height,hip_girth\na,cm,women,168,98\nb,cm,,168,98\n", encoding="utf-8"
    )
    refused = typed("measures", "estimate", file)
    assert refused.code == 2
    assert "[estimate-report-missing]" in refused.err
    report, out = tmp_path / "report.csv", tmp_path / "filled.csv"
    ended = typed("measures", "estimate", file, "--report", report, "--out", out, "--for", "skirt", "--json")
    assert ended.code == 1
    assert (data(ended)["bodies"], data(ended)["refused"]) == (2, 1)
    assert report.read_text(encoding="utf-8").count("\n") == 3
    assert "estimated" in out.read_text(encoding="utf-8")
    assert typed("measures", "estimate", client, "--report", report).code == 2


def test_a_draft_is_refused_without_its_measures_and_drafted_with_estimates(
    client: Path, tmp_path: Path
) -> None:
    assert typed("draft", "skirt", "--measures", client).code == 2
    ended = typed("draft", "skirt", "--measures", client, "--estimate", "--out", tmp_path / "skirt.json")
    assert ended.code == 1
    assert "est. hip depth" in ended.out
    assert "Estimated, not measured" in ended.out
    assert "[estimates-rested-on]" in ended.out
    assert "outside leg" not in ended.out
    assert f"notchbook measures estimate {client} --for skirt" in ended.out
    told = data(typed("draft", "skirt", "--measures", client, "--estimate", "--json"))
    assert "--estimate --out skirt.json" in told["next_step"]
    assert [one["measure"] for one in told["estimates"]] == ["hip_depth"]
    assert "front_hip_arc" in {one["measure"] for one in told["not_estimated"]}
    assert told["cautions"] == []


def test_every_paper_of_such_a_draft_says_so(client: Path, tmp_path: Path) -> None:
    style, pattern, card = (tmp_path / name for name in ("skirt.json", "pattern.pdf", "card.pdf"))
    typed("draft", "skirt", "-m", client, "--estimate", "--out", style)
    printed = typed("print", style, "--out", pattern, "--card", card, "--json")
    assert [one["measure"] for one in data(printed)["estimates"]] == ["hip_depth"]
    for file in (pattern, card):
        pages = pdf_words(file)
        assert "hip depth 20" in pages[0]
        assert all("est." in page for page in pages)
    for verb in ("check", "cut"):
        told = typed(verb, style)
        assert told.code == 1
        assert "est. hip depth" in told.out
        finding = next(
            one
            for one in data(typed(verb, style, "--json"))["report"]["findings"]
            if one["check"] == "estimates"
        )
        assert (finding["code"], finding["severity"], finding["unit"]) == (
            "estimates-rested-on",
            "look",
            "mm",
        )
        assert finding["error"] > 10.0
    svg = tmp_path / "skirt.svg"
    typed("draft", "skirt", "-m", client, "--estimate", "--out", svg)
    assert ">est.<" in svg.read_text(encoding="utf-8")


def test_a_girth_that_is_estimated_shows_its_error_in_the_ease_table(tmp_path: Path) -> None:
    file = tmp_path / "client.json"
    write_measures(four_measures(hip_depth=205.0).without("hip_girth"), file)
    ended = typed("draft", "skirt", "-m", file, "--estimate")
    line = next(line for line in ended.out.splitlines() if line.startswith("skirt, hip girth"))
    assert "±" in line
    girths = data(typed("draft", "skirt", "-m", file, "--estimate", "--json"))["girths"]
    assert [("body_error" in girth) for girth in girths] == [False, True]


def test_a_draft_of_measures_is_as_it_was(client: Path, tmp_path: Path) -> None:
    full = tmp_path / "full.json"
    write_measures(four_measures(hip_depth=205.0), full)
    ended = typed("draft", "skirt", "-m", full)
    assert ended.code == 0
    assert "est" not in ended.out.replace("test", "").replace("rest", "")
