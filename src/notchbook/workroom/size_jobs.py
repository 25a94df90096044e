"""Checks of a style in every size of a chart: one thread each, asked how far it is, stopped when asked to."""

import itertools
import logging
import threading
from dataclasses import dataclass, field
from typing import Final, Literal

from notchbook.app.checked_by_size import CheckedSize, checked_by_size
from notchbook.body.charts import SizeChart
from notchbook.errors import HouseFault, InputError, NotchbookError
from notchbook.recipe import Recipe

SizeJobState = Literal["running", "done", "stopped", "refused"]

MOST_JOBS: Final = 8
"""Checks that are remembered; the oldest that has ended goes first."""

_LOG = logging.getLogger("notchbook.workroom")


@dataclass
class SizeJob:
    """One check of a style as it was at ``version``; ``checked`` are the sizes that are done, in order."""

    id: int
    version: int
    recipe: Recipe
    chart: SizeChart
    state: SizeJobState = "running"
    checked: tuple[CheckedSize, ...] = ()
    error: NotchbookError | None = None
    stopping: threading.Event = field(default_factory=threading.Event)


class SizeJobs:
    """The checks of one workroom. They only read: a stopped one leaves nothing behind."""

    def __init__(self) -> None:
        self._jobs: dict[int, SizeJob] = {}
        self._numbers = itertools.count(1)

    def start(self, recipe: Recipe, version: int, chart: SizeChart) -> SizeJob:
        """Check every size of the chart, in a thread of its own."""
        job = SizeJob(next(self._numbers), version, recipe, chart)
        self._jobs[job.id] = job
        ended = [known.id for known in self._jobs.values() if known.state != "running"]
        for old in ended[: max(0, len(self._jobs) - MOST_JOBS)]:
            del self._jobs[old]
        threading.Thread(target=_run, args=(job,), name=f"sizes {job.id}", daemon=True).start()
        return job

    def find(self, number: int) -> SizeJob:
        """The check with this number; InputError ``size-check-unknown``."""
        if number not in self._jobs:
            raise InputError("size-check-unknown", number=number)
        return self._jobs[number]


def _run(job: SizeJob) -> None:
    try:
        for label in job.chart.labels:
            if job.stopping.is_set():
                job.state = "stopped"
                return
            job.checked += checked_by_size(job.recipe, [job.chart.size(label)])
        job.state = "done"
    except NotchbookError as error:
        job.error, job.state = error, "refused"
    except Exception as error:
        # The page must hear of it; the traceback goes to the log, as that of a request does.
        _LOG.exception("fault in a check of sizes")
        job.error, job.state = HouseFault("workroom-fault", kind=type(error).__name__), "refused"
