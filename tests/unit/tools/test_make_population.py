"""The shipped populations are what their maker makes, from the rows that are not held back."""

import json
from pathlib import Path

import pytest

import make_population
from make_population import FALSE_ALARMS, JUDGED, TARGET, columns_of, same_numbers, text_of
from notchbook.body import POPULATIONS, PopulationName
from notchbook.body.population import definitions, population
from survey_rows import build_rows, held_back_rows, rows, survey_set


@pytest.mark.parametrize("name", POPULATIONS)
def test_the_shipped_file_is_up_to_date_and_small(name: PopulationName) -> None:
    shipped = (TARGET / f"{name}.json").read_text(encoding="utf-8")
    assert same_numbers(shipped, text_of(name))
    assert len(shipped) < 20_000


def test_a_file_that_is_out_of_date_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    data = json.loads((TARGET / "women.json").read_text(encoding="utf-8"))
    data["covariance"][3][2] += 0.1
    (tmp_path / "women.json").write_text(json.dumps(data), encoding="utf-8")
    monkeypatch.setattr(make_population, "POPULATIONS", ("women",))
    monkeypatch.setattr(make_population, "TARGET", tmp_path)
    assert make_population.main(["--check"]) == 1
    assert make_population.main([]) == 0
    assert make_population.main(["--check"]) == 0


def test_rows_are_built_from_or_held_back() -> None:
    counts: dict[PopulationName, int] = {"women": 199, "men": 409}
    for name, held in counts.items():
        built, kept = build_rows(name), held_back_rows(name)
        assert not {row["row"] for row in built} & {row["row"] for row in kept}
        assert len(built) + len(kept) == len(rows(name))
        assert len(kept) == held
        assert all(row["row"] % 10 == 0 for row in kept)


def test_what_is_held_back_changes_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    before = text_of("women")
    everything = rows("women")
    spoiled = tuple({**row, "stature": 9999.0} if row["row"] % 10 == 0 else row for row in everything)
    monkeypatch.setattr("survey_rows.rows", lambda name: spoiled)
    assert text_of("women") == before
    spoiled = tuple({**row, "stature": row["stature"] + 9} for row in everything)
    assert text_of("women") != before


@pytest.mark.parametrize("name", POPULATIONS)
def test_the_limits_flag_one_clean_record_of_a_hundred(name: PopulationName) -> None:
    people = population(name)
    records = people.scores_of_many([survey_set(row, name, JUDGED) for row in build_rows(name)])
    worst = [max(abs(score.z) for score in record) for record in records]
    share = sum(z >= people.stop for z in worst) / len(worst)
    # On the very rows that it was made from it flags a little less.
    assert 0.3 * FALSE_ALARMS < share < 1.3 * FALSE_ALARMS
    z = [abs(score.z) for record in records for score in record]
    assert 0.5 * FALSE_ALARMS < sum(one >= people.look_again for one in z) / len(z) < 1.3 * FALSE_ALARMS


def test_every_column_is_there_and_read() -> None:
    for name in POPULATIONS:
        known = set(rows(name)[0]) - {"row"}
        assert set(columns_of(name)) == known
        assert all(set(one.columns) <= known for one in definitions(name).values())
