"""Makes bodies for the blocks of the upper body from data/survey/ansur, in three ways and at two waists.

``measured``: what the survey took, brought to the book's definitions (offsets of
src/notchbook/body/population/definitions.toml); what it did not take is estimated from that, as the program
estimates. ``estimated``: height, bust, waist and hip alone were taken, the rest is estimated. ``scatter``: as
``measured``, and what the survey did not take gets a scatter of its own, so that measures disagree as those
of single bodies do: drawn together from what is left of them given the measured ones, 0.8 of it (a scan
scatters more than a body; own judgment), seeded by the row.

At the natural waist girth and lengths are estimates (see make_bodies.py). No table has the across chest,
front waist length and chest points of men: the across chest is taken 10 mm less than the across back (own
judgment, no source), the rest is left out.
"""

from __future__ import annotations

import argparse
import csv
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal, get_args

import numpy as np

from house import ROOT
from make_bodies import Group, Level
from notchbook.body import Measure, MeasureSet, measure_entry
from notchbook.body.estimating import with_estimates
from notchbook.body.population import definitions, population
from notchbook.body.population.evidence import evidence_of
from notchbook.body.population.model import Array, Model
from notchbook.body.population.system import level_shift, make_system
from survey_rows import Row, rows

Mode = Literal["measured", "estimated", "scatter"]

MODES: Final[tuple[Mode, ...]] = get_args(Mode)

UPPER_KEYS: Final = (
    "height",
    "neck_base_girth",
    "shoulder_length",
    "shoulder_slope",
    "across_back",
    "across_chest",
    "upper_bust_girth",
    "bust_girth",
    "under_bust_girth",
    "waist_girth",
    "hip_girth",
    "back_waist_length",
    "front_waist_length",
    "center_front_length",
    "neck_to_bust_point",
    "bust_point_width",
    "scye_depth",
    "upper_arm_girth",
    "wrist_girth",
    "arm_length",
    "elbow_length",
    "hip_depth",
)
"""What bodice, sleeve and torso read."""

FOUR_KEYS: Final = ("height", "bust_girth", "waist_girth", "hip_girth")

CHEST_LESS_THAN_BACK: Final = 10.0
"""mm; men only, see above."""

SCATTER_SHARE: Final = 0.8
"""Of the standard deviations that are left; see above."""

SEED: Final = 13402
"""Of the scatter; the number of a standard of sizes, for want of a better one."""


@dataclass(frozen=True)
class UpperBody:
    """One row of the survey as a set of measures, made in one way at one waist."""

    id: str
    group: Group
    level: Level
    mode: Mode
    measures: MeasureSet


def upper_bodies(level: Level, mode: Mode, group: Group) -> Iterator[UpperBody]:
    """Every row of the group; NotchbookError is left to the caller of :func:`upper_body`."""
    for row in rows(group):
        yield upper_body(row, level, mode, group)


def upper_body(row: Row, level: Level, mode: Mode, group: Group) -> UpperBody:
    """One row of the survey; refused as the program refuses to estimate for a body (InputError)."""
    name = f"{group[0]}{row['row']:.0f}"
    taken = with_chest(taken_set(name, row, level, group))
    missing = tuple(key for key in UPPER_KEYS if key in population(group).keys and not taken.has(key))
    if mode == "estimated":
        four = MeasureSet(
            name,
            {key: taken.get(key) for key in FOUR_KEYS},
            population=group,
            waist_level=taken.waist_level,
            waist_drop=taken.waist_drop,
        )
        wanted = tuple(key for key in UPPER_KEYS if key in population(group).keys and key not in FOUR_KEYS)
        filled = with_chest(with_estimates(four, wanted))
    elif mode == "measured":
        filled = with_estimates(taken, missing)
    else:
        filled = _scattered(taken, missing, group, int(row["row"]))
    return UpperBody(name, group, level, mode, filled)


def taken_set(
    name: str, row: Row, level: Level, group: Group, keys: tuple[str, ...] = UPPER_KEYS
) -> MeasureSet:
    """What the survey took of these measures, as this book defines them, at one waist."""
    drop = (row["tenthribheight"] + row["iliocristaleheight"]) / 2.0 - row["waistheightomphalion"]
    values: dict[str, float] = {}
    for key in keys:
        one = definitions(group).get(key)
        if one is None or not one.columns or one.regression is not None:
            continue
        value = sum(weight * row[column] for column, weight in one.columns.items()) + one.offset
        if level == "natural":
            value += one.at_waist - measure_entry(key).waist_shift * drop
        values[key] = round(value, 1)
    bare = MeasureSet.from_mm(name, values, population=group)
    if level == "natural":
        return bare
    # A navel above the natural waist cannot be written as a drop: the usual one is taken.
    return MeasureSet(
        name, bare.values, population=group, waist_level="navel", waist_drop=round(max(drop, 0.0), 1)
    )


def with_chest(measures: MeasureSet) -> MeasureSet:
    """Men: the across chest from the across back, and as sure."""
    back = measures.find("across_back")
    if measures.population != "men" or back is None:
        return measures
    chest = Measure(back.value - CHEST_LESS_THAN_BACK, back.status, back.error, back.method)
    return measures.with_value("across_chest", chest)


def _scattered(taken: MeasureSet, missing: tuple[str, ...], group: Group, number: int) -> MeasureSet:
    """The set with the missing measures drawn together from what is left of them, given those that were
    taken; they count as measured."""
    if not missing:
        return taken
    middle, covariance = _left_over(population(group).model, taken, missing)
    draw = np.random.default_rng([SEED, number])
    values = draw.multivariate_normal(middle, covariance * SCATTER_SHARE**2, method="eigh")
    for key, value in zip(missing, values, strict=True):
        taken = taken.with_value(key, round(float(value), 1))
    return taken


def _left_over(model: Model, taken: MeasureSet, missing: tuple[str, ...]) -> tuple[Array, Array]:
    """Mean and covariance of the missing measures, given the others (a conditioned normal distribution)."""
    given = evidence_of(taken, tuple(model.book))
    keys = tuple(given.values)
    whole = make_system(model, given.frame, (*missing, *keys))
    first = len(missing)
    shift = np.zeros(len(whole.mean))
    if given.frame.level == "lower":
        shift[: first + len(keys)] = [level_shift(model, key, given.drop) for key in (*missing, *keys)]
    read = np.array([*given.values.values(), *([given.drop] if given.frame.drop_known else [])])
    off = read - (whole.mean + shift)[first:]
    weights = np.linalg.solve(whole.read[first:, first:], whole.read[first:, :first]).T
    middle: Array = (whole.mean + shift)[:first] + weights @ off
    covariance: Array = whole.truth[:first, :first] - weights @ whole.read[first:, :first]
    return middle, (covariance + covariance.T) / 2.0


def write(level: Level, mode: Mode, path: Path) -> int:
    """Write the bodies as `notchbook mtm` reads them; how many there are."""
    path.parent.mkdir(parents=True, exist_ok=True)
    made = [body for group in get_args(Group) for body in upper_bodies(level, mode, group)]
    with path.open("w", encoding="utf-8", newline="") as stream:
        writer = csv.writer(stream, lineterminator="\n")
        writer.writerow(("id", "unit", "population", "waist_level", "waist_drop", *UPPER_KEYS))
        for body in made:
            known = body.measures
            values = [known.find(key) for key in UPPER_KEYS]
            texts = ("" if one is None else f"{one.value:.1f}" for one in values)
            drop = f"{known.waist_drop:.1f}" if known.waist_drop else ""
            writer.writerow((body.id, "mm", body.group, known.waist_level, drop, *texts))
    return len(made)


def main(words: list[str]) -> int:
    """Write the six files into a folder."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--out", type=Path, default=ROOT / "out" / "survey", help="folder of the files")
    folder: Path = parser.parse_args(words).out
    for level in get_args(Level):
        for mode in MODES:
            path = folder / f"upper-{level}-{mode}.csv"
            print(f"{path}: {write(level, mode, path)} bodies")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
