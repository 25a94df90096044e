"""`notchbook draft` and `check` with what is new round blocks: asking, cures, ease table, contradictions."""

import json
from pathlib import Path
from typing import Any

import pytest
import typer

from notchbook.app.style_file import read_style
from notchbook.body import MeasureSet, write_measures
from notchbook.cli import asking, blocks, check, draft, mtm
from support.command import typed
from support.odd_steps import register
from support.paired_blocks import LID, REFUSAL, TRAY, tray_body

COMMANDS = (blocks, check, draft, mtm)
"""Imported before the blocks are registered, so that they know them."""


@pytest.fixture(autouse=True)
def paired(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """The tray and the lid are blocks until the test is over, and this is the folder."""
    register(monkeypatch, TRAY, LID)
    monkeypatch.chdir(tmp_path)


def stored(body: MeasureSet, name: str = "her.json") -> str:
    write_measures(body, Path(name))
    return name


def answering(monkeypatch: pytest.MonkeyPatch, *answers: str) -> list[str]:
    """Somebody at the terminal who types these; the list of what is not yet typed."""
    left = list(answers)
    monkeypatch.setattr(asking, "may_ask", lambda *, as_json: not as_json)
    monkeypatch.setattr(typer, "prompt", lambda *_words, **_options: left.pop(0))
    return left


def data(*words: str) -> dict[str, Any]:
    told: dict[str, Any] = json.loads(typed(*words).out)
    return told


def test_the_cloth_is_asked_for_by_number(monkeypatch: pytest.MonkeyPatch) -> None:
    left = answering(monkeypatch, "0", "three", "²", "2")
    ended = typed("draft", "lid", "-m", stored(tray_body()))
    assert ended.code in (0, 1), ended.err
    assert "  1  knit: 0 mm" in ended.err
    assert ended.err.count("Type a number from 1 to 2.") == 3
    assert '--set "cloth=woven"' in ended.out
    assert not left


def test_a_program_and_a_pipe_are_refused_with_what_to_add(monkeypatch: pytest.MonkeyPatch) -> None:
    file = stored(tray_body())
    ended = typed("draft", "lid", "-m", file)
    assert ended.code == 2
    assert "  --set cloth=woven   woven: 5 mm" in ended.err
    answering(monkeypatch)
    told = data("draft", "lid", "-m", file, "--json")
    assert (told["ok"], told["facts"]["setting"]) == (False, "cloth")
    assert told["facts"]["choices"] == ["knit", "woven"]


def test_settings_of_both_blocks_are_told(monkeypatch: pytest.MonkeyPatch) -> None:
    told = data(
        "draft", "lid", "-m", stored(tray_body()), "--json", "--set", "cloth=knit", "--set", "tray.lowered=1"
    )
    assert [step["operation"] for step in told["steps"]] == ["tray", "lid"]
    assert told["steps"][0]["parameters"]["lowered"] == "1 cm"
    assert told["parameters"]["cloth"] == "knit"


def test_the_ease_table_holds_girths_then_lengths_with_what_is_finished() -> None:
    words = ("draft", "lid", "-m", stored(tray_body()), "--set", "cloth=knit")
    told = {row["name"]: row for row in data(*words, "--json")["eases"]}
    assert [row["kind"] for row in told.values()] == ["girth", "length", "length"]
    assert told["lid/rim_length"]["pattern"] == pytest.approx(212.0)
    assert told["lid/rim_length"]["finished"] == pytest.approx(200.0)
    lines = [line.split() for line in typed(*words).out.splitlines()]
    heads = [line for line in lines if line[:1] in (["girth"], ["length"])]
    assert heads == [
        [kind, "body", "ease", "pattern", "finished", "usual", "ease"] for kind in ("length", "girth")
    ]


def test_what_was_asked_for_comes_first_and_the_other_block_in_short() -> None:
    words = ("draft", "lid", "-m", stored(tray_body()), "--set", "cloth=knit")
    short, whole = typed(*words).out, typed(*words, "--all").out
    assert short.index("lid, rim length") < short.index("tray, bust girth")
    assert "tray, height" not in short and "add --all" in short
    assert "tray, height" in whole and "add --all" not in whole


def test_an_ease_is_said_as_an_ease() -> None:
    out = typed("draft", "lid", "-m", stored(tray_body()), "--set", "cloth=knit").out
    assert "is eased into front, right, as declared. (1.2 cm eased in)" in out


@pytest.mark.parametrize(("unit", "amount"), [("mm", "63 mm"), ("cm", "6.3 cm"), ("in", '2 1/2"')])
def test_a_refusal_and_its_cure_say_one_number(unit: str, amount: str) -> None:
    body = tray_body(upper_arm_girth=263.0)
    ended = typed("draft", "lid", "-m", stored(body), "--set", "cloth=knit", "--unit", unit)
    assert ended.code == 2
    assert f"Lower the tray by {amount}: add --take" in ended.err


@pytest.mark.parametrize(
    ("answer", "waist", "level"),
    [("natural", 940.0, "natural"), ("other", 700.0, "natural"), ("navel", 940.0, "navel")],
)
def test_the_waist_is_answered_in_the_command(answer: str, waist: float, level: str) -> None:
    file = stored(tray_body(waist_girth=940.0))
    ended = typed("draft", "tray", "-m", file, "--waist", answer, "--out", "tray.json")
    assert "To which waist" not in ended.err
    drafted = read_style(Path("tray.json")).measures
    assert (drafted.value("waist_girth"), drafted.waist_level) == (waist, level)


def test_the_next_command_holds_the_answer(monkeypatch: pytest.MonkeyPatch) -> None:
    answering(monkeypatch, "3")
    file = stored(tray_body(waist_girth=940.0))
    assert "--waist navel --out" in typed("draft", "tray", "-m", file).out
    assert "--waist" not in typed("draft", "tray", "-m", stored(tray_body(), "b.json")).out


def test_closures_are_counted_and_stand_in_the_data() -> None:
    words = ("draft", "tray", "-m", stored(tray_body()))
    told = data(*words, "--json")["closures"]
    assert told
    assert all(one["agrees"] for one in told if one["kind"] == "length")
    agreeing = sum(one["agrees"] for one in told)
    assert f"Closures: {agreeing} of {len(told)} agree, worst length 0 mm off." in typed(*words).out


def test_a_refusal_offers_its_cure_by_number_and_word() -> None:
    file = stored(tray_body(upper_arm_girth=263.0))
    words = ("draft", "lid", "-m", file, "--set", "cloth=knit")
    ended = typed(*words)
    assert ended.code == 2
    assert "1  Lower the tray by 6.3 cm: add --take skirt-above-hip" in ended.err
    told = data(*words, "--json")
    assert told["cures"][0]["raised_by"] == 63.0
    assert not {"cures", "offered", "contradiction"} & set(told["facts"])


def test_a_cure_is_taken_by_its_word_and_stands_in_the_style() -> None:
    file = stored(tray_body(upper_arm_girth=263.0))
    ended = typed("draft", "lid", "-m", file, "--set", "cloth=knit", "--take", REFUSAL, "--out", "lid.json")
    assert "Taken: Lower the tray by 6.3 cm (tray-1)." in ended.out
    assert read_style(Path("lid.json")).recipe.step("tray-1").parameters["lowered"] == "63 mm"


def test_a_cure_that_is_not_called_for_is_refused_and_nothing_written() -> None:
    file = stored(tray_body())
    ended = typed("draft", "lid", "-m", file, "--set", "cloth=knit", "--take", REFUSAL, "--out", "lid.json")
    assert ended.code == 2
    assert "[cure-not-offered]" in ended.err
    assert not Path("lid.json").exists()


def test_a_style_is_checked_on_a_fuller_body_and_takes_the_cure() -> None:
    typed("draft", "lid", "-m", stored(tray_body()), "--set", "cloth=knit", "--out", "lid.json")
    fuller = stored(tray_body(upper_arm_girth=263.0), "fuller.json")
    refused = typed("check", "lid.json", "-m", fuller)
    assert refused.code == 2
    assert f"--take {REFUSAL}" in refused.err
    taken = typed("check", "lid.json", "-m", fuller, "--take", REFUSAL, "--out", "wider.json")
    assert taken.code in (0, 1), taken.err
    assert read_style(Path("wider.json")).recipe.step("tray-1").parameters["lowered"] == "63 mm"
    over = typed("check", "lid.json", "-m", fuller, "--take", REFUSAL, "--out", "lid.json")
    assert "[output-over-input]" in over.err


def test_made_to_measure_takes_cures_where_they_are_called_for() -> None:
    Path("bodies.csv").write_text(
        "id,unit,population,bust_girth,waist_girth,upper_arm_girth\na,mm,women,900,700,190\nb,mm,women,900,700,263\n"
    )
    words = ("mtm", "lid", "-b", "bodies.csv", "-r", "out.csv", "--set", "cloth=knit", "--cores", "1")
    assert data(*words, "--json")["drafted"] == 1
    told = data(*words, "--take", REFUSAL, "--json")
    assert (told["drafted"], told["cured"]) == (2, 1)


def test_a_contradiction_is_told_with_the_value_that_explains_both() -> None:
    file = stored(tray_body(waist_girth=940.0))
    words = ("draft", "tray", "-m", file)
    ended = typed(*words)
    assert "Bust girth 90.0 cm and waist girth 94.0 cm: waist girth 70.0 cm would explain both" in ended.out
    assert "(24.0 cm less)." in ended.out
    assert data(*words, "--json")["contradictions"][0]["explains"] == "waist_girth"


@pytest.mark.parametrize(
    ("answer", "waist", "level"), [("1", 940.0, "natural"), ("2", 700.0, "natural"), ("3", 940.0, "navel")]
)
def test_to_which_waist_is_asked_once_at_a_terminal(
    monkeypatch: pytest.MonkeyPatch, answer: str, waist: float, level: str
) -> None:
    left = answering(monkeypatch, answer)
    file = stored(tray_body(waist_girth=940.0))
    ended = typed("draft", "tray", "-m", file, "--out", "tray.json")
    assert ended.code in (0, 1), ended.err
    assert not left
    assert "To which waist were they taken?" in ended.err
    drafted = read_style(Path("tray.json")).measures
    assert (drafted.value("waist_girth"), drafted.waist_level) == (waist, level)
    assert ("as you said" in ended.out) == (answer != "1")


def test_the_waist_is_not_asked_where_the_set_says_it(monkeypatch: pytest.MonkeyPatch) -> None:
    answering(monkeypatch)
    body = tray_body(waist_girth=940.0)
    told = MeasureSet("Invented", body.values, population="women", waist_level="lower", waist_drop=30.0)
    assert "To which waist" not in typed("draft", "tray", "-m", stored(told)).err


def test_blocks_are_listed_with_all_that_they_state() -> None:
    told = {block["name"]: block for block in data("blocks", "--json")["blocks"]}
    tray, lid = told["tray"], told["lid"]
    assert (tray["estimated"], tray["helpful"]) == (["hip_girth"], ["height"])
    assert tray["sometimes"] == [{"when": "with shaping", "keys": ["waist_girth"]}]
    assert tray["eases"][0]["source"] == "invented for a test"
    assert list(tray["refuses"]) == ["skirt-above-hip"]
    assert lid["drafted_with"] == ["tray"]
    shown = typed("blocks").out
    for words in ("needed with shaping", "estimated when missing", "Drafted with: tray"):
        assert words in shown
    assert "Refused:" not in shown
    alone = typed("blocks", "tray").out
    for words in ("4.0 cm to 8.0 cm", "invented for a test", "Refused:", "[skirt-above-hip]"):
        assert words in alone
    assert "lid" not in alone
    assert "[block-unknown]" in typed("blocks", "gown").err


def test_a_mistyped_cure_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    words = ("draft", "lid", "-m", stored(tray_body(upper_arm_girth=263.0)), "--set", "cloth=knit")
    ended = typed(*words, "--take", "skirt-above-hop")
    assert ended.code == 2
    assert "skirt-above-hop" in ended.err
    assert "skirt-above-hop" not in typed(*words).err


def test_a_cure_is_taken_by_its_number_at_a_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    left = answering(monkeypatch, "1")
    words = ("draft", "lid", "-m", stored(tray_body(upper_arm_girth=263.0)), "--set", "cloth=knit")
    ended = typed(*words)
    assert "  1  Lower the tray by 6.3 cm" in ended.err
    assert "Taken: Lower the tray by 6.3 cm" in ended.out
    assert f"--take {REFUSAL}" in ended.out
    left.append("2")
    assert typed(*words).code == 2
    assert not left


def test_one_advice_for_several_findings_is_told_once() -> None:
    out = typed("draft", "tray", "-m", stored(tray_body()), "--set", "lowered=-15").out
    advised = [line for line in out.splitlines() if line.startswith("     ")]
    assert len(advised) == len(set(advised))


def test_the_answer_natural_is_heard() -> None:
    file = stored(tray_body(waist_girth=940.0))
    assert (
        "You said: all to the natural waist." in typed("draft", "tray", "-m", file, "--waist", "natural").out
    )
    assert "Add --waist other" in typed("draft", "tray", "-m", file).out


def test_a_picture_is_no_paper() -> None:
    file = stored(tray_body())
    words = ("draft", "tray", "-m", file, "--despite-findings", "--out")
    assert "--out tray.pdf   (to print at full size)" in typed(*words, "tray.png").out
    assert "test square" in typed(*words, "tray.pdf").out


def test_what_is_missing_is_told_by_label_with_how_it_is_taken() -> None:
    body = MeasureSet.from_mm("Invented", {"bust_girth": 900.0}, population="women")
    ended = typed("draft", "skirt", "-m", stored(body))
    assert ended.code == 2
    lines = [line for line in ended.err.splitlines() if line.startswith("  ")]
    assert [line.split()[0] for line in lines] == ["waist_girth", "hip_girth", "hip_depth"]
    assert lines[0].startswith("  waist_girth   Waist girth: ")
    assert "--estimate" in ended.err


def test_exchanged_girths_are_named_beside_the_refusal() -> None:
    values = {
        "height": 1680.0, "bust_girth": 760.0, "waist_girth": 920.0, "hip_girth": 980.0, "across_back": 350.0,
        "across_chest": 330.0, "back_waist_length": 400.0, "neck_base_girth": 370.0, "shoulder_length": 123.0,
        "scye_depth": 190.0, "front_waist_length": 438.0, "center_front_length": 350.0,
        "neck_to_bust_point": 265.0, "bust_point_width": 190.0,
    }  # fmt: skip
    file = stored(MeasureSet.from_mm("Invented", values, population="women"))
    ended = typed("draft", "bodice", "-m", file)
    assert ended.code == 2
    assert "The measures themselves: " in ended.err
    assert "notchbook measures check her.json" in ended.err
