"""The tailored jacket of the rack: replay, an edit, checks, one size and ten, papers.

The style and the body are invented; the recipe is read as it stands in docs/styles. The ten sizes are those
in the middle of the computed chart of women. What it takes is set beside what general-purpose libraries take
for the same outlines and the same strokes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path
from typing import Final

from bench_recipes import drafted, women
from forgetting import forget
from notchbook.app.checked_by_size import checked_by_size
from notchbook.app.examining import examine
from notchbook.app.papers import CutReady, Job, cut_ready, job_of
from notchbook.app.rack.styles import rack_style
from notchbook.body import MeasureSet
from notchbook.body.charts import shipped_chart
from notchbook.finish import finish
from notchbook.output.pdf_tiles import tiled_pdf
from notchbook.recipe import Recipe, Replay, change_step, replay
from plain_strokes import RecordedPattern, plain_pdf
from style_outlines import outline_rows
from timing import Figure, Row, median_ms, timed

ROOT = Path(__file__).resolve().parents[1]

BASE: Final = "medium-92"

DATE: Final = "2026-01-15"
"""Stands on the papers."""

EDITED: Final = "notched_lapel"
"""The step that is changed for the edit of the last third."""

KEY: Final = (
    "The style is the tailored jacket of docs/styles on an invented body; the ten sizes are those in the "
    "middle of the\ncomputed chart of women, each drafted anew and looked at by all checks. The other "
    "libraries are given the finished\noutlines and strokes: svgpathtools measures every edge and moves it, "
    "shapely lays an allowance of 10 mm round every\npiece, and reportlab, which the house writes with too, "
    "puts the same strokes on as many sheets: without words,\nand with nothing to be laid out."
)


def style() -> Recipe:
    """The recipe as it stands."""
    return rack_style("S-212").recipe


def whole() -> Replay:
    """The style run on its base."""
    return drafted(style(), women()[BASE])


def edited(width: str) -> Recipe:
    """The style with a lapel of another width: the last third runs again."""
    step = next(record.id for record in style().steps if record.operation == EDITED)
    return change_step(style(), step, {"lapel": width}, base=women()[BASE])


@cache
def sizes() -> tuple[MeasureSet, ...]:
    """The ten sizes in the middle of the chart, smallest first."""
    return shipped_chart("women").sizes[1:11]


def drafted_and_checked(asked: Sequence[MeasureSet]) -> None:
    """The style in these sizes with all checks; none may be refused."""
    forget()
    for size in checked_by_size(style(), asked):
        if size.report is None:
            raise AssertionError(f"{size.name}: {size.refusal}")


def papers(run: Replay) -> tuple[Job, CutReady]:
    """The job of the papers and the cut pieces; findings shut no gate here."""
    job = job_of(run, DATE, despite_findings=True)
    return job, cut_ready(job)


def figures() -> Iterator[Figure]:
    """Replay, edit, checks, sizes, papers."""
    run = whole()
    job, ready = papers(run)
    change, steps = edited("80 mm"), len(run.states)
    later = steps - replay(change, run.measures, run).reused
    yield timed(f"replay of a jacket of {steps} steps, whole", whole)
    again = f"the same after an edit: {later} step{'s' * (later > 1)} again"
    yield timed(again, lambda: replay(change, run.measures, run))
    yield timed("checks while shaping: the jacket", lambda: examine(run, cut=False), 5)
    yield timed("all checks: the jacket", lambda: examine(run), 5)
    yield timed("one size of the jacket, with all checks", lambda: drafted_and_checked(sizes()[:1]), 5)
    yield timed("ten sizes of the jacket, with all checks", lambda: drafted_and_checked(sizes()), 3)
    yield timed("cut-ready: the jacket", lambda: finish(run.pattern, job.house, job.cloth), 5)
    yield timed("tiled PDF of the jacket", lambda: tiled_pdf(ready.pieces, job.info), 5)


def rows() -> list[Row]:
    """The same outlines and strokes handed to general-purpose libraries."""
    run = whole()
    job, ready = papers(run)
    recorded = RecordedPattern.of(ready.pieces, job.info)
    strokes = f"{recorded.strokes} strokes on {len(recorded.sheets)} sheets"
    return [
        *outline_rows(run),
        (f"a jacket of {len(run.states)} steps, whole", "notchbook", median_ms(whole)),
        (
            f"{len(ready.pieces)} pieces cut-ready",
            "notchbook",
            median_ms(lambda: finish(run.pattern, job.house, job.cloth)),
        ),
        (strokes, "reportlab", median_ms(lambda: plain_pdf(recorded))),
        (
            f"{strokes}, with words, laid out",
            "notchbook",
            median_ms(lambda: tiled_pdf(ready.pieces, job.info)),
        ),
    ]


if __name__ == "__main__":
    for figure in figures():
        print(f"{figure.job:48} {figure.least:9.1f} {figure.median:9.1f} {figure.most:9.1f} {figure.unit}")
    for task, who, milliseconds in rows():
        print(f"{task:56} {who:14} {milliseconds:9.4f} ms")
