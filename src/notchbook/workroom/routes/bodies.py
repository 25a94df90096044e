"""Opening, measuring and making bodies."""

from fastapi import APIRouter

from notchbook.body import MeasureSet
from notchbook.workroom.answers.body import BodyAnswer, body_answer
from notchbook.workroom.answers.looked_over import LookedOverAnswer, looked_over_answer
from notchbook.workroom.asked.body_edits import BodyChange, NewBody, body_edit
from notchbook.workroom.asked.form import Expected
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/bodies")


@router.post("")
def new_body(asked: NewBody, studio: StudioOf, reader: ReaderOf) -> BodyAnswer:
    """A new body without measures, under the next free number."""
    return body_answer(studio.new_body(MeasureSet(asked.name)), reader)


@router.get("/{body}")
def read_body(body: int, studio: StudioOf, reader: ReaderOf) -> BodyAnswer:
    """The measures as they stand."""
    return body_answer(studio.open_body(body), reader)


@router.get("/{body}/looked-over")
def look_over_body(body: int, studio: StudioOf, reader: ReaderOf) -> LookedOverAnswer:
    """What is to be looked at again, and what that look cannot see."""
    return looked_over_answer(studio.open_body(body), reader)


@router.post("/{body}/edits")
def change_body(body: int, change: BodyChange, studio: StudioOf, reader: ReaderOf) -> BodyAnswer:
    """Change a measure; it is on disk when the answer comes. 409 when another edit came first."""
    edit = body_edit(change.edit, reader)
    return body_answer(studio.edit_body(body, change.expected_version, edit), reader)


@router.post("/{body}/undo")
def undo_body(body: int, expected: Expected, studio: StudioOf, reader: ReaderOf) -> BodyAnswer:
    """Restore the measures before the last edit."""
    return body_answer(studio.undo_body(body, expected.expected_version), reader)


@router.post("/{body}/redo")
def redo_body(body: int, expected: Expected, studio: StudioOf, reader: ReaderOf) -> BodyAnswer:
    """Restore what was undone last."""
    return body_answer(studio.redo_body(body, expected.expected_version), reader)
