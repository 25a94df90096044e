"""Erasing a client: the plan says what holds her data, the act takes all of it, others are untouched."""

from dataclasses import replace

import pytest

from notchbook.app.bodies.body_edits import SetMeasure
from notchbook.app.personal_data.codes import CodeWish
from notchbook.app.personal_data.erasures import ErasureWish
from notchbook.app.studio import Studio
from notchbook.app.style_edits import Rename, SetBody
from notchbook.book import Frozen
from notchbook.errors import BookError, InputError
from support.clients import FIRST_NAME, NAME, WAIST, Room

HERS = (NAME, FIRST_NAME, WAIST, "Quill", "quill", "weight on the left")


def test_the_plan_tells_what_holds_her_data_and_changes_nothing(room: Room) -> None:
    room.studio.backup(room.path.with_name("copy.notchbook"))
    before = room.book.last_line()
    plan = room.studio.erasure_plan(room.client)
    assert (plan.number, plan.name, plan.journal_lines) == ("M-102", NAME, 4)
    assert [(style.number, style.name) for style in plan.styles] == [("S-101", f"Skirt for {NAME}")]
    assert [(one.number, one.revision, one.approved) for one in plan.frozen] == [("S-101", 1, True)]
    assert {one.where for one in plan.mentions} >= {"its name", "the reason of a revision"}
    assert [copy.path.name for copy in plan.copies] == ["copy.notchbook"]
    assert any("printed" in place for place in plan.beyond)
    assert room.book.last_line() == before


def test_with_her_styles_nothing_of_her_is_left_in_the_folder(room: Room) -> None:
    room.studio.backup(room.path.with_name("copy.notchbook"))
    assert room.files_with(*HERS) >= {"copy.notchbook"}
    wish = ErasureWish(also_styles=True, delete_copies=True)
    report = room.studio.erase_client(room.client, room.body().version, wish)
    assert report.whole
    assert report.erased == ("M-102", "S-101")
    assert not room.files_with(*HERS)
    room.studio.close()
    assert not room.files_with(*HERS)
    assert sorted(path.name for path in room.path.parent.iterdir()) == ["studio.notchbook"]


def test_others_are_untouched(room: Room) -> None:
    book = room.book
    ids = (room.other_style, room.form)
    before = [(book.read(one), book.history(one), book.revisions(one)) for one in ids]
    geometry = [book.revision_contents(revision.id) for revision in book.revisions(room.other_style)]
    room.studio.erase_client(room.client, room.body().version, ErasureWish(also_styles=True))
    assert [(book.read(one), book.history(one), book.revisions(one)) for one in ids] == before
    assert [book.revision_contents(one.id) for one in book.revisions(room.other_style)] == geometry
    assert book.verify() == ()
    assert [entry.number for entry in room.studio.list_styles()] == ["S-102"]


def test_her_styles_go_on_for_another_body(room: Room) -> None:
    wish = ErasureWish(other_body=room.form, in_other_texts=True)
    report = room.studio.erase_client(room.client, room.body().version, wish)
    assert report.whole
    assert report.erased == ("M-102",)
    assert not room.files_with(*HERS)
    style = room.style_now()
    assert (style.body.name, style.name) == ("Form A", "Skirt for (erased)")
    assert room.book.revisions(room.style) == (), "frozen on her measures: its shape was her body's"
    assert room.book.read(room.style).status == "working"
    assert "erase" in [event.kind for event in room.book.history(room.style)]
    assert room.book.verify() == ()


def test_a_style_that_goes_on_is_not_led_back_to_her(room: Room) -> None:
    wish = ErasureWish(other_body=room.form)
    room.studio.erase_client(room.client, room.body().version, wish)
    style = room.style_now()
    with pytest.raises(BookError) as refused:
        room.studio.undo_style(room.style, style.version)
    assert refused.value.code == "style-body-erased"
    assert room.style_now() == style
    renamed = room.studio.edit_style(room.style, style.version, Rename("Narrow skirt"))
    assert room.studio.undo_style(room.style, renamed.version).name == style.name


def test_no_new_body_takes_her_place(room: Room) -> None:
    """An old version of a style names its body by an id: given again, it would mean somebody else."""
    room.studio.erase_client(room.client, room.body().version, ErasureWish(also_styles=True))
    made = room.studio.new_body(replace(room.studio.open_body(room.form).measures, name="Next"))
    assert made.id not in (room.client, room.style)
    assert made.number == "M-103"


def test_revisions_that_she_keeps_are_said_to_hold_her(room: Room) -> None:
    wish = ErasureWish(other_body=room.form, keep_frozen=True, in_other_texts=True)
    report = room.studio.erase_client(room.client, room.body().version, wish)
    assert not report.whole
    assert [(one.number, one.revision) for one in report.kept] == [("S-101", 1)]
    [kept] = room.book.revisions(room.style)
    assert kept.approved
    assert WAIST in (room.book.revision_contents(kept.id).measures or "")
    assert room.book.verify() == ()


def test_a_revision_on_her_measures_is_found_in_a_style_that_is_for_another_now(room: Room) -> None:
    moved = room.studio.edit_style(room.style, room.style_now().version, SetBody(room.form))
    plan = room.studio.erasure_plan(room.client)
    assert plan.styles == ()
    assert [one.number for one in plan.frozen] == ["S-101"]
    report = room.studio.erase_client(room.client, room.body().version, ErasureWish(in_other_texts=True))
    assert report.whole
    assert room.style_now().version > moved.version
    assert not room.files_with(*HERS)


def test_a_block_that_was_frozen_on_her_measures_is_found(room: Room) -> None:
    block = room.book.add("block", "B-101", "Sloper", '{"draft":"skirt"}')
    content = room.book.read(room.client).content
    room.book.freeze_revision(block.id, 1, Frozen(content, "[]"), "sloper")
    plan = room.studio.erasure_plan(room.client)
    assert {one.number for one in plan.frozen} == {"B-101", "S-101"}
    room.studio.erase_client(room.client, room.body().version, ErasureWish(also_styles=True))
    assert room.book.revisions(block.id) == ()
    assert not room.files_with(*HERS)


def test_what_becomes_of_her_styles_must_be_said(room: Room) -> None:
    for wish, code in (
        (ErasureWish(), "erasure-styles-undecided"),
        (ErasureWish(other_body=room.client), "erasure-other-body"),
        (ErasureWish(other_body=room.other_style), "erasure-other-body"),
    ):
        with pytest.raises(InputError) as refused:
            room.studio.erase_client(room.client, room.body().version, wish)
        assert refused.value.code == code
    assert room.body().measures.name == NAME


def test_an_edit_in_another_window_is_a_conflict(room: Room) -> None:
    seen = room.body().version
    other = Studio.open_existing(room.path)
    other.edit_body(room.client, seen, SetMeasure("waist_girth", "75", "cm"))
    other.close()
    with pytest.raises(BookError) as refused:
        room.studio.erase_client(room.client, seen, ErasureWish(also_styles=True))
    assert refused.value.code == "book-conflict"
    assert room.body().measures.value("waist_girth") == 750.0
    assert room.book.verify() == ()


def test_a_client_under_a_code_is_erased_with_copies_that_hold_the_name(room: Room) -> None:
    room.studio.backup(room.path.with_name("before the code.notchbook"))
    room.studio.keep_under_code(room.client, room.body().version, CodeWish("K-17", in_other_texts=True))
    wish = ErasureWish(also_styles=True, delete_copies=True)
    report = room.studio.erase_client(room.client, room.body().version, wish)
    assert report.whole
    assert not room.files_with(*HERS, "K-17")


def test_what_is_left_is_told(room: Room) -> None:
    room.studio.backup(room.path.with_name("copy.notchbook"))
    report = room.studio.erase_client(room.client, room.body().version, ErasureWish(other_body=room.form))
    assert not report.whole
    assert [copy.path.name for copy in report.copies] == ["copy.notchbook"]
    assert {one.number for one in report.mentions} == {"S-101"}


def test_a_form_is_erased_as_a_client_is(room: Room) -> None:
    wish = ErasureWish(other_body=room.client)
    report = room.studio.erase_client(room.form, room.studio.open_body(room.form).version, wish)
    assert report.erased == ("M-101",)
    assert room.studio.open_style(room.other_style).body.name == NAME


def test_a_style_is_no_client(room: Room) -> None:
    with pytest.raises(InputError) as refused:
        room.studio.erasure_plan(room.style)
    assert refused.value.code == "entry-not-body"
