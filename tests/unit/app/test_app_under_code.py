"""A client under a code: nothing in the file says her name any more, and the work goes on."""

from dataclasses import replace

import pytest

from notchbook.app.bodies.body_edits import RenameBody
from notchbook.app.personal_data.codes import CodeWish
from notchbook.app.personal_data.naming import strings_in
from notchbook.app.studio import Studio
from notchbook.body import MeasureSet
from notchbook.book import Frozen
from notchbook.errors import BookError, InputError
from support.clients import FIRST_NAME, NAME, WAIST, Room


def test_the_name_is_gone_from_every_byte(room: Room) -> None:
    assert room.files_with(NAME, FIRST_NAME), "else the test could not fail"
    wish = CodeWish("K-17", in_other_texts=True)
    report = room.studio.keep_under_code(room.client, room.body().version, wish)
    assert (report.code, report.mentions, report.copies, report.clean) == ("K-17", (), (), True)
    assert not room.files_with(NAME, FIRST_NAME, NAME.casefold(), "Quill", "quill")
    room.studio.close()
    assert not room.files_with("Quill", "quill")


def test_her_measures_and_styles_are_as_before(room: Room) -> None:
    before, drawn = room.body().measures, room.style_now().replay.key
    room.studio.keep_under_code(room.client, room.body().version, CodeWish("K-17", in_other_texts=True))
    after = room.body()
    assert after.measures == replace(before, name="K-17", note=after.measures.note)
    assert after.measures.note == "K-17 (2) stands with her weight on the left"
    assert room.style_now().replay.key == drawn
    assert room.style_now().name == "Skirt for K-17"
    assert "K-17" in [entry.name for entry in room.studio.list_bodies()]
    [revision] = room.book.revisions(room.style)
    assert revision.approved
    assert revision.reason == "fits K-17"
    assert room.book.verify() == ()


def test_her_edits_can_still_be_undone_without_the_name(room: Room) -> None:
    report = room.studio.keep_under_code(room.client, room.body().version, CodeWish("K-17"))
    assert report.code == "K-17"
    body = room.studio.undo_body(room.client, room.body().version)
    body = room.studio.undo_body(room.client, body.version)
    assert body.measures.name == "K-17 (2)", "the name before, under a code of its own"
    assert not body.can_undo


def test_texts_of_others_are_listed_and_left_until_she_says_so(room: Room) -> None:
    listed = room.studio.name_stands_in(room.client, code="K-17")
    assert {(one.number, one.where) for one in listed} == {
        ("S-101", "its name"),
        ("S-101", "its text, now or before"),
        ("S-101", "the reason of a revision"),
        ("S-101", "a note in its journal"),
    }
    report = room.studio.keep_under_code(room.client, room.body().version, CodeWish("K-17"))
    assert set(report.mentions) == set(listed)
    assert room.style_now().name == f"Skirt for {NAME}"
    frozen = room.book.revision_contents(room.approved.id).measures or ""
    assert "K-17" in frozen, "her measures in a revision are hers, whatever style it is of"
    assert NAME not in frozen


def test_other_entries_are_not_touched(room: Room) -> None:
    before = room.book.read(room.other_style), room.book.history(room.other_style), room.book.read(room.form)
    hashes = [revision.hash for revision in room.book.revisions(room.other_style)]
    room.studio.keep_under_code(room.client, room.body().version, CodeWish("K-17", in_other_texts=True))
    after = room.book.read(room.other_style), room.book.history(room.other_style), room.book.read(room.form)
    assert after == before
    assert [revision.hash for revision in room.book.revisions(room.other_style)] == hashes


def test_further_spellings_are_replaced_too(room: Room) -> None:
    style = room.studio.new_style(replace(room.style_now().recipe, number="", name="Rosi's coat"), room.form)
    wish = CodeWish("K-17", in_other_texts=True, further=("Rosi",))
    room.studio.keep_under_code(room.client, room.body().version, wish)
    assert room.studio.open_style(style.id).name == "K-17's coat"


def test_another_client_keeps_her_name_now_and_in_her_history(room: Room) -> None:
    """Found by a stranger: a first name that was looked for renamed another client, her history too."""
    other = room.studio.new_body(MeasureSet("Rosalind Z.", note="cousin of Rosalind"))
    other = room.studio.edit_body(other.id, other.version, RenameBody("Rosalind Y."))
    other = room.studio.edit_body(other.id, other.version, RenameBody("Rosalind Z."))
    style = room.studio.new_style(replace(room.style_now().recipe, number="", name="Coat"), other.id)
    frozen = room.book.freeze_revision(
        style.id, 1, Frozen(room.book.read(other.id).content, "{}", {"skirt": 1}), "first"
    )
    facts = [event.what for event in room.book.history(other.id)]
    wish = CodeWish("K-17", in_other_texts=True, further=("Rosalind",))
    report = room.studio.keep_under_code(room.client, room.body().version, wish)
    after = room.studio.open_body(other.id)
    assert (after.measures.name, after.measures.note) == ("Rosalind Z.", "cousin of K-17")
    assert room.book.read(other.id).name == "Rosalind Z."
    assert [event.what for event in room.book.history(other.id)][: len(facts)] == facts
    assert '"Rosalind Z."' in (room.book.revision_contents(frozen.id).measures or "")
    assert room.studio.undo_body(other.id, after.version).measures.name == "Rosalind Y."
    changed = {(one.number, one.text, one.after) for one in report.changed}
    assert (other.number, "cousin of Rosalind", "cousin of K-17") in changed
    assert not any(text in ("Rosalind Z.", "Rosalind Y.") for _number, text, _after in changed)
    assert {one.text for one in report.mentions} == {"Rosalind Z.", "Rosalind Y."}


def test_what_will_be_changed_is_what_is_changed(room: Room) -> None:
    planned = room.studio.name_stands_in(room.client, code="K-17")
    report = room.studio.keep_under_code(
        room.client, room.body().version, CodeWish("K-17", in_other_texts=True)
    )
    assert report.changed == planned
    assert {one.after for one in planned} == {"Skirt for K-17", "fits K-17"}
    texts = {said for stored in room.book.texts() for _field, said in strings_in(stored.text)}
    assert {one.after for one in planned} <= texts


def test_a_name_far_back_in_a_long_text_is_shown(room: Room) -> None:
    long = f"{'a plain coat, ' * 20}made for {NAME}"
    room.studio.new_body(MeasureSet("Form B", kind="form", note=long))
    [told] = [one for one in room.studio.name_stands_in(room.client, code="K-17") if one.number == "M-103"]
    assert told.text.endswith(f"made for {NAME}") and told.after.endswith("made for K-17")


def test_what_was_left_at_first_is_changed_later_under_the_same_code(room: Room) -> None:
    room.studio.keep_under_code(room.client, room.body().version, CodeWish("K-17"))
    assert room.files_with(NAME)
    wish = CodeWish("K-17", in_other_texts=True, further=(NAME,))
    report = room.studio.keep_under_code(room.client, room.body().version, wish)
    assert report.mentions == ()
    assert room.style_now().name == "Skirt for K-17"
    assert not room.files_with("Quill", "quill")


def test_a_code_is_offered_that_nobody_has(room: Room) -> None:
    assert room.studio.free_code(room.client) == "K-102"
    room.studio.new_body(MeasureSet("K-102"))
    assert room.studio.free_code(room.client) == "K-103"


@pytest.mark.parametrize(
    ("code", "refused"),
    [
        ("Form A", "code-taken"),
        (NAME, "code-tells-name"),
        (f"K-1 {FIRST_NAME.upper()}", "code-tells-name"),
        (" ", "measures-name"),
        ("K\x07", "text-not-plain"),
    ],
)
def test_a_code_that_would_not_do_is_refused(room: Room, code: str, refused: str) -> None:
    with pytest.raises(InputError) as caught:
        room.studio.keep_under_code(room.client, room.body().version, CodeWish(code))
    assert caught.value.code == refused
    assert room.body().measures.name == NAME


def test_a_style_has_no_name_of_a_client(room: Room) -> None:
    with pytest.raises(InputError) as caught:
        room.studio.keep_under_code(room.style, 1, CodeWish("K-17"))
    assert caught.value.code == "entry-not-body"


def test_an_edit_in_another_window_is_a_conflict(room: Room) -> None:
    seen = room.body().version
    with_other = Studio.open_existing(room.path)
    with_other.undo_body(room.client, seen)
    with_other.close()
    with pytest.raises(BookError) as caught:
        room.studio.keep_under_code(room.client, seen, CodeWish("K-17"))
    assert caught.value.code == "book-conflict"


def test_copies_that_hold_the_name_are_told_or_deleted(room: Room) -> None:
    room.studio.backup(room.path.with_name("copy.notchbook"))
    report = room.studio.keep_under_code(room.client, room.body().version, CodeWish("K-17"))
    assert [copy.path.name for copy in report.copies] == ["copy.notchbook"]
    again = CodeWish("K-18", in_other_texts=True, delete_copies=True)
    report = room.studio.keep_under_code(room.client, room.body().version, again)
    assert report.copies == ()
    assert not room.path.with_name("copy.notchbook").exists()


def test_values_stay(room: Room) -> None:
    room.studio.keep_under_code(room.client, room.body().version, CodeWish("K-17"))
    assert room.files_with(WAIST), "a code hides who she is, not what she measures"
