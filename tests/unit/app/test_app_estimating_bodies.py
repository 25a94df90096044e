"""Estimates for a file of bodies: a line for each, its reason where there is none, nothing half written."""

import csv
import time
from pathlib import Path

import pytest

from notchbook.app.bodies.estimating_bodies import estimate_file, estimated_bodies
from notchbook.app.made_to_measure import COLUMNS, GarmentAsked, make_to_measure
from notchbook.app.needs.of_garment import garment_named
from notchbook.body import read_bodies
from notchbook.body.estimating.estimating import estimate
from notchbook.errors import InputError

HEAD = "id,unit,name,population,height,bust_girth,waist_girth,hip_girth,hip_depth"
LINES = (
    "a,cm,Invented 1,women,168,92,74,98,",
    "b,in,Invented 2,men,70,40,35,40,8",
    "c,cm,Invented 3,,168,92,74,98,",
    "d,cm,Invented 4,women,168,9.2,74,98,",
    "e,cm,Invented 5,women,,,,,",
)


def written(folder: Path, *lines: str) -> Path:
    file = folder / "bodies.csv"
    file.write_text("\n".join((HEAD, *lines)) + "\n", encoding="utf-8")
    return file


def rows_of(report: Path) -> dict[str, dict[str, str]]:
    return {row["id"]: row for row in csv.DictReader(report.open(encoding="utf-8"))}


def test_each_line_has_its_estimates_or_its_reason(tmp_path: Path) -> None:
    file, report = written(tmp_path, *LINES), tmp_path / "report.csv"
    done = estimate_file(file, None, report)
    rows = rows_of(report)
    assert [one.row.id for one in done] == list(rows) == ["a", "b", "c", "d", "e"]
    assert {name: rows[name]["code"] for name in rows} == {
        "a": "",
        "b": "",
        "c": "estimate-no-population",
        "d": "measure-impossible",
        "e": "estimate-nothing-measured",
    }
    measures = next(iter(read_bodies(file))).measures
    assert measures is not None
    one = estimate(measures).found["hip_depth"]
    assert (rows["a"]["hip_depth"], rows["a"]["hip_depth.error"]) == (
        f"{one.value / 10:.1f}",
        f"{one.error / 10:.1f}",
    )
    assert "height" in rows["a"]["rests_on"]
    # He was measured there.
    assert rows["b"]["hip_depth"] == ""
    assert rows["b"]["inside_leg"] != ""


def test_the_population_may_be_named_for_the_whole_file(tmp_path: Path) -> None:
    file = written(tmp_path, *LINES[:3])
    assert [one.error for one in estimated_bodies(file, "women")] == [None, None, None]


def test_only_what_is_asked_for_is_estimated(tmp_path: Path) -> None:
    """No line of the skirt answers to an outside leg alone."""
    (one,) = estimated_bodies(written(tmp_path, LINES[0]), garment=garment_named("skirt"))
    assert one.estimates is not None
    assert list(one.estimates.found) == ["hip_depth"]
    assert {"front_waist_arc", "front_hip_arc"} <= {left.key for left in one.estimates.left_out}


def test_a_child_among_the_bodies_is_marked_and_left_as_it_is(tmp_path: Path) -> None:
    child = "f,cm,Invented child,women,122,62,56,68,"
    out, report = tmp_path / "filled.csv", tmp_path / "report.csv"
    estimate_file(written(tmp_path, LINES[0], child), out, report)
    row = rows_of(report)["f"]
    assert (row["code"], row["inside_leg"]) == ("estimate-no-children", "")
    assert "no population of children" in row["message"]
    left = {one.id: one.measures for one in read_bodies(out)}["f"]
    assert left is not None
    assert all(measure.status == "measured" for measure in left.values.values())


def test_the_bodies_filled_in_keep_what_is_estimated_and_read_back(tmp_path: Path) -> None:
    file, out = written(tmp_path, *LINES), tmp_path / "filled.csv"
    estimate_file(file, out, None)
    back = {row.id: row.measures for row in read_bodies(out)}
    assert list(back) == ["a", "b", "c", "e"]
    filled = back["a"]
    assert filled is not None
    assert filled.values["height"].status == "measured"
    hip_depth = filled.values["hip_depth"]
    assert (hip_depth.status, hip_depth.method[:5]) == ("estimated", "from ")
    assert hip_depth.error is not None
    assert hip_depth.error > 10.0
    unfilled = back["c"]
    assert unfilled is not None
    assert "hip_depth" not in unfilled.values


def test_made_to_measure_says_which_drafts_rest_on_estimates(tmp_path: Path) -> None:
    out, report = tmp_path / "filled.csv", tmp_path / "report.csv"
    estimate_file(written(tmp_path, *LINES[:2]), out, None, garment=garment_named("skirt"))
    make_to_measure(GarmentAsked("skirt"), out, report, cores=1)
    rows = rows_of(report)
    assert "estimated" in COLUMNS
    assert (rows["a"]["estimated"], rows["b"]["estimated"]) == ("hip_depth", "")
    assert "estimates-rested-on" in rows["a"]["flags"]
    assert "estimates-rested-on" not in rows["b"]["flags"]


def test_the_bodies_and_their_report_are_never_one_file(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="outputs-same-file"):
        estimate_file(written(tmp_path, *LINES), tmp_path / "one.csv", tmp_path / "." / "one.csv")
    assert not (tmp_path / "one.csv").exists()


@pytest.mark.parametrize(
    ("name", "code"), [("report.pdf", "suffix-unknown"), ("bodies.csv", "output-over-input")]
)
def test_a_report_is_a_csv_beside_the_bodies(tmp_path: Path, name: str, code: str) -> None:
    file = written(tmp_path, *LINES)
    before = file.read_bytes()
    for places in ((None, tmp_path / name), (tmp_path / name, None)):
        with pytest.raises(InputError) as caught:
            estimate_file(file, *places)
        assert caught.value.code == code
    assert file.read_bytes() == before
    assert [path.name for path in tmp_path.iterdir()] == ["bodies.csv"]


def test_thousands_of_bodies_take_seconds(tmp_path: Path) -> None:
    lines = [f"k{number},cm,Invented,women,{160 + number % 20},92,74,98," for number in range(2000)]
    file = written(tmp_path, *lines)
    seen: list[int] = []
    started = time.perf_counter()
    estimate_file(file, None, tmp_path / "report.csv", progress=seen.append)
    # 10,000 in "seconds": measured about a second for 2,000; ten leaves room for a busy machine.
    assert time.perf_counter() - started < 10.0
    assert seen == list(range(1, 2001))
