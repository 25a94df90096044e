"""The studio: edits, undo and redo, conflicts, previews; and each edit as data."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from notchbook.app.bodies.body_edits import ClearMeasure, RenameBody, SetMeasure
from notchbook.app.studio import Studio, StyleState
from notchbook.app.style_edits import (
    AddStep,
    ChangeStep,
    MoveStep,
    Rebind,
    RemoveStep,
    Rename,
    RenameStep,
    SetBody,
)
from notchbook.errors import BookError, InputError, NotchbookError
from notchbook.recipe import recipe_to_json


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """Where the book lies."""
    return tmp_path / "studio.notchbook"


@pytest.fixture
def studio(book: Path) -> Iterator[Studio]:
    """A studio with the demonstration in it."""
    opened = Studio.open(book)
    opened.first_time()
    yield opened
    opened.close()


@pytest.fixture
def style(studio: Studio) -> StyleState:
    """The style of the demonstration."""
    return studio.open_style(studio.list_styles()[0].id)


def recipe_text(state: StyleState) -> str:
    """The recipe of a state, to compare."""
    return recipe_to_json(state.recipe)


def test_the_demonstration_is_put_in_once(studio: Studio, book: Path) -> None:
    assert [entry.name for entry in studio.list_styles()] == ["Straight skirt"]
    names = ["Form A", "Marta V.", "Form B", "Form C", "Form D", "Rosa L."]
    assert [entry.name for entry in studio.list_bodies()] == names
    studio.first_time()
    studio.close()
    again = Studio.open(book)
    again.first_time()
    assert (len(again.list_styles()), len(again.list_bodies())) == (1, 6)
    again.close()


def test_an_edit_is_there_when_the_book_is_opened_again(
    studio: Studio, style: StyleState, book: Path
) -> None:
    edited = studio.edit_style(style.id, style.version, ChangeStep("skirt-1", {"length": "70 cm"}))
    assert edited.version == style.version + 1
    studio.close()
    again = Studio.open(book)
    assert recipe_text(again.open_style(style.id)) == recipe_text(edited)
    again.close()


def test_undo_and_redo_are_edits_of_their_own(studio: Studio, style: StyleState) -> None:
    assert (style.can_undo, style.can_redo) == (False, False)
    edited = studio.edit_style(style.id, style.version, ChangeStep("skirt-1", {"length": "70 cm"}))
    undone = studio.undo_style(style.id, edited.version)
    assert recipe_text(undone) == recipe_text(style)
    assert (undone.version, undone.can_redo) == (edited.version + 1, True)
    redone = studio.redo_style(style.id, undone.version)
    assert recipe_text(redone) == recipe_text(edited)


def test_the_second_of_two_edits_is_refused_and_changes_nothing(studio: Studio, style: StyleState) -> None:
    edited = studio.edit_style(style.id, style.version, ChangeStep("skirt-1", {"length": "70 cm"}))
    with pytest.raises(BookError) as caught:
        studio.edit_style(style.id, style.version, ChangeStep("skirt-1", {"length": "50 cm"}))
    assert caught.value.code == "book-conflict"
    assert recipe_text(studio.open_style(style.id)) == recipe_text(edited)


def test_an_edit_that_is_refused_changes_nothing(studio: Studio, style: StyleState) -> None:
    with pytest.raises(NotchbookError):
        studio.edit_style(style.id, style.version, ChangeStep("skirt-1", {"length": "long"}))
    assert studio.open_style(style.id).version == style.version


def test_previews_store_nothing(studio: Studio, style: StyleState) -> None:
    shown = studio.preview_style(style.id, ChangeStep("skirt-1", {"length": "70 cm"}))
    assert recipe_text(shown) != recipe_text(style)
    body = studio.preview_body(style.id, SetMeasure("waist_girth", "80", "cm"))
    assert body.eases[0].body == 800.0
    now = studio.open_style(style.id)
    assert (recipe_text(now), now.version, now.eases) == (recipe_text(style), style.version, style.eases)
    assert studio.open_body(style.body.id).measures.value("waist_girth") == 705.0


def test_a_measure_is_read_in_the_unit_that_was_typed(studio: Studio, style: StyleState) -> None:
    """One inch is 25.4 mm (international agreement of 1959)."""
    body = studio.open_body(style.body.id)
    body = studio.edit_body(body.id, body.version, SetMeasure("waist_girth", "28 1/2", "in"))
    assert body.measures.value("waist_girth") == pytest.approx(28.5 * 25.4)
    assert studio.open_style(style.id).eases[0].body == pytest.approx(28.5 * 25.4)
    body = studio.edit_body(body.id, body.version, SetMeasure("hip_depth", "19.5", "cm", "left"))
    assert body.measures.value("hip_depth", "left") == 195.0
    body = studio.edit_body(body.id, body.version, ClearMeasure("hip_depth", "left"))
    assert body.measures.value("hip_depth", "left") == 205.0
    body = studio.undo_body(body.id, body.version)
    assert body.measures.value("hip_depth", "left") == 195.0
    body = studio.redo_body(body.id, body.version)
    assert body.measures.value("hip_depth", "left") == 205.0
    with pytest.raises(InputError):
        studio.edit_body(body.id, body.version, SetMeasure("waist_girth", "7", "cm"))


def test_a_renamed_body_is_renamed_in_the_library_too(studio: Studio) -> None:
    entry = studio.list_bodies()[0]
    studio.edit_body(entry.id, entry.version, RenameBody("Form A, padded"))
    assert studio.list_bodies()[0].name == "Form A, padded"
    assert studio.open_body(entry.id).measures.name == "Form A, padded"


def test_a_style_for_another_body(studio: Studio, style: StyleState) -> None:
    client = studio.list_bodies()[1]
    moved = studio.edit_style(style.id, style.version, SetBody(client.id))
    assert moved.body.name == "Marta V."
    assert moved.eases[0].body == pytest.approx(31.25 * 25.4)
    with pytest.raises(InputError) as caught:
        studio.edit_style(style.id, moved.version, SetBody(style.id))
    assert caught.value.code == "entry-not-body"


def test_each_edit_of_a_recipe(studio: Studio, style: StyleState) -> None:
    def edit(what: AddStep | RemoveStep | MoveStep | RenameStep | Rename) -> StyleState:
        return studio.edit_style(style.id, studio.open_style(style.id).version, what)

    hem = {"hems": ["skirt.front/hem", "skirt.back/hem"], "amount": "2 cm"}
    added = edit(AddStep("change_length", hem, before="vent-1"))
    assert [step.id for step in added.recipe.steps][1] == "change_length-1"
    moved = edit(MoveStep("change_length-1", "waistband-1"))
    assert [step.id for step in moved.recipe.steps][-2] == "change_length-1"
    assert edit(RenameStep("change_length-1", "Longer")).recipe.step("change_length-1").title == "Longer"
    assert "change_length-1" not in [step.id for step in edit(RemoveStep("change_length-1")).recipe.steps]
    assert edit(Rename("Narrow skirt")).name == "Narrow skirt"
    assert edit(Rename("  ")).name == "Narrow skirt"
    assert studio.list_styles()[0].name == "Narrow skirt"


def test_the_library_follows_a_name_through_undo_and_redo(studio: Studio, style: StyleState) -> None:
    renamed = studio.edit_style(style.id, style.version, Rename("Narrow skirt"))
    undone = studio.undo_style(style.id, renamed.version)
    assert [undone.name, studio.list_styles()[0].name] == ["Straight skirt"] * 2
    redone = studio.redo_style(style.id, undone.version)
    assert [redone.name, studio.list_styles()[0].name] == ["Narrow skirt"] * 2
    body = studio.open_body(style.body.id)
    body = studio.edit_body(body.id, body.version, RenameBody("Form A, padded"))
    body = studio.undo_body(body.id, body.version)
    assert [body.measures.name, studio.list_bodies()[0].name] == ["Form A"] * 2


def test_a_lost_name_is_bound_anew_by_her(studio: Studio, style: StyleState) -> None:
    lost = studio.edit_style(style.id, style.version, RemoveStep("vent-1"))
    assert lost.replay.suspended is not None
    assert lost.replay.suspended.step == "zip_opening-1"
    assert set(lost.replay.pattern.pieces) == {"skirt.front", "skirt.back"}
    bound = studio.edit_style(
        style.id,
        lost.version,
        Rebind("zip_opening-1", "skirt.back/center_back/seam", "skirt.back/center_back"),
    )
    assert bound.replay.suspended is None


def test_a_new_style_and_a_new_body_get_numbers_of_their_own(studio: Studio, style: StyleState) -> None:
    from dataclasses import replace

    body = studio.new_body(replace(studio.open_body(style.body.id).measures, name="Form B"))
    assert body.number not in [entry.number for entry in studio.list_bodies()[:-1]]
    made = studio.new_style(replace(style.recipe, number=""), body.id)
    assert made.number not in (style.number, "")
    assert len(studio.list_styles()) == 2


def test_what_is_no_style_is_not_opened_as_one(studio: Studio) -> None:
    with pytest.raises(BookError) as caught:
        studio.open_style(studio.list_bodies()[0].id)
    assert caught.value.code == "entry-not-style"


def test_steps_on_offer_are_blocks_first(studio: Studio) -> None:
    choices = studio.step_choices()
    kinds = [choice.kind for choice in choices]
    assert kinds == sorted(kinds, key=["block", "style", "cut"].index)
    assert all(choice.summary and choice.schema["properties"] for choice in choices)
    older = {choice.operation: choice.superseded_by for choice in choices if choice.superseded_by}
    assert older == {"waist_facing": "facing"}, "kept for recipes that have it, said to be served by another"


def test_a_backup_is_a_book(studio: Studio, style: StyleState, tmp_path: Path) -> None:
    copy = studio.backup(tmp_path / "copy.notchbook")
    other = Studio.open(copy)
    assert recipe_text(other.open_style(style.id)) == recipe_text(style)
    other.close()
