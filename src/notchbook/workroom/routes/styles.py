"""Opening and changing styles."""

from dataclasses import replace

from fastapi import APIRouter

from notchbook.app.drafting import draft_recipe
from notchbook.app.rack.styles import rack_style
from notchbook.workroom.answers.style import StyleAnswer, style_answer
from notchbook.workroom.asked.body_edits import BodyEdit, body_edit
from notchbook.workroom.asked.form import Expected
from notchbook.workroom.asked.style_edits import NewStyle, StyleChange, StyleEdit, StyleFromRack, style_edit
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/styles")


@router.post("")
def new_style(asked: NewStyle, studio: StudioOf, reader: ReaderOf) -> StyleAnswer:
    """A new style that begins with a block on the body's measures, under the next free number."""
    measures = studio.open_body(asked.body).measures
    recipe = draft_recipe(asked.block, measures, asked.parameters_for_app(reader), asked.name.strip())
    return style_answer(studio.new_style(recipe, asked.body), reader)


@router.post("/from-rack")
def style_from_rack(asked: StyleFromRack, studio: StudioOf, reader: ReaderOf) -> StyleAnswer:
    """A style of the rack for the body, under the next free number; a step that stops says why."""
    recipe = rack_style(asked.number).recipe
    own = replace(recipe, name=asked.name.strip() or recipe.name, number="")
    return style_answer(studio.new_style(own, asked.body), reader)


@router.get("/{style}")
def read_style(style: int, studio: StudioOf, reader: ReaderOf) -> StyleAnswer:
    """The style as it stands."""
    return style_answer(studio.open_style(style), reader)


@router.post("/{style}/edits")
def change_style(style: int, change: StyleChange, studio: StudioOf, reader: ReaderOf) -> StyleAnswer:
    """Change the style; it is on disk when the answer comes. 409 when another edit came first."""
    edit = style_edit(change.edit, studio.recipe_of(style), reader)
    return style_answer(studio.edit_style(style, change.expected_version, edit), reader)


@router.post("/{style}/preview")
def preview_style(style: int, edit: StyleEdit, studio: StudioOf, reader: ReaderOf) -> StyleAnswer:
    """What an edit would give; nothing is stored."""
    read = style_edit(edit, studio.recipe_of(style), reader)
    return style_answer(studio.preview_style(style, read), reader, look=True)


@router.post("/{style}/body-preview")
def preview_body(style: int, edit: BodyEdit, studio: StudioOf, reader: ReaderOf) -> StyleAnswer:
    """What the style would be if its body had another measure; nothing is stored."""
    return style_answer(studio.preview_body(style, body_edit(edit, reader)), reader, look=True)


@router.post("/{style}/undo")
def undo_style(style: int, expected: Expected, studio: StudioOf, reader: ReaderOf) -> StyleAnswer:
    """Restore the style before its last edit."""
    return style_answer(studio.undo_style(style, expected.expected_version), reader)


@router.post("/{style}/redo")
def redo_style(style: int, expected: Expected, studio: StudioOf, reader: ReaderOf) -> StyleAnswer:
    """Restore what was undone last."""
    return style_answer(studio.redo_style(style, expected.expected_version), reader)
