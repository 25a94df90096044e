"""Work handed to several processes, its results in the order of the work."""

import signal
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from typing import TypeVar

Job = TypeVar("Job")
Result = TypeVar("Result")


def results_in_order(
    work: Callable[[Job], Result], jobs: Iterable[Job], cores: int, at_a_time: int
) -> Iterator[Result]:
    """The result of each job, in order, made on ``cores`` processes (1: in this one).

    ``at_a_time`` jobs are handed to a process together. When the caller stops, the other processes do.
    """
    if cores == 1:
        yield from map(work, jobs)
        return
    pool = ProcessPoolExecutor(max_workers=cores, initializer=_leave_interrupts)
    try:
        yield from pool.map(work, jobs, chunksize=at_a_time)
    finally:
        pool.shutdown(cancel_futures=True)


def _leave_interrupts() -> None:
    """A Ctrl-C is for the process that hands out the work; it stops the others."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
