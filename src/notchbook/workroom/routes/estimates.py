"""What a body's missing measures may be, and which to take next."""

from typing import Annotated

from fastapi import APIRouter, Query

from notchbook.app.bodies.next_measures import measure_next, measure_next_for_block, measure_next_in_general
from notchbook.errors import InputError
from notchbook.workroom.answers.estimates import (
    EstimatesAnswer,
    NextAnswer,
    estimates_answer,
    next_answer,
    next_refused,
)
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/bodies/{body}")


@router.get("/estimates")
def read_estimates(body: int, studio: StudioOf, reader: ReaderOf) -> EstimatesAnswer:
    """Estimates for all that was not measured; nothing is stored."""
    return estimates_answer(studio.open_body(body).measures, reader)


@router.get("/next")
def read_next(
    body: int,
    studio: StudioOf,
    reader: ReaderOf,
    style: Annotated[int | None, Query()] = None,
    block: Annotated[str | None, Query(max_length=80)] = None,
) -> NextAnswer:
    """What to measure next: for a style, for a block as it comes, or without either for the whole body."""
    measures = studio.open_body(body).measures
    try:
        if style is not None:
            return next_answer(measure_next(studio.recipe_of(style), measures), reader)
        if block is not None:
            return next_answer(measure_next_for_block(block, measures), reader)
        return next_answer(measure_next_in_general(measures), reader)
    except InputError as error:
        if not error.code.startswith("estimate-"):
            raise
        return next_refused(error, reader)
