"""Estimates from measures that looking over stops at say so, one by one and in a file; and their unit."""

import csv
from pathlib import Path

import pytest
from typer.testing import CliRunner

from notchbook.app.bodies.estimating_bodies import estimate_file
from notchbook.app.looking_over.first import look_over_first, look_over_first_many
from notchbook.body import MeasureSet
from notchbook.cli.main import app
from survey_rows import held_back_rows, survey_set

SLIP = 1 / 2.54
"""Inches typed for centimeters."""


def bodies(count: int = 25) -> list[MeasureSet]:
    return [survey_set(row, "women") for row in held_back_rows("women")[:count]]


def slipped(measures: MeasureSet) -> MeasureSet:
    return measures.with_value("wrist_girth", measures.value("wrist_girth") * SLIP)


def test_a_set_that_looking_over_stops_at_is_to_be_looked_over_first() -> None:
    body = bodies(1)[0]
    assert look_over_first(body) is None
    caution = look_over_first(slipped(body))
    assert caution is not None and caution.code == "estimate-look-over-first"
    assert "Wrist girth" in caution.text()


def test_many_at_once_are_cautioned_as_one_by_one() -> None:
    sets = [slipped(one) if number % 5 == 0 else one for number, one in enumerate(bodies())]
    many = look_over_first_many([*sets, MeasureSet.from_mm("nobody", {"height": 1700.0})])
    assert [one is not None for one in many[:-1]] == [look_over_first(one) is not None for one in sets]
    assert all(many[number] is not None for number in range(0, 25, 5))
    assert many[-1] is None


@pytest.mark.parametrize("unit", ["mm", "cm", "in"])
def test_the_report_is_in_the_unit_of_each_line_and_says_what_to_look_at(tmp_path: Path, unit: str) -> None:
    factor = {"mm": 1.0, "cm": 10.0, "in": 25.4}[unit]
    lines = ["id,unit,population,height,bust_girth,waist_girth,hip_girth,thigh_girth,calf_girth"]
    for name, thigh in (("good", 600.0), ("bad", 450.0)):
        values = (1650.0, 940.0, 780.0, 1020.0, thigh, 370.0)
        lines.append(f"{name},{unit},women," + ",".join(f"{value / factor:.3f}" for value in values))
    file, report = tmp_path / "bodies.csv", tmp_path / "report.csv"
    file.write_text("\n".join(lines) + "\n", encoding="utf-8")
    estimate_file(file, None, report)
    with report.open(encoding="utf-8", newline="") as stream:
        rows = {row["id"]: row for row in csv.DictReader(stream)}
    assert (rows["good"]["unit"], rows["good"]["code"]) == (unit, "")
    assert rows["bad"]["code"] == "estimate-look-over-first"
    # Outside: the inside leg of a woman of 165 cm is 70 to 84 cm (own knowledge of the trade, wide).
    assert 700 <= float(rows["good"]["inside_leg"]) * factor <= 840
    estimate_file(file, None, report, unit="cm")
    assert {row["unit"] for row in csv.DictReader(report.open(encoding="utf-8", newline=""))} == {"cm"}


def test_the_command_says_it_before_the_table_and_in_the_unit_of_the_file(tmp_path: Path) -> None:
    file = tmp_path / "client.csv"
    values = "height,65\nbust_girth,37\nwaist_girth,31\nhip_girth,40\nthigh_girth,17 1/2\ncalf_girth,14 1/2\n"
    file.write_text("measure,value\nunit,in\n" + values, encoding="utf-8")
    run = CliRunner().invoke(app, ["measures", "estimate", str(file), "--population", "women"])
    assert "Look it over first (Thigh girth)" in run.output
    assert run.output.index("Look it over first") < run.output.index("nine of ten")
    assert " cm" not in run.output.split("\n\n")[1]
