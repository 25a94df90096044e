"""How long trousers, skirts and stretch blocks take.

Run as ``python benchmarks/bench_lower.py``. The body is the invented medium one of the sheets.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path
from typing import Final

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools"), str(ROOT / "benchmarks")]

from lower_sheets import KINDS, SheetKind, lower_bodies
from make_lower_bodies import lower_body
from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.errors import NotchbookError
from notchbook.recipe import Replay
from survey_rows import rows
from timing import Figure, timed

KEY: Final = """\
The body is the invented medium one of docs/sheets. The crotch of one body is solved sooner than that of
another: so trousers are drafted for surveyed women too, once each."""

WOMEN: Final = 60
"""Surveyed women for whom trousers are drafted, evenly spread over the survey."""

CHECKED: Final = ("trousers", "bodysuit")


def figures() -> Iterator[Figure]:
    """The jobs of the house, one after the other."""
    measures = dict(lower_bodies())["medium-92"]
    for kind in KINDS:
        yield timed(f"draft of the {_words(kind)}", _drafting(kind, measures))
    for kind in KINDS:
        if kind.name in CHECKED:
            run = draft(kind.block, measures, kind.settings)
            yield timed(f"checks while shaping: {_words(kind)}", _checking(run))
    yield trousers_of_women()


def trousers_of_women() -> Figure:
    """One draft each, those that are refused among them."""
    every = max(1, len(rows("women")) // WOMEN)
    taken = []
    for row in rows("women")[::every][:WOMEN]:
        measures = lower_body(row, "natural", "measured", "women").measures
        started = time.perf_counter()
        with suppress(NotchbookError):
            draft("trousers", measures)
        taken.append((time.perf_counter() - started) * 1e3)
    job = f"draft of the trousers block, {WOMEN} surveyed women"
    return Figure(job, min(taken), statistics.median(taken), max(taken))


def _words(kind: SheetKind) -> str:
    return f"{kind.name.replace('-', ' ')} block"


def _drafting(kind: SheetKind, measures: MeasureSet) -> Callable[[], object]:
    return lambda: draft(kind.block, measures, kind.settings)


def _checking(run: Replay) -> Callable[[], object]:
    return lambda: examine(run, cut=False)


if __name__ == "__main__":
    for item in figures():
        print(f"{item.job:60} {item.least:9.2f} {item.median:9.2f} {item.most:9.2f} {item.unit}")
