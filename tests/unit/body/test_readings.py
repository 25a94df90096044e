"""Several readings of one measure, and the circumstances of a set, through files and back."""

import pickle
from pathlib import Path

import pytest

from notchbook.body import Circumstances, Measure, MeasureSet, read_bodies, read_measures, write_measures
from notchbook.errors import InputError


@pytest.mark.parametrize(
    ("readings", "value"),
    [((940.0, 946.0), 943.0), ((940.0, 840.0, 942.0), 940.0), ((940.0,), 940.0)],
)
def test_the_value_is_the_median_of_its_readings(readings: tuple[float, ...], value: float) -> None:
    assert Measure.of_readings(readings).value == value


def test_one_reading_is_no_list_of_readings() -> None:
    assert Measure.of_readings((940.0,)) == Measure(940.0)


def test_a_value_that_is_not_the_median_is_refused() -> None:
    with pytest.raises(InputError) as refused:
        Measure(950.0, readings=(940.0, 946.0))
    assert refused.value.code == "measure-readings"


def test_an_estimate_has_no_readings() -> None:
    with pytest.raises(InputError) as refused:
        Measure(943.0, "estimated", 10.0, readings=(940.0, 946.0))
    assert refused.value.code == "measure-readings"


def test_spread() -> None:
    assert Measure.of_readings((940.0, 840.0, 942.0)).spread == 102.0
    assert Measure(940.0).spread == 0.0


def a_set() -> MeasureSet:
    """A set that says all it can about how it was taken."""
    return MeasureSet(
        "K-17",
        {"bust_girth": Measure.of_readings((940.0, 946.0), by="J."), "hip_girth": Measure(1012.5)},
        waist_level="navel",
        population="women",
        label_size="40",
        circumstances=Circumstances("2026-03-09", "J.", "soft bra", 35.0),
    )


@pytest.mark.parametrize("ending", ["json", "csv"])
def test_a_file_keeps_readings_and_circumstances(tmp_path: Path, ending: str) -> None:
    place = tmp_path / f"k.{ending}"
    write_measures(a_set(), place)
    assert read_measures(place) == a_set()


def test_readings_alone_give_the_value(tmp_path: Path) -> None:
    place = tmp_path / "k.csv"
    place.write_text("measure,value,readings\nunit,in,\nbust_girth,,37 1/2 & 37 3/4\n", encoding="utf-8")
    assert read_measures(place).value("bust_girth") == pytest.approx(37.625 * 25.4)


def test_a_set_goes_to_another_process_whole() -> None:
    assert pickle.loads(pickle.dumps(a_set())) == a_set()


def test_a_day_that_no_calendar_has_is_refused() -> None:
    with pytest.raises(InputError) as refused:
        Circumstances("2026-02-30")
    assert refused.value.code == "date-unreadable"


def test_a_bodies_file_says_whom_it_is_held_against(tmp_path: Path) -> None:
    place = tmp_path / "bodies.csv"
    place.write_text(
        "id,unit,population,waist_level,heel,waist_girth\nA,cm,men,navel,3,90\n", encoding="utf-8"
    )
    (row,) = read_bodies(place)
    assert row.measures is not None
    assert (row.measures.population, row.measures.waist_level) == ("men", "navel")
    assert row.measures.circumstances.heel == 30.0
    assert row.measures.drop_below_natural > 0.0
    assert row.measures.waist_drop == 0.0
