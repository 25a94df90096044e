"""Makes the populations of notchbook.body.population from data/survey/ansur; ``--check`` only compares.

A multivariate normal distribution of the columns of the survey, one for each sex, from the rows that are
not held back (survey_rows.py). How the measures of the book hang on the columns stands in
definitions.toml, what the survey does not have in regressions.toml. The limits `look_again` and `stop`
come from the same rows by five-fold cross-validation.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Any, Final

import numpy as np
import numpy.typing as npt

from house import ROOT
from notchbook.body import POPULATIONS, PopulationName, measure_entry
from notchbook.body.population import Definition, Population, Score, definitions
from notchbook.body.population.definitions import regressions
from notchbook.body.population.evidence import Frame
from notchbook.body.population.model import SLACK, WAIST_REST, model_from_data
from notchbook.body.population.system import make_system
from survey_rows import Row, build_rows, survey_set, survey_values

Array = npt.NDArray[np.float64]
Weights = dict[str, float]

TARGET = ROOT / "src" / "notchbook" / "body" / "population"

SLACK_SD: Final = 10.0
"""mm; how far a waist found with a tied tape lies from midway between rib and hip bone (common practice, no
source). All lengths of one body that begin at the waist share it."""

DROP: Final[Weights] = {"tenthribheight": 0.5, "iliocristaleheight": 0.5, "waistheightomphalion": -1.0}
"""From the natural waist (ISO 8559-1: midway lowest rib to hip bone) down to the navel."""

FOUR: Final = {
    "height": "stature",
    "bust": "chestcircumference",
    "waist": "waistcircumference",
    "hip": "buttockcircumference",
}
"""What the regressions rest on, and the columns that it stands in; the waist at the navel there."""

EVERY_SHEET: Final = ("height", "bust_girth", "waist_girth", "hip_girth")
"""What stands on every sheet."""

LINKED: Final = ("front_waist_length", "center_front_length")
"""Regressions whose scatter goes together with that of the back waist length, and with each other's."""

JUDGED: Final = (
    "height",
    "neck_base_girth",
    "shoulder_length",
    "across_back",
    "bust_girth",
    "waist_girth",
    "hip_girth",
    "back_waist_length",
    "center_front_length",
    "trunk_loop",
    "upper_arm_girth",
    "wrist_girth",
    "arm_length",
    "hip_depth",
    "knee_depth",
    "outside_leg",
    "crotch_length",
    "inside_leg",
    "thigh_girth",
    "calf_girth",
    "ankle_girth",
    "weight",
)
"""The 22 measures on which the limits rest and by which the populations are judged."""

FALSE_ALARMS: Final = 0.01
FOLDS: Final = 5

STOP_COUNTS: Final = (4, 8, 12, 16, 22, 30)
"""Numbers of values for which the limit `stop` is found; between them it is interpolated."""

SHEETS: Final = 24
"""Choices of so many measures, by chance, that speak for one number of values."""

SEED: Final = 85591
"""Of the choices: number and part of the standard of body measures, for want of a better one."""

DIFFERENCES: Final = ("standing_rise", "front_crotch_length")
"""In the survey these are differences of others, to the mm; among the others they foretell themselves."""

WORDS: Final = {
    "women": "{size} women of the U.S. Army survey ANSUR II (2012), soldiers aged 17 to 58; not a civilian"
    " population",
    "men": "{size} men of the U.S. Army survey ANSUR II (2012), soldiers; not a civilian population",
}


def fit(
    name: PopulationName,
    rows: Sequence[Row],
    look_again: float = 2.6,
    stop: float = 4.0,
    stops: Mapping[int, float] = MappingProxyType({4: 4.0, 30: 4.0}),
) -> dict[str, Any]:
    """The data of the population that these rows make."""
    columns = columns_of(name)
    table = np.array([[row[column] for column in columns] for row in rows])
    residuals = [SLACK, WAIST_REST, *(f"{key}_rest" for key in LINKED if name == "women")]
    size = len(columns)
    covariance = np.zeros((size + len(residuals), size + len(residuals)))
    covariance[:size, :size] = np.cov(table, rowvar=False)
    covariance[size, size] = SLACK_SD**2
    covariance[size + 1, size + 1] = definitions(name)["waist_girth"].doubt ** 2
    if name == "women":
        covariance[size + 2 :, size + 2 :] = linked_rest()[1]
    mean = [*table.mean(axis=0), *(0.0 for _ in residuals)]
    return {
        "name": name,
        "words": WORDS[name].format(size=len(rows)),
        "size": len(rows),
        "look_again": look_again,
        "stop": stop,
        "stops": {str(count): limit for count, limit in stops.items()},
        "behind": [*columns, *residuals],
        "mean": [round(float(value), 2) for value in mean],
        "covariance": [
            [round(float(value), 2) for value in line[: place + 1]] for place, line in enumerate(covariance)
        ],
        "drop": {"weights": DROP},
        "measures": {
            key: measure_data(one, name, back_waist_from_four(rows)) for key, one in definitions(name).items()
        },
    }


def columns_of(name: PopulationName) -> tuple[str, ...]:
    """The columns of the survey that are behind the measures, in the order in which they come up."""
    found: dict[str, None] = {}
    for one in definitions(name).values():
        found |= dict.fromkeys(one.columns)
    return tuple(found | dict.fromkeys(DROP))


def measure_data(one: Definition, name: PopulationName, back_waist: Weights) -> dict[str, Any]:
    """How one measure hangs on what is behind: in this book, at the natural waist, and in the survey."""
    scatter = one.doubt
    if one.regression in LINKED:
        weights, constant = linked_row(one.regression, name, back_waist), 0.0
        constant = weights.pop("constant")
    elif one.regression:
        weights = regression_row(one.regression, name)
        constant = weights.pop("constant")
        scatter = float(np.hypot(scatter, regressions()[one.regression]["scatter"]))
    else:
        weights = at_natural_waist(one)
        constant = one.offset + one.at_waist
        if one.at_waist:
            # Its doubt stands behind it, for what hangs on the natural waist shares it.
            weights, scatter = weights | {WAIST_REST: 1.0}, 0.0
    data: dict[str, Any] = {
        "book": {"weights": rounded(weights), "constant": round(constant, 3), "scatter": round(scatter, 3)},
        "tape": one.tape,
    }
    if one.at_waist:
        data["at_waist"] = one.at_waist
    if one.in_survey:
        data["survey"] = {"weights": dict(one.columns)}
    return data


def at_natural_waist(one: Definition) -> Weights:
    """The columns of the measure, brought from the navel up to the natural waist."""
    shift = measure_entry(one.key).waist_shift
    return added(dict(one.columns), DROP, -float(shift))


def regression_row(key: str, name: PopulationName) -> Weights:
    """The regression on the columns of the survey, with ``constant``."""
    entry = regressions()[key]
    row = {column: float(entry.get(word, 0.0)) for word, column in FOUR.items()}
    at_waist = definitions(name)["waist_girth"].at_waist * row[FOUR["waist"]]
    rest = {WAIST_REST: row[FOUR["waist"]]}
    return row | rest | {"constant": entry["constant"] + entry.get("tape", 0.0) + at_waist}


def linked_row(key: str, name: PopulationName, back_waist: Weights) -> Weights:
    """A front length: as far from the back waist length as the sample has it, and partly going with it.

    front = back foretold + (regression front - regression back) + slope x (back - back foretold) + rest.
    So the differences of the sample hold on the bodies of the survey.
    """
    slope = linked_rest()[0][LINKED.index(key)]
    row = added(regression_row(key, name), regression_row("back_waist_length", name), -1.0)
    row = added(row, back_waist, 1.0 - slope)
    row = added(row, at_natural_waist(definitions(name)["back_waist_length"]), slope)
    return row | {f"{key}_rest": 1.0}


def linked_rest() -> tuple[Array, Array]:
    """For the linked measures: the slope on what is left of the back waist length, and the covariance left.

    Follows from the three scatters and the scatters of the three differences.
    """
    keys = (*LINKED, "back_waist_length")
    whole = np.empty((3, 3))
    for i, one in enumerate(keys):
        for j, other in enumerate(keys):
            a, b = (regressions()[key]["scatter"] for key in (one, other))
            difference = regressions()[one].get("difference_scatter", {}).get(other)
            if difference is None:
                difference = regressions()[other].get("difference_scatter", {}).get(one, 0.0)
            whole[i, j] = (a**2 + b**2 - difference**2) / 2.0
    slope = whole[:2, 2] / whole[2, 2]
    return slope, whole[:2, :2] - np.outer(slope, whole[2, :2])


def back_waist_from_four(rows: Sequence[Row]) -> Weights:
    """The back waist length at the natural waist, by least squares from height, bust, waist and hip."""
    weights = at_natural_waist(definitions("women")["back_waist_length"])
    wanted = np.array([sum(weight * row[column] for column, weight in weights.items()) for row in rows])
    table = np.array([[1.0, *(row[column] for column in FOUR.values())] for row in rows])
    found = np.linalg.lstsq(table, wanted, rcond=None)[0]
    return dict(zip(("constant", *FOUR.values()), map(float, found), strict=True))


def added(one: Mapping[str, float], other: Mapping[str, float], factor: float) -> Weights:
    """The first row plus ``factor`` times the second."""
    names = dict.fromkeys((*one, *other))
    row = {name: one.get(name, 0.0) + factor * other.get(name, 0.0) for name in names}
    return {name: weight for name, weight in row.items() if abs(weight) > 1e-12}


def rounded(weights: Weights) -> Weights:
    """The weights to five decimals: less than 0.02 mm on any body."""
    return {name: round(weight, 5) for name, weight in weights.items()}


def limits(name: PopulationName) -> tuple[float, float]:
    """``look_again`` and ``stop`` at one false alarm in a hundred, for a value and for a record.

    By five-fold cross-validation within the rows that are not held back, as the survey took them.
    """
    rows = build_rows(name)
    scores: list[tuple[Score, ...]] = []
    for fold in range(FOLDS):
        inside = [row for place, row in enumerate(rows) if place % FOLDS != fold]
        outside = [survey_set(row, name, JUDGED) for row in rows[fold::FOLDS]]
        scores += Population(model_from_data(fit(name, inside))).scores_of_many(outside)
    sizes = np.array([[abs(score.z) for score in record] for record in scores])
    look_again, stop = np.quantile(sizes, 1 - FALSE_ALARMS), np.quantile(sizes.max(axis=1), 1 - FALSE_ALARMS)
    return round(float(look_again), 2), round(float(stop), 2)


def stops(name: PopulationName, stop: float) -> dict[int, float]:
    """The limit `stop` by how many values a record has, at one false alarm in a hundred records.

    As :func:`limits`, on sheets of so many measures: those that every sheet has, the rest by chance. That
    of the judged measures is ``stop``. More values have no lower limit than fewer.
    """
    chance = np.random.default_rng(SEED)
    known = [key for key in definitions(name) if definitions(name)[key].in_survey and key not in DIFFERENCES]
    more = [key for key in known if key not in EVERY_SHEET]
    worst: dict[int, list[float]] = {count: [] for count in STOP_COUNTS if count <= len(known)}
    sheets = {
        count: [(*EVERY_SHEET, *chance.permutation(more)[: count - len(EVERY_SHEET)]) for _ in range(SHEETS)]
        for count in worst
    }
    rows = build_rows(name)
    for fold in range(FOLDS):
        model = model_from_data(fit(name, [row for place, row in enumerate(rows) if place % FOLDS != fold]))
        records = [survey_values(row, name) for row in rows[fold::FOLDS]]
        for count, choices in sheets.items():
            for keys in choices:
                system = make_system(model, Frame("survey", "navel", False), tuple(map(str, keys)))
                off = np.array([[record[key] for key in system.keys] for record in records]) - system.mean
                z = off @ system.precision / np.diag(system.precision) / system.sd_given_rest
                worst[count] += np.abs(z).max(axis=1).tolist()
    found = {count: float(np.quantile(sizes, 1 - FALSE_ALARMS)) for count, sizes in worst.items()}
    found[len(JUDGED)] = stop
    grown = np.maximum.accumulate([found[count] for count in sorted(found)])
    return {count: round(float(limit), 2) for count, limit in zip(sorted(found), grown, strict=True)}


def text_of(name: PopulationName) -> str:
    """The file of the population."""
    look_again, stop = limits(name)
    data = fit(name, build_rows(name), look_again, stop, stops(name, stop))
    lines = [f"{json.dumps(key)}: {json.dumps(value)}" for key, value in data.items()]
    return "{\n" + ",\n".join(lines) + "\n}\n"


def main(words: list[str]) -> int:
    """Write the populations, or tell which file is not as it would be written."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--check", action="store_true", help="write nothing; 1 when a file is out of date")
    only_compare: bool = parser.parse_args(words).check
    stale = 0
    for name in POPULATIONS:
        path, text = TARGET / f"{name}.json", text_of(name)
        if only_compare:
            if not same_numbers(path.read_text(encoding="utf-8"), text):
                print(f"{path}: out of date; run tools/make_population.py")
                stale = 1
        else:
            path.write_text(text, encoding="utf-8", newline="\n")
    return stale


def same_numbers(one: str, other: str, tolerance: float = 0.02) -> bool:
    """Whether two such files say the same but for rounding on another machine."""

    def same(a: Any, b: Any) -> bool:
        if isinstance(a, dict) and isinstance(b, dict):
            return a.keys() == b.keys() and all(same(a[key], b[key]) for key in a)
        if isinstance(a, list) and isinstance(b, list):
            return len(a) == len(b) and all(map(same, a, b))
        if isinstance(a, float | int) and isinstance(b, float | int):
            return abs(a - b) <= tolerance
        return bool(a == b)

    return same(json.loads(one), json.loads(other))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
