"""The screen of `notchbook measures check`: one word for one question, and no more lines than are read."""

import json
from pathlib import Path

from support.command import typed

BODY = {
    "height": "168", "bust_girth": "92", "waist_girth": "74", "hip_girth": "98", "arm_length": "58",
    "back_waist_length": "40", "front_waist_length": "43.8", "thigh_girth": "57.5", "wrist_girth": "15.5",
}  # fmt: skip


def body(folder: Path, head: str = "", **changes: str) -> Path:
    path = folder / "client.csv"
    lines = [f"{key},{value}" for key, value in {**BODY, **changes}.items()]
    about = ["measure,value", "name,Invented", "unit,cm", "population,women", *head.split()]
    path.write_text("\n".join([*about, *lines]), encoding="utf-8")
    return path


def test_a_check_is_called_look_again_and_nothing_else(tmp_path: Path) -> None:
    ended = typed("measures", "check", body(tmp_path, bust_girth="92 & 94.5"))
    assert ended.code == 1
    assert "look again  Bust girth: the readings" in ended.out
    assert "check " not in ended.out


def test_what_this_cannot_see_is_three_lines_bust_waist_hip_first(tmp_path: Path) -> None:
    path = body(tmp_path)
    short = typed("measures", "check", path).out
    told = short.split("What this cannot see")[1]
    rows = [line for line in told.splitlines() if line.endswith("take twice") and "more" not in line]
    assert [row.split("  ")[0] for row in rows] == ["Waist girth", "Bust girth", "Hip girth"]
    assert "--all" in told
    whole = typed("measures", "check", path, "--all").out.split("What this cannot see")[1]
    assert "Wrist girth" in whole and "Wrist girth" not in told
    assert "about half of such sets pass unnoticed" in told


def test_an_estimate_that_no_longer_follows_is_named(tmp_path: Path) -> None:
    path = body(tmp_path)
    filled = tmp_path / "filled.json"
    typed("measures", "estimate", path, "--out", filled)
    data = json.loads(filled.read_text(encoding="utf-8"))
    assert "hip_depth" in data["measures"]
    assert "estimates-stale" not in typed("measures", "check", filled).out
    data["measures"]["height"] = 1800
    filled.write_text(json.dumps(data), encoding="utf-8")
    ended = typed("measures", "check", filled)
    assert ended.code == 1
    assert "no longer follow" in ended.out and "estimates-stale" in ended.out


def test_a_form_is_said_to_be_shaped_otherwise(tmp_path: Path) -> None:
    ended = typed("measures", "check", body(tmp_path, head="kind,form"))
    assert "Forms are shaped otherwise" in ended.out
    data = json.loads(typed("measures", "check", body(tmp_path, head="kind,form"), "--json").out)
    assert len(data["cautions"]) == 1


def test_a_row_that_says_nothing_is_not_fine(tmp_path: Path) -> None:
    path, report = tmp_path / "bodies.csv", tmp_path / "report.csv"
    rows = ["id,unit,population,height,bust_girth,waist_girth,hip_girth", "a,cm,women,168,92,74,98"]
    path.write_text("\n".join([*rows, "b,cm,women,,,,", "c,cm,,168,92,74,98", "a,cm,women,1,1,1,1"]))
    ended = typed("measures", "check", path, "--report", report, "--cores", "1")
    assert "4 bodies: 0 stop, 0 look again, 1 fine, 2 not held, 1 refused" in ended.out
    lines = [line.split(",")[:2] for line in report.read_text(encoding="utf-8").splitlines()[1:]]
    assert lines == [["a", "fine"], ["b", "not held"], ["c", "not held"], ["a", "refused"]]
    assert "held-nothing" in report.read_text(encoding="utf-8")
    assert ended.code == 1


def test_a_page_of_help_shows_no_braces_and_calls_each_fact_by_its_name() -> None:
    ended = typed("why", "measure-unlike-rest")
    assert "{" not in ended.out and "‹label› of ‹given›" in ended.out
