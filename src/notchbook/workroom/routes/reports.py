"""What follows after the drawing, so that the drawing never waits for it: findings and cut lines."""

from fastapi import APIRouter

from notchbook.workroom.answers.cut import CutAnswer, cut_answer
from notchbook.workroom.answers.findings import Findings, findings
from notchbook.workroom.asked.body_edits import BodyEdit, body_edit
from notchbook.workroom.asked.style_edits import StyleEdit, style_edit
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/styles/{style}")


@router.get("/report")
def read_report(style: int, studio: StudioOf, reader: ReaderOf) -> Findings:
    """Every check on the style as it stands, those on the cut pieces too."""
    return findings(studio.full_report(style), reader, studio.open_style(style).replay, papers=True)


@router.post("/preview/report")
def preview_report(style: int, edit: StyleEdit, studio: StudioOf, reader: ReaderOf) -> Findings:
    """What the checks would say after an edit; nothing is stored."""
    read = style_edit(edit, studio.recipe_of(style), reader)
    state = studio.preview_style(style, read)
    return findings(state.report, reader, state.replay, papers=False)


@router.post("/body-preview/report")
def body_preview_report(style: int, edit: BodyEdit, studio: StudioOf, reader: ReaderOf) -> Findings:
    """What the checks would say if the body had another measure; nothing is stored."""
    state = studio.preview_body(style, body_edit(edit, reader))
    return findings(state.report, reader, state.replay, papers=False)


@router.get("/cut")
def read_cut(style: int, studio: StudioOf) -> CutAnswer:
    """The cut lines of the style as it stands; refused in words when it cannot be made cut-ready."""
    return cut_answer(studio.cut_pieces(style))
