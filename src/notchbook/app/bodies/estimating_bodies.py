"""Estimates for every body of a file: a report with each value and its ±."""

import csv
import io
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import islice
from pathlib import Path
from typing import Final

from notchbook.app.bodies.filling_estimates import with_population
from notchbook.app.looking_over.first import look_over_first_many
from notchbook.app.needs.of_garment import GarmentNeeds, estimates_for
from notchbook.app.staging import refuse_other_ending, refuse_over_input, refuse_same_file
from notchbook.body import BodyRow, MeasureSet, PopulationName, measure_entry, measure_table, read_bodies
from notchbook.body.estimating.estimate import Estimate, Estimates
from notchbook.body.estimating.many import estimate_many
from notchbook.body.files.write_bodies import write_bodies
from notchbook.errors import HouseFault, InputError
from notchbook.output.files import write_file
from notchbook.units import Unit, format_length

_DECIMALS: Final[dict[Unit, int]] = {"mm": 0, "cm": 1, "in": 3}

_CHUNK: Final = 500
"""Bodies that are worked out together: enough to be fast, few enough for progress."""

ABOUT: Final = ("id", "unit", "population", "rests_on", "code", "message")
"""The first columns of the report; after them for each measure its value and its ±."""


@dataclass(frozen=True, slots=True)
class EstimatedBody:
    """One line of a file: what was estimated, or why not. ``caution``: it should be looked over first."""

    row: BodyRow
    estimates: Estimates | None
    error: InputError | None
    caution: InputError | None = None

    def filled(self) -> MeasureSet:
        """The body with its estimates; as it was where nothing could be estimated.
        HouseFault for a line that holds no body."""
        if self.row.measures is None:
            raise HouseFault("body-row-empty", row=self.row.id)
        if self.estimates is None:
            return self.row.measures
        new = {key: one.measure() for key, one in self.estimates.found.items()}
        return replace(self.row.measures, values={**self.row.measures.values, **new})


def estimated_bodies(
    bodies: Path, population: PopulationName | None = None, garment: GarmentNeeds | None = None
) -> Iterator[EstimatedBody]:
    """Every line of a bodies file with its estimates, in order; a bad line never stops the rest.

    ``population`` goes before what the file names; with a ``garment`` that alone is estimated with which it
    would be drafted. Refused at once as :func:`notchbook.body.read_bodies`.
    """
    rows, wanted = read_bodies(bodies), _Wanted(garment)
    while chunk := list(islice(rows, _CHUNK)):
        held = [_held(row, population) for row in chunk]
        sets = [row.measures for row in held if row.measures is not None]
        answers, cautions = iter(estimate_many(sets)), iter(look_over_first_many(sets))
        for row in held:
            if row.measures is None:
                yield EstimatedBody(row, None, row.error)
                continue
            answer, caution = next(answers), next(cautions)
            if isinstance(answer, InputError):
                yield EstimatedBody(row, None, answer)
            else:
                yield EstimatedBody(row, wanted.of(answer, row.measures), None, caution)


def estimate_file(
    bodies: Path,
    out: Path | None,
    report: Path | None,
    population: PopulationName | None = None,
    garment: GarmentNeeds | None = None,
    *,
    unit: Unit | None = None,
    progress: Callable[[int], None] | None = None,
) -> tuple[EstimatedBody, ...]:
    """Write the bodies filled in (``out``) and a report of the estimates (``report``), lengths in ``unit`` or
    in that of their line; each whole or not at all. What came of each line.

    Lines that cannot be read are in the report and not among the bodies; those in which nothing could be
    estimated are written as they were.
    """
    targets = [path for path in (out, report) if path is not None]
    refuse_same_file(targets)
    for path in targets:
        refuse_other_ending(path, ".csv")
        refuse_over_input(path, (bodies,))
    done: list[EstimatedBody] = []
    for one in estimated_bodies(bodies, population, garment):
        done.append(one)
        if progress is not None:
            progress(len(done))
    if report is not None:
        write_file(report, report_text(done, unit).encode("utf-8"))
    if out is not None:
        read = [one for one in done if one.row.measures is not None]
        write_bodies([one.filled() for one in read], out, ids=[one.row.id for one in read])
    return tuple(done)


def report_text(done: Collection[EstimatedBody], unit: Unit | None) -> str:
    """The report as CSV text: a column for each measure that was estimated for any body, and its ±.

    Lengths are in ``unit``; without it in the unit of their line, and centimeters where that names none.
    """
    used = {key for one in done if one.estimates is not None for key in one.estimates.found}
    keys = [key for key in measure_table() if key in used]
    written = io.StringIO()
    writer = csv.writer(written, lineterminator="\n")
    writer.writerow((*ABOUT, *(name for key in keys for name in (key, f"{key}.error"))))
    for one in done:
        found = {} if one.estimates is None else one.estimates.found
        problem = one.error or one.caution
        code, message = ("", "") if problem is None else (problem.code, problem.text())
        its = unit or one.row.unit or "cm"
        population = "" if one.row.measures is None else one.row.measures.population or ""
        about = (one.row.id, its, population, _rests_on(found), code, message)
        writer.writerow((*about, *(text for key in keys for text in _cells(found.get(key), its))))
    return written.getvalue()


def _held(row: BodyRow, population: PopulationName | None) -> BodyRow:
    return row if row.measures is None else replace(row, measures=with_population(row.measures, population))


class _Wanted:
    """What of all estimates a garment wants: told at the first of the bodies that hold the same measures."""

    def __init__(self, garment: GarmentNeeds | None) -> None:
        self._garment = garment
        self._keys: dict[tuple[object, ...], tuple[str, ...]] = {}

    def of(self, estimates: Estimates, measures: MeasureSet) -> Estimates:
        """Those of the estimates of a body that the garment wants; all without a garment."""
        if self._garment is None:
            return estimates
        keys = self._told(self._garment, measures)
        return replace(
            estimates,
            found={key: one for key, one in estimates.found.items() if key in keys},
            left_out=tuple(one for one in estimates.left_out if one.key in self._garment.keys),
        )

    def _told(self, garment: GarmentNeeds, measures: MeasureSet) -> tuple[str, ...]:
        alike = (measures.kind, measures.population, measures.waist_level, *measures.values)
        if alike in self._keys:
            return self._keys[alike]
        told = estimates_for(garment, measures)
        keys = tuple(told.estimates.found)
        if told.can_be_drafted:
            self._keys[alike] = keys
        return keys


def _rests_on(found: Mapping[str, Estimate]) -> str:
    """All measures on which the estimates of a line rest, in the order of the table."""
    given = {key for one in found.values() for key in one.given}
    return " ".join(key for key in measure_table() if key in given)


def _cells(one: Estimate | None, unit: Unit) -> tuple[str, str]:
    if one is None:
        return "", ""
    return _number(one.key, one.value, unit), _number(one.key, one.error, unit)


def _number(key: str, value: float, unit: Unit) -> str:
    return _length(value, unit) if measure_entry(key).is_length else f"{value:.1f}"


@lru_cache(maxsize=20_000)
def _length(value: float, unit: Unit) -> str:
    """A length without its unit; estimates are whole millimeters, so that few come again and again."""
    return format_length(value, unit, _DECIMALS[unit]).partition(" ")[0]
