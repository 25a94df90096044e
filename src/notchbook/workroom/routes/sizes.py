"""A style checked in every size of a chart, while the page goes on."""

from typing import Annotated

from fastapi import APIRouter, Depends, Request

from notchbook.workroom.answers.sizes import SizesAnswer, sizes_answer
from notchbook.workroom.asked.sizes import ChartChoice
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.size_jobs import SizeJobs
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api")


def _jobs(request: Request) -> SizeJobs:
    jobs = request.app.state.size_jobs
    assert isinstance(jobs, SizeJobs)
    return jobs


JobsOf = Annotated[SizeJobs, Depends(_jobs)]


@router.post("/styles/{style}/sizes")
def start_size_check(
    style: int, asked: ChartChoice, studio: StudioOf, jobs: JobsOf, reader: ReaderOf
) -> SizesAnswer:
    """Check every size; the answer comes at once, and the page asks how far it is."""
    state = studio.open_style(style)
    return sizes_answer(jobs.start(state.recipe, state.version, asked.for_app(studio)), reader)


@router.get("/size-checks/{number}")
def read_size_check(number: int, jobs: JobsOf, reader: ReaderOf) -> SizesAnswer:
    """How far a check is, and what came of it so far."""
    return sizes_answer(jobs.find(number), reader)


@router.post("/size-checks/{number}/stop")
def stop_size_check(number: int, jobs: JobsOf, reader: ReaderOf) -> SizesAnswer:
    """Ask a check to stop after the size that it is at; what was checked stays."""
    job = jobs.find(number)
    job.stopping.set()
    return sizes_answer(job, reader)
