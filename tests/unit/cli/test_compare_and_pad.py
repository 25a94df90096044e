"""`notchbook measures compare` and `notchbook measures pad`."""

import json
from pathlib import Path

import pytest

from house import ROOT
from notchbook.body.charts import write_chart
from support.charts import even_chart
from support.command import typed

EXAMPLES = ROOT / "examples" / "measures"
FORMS = [EXAMPLES / f"form_{letter}.json" for letter in "bcd"]
CLIENT = EXAMPLES / "rosa_l.json"


def test_two_sets_side_by_side() -> None:
    ended = typed("measures", "compare", FORMS[1], CLIENT)
    assert ended.code == 0
    assert "+6.8 cm" in ended.out
    assert "Form C has no height." in ended.out


def test_inches_are_fractions() -> None:
    ended = typed("measures", "compare", FORMS[1], CLIENT, "--unit", "in", "--chart", "women")
    assert '+2 11/16"' in ended.out
    assert "sizes" in ended.out


def test_the_nearest_size_for_people_and_for_programs() -> None:
    words = typed("measures", "compare", FORMS[2], "--chart", "women", "--garment", "top")
    assert "Form D (labeled M)" in words.out
    assert "nearest size 100" in words.out
    assert "letter L" in words.out
    assert "not a civilian population" in words.out
    data = json.loads(typed("measures", "compare", FORMS[2], "women", "-g", "top", "--json").out)
    assert (data["size"], data["label_size"], data["en_13402_3"]["letter"]) == ("100", "M", "L")
    assert data["chart_grade"]


def test_the_chart_may_come_first_or_be_a_file(tmp_path: Path) -> None:
    write_chart(even_chart(), tmp_path / "even.csv")
    one, other = (
        json.loads(typed("measures", "compare", *words, "--json").out)
        for words in ((tmp_path / "even.csv", FORMS[1]), (FORMS[1], tmp_path / "even.csv"))
    )
    assert one == other
    assert one["chart"] == "Even"


def test_a_client_against_a_style(tmp_path: Path) -> None:
    style = tmp_path / "skirt.json"
    assert typed("draft", "skirt", "--measures", FORMS[1], "--out", style).code in (0, 1)
    ended = typed("measures", "compare", CLIENT, "--style", style)
    assert ended.code == 1
    assert "less than the least usual ease" in ended.out
    assert "Finished: as sewn" in ended.out
    data = json.loads(typed("measures", "compare", CLIENT, "--style", style, "--json").out)
    assert data["too_tight"]
    assert typed("measures", "compare", FORMS[1], "--style", style).code == 0


def test_a_plan_of_padding() -> None:
    ended = typed("measures", "pad", FORMS[1], CLIENT)
    assert ended.code == 0
    assert "Pad in this order: bust girth" in ended.out
    assert "cannot be shortened" in ended.out


def test_of_several_forms_the_one_that_needs_least() -> None:
    data = json.loads(typed("measures", "pad", FORMS[0], CLIENT, *FORMS[1:], "--json").out)
    assert (data["best"], data["can_be_padded"]) == ("Form C", True)
    assert [plan["form"] for plan in data["plans"]] == ["Form C", "Form B", "Form D"]
    assert not data["plans"][2]["can_be_padded"]


def test_a_form_that_is_too_large_ends_with_1_and_names_a_size() -> None:
    ended = typed("measures", "pad", FORMS[2], CLIENT, "--chart", "women")
    assert ended.code == 1
    assert "padding cannot help" in ended.out
    assert "measures as size 88 of women" in ended.out


def test_the_layer_is_hers_to_say() -> None:
    thin = json.loads(typed("measures", "pad", FORMS[1], CLIENT, "--layer", "2.5 mm", "--json").out)
    level = next(level for level in thin["plans"][0]["levels"] if level["key"] == "waist_girth")
    assert level["front_layers"] + level["back_layers"] == 8


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("compare", FORMS[0]), "compare-too-little"),
        (("compare", "women"), "compare-too-little"),
        (("compare", "women", "men"), "compare-two-charts"),
        (("compare", FORMS[0], "women:91"), "chart-size-unknown"),
        (("compare", FORMS[0], "--chart", "ladies"), "chart-unknown"),
        (("compare", FORMS[0], "women", "--garment", "hat"), "measure-choice"),
        (("compare", FORMS[0], "nowhere.json"), "measures-file-missing"),
        (("pad", "women", CLIENT), "chart-not-a-set"),
        (("pad", FORMS[0], CLIENT, "--layer", "9 cm"), "padding-thickness"),
        (("pad", FORMS[0], CLIENT, "--layer", "thick"), "number-text"),
    ],
)
def test_bad_words_are_refused_with_a_code(words: tuple[str, ...], code: str) -> None:
    ended = typed("measures", *words)
    assert ended.code == 2
    assert f"[{code}]" in ended.err
    assert not ended.out
