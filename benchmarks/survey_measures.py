"""How well the populations foretell the measures of bodies, and which slips they notice.

Judged on the rows of the survey that are held back (tools/survey_rows.py). Run by `make survey`; writes
docs/survey/measures.md and docs/survey/measures.json. `--sample N` takes N rows of each population and
prints only.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from statistics import NormalDist
from typing import Any, Final

import numpy as np

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools"), str(ROOT / "benchmarks")]

from make_population import JUDGED
from measures_page import page
from notchbook.body import POPULATIONS, MeasureSet, PopulationName
from notchbook.body.population import Population, population
from notchbook.body.population.evidence import Frame
from notchbook.body.population.system import System, make_system
from planted_slips import SLIPS, Array, Rule, plant
from slips_through_program import through_program
from survey_rows import Row, build_rows, held_back_rows, survey_values

SEED: Final = 8559
"""Of the tape noise; the number of the standard of body measures, for want of a better one."""

AS_TAKEN: Final = Frame("survey", "navel", False)

NOT_LABELED: Final = Frame("book", "navel", False)
"""Records of the survey in a file that does not say so: held to the definitions of this book."""

FOUR: Final = ("height", "bust_girth", "waist_girth", "hip_girth")

TWELVE: Final = (
    *FOUR,
    "shoulder_length",
    "across_back",
    "back_waist_length",
    "arm_length",
    "upper_arm_girth",
    "hip_depth",
    "outside_leg",
    "inside_leg",
)
"""What a sheet for a dress and trousers asks for."""

DIFFERENCES: Final = ("standing_rise", "front_crotch_length")
"""In the survey these are differences of others, to the mm; among the others they foretell themselves."""

SHARES: Final = (0.9, 0.95, 0.99)

NOISE: Final = 7.0
"""mm, SD; half of it for girths below 300 mm."""


def table_of(rows: Sequence[Row], name: PopulationName, keys: Sequence[str]) -> Array:
    """The measures of the rows as the survey took them, a line for each row."""
    values = [survey_values(row, name) for row in rows]
    return np.array([[one[key] for key in keys] for one in values])


def given_all_others(system: System) -> Rule:
    """How far each value lies from what all others of its record foretell, in SD."""

    def rule(records: Array) -> Array:
        off: Array = (records - system.mean) @ system.precision / np.diag(system.precision)
        return off / system.sd_given_rest

    return rule


def given_nothing(system: System) -> Rule:
    """How far each value lies from the mean of its measure, in SD: the plain rule of a usual range."""

    def rule(records: Array) -> Array:
        off: Array = (records - system.mean) / np.sqrt(np.diag(system.read))
        return off

    return rule


def with_tape(system: System, people: Population) -> System:
    """The same measures, read by a tape that scatters as the table of the book says."""
    tape = np.array([people.model.tape[key] for key in system.keys])
    return replace(system, read=system.truth + np.diag(tape**2))


def noisy(records: Array, keys: Sequence[str]) -> Array:
    """The records with the noise of a hobby tape; the weight stays."""
    random = np.random.default_rng(SEED)
    small = records.mean(axis=0) < 300.0
    size = np.where(small, NOISE / 2.0, NOISE) * (np.array(keys) != "weight")
    noise: Array = random.normal(size=records.shape) * size
    return records + noise


def share_with_limits(hits: int, count: int) -> dict[str, float]:
    """A share with the limits within which the true one lies (95 %, Wilson)."""
    z, share = NormalDist().inv_cdf(0.975), hits / count
    middle = (share + z * z / (2 * count)) / (1 + z * z / count)
    half = z * np.sqrt(share * (1 - share) / count + z * z / (4 * count**2)) / (1 + z * z / count)
    return {"share": round(share, 4), "low": round(middle - half, 4), "high": round(middle + half, 4)}


def arm(records: Array, keys: Sequence[str], rule: Rule, limits: tuple[float, float]) -> dict[str, Any]:
    """False alarms on the clean records, and what is noticed of each kind of slip."""
    unusual = np.abs(rule(records))
    return {
        "measures": len(keys),
        "stop": round(limits[1], 2),
        "false_alarms": share_with_limits(int((unusual.max(axis=1) >= limits[1]).sum()), len(records)),
        "look_again_per_value": round(float((unusual >= limits[0]).mean()), 4),
        "slips": {kind: plant(records, keys, rule, limits, kind).data() for kind in SLIPS},
    }


def usual_range_limits(system: System, rows: Sequence[Row], name: PopulationName) -> tuple[float, float]:
    """The limits of the plain rule at one false alarm in a hundred, on the rows that are not held back."""
    unusual = np.abs(given_nothing(system)(table_of(rows, name, system.keys)))
    return float(np.quantile(unusual, 0.99)), float(np.quantile(unusual.max(axis=1), 0.99))


def slip_arms(people: Population, rows: Sequence[Row]) -> dict[str, Any]:
    """The rule of the book with more and fewer measures and with noise, and the plain rule beside it."""
    name = people.name
    systems = {
        "22 measures": make_system(people.model, AS_TAKEN, JUDGED),
        "all measures": make_system(people.model, AS_TAKEN, tuple(people.model.survey)),
        "22 measures, not labeled": make_system(people.model, NOT_LABELED, JUDGED),
        "12 measures": make_system(people.model, AS_TAKEN, TWELVE),
        "4 measures": make_system(people.model, AS_TAKEN, FOUR),
    }
    arms = {
        words: arm(
            table_of(rows, name, system.keys),
            system.keys,
            given_all_others(system),
            (people.look_again, people.stop_for(len(system.keys))),
        )
        for words, system in systems.items()
    }
    first = systems["22 measures"]
    records = table_of(rows, name, JUDGED)
    taped = given_all_others(with_tape(first, people))
    limits = people.look_again, people.stop_for(len(JUDGED))
    arms["22 measures, tape noise"] = arm(noisy(records, JUDGED), JUDGED, taped, limits)
    plain = usual_range_limits(first, build_rows(name), name)
    arms["plain range, 22 measures"] = arm(records, JUDGED, given_nothing(first), plain)
    return arms


def blind_spots(people: Population) -> dict[str, float]:
    """For each of the 22 measures: the slip that is seen with even chance by its own lower limit, mm.

    As the book takes them, at the natural waist, the other 21 given; at the middle of the population.
    """
    middle = make_system(people.model, Frame("book", "natural", False), JUDGED).mean.tolist()
    measures = MeasureSet.from_mm("the middle", dict(zip(JUDGED, middle, strict=True)))
    return {key: round(people.blind_spot(key, measures), 1) for key in JUDGED if key != "weight"}


def coverage(people: Population, rows: Sequence[Row]) -> dict[str, Any]:
    """How many values lie within their intervals: from the four entries, and from all other measures."""
    keys = tuple(key for key in people.model.survey if key not in DIFFERENCES)
    whole = make_system(people.model, AS_TAKEN, keys)
    records = table_of(rows, people.name, keys)
    from_all = given_all_others(whole)(records)
    found: dict[str, Any] = {"from all others": _shares(from_all, keys, whole.sd_given_rest)}
    columns, sds, names = [], [], []
    for key in keys:
        if key in FOUR:
            continue
        system = make_system(people.model, AS_TAKEN, (key, *FOUR))
        columns.append(given_all_others(system)(table_of(rows, people.name, system.keys))[:, 0])
        sds.append(system.sd_given_rest[0])
        names.append(key)
    found["from 4 entries"] = _shares(np.array(columns).T, names, np.array(sds))
    return found


def _shares(z: Array, keys: Sequence[str], sds: Array) -> dict[str, Any]:
    halves = [NormalDist().inv_cdf((1 + share) / 2) for share in SHARES]
    inside = np.array([np.abs(z) <= half for half in halves])
    return {
        "values": int(z.size),
        "overall": [round(float(one.mean()), 4) for one in inside],
        "by_measure": {
            key: {"sd": round(float(sds[place]), 1), "inside": _rounded(inside[:, :, place].mean(axis=1))}
            for place, key in enumerate(keys)
        },
    }


def _rounded(values: Array) -> list[float]:
    return [round(float(value), 3) for value in values]


def report(count: int = 0, *, program: bool = True) -> dict[str, Any]:
    """Everything that is written; ``count`` rows of each population, or all that are held back.

    Without ``program`` the statistics alone, which is much quicker.
    """
    found: dict[str, Any] = {"judged": list(JUDGED), "twelve": list(TWELVE), "populations": {}}
    for name in POPULATIONS:
        people = population(name)
        rows = held_back_rows(name)[: count or None]
        found["populations"][name] = {
            "words": people.words,
            "rows": len(rows),
            "look_again": people.look_again,
            "stop": people.stop,
            "stops": {str(values): limit for values, limit in people.model.stops.items()},
            "coverage": coverage(people, rows),
            "arms": slip_arms(people, rows),
            "blind_spots": blind_spots(people),
        }
        if program:
            found["populations"][name]["program"] = through_program(name, count)
    return found


def main(words: list[str]) -> int:
    """Judge the populations and write or print what came of it."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--sample", type=int, default=0, help="judge so many rows only, and write nothing")
    count: int = parser.parse_args(words).sample
    found = report(count)
    print(page(found))
    if not count:
        folder = ROOT / "docs" / "survey"
        (folder / "measures.md").write_text(page(found), encoding="utf-8")
        (folder / "measures.json").write_text(json.dumps(found, indent=1) + "\n", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
