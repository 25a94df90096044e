"""`notchbook measures check`: what it says, how it ends."""

import json
from pathlib import Path

from support.command import typed

HEAD = "measure,value\nname,Invented\nunit,cm\n"
ONE = HEAD + "{more}height,168\nbust_girth,92\nwaist_girth,74\nhip_girth,{hip}\n"
MORE = "thigh_girth,57.5\nwrist_girth,15.5\ninside_leg,78.5\nupper_arm_girth,28.5\n"


def one(folder: Path, hip: str = "98", more: str = "") -> Path:
    path = folder / "client.csv"
    path.write_text(ONE.format(hip=hip, more=more) + MORE, encoding="utf-8")
    return path


def bodies(folder: Path) -> Path:
    path = folder / "bodies.csv"
    lines = ["id,unit,height,bust_girth,waist_girth,hip_girth,thigh_girth,wrist_girth"]
    lines += ["a,cm,168,92,74,98,57.5,15.5", "b,in,66,36,29,39,22 1/2,15 1/2", "c,cm,xx,92,74,98,57,15"]
    path.write_text("\n".join(lines), encoding="utf-8")
    return path


def test_a_body_that_agrees_ends_fine_and_says_against_whom_and_what_it_cannot_see(tmp_path: Path) -> None:
    ended = typed("measures", "check", one(tmp_path), "--population", "women")
    assert ended.code == 0
    assert "women of the U.S. Army survey ANSUR II (2012)" in ended.out
    assert "Nothing stands out." in ended.out
    assert "What this cannot see" in ended.out and "Bust girth" in ended.out


def test_a_slip_ends_to_check_with_the_repair_in_the_readers_unit(tmp_path: Path) -> None:
    path = one(tmp_path, "89", "population,women\n")
    ended = typed("measures", "check", path)
    assert ended.code == 1
    assert "98.0 cm would fit: were two digits swapped?" in ended.out
    inches = typed("measures", "check", path, "--unit", "in")
    assert '38 9/16" would fit: were two digits swapped?' in inches.out


def test_without_a_population_it_says_that_nothing_was_held_against_one(tmp_path: Path) -> None:
    ended = typed("measures", "check", one(tmp_path, "89"))
    assert ended.code == 0
    assert "held against no population" in ended.out and "Say women or men" in ended.out


def test_the_answer_as_data(tmp_path: Path) -> None:
    ended = typed("measures", "check", one(tmp_path, "89"), "--population", "women", "--json")
    data = json.loads(ended.out)
    assert (ended.code, data["ok"], data["level"], data["population"]) == (1, True, "stop", "women")
    doubt = data["doubts"][0]
    assert doubt["keys"] == ["hip_girth"] and doubt["suspects"][0]["key"] == "hip_girth"
    assert doubt["repairs"][0]["slip"] == "swapped-digits"
    assert abs(doubt["repairs"][0]["values"]["hip_girth"] - 980) < 0.01
    assert {one["key"] for one in data["unseen"] if one["take_twice"]} >= {"bust_girth", "waist_girth"}
    assert len(data["values"]) == 8


def test_a_file_of_bodies_with_its_report(tmp_path: Path) -> None:
    path, report = bodies(tmp_path), tmp_path / "report.csv"
    ended = typed("measures", "check", path, "--population", "women", "--report", report, "--cores", "1")
    assert ended.code == 1
    assert "3 bodies: 1 stop, 0 look again, 1 fine, 1 refused" in ended.out
    lines = report.read_text(encoding="utf-8").splitlines()
    assert [line.split(",")[:2] for line in lines[1:]] == [["a", "fine"], ["b", "stop"], ["c", "refused"]]
    data = json.loads(typed("measures", "check", path, "--population", "women", "--json").out)
    assert (data["bodies"], data["stop"], data["refused"]) == (3, 1, 1)
    assert [row["id"] for row in data["rows"]] == ["b", "c"]


def test_bodies_held_against_nobody_are_counted(tmp_path: Path) -> None:
    ended = typed("measures", "check", bodies(tmp_path), "--cores", "1")
    assert "2 of them" in ended.out and "Say women or men" in ended.out


def test_what_cannot_be_done_is_refused(tmp_path: Path) -> None:
    path = one(tmp_path)
    refused = typed("measures", "check", path, "--report", tmp_path / "report.csv")
    assert refused.code == 2 and "report-of-one-body" in refused.err
    assert typed("measures", "check", tmp_path / "none.csv").code == 2
    assert "measures-file-missing" in typed("measures", "check", tmp_path / "none.csv").err
    many = typed("measures", "check", bodies(tmp_path), "--cores", "4096")
    assert many.code == 2 and "cores-unusable" in many.err
    children = typed("measures", "check", path, "--population", "children")
    assert children.code == 2 and "Traceback" not in children.err
