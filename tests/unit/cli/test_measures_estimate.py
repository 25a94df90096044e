"""`notchbook measures estimate` and `notchbook draft --estimate`, as they are typed."""

import json
import re
from pathlib import Path
from typing import Any

import pypdfium2
import pytest

from notchbook.body import Measure, read_measures, write_measures
from notchbook.units import parse_length
from support.bodies import four_measures
from support.command import Ended, typed

GUESS = Measure(1061.0, "estimated", 37.0, "from height; 794 women of ANSUR II (2012)")

CHILD = """measure,value,unit
name,Invented child,
height,122,cm
bust_girth,62,cm
waist_girth,56,cm
hip_girth,68,cm
"""

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
    assert "hip depth" in ended.out
    assert "±" in ended.out
    not_known = "belly girth, belly depth, front waist arc, front hip arc"
    assert f"Not estimated: nothing is known of {not_known}" in ended.out
    assert "survey: 794 women of ANSUR II (2012)" in ended.out
    assert MEASURE_NEXT in ended.out


def test_what_is_filled_for_a_block_is_what_its_draft_fills(client: Path, tmp_path: Path) -> None:
    out, style, plain = tmp_path / "filled.json", tmp_path / "skirt.json", tmp_path / "plain.json"
    ended = typed("measures", "estimate", client, "--for", "skirt", "--out", out)
    assert "no line answers to it: top hip girth, outside leg" in ended.out
    filled = [key for key, one in read_measures(out).values.items() if one.status == "estimated"]
    told = data(typed("draft", "skirt", "-m", client, "--estimate", "--out", style, "--json"))
    assert filled == [one["measure"] for one in told["estimates"]] == ["hip_depth"]
    assert (
        data(typed("measures", "estimate", client, "--for", style, "--json"))["not_needed"]
        == (data(typed("measures", "estimate", client, "--for", "skirt", "--json"))["not_needed"])
    )
    # Her file of old, with an estimate to which no line answers: not a word of it.
    write_measures(four_measures(hip_depth=205.0).with_value("outside_leg", GUESS), plain)
    ended = typed("draft", "skirt", "-m", plain)
    assert (ended.code, "outside leg" in ended.out) == (0, False)


def test_a_child_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "child.csv"
    file.write_text(CHILD, encoding="utf-8")
    for words in (("measures", "estimate", file), ("draft", "skirt", "-m", file, "--estimate")):
        ended = typed(*words, "--population", "women")
        assert ended.code == 2
        assert "no population of children" in ended.err
        assert ended.out == ""


def test_each_row_names_its_source(client: Path) -> None:
    ended = typed("measures", "estimate", client)
    rows = {line.split("  ")[0]: line for line in ended.out.splitlines()}
    assert "Spanish sample" in rows["shoulder slope"]
    assert "size table" in rows["under-bust girth"]
    assert "survey" in rows["inside leg"]
    told = {one["measure"]: one for one in data(typed("measures", "estimate", client, "--json"))["estimates"]}
    assert (told["shoulder_slope"]["source"], told["under_bust_girth"]["source"]) == ("sample", "table")
    assert "ANSUR" not in told["shoulder_slope"]["method"]
    assert "doubt common practice" in told["under_bust_girth"]["source_grade"]


def test_a_stale_estimate_is_said_with_the_draft_and_in_its_papers(client: Path, tmp_path: Path) -> None:
    out, pattern = tmp_path / "filled.json", tmp_path / "skirt.pdf"
    typed("measures", "estimate", client, "--for", "skirt", "--out", out)
    write_measures(read_measures(out).with_value("height", 1800.0), out)
    ended = typed("draft", "skirt", "-m", out, "--out", pattern)
    assert ended.code == 1
    assert "no longer follows from the measures; now " in ended.out
    assert "[estimates-rested-on-stale]" in ended.out
    assert "no longer follows" in pdf_words(pattern)[0].replace("\N{NO-BREAK SPACE}", " ")


def test_findings_are_in_the_unit_of_the_session(client: Path) -> None:
    for unit, sign in (("cm", " cm)"), ("mm", " mm)"), ("in", '")')):
        ended = typed("draft", "skirt", "-m", client, "--estimate", "--unit", unit)
        line = next(line for line in ended.out.splitlines() if "[estimates-rested-on]" in line)
        assert sign in line, line
        assert "±" in line


def test_body_and_ease_add_up_to_the_pattern_as_written(tmp_path: Path) -> None:
    """Ease of 15 mm is 9/16 inch and a little: beside a waist of 29 5/16 the sum would be out by 1/16."""
    for waist in (744.0, 745.3, 746.6, 748.1):
        file = tmp_path / "client.json"
        write_measures(four_measures(hip_depth=205.0).with_value("waist_girth", waist), file)
        for unit, step in (("in", 1 / 16), ("cm", 0.1)):
            ended = typed("draft", "skirt", "-m", file, "--unit", unit)
            girths = ("skirt, waist girth", "skirt, hip girth")
            lines = [line for line in ended.out.splitlines() if line.startswith(girths)]
            assert len(lines) == 2
            for line in lines:
                body, ease, pattern = [
                    parse_length(cell, "cm") for cell in re.split("  +", line.strip())[1:4]
                ]
                unit_mm = 25.4 if unit == "in" else 10.0
                assert abs(body + ease - pattern) < 0.01 * step * unit_mm, line


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
    bare = typed("draft", "skirt", "--measures", client)
    assert bare.code == 2
    assert "With --estimate it is filled in" in bare.err
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
    assert ">hip depth est.<" in svg.read_text(encoding="utf-8")


def test_a_girth_that_is_estimated_shows_its_error_in_the_ease_table(tmp_path: Path) -> None:
    file = tmp_path / "client.json"
    write_measures(four_measures(hip_depth=205.0).without("hip_girth"), file)
    ended = typed("draft", "skirt", "-m", file, "--estimate")
    line = next(line for line in ended.out.splitlines() if line.startswith("skirt, hip girth"))
    assert "±" in line
    eases = data(typed("draft", "skirt", "-m", file, "--estimate", "--json"))["eases"]
    girths = [line for line in eases if line["kind"] == "girth"]
    assert [("body_error" in girth) for girth in girths] == [False, True]


def test_a_draft_of_measures_is_as_it_was(client: Path, tmp_path: Path) -> None:
    full = tmp_path / "full.json"
    write_measures(four_measures(hip_depth=205.0), full)
    ended = typed("draft", "skirt", "-m", full)
    assert ended.code == 0
    assert "est" not in ended.out.replace("test", "").replace("rest", "")
