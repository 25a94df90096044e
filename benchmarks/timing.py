"""How the jobs of the bench are timed."""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

ROUNDS: Final = 15

_SHORT_ROUNDS: Final = 9

Row = tuple[str, str, float]
"""The task, who does it, and the median time in ms."""


@dataclass(frozen=True)
class Figure:
    """One line of the table: what was done, how long it took (least, median, most), in which unit."""

    job: str
    least: float
    median: float
    most: float
    unit: str = "ms"


def timed(job: str, work: Callable[[], object], rounds: int = ROUNDS) -> Figure:
    """Do the work several times, after once for warming up."""
    work()
    taken = []
    for _ in range(rounds):
        started = time.perf_counter()
        work()
        taken.append((time.perf_counter() - started) * 1e3)
    return Figure(job, min(taken), statistics.median(taken), max(taken))


def timed_command(job: str, words: list[str]) -> Figure:
    """From typing `notchbook` and these words to its end, each time as a new process, which must succeed."""
    script = "from notchbook.cli.main import main; main()"
    command = [sys.executable, "-c", script, *words]
    return timed(job, lambda: subprocess.run(command, capture_output=True, check=True))


def median_ms(task: Callable[[], object]) -> float:
    """The median time of a short task in ms; it is repeated until a round takes 5 ms."""
    started = time.perf_counter()
    task()
    repeats = max(1, int(0.005 / max(time.perf_counter() - started, 1e-7)))
    times = []
    for _ in range(_SHORT_ROUNDS):
        started = time.perf_counter()
        for _ in range(repeats):
            task()
        times.append((time.perf_counter() - started) / repeats)
    return statistics.median(times) * 1e3
