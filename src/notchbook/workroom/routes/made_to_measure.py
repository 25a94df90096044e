"""Make it measure: what can be wished for, and what solving would do before it is kept as an edit."""

from fastapi import APIRouter

from notchbook.app.wishes.making_it_measure import candidates, consequences
from notchbook.workroom.answers.made_to_measure import (
    MadeAnswer,
    MeasuringChoices,
    NumbersAnswer,
    made_answer,
    measuring_choices,
    numbers_answer,
)
from notchbook.workroom.asked.style_edits import MakeItMeasure, NumbersAsked, SolvingEdit
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.routes.wish_searches import SearchesOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/styles/{style}/make-it-measure")


@router.get("")
def read_measuring_choices(style: int, studio: StudioOf, reader: ReaderOf) -> MeasuringChoices:
    """What of the style can be made to measure, and by which numbers."""
    return measuring_choices(studio.open_style(style).replay, reader)


@router.post("")
def look_at_solved(
    style: int,
    edit: SolvingEdit,
    studio: StudioOf,
    reader: ReaderOf,
    searches: SearchesOf,
    search: str | None = None,
) -> MadeAnswer:
    """What solving would do, and what else would move; nothing is stored. ``search`` is a word by which the
    page asks meanwhile how far it is, or stops it."""
    asked = edit.for_app(reader) if isinstance(edit, MakeItMeasure) else edit.for_app()
    with searches.running(search) as heard:
        made = studio.solved(style, asked, heard.tell)
    return made_answer(made, consequences(made), reader)


@router.post("/numbers")
def find_numbers(
    style: int,
    asked: NumbersAsked,
    studio: StudioOf,
    reader: ReaderOf,
    searches: SearchesOf,
    search: str | None = None,
) -> NumbersAnswer:
    """Which numbers of which steps would make a wish come true: each is tried on a copy. ``search`` is a word
    by which the page asks meanwhile how far it is, or stops it."""
    run = studio.open_style(style).replay
    with searches.running(search) as heard:
        return numbers_answer(candidates(run, asked.for_app(run, reader), heard.tell), reader)
