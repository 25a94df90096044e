"""The crotch length that rise, hip and waist let expect: fitted on surveyed rows, judged on rows held back.

Source of the rows: data/survey/ansur (ANSUR II, public databases of 2012). What trousers ask about rests on
the population's distribution: here an ordinary least-squares line by numpy says how well it may do at all.
"""

from collections.abc import Sequence
from functools import cache

import numpy as np
import pytest
from numpy.typing import NDArray

from make_bodies import Group
from make_lower_bodies import LOWER_KEYS, lower_body
from notchbook.blocks.lower_measures import LowerMeasures, look_at_lower
from notchbook.body import MeasureSet
from notchbook.body.population import population
from survey_rows import Row, build_rows, held_back_rows

Array = NDArray[np.float64]

REFERENCE = {"women": (72.0, 0.970, 0.414, -0.078, 23.0), "men": (7.0, 0.995, 0.352, 0.050, 25.0)}
"""Constant, rise, hip, waist and standard deviation, mm: an earlier regression of our own by other code, on
rows of the same survey, the waist at the navel."""


def arrays(rows: Sequence[Row]) -> tuple[Array, Array]:
    """What foretells (1, standing rise, hip, waist) and the crotch length, at the navel, mm."""
    given = [
        (
            1.0,
            row["waistheightomphalion"] - row["crotchheight"],
            row["buttockcircumference"],
            row["waistcircumference"],
        )
        for row in rows
    ]
    return np.array(given), np.array([row["crotchlengthomphalion"] for row in rows])


@cache
def fitted(group: Group) -> Array:
    """The least-squares line through the rows that the population is built from."""
    given, crotch = arrays(build_rows(group))
    return np.asarray(np.linalg.lstsq(given, crotch, rcond=None)[0], dtype=np.float64)


def left_over(group: Group, line: Array | Sequence[float]) -> Array:
    """What the line leaves on the rows that were held back, mm."""
    given, crotch = arrays(held_back_rows(group))
    found: Array = crotch - given @ np.array(line)
    return found


@pytest.mark.parametrize("group", ["women", "men"])
def test_the_line_of_the_built_rows_foretells_those_held_back(group: Group) -> None:
    rest = left_over(group, fitted(group))
    assert abs(rest.mean()) < 3.0 * rest.std() / np.sqrt(len(rest))
    assert rest.std() < 1.2 * REFERENCE[group][-1]


@pytest.mark.parametrize("group", ["women", "men"])
def test_the_earlier_regression_holds_on_rows_held_back(group: Group) -> None:
    *line, deviation = REFERENCE[group]
    rest = left_over(group, line)
    assert abs(rest.mean()) < 5.0
    assert rest.std() < 1.2 * deviation


def test_a_line_without_the_rise_would_not_do() -> None:
    """Else the limits above would say nothing."""
    constant, _, hip, waist, deviation = REFERENCE["women"]
    rest = left_over("women", (constant, 0.0, hip, waist))
    assert abs(rest.mean()) > 5.0 * deviation


@pytest.mark.parametrize("group", ["women", "men"])
def test_the_population_foretells_the_crotch_at_least_as_well_as_the_line(group: Group) -> None:
    """From all other measures; on rows that it was not made from."""
    off, said = [], []
    for row in held_back_rows(group):
        body: MeasureSet = lower_body(row, "navel", "measured", group).measures
        found = population(group).expect("crotch_length", body)
        assert found is not None
        off.append(body.value("crotch_length") - found.value)
        said.append(found.sd)
    assert np.std(off) < left_over(group, fitted(group)).std()
    assert abs(np.mean(off)) < 5.0
    assert np.std(off) / np.mean(said) == pytest.approx(1.0, abs=0.25)


def test_every_key_of_the_lower_body_is_there() -> None:
    body = lower_body(held_back_rows("women")[0], "natural", "measured", "women").measures
    assert set(LOWER_KEYS) <= set(body.measure_keys())


def asked_of(group: Group, off: float, count: int = 80) -> list[bool]:
    """Whether a crotch length that is read so many mm too long is asked about, by body held back."""
    found = []
    for row in held_back_rows(group)[:count]:
        body = lower_body(row, "natural", "measured", group).measures
        taken = {key: body.value(key) for key in body.measure_keys()}
        taken["crotch_length"] += off
        looked = look_at_lower(LowerMeasures(taken, population=group))
        found.append(any(one.key == "crotch_length" for one in looked))
    return found


@pytest.mark.parametrize("group", ["women", "men"])
def test_a_slip_of_the_crotch_is_asked_about_and_an_honest_reading_is_left_alone(group: Group) -> None:
    """It is asked beyond 2 standard deviations: of honest readings one of twenty, of a slip of three (80
    mm) most, of one of four and a half (120 mm) all. Bodies held back when the population was made."""
    assert np.mean(asked_of(group, 0.0)) <= 0.08
    assert np.mean(asked_of(group, 80.0)) >= 0.6
    assert np.mean(asked_of(group, -80.0)) >= 0.6
    assert np.mean(asked_of(group, 120.0)) >= 0.95
