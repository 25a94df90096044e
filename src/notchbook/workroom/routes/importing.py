"""Importing a foreign table: looked at, then stored as bodies and forms, or as a size chart."""

from typing import Annotated

from fastapi import APIRouter, Depends, Request

from notchbook.app.charts.importing import names_in
from notchbook.app.charts.importing_charts import imported_chart
from notchbook.body.importing import Preview
from notchbook.workroom.answers.chart import ChartAnswer, chart_answer
from notchbook.workroom.answers.importing import JobAnswer, PreviewAnswer, preview_answer
from notchbook.workroom.answers.refusal import refusal
from notchbook.workroom.asked.importing import AskedTable, ChartImportAsked, ImportAsked
from notchbook.workroom.import_jobs import ImportJob, ImportJobs
from notchbook.workroom.reader import Reader, ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/imports")


def _jobs(request: Request) -> ImportJobs:
    jobs = request.app.state.import_jobs
    assert isinstance(jobs, ImportJobs)
    return jobs


JobsOf = Annotated[ImportJobs, Depends(_jobs)]


@router.post("/preview")
def preview_import(asked: AskedTable, studio: StudioOf, reader: ReaderOf) -> PreviewAnswer:
    """What an import would store; nothing is."""
    return preview_answer(asked.preview(names_in(studio)), reader)


@router.post("")
def start_import(asked: ImportAsked, studio: StudioOf, jobs: JobsOf, reader: ReaderOf) -> JobAnswer:
    """Store it; the answer comes at once, and the page asks how far it is."""

    def look() -> Preview:
        return asked.preview(names_in(studio))

    return _answer(jobs.start(studio, look, only_good=asked.only_good), reader)


@router.post("/chart")
def import_chart(asked: ChartImportAsked, studio: StudioOf, reader: ReaderOf) -> ChartAnswer:
    """Store it as one size chart."""
    return chart_answer(studio.new_chart(imported_chart(asked.preview(), asked.name)), reader)


@router.get("/{number}")
def read_import(number: int, jobs: JobsOf, reader: ReaderOf) -> JobAnswer:
    """How far an import is."""
    return _answer(jobs.find(number), reader)


@router.post("/{number}/stop")
def stop_import(number: int, jobs: JobsOf, reader: ReaderOf) -> JobAnswer:
    """Ask an import to stop; the book is then as it was. One that has ended already stays."""
    job = jobs.find(number)
    job.stopping.set()
    return _answer(job, reader)


def _answer(job: ImportJob, reader: Reader) -> JobAnswer:
    report = job.report
    return JobAnswer(
        id=job.id,
        state=job.state,
        done=job.done,
        total=job.total,
        left=report.left if report else 0,
        left_out=report.left_out if report else 0,
        first_body=report.entries[0].id if report and report.entries else None,
        refused=refusal(job.error, reader) if job.error else None,
    )
