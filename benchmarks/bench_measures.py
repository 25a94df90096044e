"""How long it takes to look over, estimate, import and compare measures.

Run as ``python benchmarks/bench_measures.py``. The bodies are rows of data/survey/ansur with the 22 measures
by which the populations are judged, as the survey took them. What a population expects stands beside the
same sums by numpy and scipy on the same covariance; both must come to the same, or nothing is timed.
"""

from __future__ import annotations

import csv
import os
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import replace
from itertools import islice
from pathlib import Path
from typing import Final

import numpy as np
import numpy.typing as npt
import scipy.linalg

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools"), str(ROOT / "benchmarks")]

from make_population import JUDGED
from notchbook.app.charts.importing import import_into, preview_file
from notchbook.app.looking_over.whole_file import look_over_bodies, look_over_file
from notchbook.app.studio import Studio
from notchbook.body import (
    MeasureSet,
    PopulationName,
    look_over,
    measure_entry,
    read_measures,
    write_measures,
)
from notchbook.body.charts import nearest_size, padding_plan, shipped_chart
from notchbook.body.estimating.estimating import estimate
from notchbook.body.files.write_bodies import write_bodies
from notchbook.body.importing import Answers, LineAnswer, Preview
from notchbook.body.importing.preview_doubts import MOST_ROWS_HELD
from notchbook.body.population import Population, population
from notchbook.body.population.evidence import Frame
from notchbook.body.population.model import Model
from notchbook.body.population.system import make_system
from notchbook.units import LengthStyle
from survey_rows import rows as survey_rows
from survey_rows import survey_set
from timing import ROUNDS, Figure, Row, median_ms, timed, timed_command

Array = npt.NDArray[np.float64]

AS_TAKEN: Final = Frame("survey", "navel", False)
BODIES: Final = 1000
FEW_ROUNDS: Final = 3
FOUR: Final = ("height", "bust_girth", "waist_girth", "hip_girth")
WANTED: Final = "thigh_girth"
EXAMPLES: Final = ROOT / "examples" / "measures"
CM: Final = LengthStyle("cm")

SLIP: Final = 150.0
"""mm by which a hip girth is typed too small, to be stopped at."""

SAME: Final = 1e-6
"""mm (kg) within which the house and the libraries must agree."""

KEY: Final = f"""\
The bodies are rows of the survey in data/survey/ansur with the 22 measures of `make survey`, women first.
Jobs of a whole file are done {FEW_ROUNDS} times, the others {ROUNDS}, after once for warming up. A list of
more than {MOST_ROWS_HELD} rows is not held against a population in the preview, the short one is. A new
process pays for starting and for loading numpy."""

ROWS_KEY: Final = f"""\
The libraries are given the same mean and covariance as plain arrays and work out the values alone; both
ways agree to {SAME:g} mm. Notchbook also picks the values out of each set, says how far nine of ten lie and
names what an expectation rests on. One by one, numpy inverts the covariance for each record. Medians."""


def figures() -> Iterator[Figure]:
    """The jobs of the house, one after the other."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        yield from _one_body_figures(folder)
        yield from _file_figures(folder / "bodies.csv")
        yield from _import_figures(folder)
    yield from _chart_figures()


def rows() -> list[Row]:
    """What a population expects, beside the same sums by general-purpose libraries; medians."""
    return [*_expected_rows(), *_scored_rows()]


def records(name: PopulationName, count: int) -> list[MeasureSet]:
    """The first rows of the survey as sets of the 22 measures."""
    return [survey_set(row, name, JUDGED) for row in islice(survey_rows(name), count)]


def fine_body() -> MeasureSet:
    """The first woman of the survey of whom nothing is asked."""
    return next(one for one in records("women", 50) if look_over(one, CM).level == "fine")


def _one_body_figures(folder: Path) -> Iterator[Figure]:
    body = fine_body()
    slipped = body.with_value("hip_girth", body.value("hip_girth") - SLIP)
    fine, flagged = folder / "fine.json", folder / "flagged.json"
    for path, measures, level in ((fine, body, "fine"), (flagged, slipped, "stop")):
        write_measures(measures, path)
        _must(look_over_file(path, None)[1].level == level)
    read = "a file of 22 measures read and looked over"
    yield timed(f"{read}: fine", lambda: look_over_file(fine, None))
    yield timed(f"{read}: a slip, with offers", lambda: look_over_file(flagged, None))
    four = replace(body, values={key: body.values[key] for key in FOUR})
    yield timed(f"{len(estimate(four).found)} measures estimated from 4", lambda: estimate(four))
    yield timed(f"{len(estimate(body).found)} measures estimated from 22", lambda: estimate(body))
    words = ["measures", "check", str(fine)]
    yield timed_command("notchbook measures check, one body, a new process", words)


def _file_figures(path: Path) -> Iterator[Figure]:
    women = records("women", BODIES)
    write_bodies([*women, *records("men", BODIES - len(women))], path)
    job = f"a file of {BODIES:,} bodies checked"
    yield timed(f"{job}, 1 core", lambda: look_over_bodies(path, None, CM), FEW_ROUNDS)
    if (os.cpu_count() or 1) > 1:
        yield timed(f"{job}, 2 cores", lambda: look_over_bodies(path, None, CM, cores=2), FEW_ROUNDS)


def _import_figures(folder: Path) -> Iterator[Figure]:
    path, short, women = folder / "clients.csv", folder / "short.csv", _answers()
    _write_clients(path, BODIES)
    _write_clients(short, MOST_ROWS_HELD)
    job = f"preview of {MOST_ROWS_HELD} foreign rows, each looked over"
    yield timed(job, lambda: preview_file(short, women), FEW_ROUNDS)
    yield timed(f"preview of {BODIES:,} foreign rows", lambda: preview_file(path, women), FEW_ROUNDS)
    shown = preview_file(path, women)
    _must(shown.ready)
    books = (folder / f"{number}.notchbook" for number in range(FEW_ROUNDS + 1))
    job = f"{shown.good:,} of them stored in a new book"
    yield timed(job, lambda: _store(shown, next(books)), FEW_ROUNDS)


def _answers() -> Answers:
    """What is asked of such a list: whether the hip girth is that of the hip or of the top hip."""
    return Answers(lines=(LineAnswer(_header("hip_girth"), "hip_girth"),), population="women")


def _header(key: str) -> str:
    return f"{measure_entry(key).label} ({'kg' if key == 'weight' else 'cm'})"


def _write_clients(path: Path, count: int) -> None:
    """A list of a client a row in cm, its headers in words, as a spreadsheet writes it."""
    sets = records("women", count)
    sets += records("men", count - len(sets))
    with path.open("w", encoding="utf-8", newline="") as stream:
        writer = csv.writer(stream)
        writer.writerow(["Name", *map(_header, JUDGED)])
        for measures in sets:
            cells = [measures.value(key) / (1.0 if key == "weight" else 10.0) for key in JUDGED]
            writer.writerow([f"Body {measures.name}", *(f"{cell:.1f}" for cell in cells)])


def _store(shown: Preview, book: Path) -> None:
    studio = Studio.open(book)
    try:
        import_into(studio, shown, only_good=True)
    finally:
        studio.close()


def _chart_figures() -> Iterator[Figure]:
    client, form = (read_measures(EXAMPLES / name) for name in ("marta_v.csv", "form_a.json"))
    chart = shipped_chart("women")
    yield timed(f"nearest of {len(chart.labels)} sizes", lambda: nearest_size(client, chart))
    yield timed("padding plan of a dress form", lambda: padding_plan(form, client))


def _expected_rows() -> Iterator[Row]:
    people, body = population("women"), fine_body()
    others = tuple(key for key in JUDGED if key != WANTED)
    system = make_system(people.model, AS_TAKEN, (WANTED, *others))
    off = np.array([body.value(key) for key in others]) - system.mean[1:]
    across, given = system.read[0, 1:], system.read[1:, 1:]

    def by_numpy() -> float:
        return float(system.mean[0] + across @ np.linalg.solve(given, off))

    def by_scipy() -> float:
        return float(system.mean[0] + across @ scipy.linalg.solve(given, off, assume_a="pos"))

    ours = people.expect(WANTED, body)
    _must(ours is not None and max(abs(ours.value - by()) for by in (by_numpy, by_scipy)) < SAME)
    task = "one measure expected from 21 others"
    yield task, "notchbook, such a set for the first time", median_ms(lambda: _anew(people.model, body))
    yield task, "notchbook, such a set again", median_ms(lambda: people.expect(WANTED, body))
    yield task, "numpy, mean alone", median_ms(by_numpy)
    yield task, "scipy, mean alone", median_ms(by_scipy)


def _anew(model: Model, body: MeasureSet) -> object:
    return Population(model).expect(WANTED, body)


def _scored_rows() -> Iterator[Row]:
    people, men = population("men"), records("men", BODIES)
    keys = men[0].measure_keys()
    system = make_system(people.model, AS_TAKEN, keys)
    table = np.array([[one.value(key) for key in keys] for one in men])
    off = table - system.mean
    ours = [[score.expected.value for score in record] for record in people.scores_of_many(men)]
    for left in (_left_of_all, _left_of_each):
        _must(float(np.abs(ours - (table - left(off, system.read))).max()) < SAME)
    task = f"{BODIES:,} records of 22 measures, each value from all others"
    yield task, "notchbook, all at once", median_ms(lambda: people.scores_of_many(men))
    yield task, "notchbook, one by one", median_ms(lambda: [people.scores(one) for one in men])
    yield task, "numpy, one by one", median_ms(lambda: _left_of_each(off, system.read))
    yield task, "numpy, all at once", median_ms(lambda: _left_of_all(off, system.read))


def _left_of_each(off: Array, covariance: Array) -> Array:
    """What is left of each value beside the others of its record, the covariance inverted for each record."""
    return np.array([_left_of_all(line[None, :], covariance)[0] for line in off])


def _left_of_all(off: Array, covariance: Array) -> Array:
    """The same, the covariance inverted once."""
    precision = np.linalg.inv(covariance)
    left: Array = (off @ precision) / np.diag(precision)
    return left


def _must(holds: bool) -> None:
    if not holds:
        raise RuntimeError("What is to be timed is not what it was taken for.")


if __name__ == "__main__":
    for figure in figures():
        print(f"{figure.job:64} {figure.median:9.3f} {figure.unit}")
    for task, who, milliseconds in rows():
        print(f"{task:64} {who:42} {milliseconds:9.4f} ms")
