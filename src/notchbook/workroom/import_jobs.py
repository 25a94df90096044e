"""Imports that run while the page goes on: one thread each, asked how far it is, stopped when she says so."""

import itertools
import logging
import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Final, Literal

from notchbook.app.charts.importing import ImportReport, import_into
from notchbook.app.studio import Studio
from notchbook.body.importing import Preview
from notchbook.errors import HouseFault, InputError, NotchbookError

JobState = Literal["running", "done", "stopped", "refused"]

MOST_JOBS: Final = 20
"""Ended imports that are remembered."""

_LOG = logging.getLogger("notchbook.workroom")


@dataclass
class ImportJob:
    """One import; ``done`` of ``total`` sets are in. ``report`` or ``error`` say how it ended."""

    id: int
    state: JobState = "running"
    done: int = 0
    total: int = 0
    report: ImportReport | None = None
    error: NotchbookError | None = None
    stopping: threading.Event = field(default_factory=threading.Event)


class ImportJobs:
    """The imports of one workroom. What is not stored whole is not stored at all."""

    def __init__(self) -> None:
        self._jobs: dict[int, ImportJob] = {}
        self._numbers = itertools.count(1)

    def start(self, studio: Studio, look: Callable[[], Preview], *, only_good: bool) -> ImportJob:
        """Store what ``look`` gives, in a thread of its own."""
        job = ImportJob(next(self._numbers))
        self._jobs[job.id] = job
        for old in [known.id for known in self._jobs.values() if known.state != "running"][:-MOST_JOBS]:
            del self._jobs[old]
        threading.Thread(target=_run, args=(job, studio, look, only_good), name=f"import {job.id}").start()
        return job

    def find(self, number: int) -> ImportJob:
        """The import with this number; InputError ``import-job-unknown``."""
        if number not in self._jobs:
            raise InputError("import-job-unknown", number=number)
        return self._jobs[number]


def _run(job: ImportJob, studio: Studio, look: Callable[[], Preview], only_good: bool) -> None:
    try:
        shown = look()
        job.total = shown.good

        def progress(done: int) -> None:
            job.done = done

        job.report = import_into(
            studio, shown, only_good=only_good, progress=progress, should_stop=job.stopping.is_set
        )
        job.done = job.report.stored
        job.state = "done"
    except NotchbookError as error:
        job.error = error
        job.state = "stopped" if error.code == "import-stopped" else "refused"
    except Exception as error:
        # The page must hear of it; the traceback goes to the log, as that of a request does.
        _LOG.exception("fault in an import")
        job.error = HouseFault("workroom-fault", kind=type(error).__name__)
        job.state = "refused"
