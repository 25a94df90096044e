"""Looking over a file: one body, or many with a report; nothing in the file is changed."""

import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from notchbook.app.looking_over.report import LookedRow, looked_row, refused_row, report_text
from notchbook.app.looking_over.shift import ShiftWords, look_over_beside, shift_words
from notchbook.app.looking_over.stale import with_stale
from notchbook.app.side_processes import results_in_order
from notchbook.app.staging import refuse_other_ending, refuse_over_input
from notchbook.body import (
    BodyRow,
    LookedOver,
    MeasureSet,
    PopulationName,
    look_over,
    read_bodies,
    read_measures,
)
from notchbook.body.files.typed_unit import typed_unit
from notchbook.output.files import write_file
from notchbook.units import LengthStyle, Unit

_CHUNK = 64
"""Bodies handed to a process at a time: enough to hide the handing over, few enough for progress."""

_ONE_PROCESS = 500
"""Up to so many bodies other processes cost more time than they save."""


@dataclass(frozen=True, slots=True)
class FileLookedOver:
    """How a file of bodies was looked over.

    ``shifts`` are the measures that are off in the whole file, each named once; the rows are judged beside
    them. ``nobody`` counts the bodies that were held against no population.
    """

    rows: tuple[LookedRow, ...]
    shifts: tuple[ShiftWords, ...]
    nobody: int
    seconds: float

    def count(self, level: str) -> int:
        """How many rows have this level: stop, check, fine, refused."""
        return sum(row.level == level for row in self.rows)


def look_over_file(
    path: Path, population: PopulationName | None, unit: Unit | None = None
) -> tuple[MeasureSet, LookedOver, LengthStyle]:
    """The one body of the file, as typed, what there is to say about it, and how its lengths are written.

    ``population`` counts where the file names none; ``unit`` writes the words, without it the inch where the
    file is in inches and else the centimeter. Refused: what :func:`notchbook.body.read_measures`
    refuses, but for values that no body has and contradictions: those are doubts here.
    """
    measures = named(read_measures(path, as_typed=True), population)
    typed = typed_unit(path)
    style = LengthStyle(unit or ("in" if typed == "in" else "cm"))
    return measures, with_stale(look_over(measures, style, typed), measures, style), style


def named(measures: MeasureSet, population: PopulationName | None) -> MeasureSet:
    """The set held against this population, where it names none itself."""
    if population is None or measures.population is not None:
        return measures
    return replace(measures, population=population)


def look_over_bodies(
    path: Path,
    population: PopulationName | None,
    style: LengthStyle,
    report: Path | None = None,
    *,
    cores: int = 1,
    progress: Callable[[int], None] | None = None,
) -> FileLookedOver:
    """Every body of the file, and what is off in the whole of it; the report is written at the end.

    A row that cannot be read is reported as refused, and the rest goes on. ``progress`` is called with the
    number of rows done. Refused: what :func:`notchbook.body.read_bodies` refuses of the file as a whole, a
    report that is not .csv (``suffix-unknown``) or is the file itself (``output-over-input``).
    """
    if report is not None:
        refuse_other_ending(report, ".csv")
        refuse_over_input(report, (path,))
    started = time.perf_counter()
    bodies = [_named_row(row, population) for row in read_bodies(path, as_typed=True)]
    sets = [row.measures for row in bodies if row.measures is not None]
    shifts = shift_words(sets, style)
    rows: list[LookedRow] = []
    for row in _looked_rows(bodies, shifts, cores):
        rows.append(row)
        if progress is not None:
            progress(len(rows))
    if report is not None:
        write_file(report, report_text(rows).encode("utf-8"))
    nobody = sum(measures.population is None for measures in sets)
    return FileLookedOver(tuple(rows), shifts, nobody, time.perf_counter() - started)


def _named_row(row: BodyRow, population: PopulationName | None) -> BodyRow:
    return row if row.measures is None else replace(row, measures=named(row.measures, population))


def _looked_rows(
    bodies: Sequence[BodyRow], shifts: tuple[ShiftWords, ...], cores: int
) -> Iterator[LookedRow]:
    jobs = ((row, shifts) for row in bodies)
    yield from results_in_order(_looked, jobs, cores if len(bodies) > _ONE_PROCESS else 1, _CHUNK)


def _looked(job: tuple[BodyRow, tuple[ShiftWords, ...]]) -> LookedRow:
    row, shifts = job
    if row.measures is None:
        return refused_row(row)
    unit: Unit = row.unit or "mm"
    style = LengthStyle(unit)
    looked = look_over_beside(row.measures, shifts, style)
    return looked_row(row, with_stale(looked, row.measures, style), unit)
