"""Files of bodies that are off as a whole: nothing is hidden by what is said about the whole.

Outside: rows of ANSUR II that no population was made from (data/survey/ansur/SOURCE.md), and facts: a slip of
unit has the factor 2.54, and no body has a measure outside the possible range of the measure table.
"""

import random
from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from notchbook.app.looking_over.whole_file import FileLookedOver, look_over_bodies
from notchbook.body import MeasureSet, PopulationName, measure_entry
from notchbook.body.doubts.together import together
from notchbook.body.files.write_bodies import write_bodies
from notchbook.body.population import population
from notchbook.units import LengthStyle
from survey_rows import held_back_rows, survey_set

CM = LengthStyle("cm")
KEYS = (
    "height", "shoulder_length", "across_back", "bust_girth", "waist_girth", "hip_girth", "back_waist_length",
    "center_front_length", "upper_arm_girth", "wrist_girth", "arm_length", "hip_depth", "knee_depth",
    "outside_leg", "crotch_length", "inside_leg", "thigh_girth", "calf_girth", "ankle_girth",
)  # fmt: skip
LOWER = ("hip_depth", "knee_depth", "outside_leg", "crotch_length")
"""Lengths of trousers and skirts that hang on the waist."""
Row = dict[str, float]


def drawn(count: int, name: PopulationName = "women") -> list[Row]:
    """Bodies drawn from a population itself, mm, as the book takes them at the natural waist."""
    bare = replace(MeasureSet.from_mm("A", dict.fromkeys(KEYS, 500.0)), population=name)
    common = together(population(name), bare)
    values = np.random.default_rng(7).multivariate_normal(common.mean, common.covariance, count)
    return [dict(zip(common.keys, row.tolist(), strict=True)) for row in values]


def lowered(row: Row, number: int, keys: tuple[str, ...] = KEYS) -> Row:
    """These lengths to a waist that lies lower by some 46 mm, otherwise on each body (ANSUR II)."""
    drop = float(np.random.default_rng(number).normal(46.0, 17.0))
    return {
        key: value + (measure_entry(key).waist_shift * drop if key in keys else 0.0)
        for key, value in row.items()
    }


def looked(
    folder: Path, rows: list[Row], name: PopulationName = "women", **about: Mapping[int, str]
) -> FileLookedOver:
    sets = []
    for number, row in enumerate(rows):
        one = replace(MeasureSet.from_mm(f"b{number}", row), population=name)
        sets.append(replace(one, **{what: words[number] for what, words in about.items()}))  # type: ignore[arg-type]  # words by name
    path = folder / "bodies.csv"
    write_bodies(sets, path, ids=[f"b{number}" for number in range(len(sets))])
    return look_over_bodies(path, None, CM)


def codes(done: FileLookedOver) -> list[str]:
    return [one.problem.code for one in done.shifts]


def unlabeled(name: PopulationName, count: int = 120) -> list[Row]:
    """Rows of the survey, spread over those held back, in a file that does not say who took them."""
    rows = held_back_rows(name)
    sets = [survey_set(row, name, (*KEYS, "weight")) for row in rows[:: len(rows) // count][:count]]
    return [{key: one.value(key) for key in one.values} for one in sets]


def wild(row: Row, key: str, chance: random.Random) -> Row:
    """The row with a value that no body has."""
    low, high = measure_entry(key).possible
    return {**row, key: chance.choice((low * 0.9, 1.0, high * 1.1, 9990.0))}


CHANGES: Mapping[str, Callable[[Row, int], Row]] = {
    "lower lengths to the navel": lambda row, number: lowered(row, number, LOWER),
    "all lengths to the navel": lowered,
    "a column in inches": lambda row, number: {**row, "arm_length": row["arm_length"] / 2.54},
    "a column of halves": lambda row, number: {**row, "hip_girth": row["hip_girth"] / 2.0},
    "a column shifted": lambda row, number: {**row, "arm_length": row["arm_length"] - 70.0},
    "nothing": lambda row, number: row,
}


@pytest.mark.parametrize("change", CHANGES)
def test_no_value_that_no_body_has_is_ever_fine(tmp_path: Path, change: str) -> None:
    chance = random.Random(3)
    rows = [CHANGES[change](row, number) for number, row in enumerate(drawn(40))]
    planted = [*LOWER, "arm_length", "hip_girth", "bust_girth", "wrist_girth"] * 2
    for number, key in enumerate(planted):
        rows[number] = wild(rows[number], key, chance)
    done = looked(tmp_path, rows)
    assert [row.id for row in done.rows[: len(planted)] if row.level != "stop"] == []
    assert bool(done.shifts) == (change != "nothing")


def test_a_slip_of_unit_beside_lengths_to_another_waist_is_stopped_and_repaired(tmp_path: Path) -> None:
    rows = [lowered(row, number, LOWER) for number, row in enumerate(drawn(40))]
    true = {number: rows[number][key] for number, key in enumerate(LOWER)}
    for number, key in enumerate(LOWER):
        rows[number][key] /= 2.54
    done = looked(tmp_path, rows)
    assert [one.shift.keys for one in done.shifts] == [LOWER]
    for number, key in enumerate(LOWER):
        row = done.rows[number]
        assert row.level == "stop" and row.standing is not None and row.standing.key == key
        offers = [dict(repair.values).get(key, 0.0) for repair in row.repairs]
        assert any(abs(offer - true[number]) < 5.0 for offer in offers)
    assert done.count("fine") >= 20


def test_the_drop_that_is_told_is_the_one_that_was_taken(tmp_path: Path) -> None:
    done = looked(tmp_path, [lowered(row, number, LOWER) for number, row in enumerate(drawn(60))])
    assert codes(done) == ["file-to-which-waist"]
    assert done.shifts[0].shift.off == pytest.approx(46.0, abs=8.0)
    assert "0.0 cm" not in done.shifts[0].problem.text()


@pytest.mark.parametrize("name", ["women", "men"])
def test_a_file_that_the_survey_took_is_recognized_and_judged_so(
    tmp_path: Path, name: PopulationName
) -> None:
    rows = unlabeled(name)
    done = looked(tmp_path, rows, name)
    assert codes(done) == ["file-taken-as-survey"]
    every = range(len(rows))
    said = {"taken_as": dict.fromkeys(every, "survey"), "waist_level": dict.fromkeys(every, "navel")}
    labeled = looked(tmp_path, rows, name, **said)
    assert codes(labeled) == []
    assert [row.level for row in done.rows] == [row.level for row in labeled.rows]


@pytest.mark.parametrize("name", ["women", "men"])
def test_an_inch_in_every_row_of_such_a_file_is_at_least_looked_at(
    tmp_path: Path, name: PopulationName
) -> None:
    chance = random.Random(8)
    rows = unlabeled(name)
    for row in rows:
        row[chance.choice([key for key in KEYS if key != "weight"])] /= 2.54
    done = looked(tmp_path, rows, name)
    assert codes(done) == ["file-taken-as-survey"]
    assert [row.id for row in done.rows if row.level == "fine"] == []


@pytest.mark.parametrize("name", ["women", "men"])
def test_bodies_taken_as_the_book_says_are_not_taken_for_the_survey(
    tmp_path: Path, name: PopulationName
) -> None:
    rows = drawn(60, name)
    assert codes(looked(tmp_path, rows, name)) == []
    navel = [lowered(row, number) for number, row in enumerate(rows)]
    level = dict.fromkeys(range(len(rows)), "navel")
    assert "file-taken-as-survey" not in codes(looked(tmp_path, navel, name, waist_level=level))


def test_a_ragged_file_to_the_navel_is_recognized(tmp_path: Path) -> None:
    chance = random.Random(4)
    rows = []
    for number, row in enumerate(drawn(80)):
        kept = [key for key in KEYS if key in ("height", "hip_girth") or chance.random() < 0.75]
        rows.append({key: lowered(row, number)[key] for key in kept})
    done = looked(tmp_path, rows)
    assert codes(done) == ["file-to-which-waist"]
    assert done.shifts[0].shift.level == "navel"
    assert done.count("fine") >= 0.6 * len(rows)


def test_half_a_file_to_another_waist_is_told_as_a_half_and_no_body_is_moved(tmp_path: Path) -> None:
    rows = [lowered(row, number) if number % 2 else row for number, row in enumerate(drawn(80))]
    done = looked(tmp_path, rows)
    assert codes(done) == ["file-waist-of-some"]
    assert 20 <= done.shifts[0].shift.rows <= 45
    asked = [number for number, row in enumerate(done.rows) if "measure-to-which-waist" in row.codes]
    assert len(asked) >= 12
    assert sum(number % 2 for number in asked) >= 0.9 * len(asked)


def test_each_waist_that_is_stated_is_asked_about_by_itself(tmp_path: Path) -> None:
    """Half says the navel and is so, half says nothing and is not: only those are named."""
    rows = [lowered(row, number) for number, row in enumerate(drawn(80))]
    stated = {number: "navel" if number % 2 else "natural" for number in range(80)}
    done = looked(tmp_path, rows, waist_level=stated)
    assert [(one.problem.code, one.shift.stated) for one in done.shifts] == [
        ("file-to-which-waist", "natural")
    ]
    assert done.count("fine") >= 48


def test_a_shift_that_is_small_and_sure_is_named_and_not_taken_off(tmp_path: Path) -> None:
    def moved(count: int, by: float) -> FileLookedOver:
        return looked(tmp_path, [{**row, "wrist_girth": row["wrist_girth"] + by} for row in drawn(count)])

    done = moved(150, 6.5)
    assert [(one.problem.code, one.shift.keys) for one in done.shifts] == [
        ("file-shifted-a-little", ("wrist_girth",))
    ]
    assert done.shifts[0].shift.off == pytest.approx(6.5, abs=2.0)
    assert codes(moved(20, 6.5)) == [], "twenty bodies are not sure"
