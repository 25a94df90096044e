"""The verbs of the command line: what they print, write and how they end."""

import json
import re
from pathlib import Path

import pytest

from notchbook.app.demo import demo_client, demo_form
from notchbook.body import write_measures
from notchbook.cli.main import VERBS
from support.command import typed

DAY = ("--date", "2026-03-31")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with the invented form and client of the demonstration."""
    write_measures(demo_form(), tmp_path / "form.json")
    write_measures(demo_client(), tmp_path / "client.json")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_demo_makes_the_whole_set_of_papers(folder: Path) -> None:
    ended = typed("demo", "--out", "out", *DAY)
    assert ended.code == 0, ended.out + ended.err
    made = {path.name for path in (folder / "out").iterdir()}
    assert made == {"pattern.pdf", "card.pdf", "style.json", "findings.json", "preview.png"}
    for said in ("invented", "Waistband", "72.0 cm", "Next:", "test square", "notchbook open"):
        assert said in ended.out
    assert json.loads((folder / "out/findings.json").read_text())["broken"] == []


def test_the_sewing_order_of_the_demonstration_can_be_read(folder: Path) -> None:
    typed("demo", "--out", "out", *DAY)
    ended = typed("sewing-order", "out/style.json", "--json")
    assert ended.code == 0, ended.out + ended.err
    told = json.loads(ended.out)
    assert told["gaps"] == []
    assert told["waiting"] == []
    numbers = [line["number"] for line in told["lines"]]
    assert numbers == list(range(1, len(numbers) + 1))
    at = [line["text"] for line in told["lines"]]
    side = next(index for index, text in enumerate(at) if "side seam" in text)
    band = next(index for index, text in enumerate(at) if "waistband" in text and "Fuse" not in text)
    assert side < band, "the waist goes into its band after the side seams"


def test_demo_twice_gives_the_same_bytes(folder: Path) -> None:
    for name in ("one", "two"):
        assert typed("demo", "--out", name, *DAY).code == 0
    for path in (folder / "one").iterdir():
        assert path.read_bytes() == (folder / "two" / path.name).read_bytes(), path.name


def test_draft_prints_body_ease_and_pattern(folder: Path) -> None:
    ended = typed("draft", "skirt", "--measures", "form.json")
    assert ended.code == 0
    girths = {row[0]: row[1:] for row in rows(ended.out)}
    assert girths["skirt, waist girth"][:3] == ["70.5 cm", "1.5 cm", "72.0 cm"]
    assert girths["skirt, hip girth"][:3] == ["97.0 cm", "5.0 cm", "102.0 cm"]
    assert "notchbook draft skirt --measures form.json --out skirt.json" in ended.out
    assert not list(folder.glob("skirt*"))


def test_draft_in_inches(folder: Path) -> None:
    """28 3/8 in waist: 31 1/4 in of the client plus 9/16 in (14.3 mm to the nearest 1/16 of 15 mm)."""
    ended = typed("draft", "skirt", "-m", "client.json", "--unit", "in")
    girths = {row[0]: row[1:] for row in rows(ended.out)}
    assert girths["skirt, waist girth"][:3] == ['31 1/4"', '9/16"', '31 13/16"']


@pytest.mark.parametrize("unit", ["cm", "in", "mm"])
def test_a_bare_number_takes_the_unit(unit: str, folder: Path) -> None:
    """25.4 mm are one inch (international agreement of 1959)."""
    bare = {"cm": "58", "in": "23", "mm": "580"}[unit]
    told = json.loads(
        typed("draft", "skirt", "-m", "form.json", "-s", f"length={bare}", "-u", unit, "--json").out
    )
    assert told["parameters"]["length"] == f"{bare} {unit}"


@pytest.mark.parametrize(
    ("setting", "unit", "kept"),
    [
        ("waist_ease=-1", "cm", "-1 cm"),
        ("length=hip_depth + 40", "cm", "hip_depth + 40 cm"),
        ("length=hip_depth + 16", "in", "hip_depth + 16 in"),
    ],
)
def test_each_bare_number_of_an_amount_takes_the_unit(
    setting: str, unit: str, kept: str, folder: Path
) -> None:
    told = json.loads(typed("draft", "skirt", "-m", "form.json", "-s", setting, "-u", unit, "--json").out)
    assert told["parameters"][setting.partition("=")[0]] == kept


def test_what_was_set_is_said_with_its_unit_and_goes_on(folder: Path) -> None:
    """60 typed where inches are read is a skirt of 152 cm: the unit must be seen."""
    told = typed("draft", "skirt", "-m", "client.json", "--set", "length=60", "--unit", "in").out
    assert "\nSet: length 60 in.\n" in told
    assert '--measures client.json --set "length=60 in" --unit in --out skirt.json' in told
    assert "Set:" not in typed("draft", "skirt", "-m", "client.json").out


def test_the_next_step_stays_with_the_measures_and_the_unit(folder: Path) -> None:
    """Else the next command prints the style's own body, or centimeters for one who works in inches."""
    drafted = typed("draft", "skirt", "-m", "form.json", "--unit", "in", "--out", "skirt.json").out
    assert "notchbook cut skirt.json --unit in" in drafted
    assert "notchbook print skirt.json --unit in --out pattern.pdf" in drafted
    for verb in ("check", "cut"):
        said = typed(verb, "skirt.json", *OTHER, "--unit", "in").out
        assert "notchbook print skirt.json --measures client.json --unit in --out pattern.pdf" in said
        assert "notchbook print skirt.json --out pattern.pdf" in typed(verb, "skirt.json").out


def test_a_word_that_is_not_taken_is_refused_without_words_of_a_library(folder: Path) -> None:
    refused = typed("draft", "skirt", "-m", "form.json", "--unit", "inch")
    assert refused.code == 2
    assert "'inch' is not one of 'mm', 'cm', 'in'" in refused.err
    assert "error" not in refused.err.lower()


def test_settings_reach_the_draft(folder: Path) -> None:
    words = ("draft", "skirt", "-m", "form.json", "--json")
    told = json.loads(typed(*words, "-s", "hip_ease=70 mm", "-s", "back_darts=2").out)
    assert told["eases"][1]["ease"] == 70.0
    assert told["eases"][1]["pattern"] == pytest.approx(970.0 + 70.0, abs=0.01)
    assert told["parameters"]["back_darts"] == 2


@pytest.mark.parametrize("ending", ["json", "svg", "pdf", "png"])
def test_draft_writes_each_kind_of_file(ending: str, folder: Path) -> None:
    starts = {"json": b"{", "svg": b"<?xml", "pdf": b"%PDF-", "png": b"\x89PNG"}
    ended = typed("draft", "skirt", "-m", "form.json", "--out", f"skirt.{ending}")
    assert ended.code == 0
    assert (folder / f"skirt.{ending}").read_bytes().startswith(starts[ending])
    assert f"written: skirt.{ending}" in ended.out


def test_a_finding_is_told_and_the_command_ends_with_1(folder: Path) -> None:
    """One dart of more than 40 mm (handbook practice: 40 to 50 at most) is to be looked at."""
    ended = typed("draft", "skirt", "-m", "form.json", "--set", "back_darts=1", "--set", "waist_ease=0 mm")
    assert ended.code == 1
    assert re.search(r"^look .*takes up.*\[dart-wide\]$", ended.out, re.MULTILINE)


def test_a_style_is_checked_cut_and_printed(folder: Path) -> None:
    assert typed("draft", "skirt", "-m", "form.json", "--out", "skirt.json").code == 0
    checked = typed("check", "skirt.json")
    assert (checked.code, "0 to stop for" in checked.out) == (0, True)
    cut = typed("cut", "skirt.json")
    assert cut.code == 0
    assert [row[1] for row in rows(cut.out) if row[0] in ("1/2", "2/2")] == ["Front", "Back"]
    assert "2 pieces, 3 panels." in cut.out
    printed = typed("print", "skirt.json", "--out", "p.pdf", "--paper", "a4", "--card", "c.pdf", *DAY)
    assert printed.code == 0
    assert "100 %" in printed.out
    assert {path.name for path in folder.glob("*.pdf")} == {"p.pdf", "c.pdf"}


def test_a_style_runs_on_another_body(folder: Path) -> None:
    typed("draft", "skirt", "-m", "form.json", "--out", "skirt.json")
    own, other = (json.loads(typed("check", "skirt.json", *words, "--json").out) for words in ((), OTHER))
    assert (own["body"], other["body"]) == ("Form A", "Marta V.")
    assert other["eases"][0]["pattern"] == pytest.approx(31.25 * 25.4 + 15.0, abs=0.01)


OTHER = ("--measures", "client.json")


def test_papers_are_refused_where_cloth_would_be_spoiled_unless_she_says_so(folder: Path) -> None:
    typed("draft", "skirt", "-m", "form.json", "--out", "skirt.json")
    spoil(folder / "skirt.json")
    checked = typed("check", "skirt.json")
    assert (checked.code, "\nSTOP " in checked.out) == (1, True)
    refused = typed("print", "skirt.json", "--out", "p.pdf")
    assert (refused.code, "[papers-refused]" in refused.err) == (2, True)
    assert not (folder / "p.pdf").exists()
    assert typed("print", "skirt.json", "--out", "p.pdf", "--despite-findings").code == 1
    assert (folder / "p.pdf").exists()


def spoil(path: Path) -> None:
    """Make the front 2 cm longer and not the back, so that the side seam does not walk."""
    data = json.loads(path.read_text())
    step = {
        "id": "change_length-1",
        "operation": "change_length",
        "version": 1,
        "slug": "longer",
        "parameters": {"hems": ["skirt.front/hem"], "amount": "2 cm"},
    }
    data["recipe"]["steps"].append(step)
    path.write_text(json.dumps(data))


def test_made_to_measure_reports_every_body(folder: Path) -> None:
    (folder / "bodies.csv").write_text(
        "id,unit,waist_girth,hip_girth,hip_depth\n"
        "a,cm,70,97,20.5\nb,cm,7,97,20\nc,in,28 1/2,38,8\nd,cm,70,97,\n"
    )
    ended = typed("mtm", "skirt", "-b", "bodies.csv", "-r", "report.csv", "--cores", "1")
    assert ended.code == 1
    assert "4 bodies: 2 drafted, 2 refused" in ended.out
    lines = [line.split(",") for line in (folder / "report.csv").read_text().splitlines()[1:]]
    assert [line[:3] for line in lines] == [
        ["a", "yes", ""],
        ["b", "no", "measure-impossible"],
        ["c", "yes", ""],
        ["d", "no", "measure-missing"],
    ]
    assert typed("mtm", "skirt", "-b", "bodies.csv", "-r", "two.csv", "--cores", "2").code == 1
    two = [line.split(",")[:-1] for line in (folder / "two.csv").read_text().splitlines()]
    assert two[1:] == [line[:-1] for line in lines]


def test_blocks_names_what_a_block_needs(folder: Path) -> None:
    told = json.loads(typed("blocks", "--json").out)
    skirt = next(block for block in told["blocks"] if block["name"] == "skirt")
    assert skirt["needed"] == ["waist_girth", "hip_girth", "hip_depth"]
    shown = typed("blocks")
    assert (shown.code, "hip_depth" in shown.out) == (0, True)


@pytest.mark.parametrize("code", ["measure-missing", "[measure-missing]", "seam-walks", "dart-legs-differ"])
def test_why_explains_refusals_checks_and_findings(code: str) -> None:
    ended = typed("why", code)
    assert ended.code == 0
    assert "What to do:" in ended.out
    assert len(ended.out.split()) > 30


def test_without_words_the_help_is_shown() -> None:
    ended = typed()
    assert (ended.code, "demo" in ended.out) == (0, True)


@pytest.mark.parametrize("verb", VERBS)
def test_each_verb_has_help_with_an_example(verb: str) -> None:
    ended = typed(verb, "--help")
    assert ended.code == 0
    assert f"Example: notchbook {verb}" in ended.out


def rows(text: str) -> list[list[str]]:
    """The cells of the tables in what was printed: columns are parted by at least two blanks."""
    return [re.split(r"\s{2,}", line.strip()) for line in text.splitlines() if "  " in line.strip()]
