"""Why an edge is as it is."""

from fastapi import APIRouter

from notchbook.app.why.explaining_names import why_so
from notchbook.app.why.what_moves import movers
from notchbook.workroom.answers.why_so import MoversAnswer, WhyAnswer, movers_answer, why_answer
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/styles/{style}/why")


@router.get("")
def read_why(style: int, name: str, studio: StudioOf, reader: ReaderOf) -> WhyAnswer:
    """The steps and measures that made an edge, point, dart, seam or piece."""
    run = studio.open_style(style).replay
    return why_answer(run, why_so(run, name), reader)


@router.get("/movers")
def read_movers(style: int, name: str, studio: StudioOf, reader: ReaderOf) -> MoversAnswer:
    """What moves it: each number and measure of these steps made larger, and the pattern drawn again."""
    run = studio.open_style(style).replay
    why = why_so(run, name)
    return movers_answer(why, movers(run, why), reader)
