"""A file of bodies looked over: rows, report, and what is off in the whole file."""

import csv
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from notchbook.app.looking_over.report import COLUMNS
from notchbook.app.looking_over.whole_file import FileLookedOver, look_over_bodies, look_over_file
from notchbook.body import MeasureSet
from notchbook.body.doubts.together import together
from notchbook.body.population import population
from notchbook.errors import InputError, OutputError
from notchbook.units import LengthStyle

CM = LengthStyle("cm")
KEYS = (
    "height", "bust_girth", "waist_girth", "hip_girth", "back_waist_length", "front_waist_length",
    "arm_length", "upper_arm_girth", "wrist_girth", "hip_depth", "outside_leg", "inside_leg", "standing_rise",
    "thigh_girth", "calf_girth", "ankle_girth",
)  # fmt: skip
Row = dict[str, float]


def drawn(count: int) -> list[Row]:
    """Bodies drawn from the population of women itself, mm."""
    bare = MeasureSet.from_mm("A", dict.fromkeys(KEYS, 500.0))
    common = together(population("women"), bare)
    chance = np.random.default_rng(5)
    values = chance.multivariate_normal(common.mean, common.covariance, count)
    return [dict(zip(common.keys, row.tolist(), strict=True)) for row in values]


def written(path: Path, rows: list[Row], named: str = "women") -> Path:
    with path.open("w", encoding="utf-8", newline="") as stream:
        writer = csv.writer(stream)
        writer.writerow(("id", "unit", "population", *KEYS))
        for number, row in enumerate(rows):
            cells = [f"{row[key] / 10:.1f}" for key in KEYS]
            writer.writerow((f"k{number}", "cm", named, *cells))
    return path


def looked(folder: Path, change: Callable[[Row, int], None], count: int = 40) -> FileLookedOver:
    rows = drawn(count)
    for number, row in enumerate(rows):
        change(row, number)
    return look_over_bodies(written(folder / "bodies.csv", rows), None, CM, folder / "report.csv")


def report(folder: Path) -> dict[str, dict[str, str]]:
    with (folder / "report.csv").open(encoding="utf-8", newline="") as stream:
        return {row["id"]: row for row in csv.DictReader(stream)}


def test_a_slip_stands_in_the_report_with_its_name_and_its_repair(tmp_path: Path) -> None:
    def slip(row: Row, number: int) -> None:
        row.update({"wrist_girth": 155.0} if number == 3 else {})
        row.update({"wrist_girth": row["wrist_girth"] / 2.54} if number == 3 else {})

    done = looked(tmp_path, slip)
    assert done.shifts == () and done.nobody == 0
    row = report(tmp_path)["k3"]
    assert tuple(row) == COLUMNS
    assert (row["level"], row["measure"], row["unit"]) == ("stop", "wrist_girth", "cm")
    slips, repairs = row["slip"].split(" or "), row["repair"].split(" or ")
    assert len(slips) == len(repairs) <= 3
    key, _, value = repairs[slips.index("other-unit")].partition("=")
    assert key == "wrist_girth" and float(value) == pytest.approx(15.5, abs=0.1)
    assert float(row["low"]) < float(row["expected"]) < float(row["high"])
    assert float(row["worst_z"]) < -4
    assert sum(one["level"] == "stop" for one in report(tmp_path).values()) <= 2


def test_rows_that_cannot_be_read_are_reported_and_the_rest_goes_on(tmp_path: Path) -> None:
    path = written(tmp_path / "bodies.csv", drawn(3))
    lines = path.read_text(encoding="utf-8").splitlines()
    lines[2] = lines[2].replace(",cm,", ",parsec,")
    path.write_text("\n".join([*lines, lines[1], "k9,cm,women,abc"]), encoding="utf-8")
    done = look_over_bodies(path, None, CM, tmp_path / "report.csv")
    assert done.count("refused") == 3 and len(done.rows) == 5
    assert [row.codes for row in done.rows if row.level == "refused"] == [
        ("length-unit-unknown",), ("bodies-id-twice",), ("number-text",)
    ]  # fmt: skip


def test_impossible_values_are_no_refusal_here(tmp_path: Path) -> None:
    done = looked(tmp_path, lambda row, number: row.update({"hip_girth": 95.3} if number == 2 else {}))
    assert done.count("refused") == 0
    row = report(tmp_path)["k2"]
    assert row["level"] == "stop" and row["measure"] == "hip_girth"


def test_a_length_to_the_navel_in_every_row_is_named_once(tmp_path: Path) -> None:
    # Outside: the navel lies 46 mm below the natural waist, on average over women (ANSUR II).
    done = looked(tmp_path, lambda row, number: row.update(back_waist_length=row["back_waist_length"] + 46.0))
    assert [(one.problem.code, one.shift.keys) for one in done.shifts] == [
        ("file-to-which-waist", ("back_waist_length",))
    ]
    assert "navel" in done.shifts[0].problem.text()
    assert done.shifts[0].shift.off == pytest.approx(46, abs=12)
    assert done.count("fine") >= 25


def test_all_lengths_to_the_navel_are_named_once_and_judged_as_such(tmp_path: Path) -> None:
    def lower(row: Row, number: int) -> None:
        for key, shift in (("back_waist_length", 1), ("front_waist_length", 1), ("hip_depth", -1)):
            row[key] += shift * 46.0
        for key in ("outside_leg", "standing_rise"):
            row[key] -= 46.0
        row["waist_girth"] += 20.0

    done = looked(tmp_path, lower)
    assert [one.problem.code for one in done.shifts] == ["file-to-which-waist"]
    assert len(done.shifts[0].shift.keys) == 5 and done.shifts[0].shift.level == "navel"
    assert done.count("stop") <= 2


def test_a_column_in_inches_is_named_once_and_a_row_unlike_the_file_still_stands_out(tmp_path: Path) -> None:
    def inches(row: Row, number: int) -> None:
        if number != 7:
            row["arm_length"] /= 2.54

    done = looked(tmp_path, inches)
    assert [(one.problem.code, one.shift.keys) for one in done.shifts] == [
        ("file-other-unit", ("arm_length",))
    ]
    assert report(tmp_path)["k7"]["codes"].split()[0] == "measure-unlike-file"
    assert done.count("fine") >= 25


def test_a_measure_taken_another_way_is_named_once(tmp_path: Path) -> None:
    done = looked(tmp_path, lambda row, number: row.update(arm_length=row["arm_length"] - 60.0))
    assert [(one.problem.code, one.shift.keys) for one in done.shifts] == [("file-shifted", ("arm_length",))]


def test_a_few_rows_are_too_few_for_the_file_to_be_off(tmp_path: Path) -> None:
    done = looked(tmp_path, lambda row, number: row.update(arm_length=row["arm_length"] - 60.0), count=8)
    assert done.shifts == ()


def test_the_population_is_never_guessed_and_that_of_the_file_goes_first(tmp_path: Path) -> None:
    path = written(tmp_path / "bodies.csv", drawn(4), named="")
    bare = look_over_bodies(path, None, CM)
    assert bare.nobody == 4 and all(row.standing is None for row in bare.rows)
    assert look_over_bodies(path, "women", CM).nobody == 0
    men = written(tmp_path / "men.csv", drawn(4), named="men")
    assert look_over_bodies(men, "women", CM).rows == look_over_bodies(men, "men", CM).rows


def test_on_several_processes_the_rows_are_the_same(tmp_path: Path) -> None:
    path = written(tmp_path / "bodies.csv", drawn(520))
    assert look_over_bodies(path, None, CM, cores=2).rows == look_over_bodies(path, None, CM).rows


def test_stopped_by_the_keyboard_no_report_is_left(tmp_path: Path) -> None:
    def stop(done: int) -> None:
        if done == 3:
            raise KeyboardInterrupt

    path = written(tmp_path / "bodies.csv", drawn(6))
    with pytest.raises(KeyboardInterrupt):
        look_over_bodies(path, None, CM, tmp_path / "report.csv", progress=stop)
    assert sorted(one.name for one in tmp_path.iterdir()) == ["bodies.csv"]


def test_a_report_that_cannot_be_written_is_refused(tmp_path: Path) -> None:
    path = written(tmp_path / "bodies.csv", drawn(2))
    before = path.read_bytes()
    with pytest.raises(InputError, match="suffix-unknown"):
        look_over_bodies(path, None, CM, tmp_path / "report.txt")
    with pytest.raises(InputError, match="output-over-input"):
        look_over_bodies(path, None, CM, path)
    with pytest.raises(OutputError, match="output-folder-missing"):
        look_over_bodies(path, None, CM, tmp_path / "nowhere" / "report.csv")
    assert path.read_bytes() == before


def test_one_body_is_read_as_typed_in_its_own_unit(tmp_path: Path) -> None:
    path = tmp_path / "one.csv"
    path.write_text(
        "measure,value\nunit,in\nheight,66\nhip_girth,83 1/2\nthigh_girth,22 1/2\n", encoding="utf-8"
    )
    measures, found, style = look_over_file(path, "women")
    assert style.unit == "in" and measures.population == "women"
    assert found.level == "stop"
    assert any('38 1/2" would fit' in doubt.problem.next_step() for doubt in found.doubts)
    assert look_over_file(path, "women", "cm")[2].unit == "cm"
