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


def test_a_measure_that_lacks_on_both_sides_is_said_once() -> None:
    """Ines K. has an outside leg for each side, and the form has none at all."""
    ended = typed("measures", "compare", FORMS[1], EXAMPLES / "ines_k.json")
    assert "Form C has no height, outside leg." in ended.out


def test_inches_are_fractions() -> None:
    ended = typed("measures", "compare", FORMS[1], CLIENT, "--unit", "in", "--chart", "women")
    assert '+2 11/16"' in ended.out
    assert "sizes" in ended.out


def test_the_nearest_size_for_people_and_for_programs() -> None:
    words = typed("measures", "compare", FORMS[2], "--chart", "women", "--garment", "top")
    assert "Form D (labeled M)" in words.out
    assert "nearest size 100" in words.out
    assert "letter L" in words.out
    assert "not civilians" in words.out
    assert "not a civilian population" not in words.out
    assert "between 100 and 104, nearer 100" in words.out
    assert "101.0" not in words.out.replace("101.0 cm", "")
    whole = typed("measures", "compare", FORMS[2], "--chart", "women", "--garment", "top", "--source")
    assert "not a civilian population" in whole.out
    data = json.loads(typed("measures", "compare", FORMS[2], "women", "-g", "top", "--json").out)
    assert (data["size"], data["label_size"], data["en_13402_3"]["letter"]) == ("100", "M", "L")
    assert data["chart_grade"]
    bust = next(one for one in data["measures"] if one["key"] == "bust_girth")
    assert (bust["alone"], bust["size_number"]) == ("between 100 and 104, nearer 100", "101.0")


def test_the_size_that_goes_over_the_hip_is_among_the_first_lines() -> None:
    """Form B has a hip of 91.5 cm; of the computed sizes 80 has 90.2 and 84 has 93.6."""
    ended = typed("measures", "compare", FORMS[0], "--chart", "women", "--garment", "trousers")
    lines = ended.out.splitlines()
    assert lines[0].endswith("for trousers:")
    assert lines[2].startswith("goes over the hip: size 84")
    assert lines[3].startswith("U.S. Army women (ANSUR II, 2012), not civilians: waists are 3 to 7 cm above")
    data = json.loads(typed("measures", "compare", FORMS[0], "women", "-g", "trousers", "--json").out)
    assert (data["goes_over"]["size"], data["goes_over"]["key"]) == ("84", "hip_girth")
    assert data["chart_caveat"] == lines[3]


def test_a_set_of_women_against_a_chart_of_men_is_told() -> None:
    ended = typed("measures", "compare", FORMS[2], "--chart", "men")
    assert ended.code == 1
    assert "measures of women" in ended.out
    assert "[compare-populations]" in ended.out
    assert "by EN 13402-3 for women, whatever the chart" in ended.out
    two = typed("measures", "compare", "women:92", "men:100")
    assert "[compare-populations]" in two.out


def test_the_classes_of_the_standard_say_whose_they_are(tmp_path: Path) -> None:
    form = tmp_path / "form.csv"
    form.write_text("measure,value\nunit,cm\nbust_girth,101\n", encoding="utf-8")
    write_chart(even_chart(), tmp_path / "even.csv")
    assert "by EN 13402-3 for men, as the chart" in typed("measures", "compare", form, "men").out
    assert "by EN 13402-3: not known, neither names women or men" in (
        typed("measures", "compare", form, tmp_path / "even.csv").out
    )


@pytest.mark.parametrize(("form", "sizes"), [(0, ("84", "88")), (1, ("88", "92")), (2, ("96", "100"))])
def test_the_forms_come_out_where_their_tape_says(form: int, sizes: tuple[str, ...]) -> None:
    """86.5 / 66 / 91.5, 91 / 71 / 96.5 and 101 / 82.5 / 106 cm: between the classes of their busts and the
    one below, since soldiers' waists are larger (the note of the chart)."""
    data = json.loads(typed("measures", "compare", FORMS[form], "women", "--json").out)
    assert data["size"] in sizes


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
    assert "smaller than the client, 6.7 cm less than the least usual ease" in ended.out
    assert "Finished: as sewn" in ended.out
    data = json.loads(typed("measures", "compare", CLIENT, "--style", style, "--json").out)
    assert data["too_tight"]
    assert typed("measures", "compare", FORMS[1], "--style", style).code == 0


def test_a_plan_of_padding() -> None:
    ended = typed("measures", "pad", FORMS[1], CLIENT)
    assert ended.code == 0
    assert "Pad in this order: bust girth" in ended.out
    assert "cannot be shortened" in ended.out
    assert "Can it be padded: yes" in ended.out


def test_what_decides_whether_a_form_will_do_is_said_first(tmp_path: Path) -> None:
    form = tmp_path / "form.csv"
    form.write_text(
        "measure,value\nkind,form\nunit,cm\nbust_girth,88\nwaist_girth,68\nhip_depth,20\n", encoding="utf-8"
    )
    ended = typed("measures", "pad", form, CLIENT)
    assert ended.out.splitlines()[1] == (
        "Can it be padded: better a larger form, too much to lay on at 2 of 2 levels; hip girth not compared"
    )
    assert "The form has no neck base girth, upper bust girth" in ended.out
    assert "[padding-much]" in ended.out
    assert ended.code == 1
    assert "Front and back by a usual share, no arcs measured: bust girth, waist girth" in ended.out
    data = json.loads(typed("measures", "pad", form, CLIENT, "--json").out)["plans"][0]
    assert {"key": "hip_girth", "lacking": "form"} in data["not_compared"]
    assert (data["larger_form_is_better"], data["main_girths_not_compared"]) == (True, ["hip_girth"])


def test_no_share_is_said_to_be_usual_where_arcs_decide() -> None:
    out = typed("measures", "pad", FORMS[1], CLIENT).out
    (line,) = (line for line in out.splitlines() if line.startswith("Front and back by a usual share"))
    assert "hip girth" in line
    assert " bust girth" not in line.replace("upper bust girth", "")


def test_a_bare_thickness_says_as_what_it_was_read() -> None:
    ended = typed("measures", "pad", FORMS[1], CLIENT, "--layer", "5")
    assert ended.code == 2
    assert "5 was read as 5 cm" in ended.err
    assert "Write 5mm" in ended.err
    assert "[padding-thickness-bare]" in ended.err


@pytest.mark.parametrize(
    ("layer", "unit", "said"),
    [
        ("1/4", "in", 'layers of 1/4"'),
        ("5 mm", "in", "layers of 5 mm"),
        ("5 mm", "cm", "layers of 5 mm"),
        ("1/4 in", "cm", "layers of 6.35 mm"),
    ],
)
def test_layers_are_said_in_the_unit_of_the_session(layer: str, unit: str, said: str) -> None:
    assert said in typed("measures", "pad", FORMS[1], CLIENT, "--layer", layer, "--unit", unit).out


def test_what_layers_leave_short_is_told() -> None:
    """Form B has a neck of 37 cm and the client one of 38: no whole layer fits into 1 cm."""
    ended = typed("measures", "pad", FORMS[0], CLIENT)
    neck = next(line for line in ended.out.splitlines() if line.startswith("neck base girth"))
    assert neck.split()[-6:] == ["0", "0", "37.0", "cm", "1.0", "cm"]
    assert "Fill what is short with thin felt: 1 mm all round adds 0.6 cm" in ended.out
    data = json.loads(typed("measures", "pad", FORMS[0], CLIENT, "--json").out)
    assert data["plans"][0]["levels"][0]["still_short"] == 10.0


def test_a_form_that_fits_says_how_much_larger_it_is(tmp_path: Path) -> None:
    """8 mm on the bust is within two readings of a tape (1 cm, common practice), and still worth a word."""
    form, client = (tmp_path / f"{name}.csv" for name in ("form", "client"))
    form.write_text("measure,value\nunit,cm\nbust_girth,90.8\nwaist_girth,70.2\n", encoding="utf-8")
    client.write_text("measure,value\nunit,cm\nbust_girth,90\nwaist_girth,70\n", encoding="utf-8")
    lines = typed("measures", "pad", form, client).out.splitlines()
    bust, waist = (next(line for line in lines if line.startswith(key)) for key in ("bust", "waist"))
    assert bust.split()[-4:] == ["fits", "0.8", "cm", "over"]
    assert waist.split()[-1] == "fits"


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
        (("pad", CLIENT, FORMS[0]), "padding-swapped"),
        (("pad", CLIENT, FORMS[0], FORMS[1]), "padding-swapped"),
        (("pad", FORMS[1], FORMS[0], CLIENT), "padding-swapped"),
        (("pad", FORMS[0], CLIENT, "--layer", "9 cm"), "padding-thickness"),
        (("pad", FORMS[0], CLIENT, "--layer", "thick"), "number-text"),
    ],
)
def test_bad_words_are_refused_with_a_code(words: tuple[str, ...], code: str) -> None:
    ended = typed("measures", *words)
    assert ended.code == 2
    assert f"[{code}]" in ended.err
    assert not ended.out
