"""Made to measure: a block or style for every body of a file, on all cores; a bad row never stops the run."""

import csv
import io
import os
import time
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from notchbook.app.bodies.resting_on_estimates import rested_on
from notchbook.app.draft_order import DraftOrder, carry_out
from notchbook.app.drafting import asks
from notchbook.app.eases.ease_rows import ease_table
from notchbook.app.examining import examine
from notchbook.app.side_processes import results_in_order
from notchbook.app.staging import refuse_other_ending, refuse_over_input
from notchbook.body import BodyRow, MeasureSet, read_bodies
from notchbook.errors import HouseFault, NotchbookError
from notchbook.output.files import write_file
from notchbook.pattern import Severity
from notchbook.recipe import Recipe

_FAULT = "program-fault"

COLUMNS = ("id", "ok", "code", "message", "worst_closure_mm", "flags", "taken", "estimated", "seconds")
"""The columns of the report, one row a body."""

_CHUNK = 16
"""Bodies handed to a process at a time: enough to hide the handing over, few enough for progress."""


@dataclass(frozen=True, slots=True)
class MadeRow:
    """One body: whether it was drafted, else the code and words of the refusal.

    ``worst_closure_mm`` is the largest distance of a promised length from what it should be; ``flags``
    are the codes of what must be looked at, ``taken`` the cures that were asked for and called for,
    ``estimated`` the measures that the draft rests on and that nobody took.
    """

    id: str
    ok: bool
    code: str
    message: str
    worst_closure_mm: float | None
    flags: tuple[str, ...]
    taken: tuple[str, ...]
    estimated: tuple[str, ...]
    seconds: float


@dataclass(frozen=True, slots=True)
class MadeSummary:
    """How a run went: bodies, drafted (some of them with a cure), flagged, seconds, cores."""

    bodies: int
    drafted: int
    cured: int
    flagged: int
    seconds: float
    cores: int


@dataclass(frozen=True, slots=True)
class GarmentAsked:
    """What is made for every body: a :class:`notchbook.app.draft_order.DraftOrder` without measures."""

    garment: str
    parameters: Mapping[str, Any] = field(default_factory=dict)
    take: tuple[str, ...] = ()
    recipe: Recipe | None = None

    def order(self, measures: MeasureSet) -> DraftOrder:
        """The order for one body."""
        return DraftOrder(self.garment, measures, self.parameters, take=self.take, recipe=self.recipe)


def make_to_measure(
    asked: GarmentAsked,
    bodies: Path,
    report: Path,
    *,
    cores: int | None = None,
    progress: Callable[[int], None] | None = None,
) -> MadeSummary:
    """Draft the block, or run the style, for each row of ``bodies`` and write ``report`` (CSV), in order.

    The checks of pieces made cut-ready are left out of a block, which goes to no cutter: they take longest.
    Cures are taken where a body calls for them (``curing``). ``progress`` is called with the
    number of rows done. The file as a whole is refused as :func:`notchbook.body.files.read_bodies` says, and
    where a choice must be made (:func:`notchbook.app.drafting.asks`); a row that cannot be read or drafted
    gets its code.
    """
    refuse_other_ending(report, ".csv")
    refuse_over_input(report, (bodies,))
    started = time.perf_counter()
    used = cores or os.cpu_count() or 1
    rows: list[MadeRow] = []
    for row in made_rows(asked, read_bodies(bodies), used):
        rows.append(row)
        if progress is not None:
            progress(len(rows))
    write_file(report, report_text(rows).encode("utf-8"))
    return MadeSummary(
        bodies=len(rows),
        drafted=sum(row.ok for row in rows),
        cured=sum(row.ok and bool(row.taken) for row in rows),
        flagged=sum(bool(row.flags) for row in rows),
        seconds=time.perf_counter() - started,
        cores=used,
    )


def made_rows(asked: GarmentAsked, bodies: Iterator[BodyRow], cores: int) -> Iterator[MadeRow]:
    """The rows in order, drafted on ``cores`` processes (1: in this one)."""
    yield from results_in_order(_made, ((asked, row) for row in bodies), cores, _CHUNK)


def report_text(rows: list[MadeRow]) -> str:
    """The report as CSV text."""
    written = io.StringIO()
    writer = csv.writer(written, lineterminator="\n")
    writer.writerow(COLUMNS)
    for row in rows:
        closure = "" if row.worst_closure_mm is None else f"{row.worst_closure_mm:.4f}"
        ok = "yes" if row.ok else "no"
        words = (" ".join(row.flags), " ".join(row.taken), " ".join(row.estimated))
        writer.writerow((row.id, ok, row.code, row.message, closure, *words, f"{row.seconds:.4f}"))
    return written.getvalue()


def _measures_of(row: BodyRow) -> MeasureSet:
    if row.error is not None or row.measures is None:
        raise row.error or HouseFault("body-row-empty", row=row.id)
    return row.measures


def _made(job: tuple[GarmentAsked, BodyRow]) -> MadeRow:
    asked, row = job
    started = time.perf_counter()
    closure: float | None = None
    flags: tuple[str, ...] = ()
    taken: tuple[str, ...] = ()
    estimated: tuple[str, ...] = ()
    code = message = ""
    try:
        done = carry_out(asked.order(_measures_of(row)))
        run = done.run
        taken = tuple(cure.word for cure in done.taken)
        estimated = tuple(rested_on(run))
        closure = max((line.miss for line in ease_table(run)), default=0.0)
        findings = [
            f for f in examine(run, cut=asked.recipe is not None).findings if f.severity is not Severity.NOTE
        ]
        flags = tuple(dict.fromkeys(finding.code for finding in findings))
    except NotchbookError as error:
        if asks(error):
            raise  # a choice that nobody made is no matter of this body: the run asks for it once
        code, message = error.code, error.text()
    except Exception as error:  # our own fault on one body: it becomes a line, and the rest goes on
        code, message = _FAULT, HouseFault(_FAULT, detail=f"{type(error).__name__}: {error}").text()
    seconds = time.perf_counter() - started
    return MadeRow(row.id, not code, code, message, closure, flags, taken, estimated, seconds)
