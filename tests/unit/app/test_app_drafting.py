"""Drafting by name, settings as text, and the ease table."""

from dataclasses import replace

import pytest

from notchbook.app.demo import demo_client, demo_form, demo_recipe
from notchbook.app.drafting import completed, draft
from notchbook.app.eases.ease_rows import ease_table
from notchbook.app.examining import examine
from notchbook.app.needs.garment_parameters import block_named, blocks
from notchbook.app.settings import read_settings
from notchbook.app.style_file import StyleFile, run_style
from notchbook.body import MeasureSet
from notchbook.errors import InputError, NotchbookError
from notchbook.pattern import Severity
from notchbook.pattern.promised_length import promised_length
from notchbook.recipe import change_step, remove_step, replay


def refused(code: str) -> "pytest.RaisesExc[NotchbookError]":
    """A refusal with this code."""
    return pytest.RaisesExc(NotchbookError, check=lambda error: error.code == code)


def test_the_skirt_is_a_block_and_a_vent_is_not() -> None:
    names = [block.operation for block in blocks()]
    assert "skirt" in names
    assert "vent" not in names
    with refused("block-unknown"):
        block_named("vent")


def test_a_draft_needs_all_its_measures_and_names_them_at_once() -> None:
    with pytest.raises(InputError) as caught:
        draft("skirt", MeasureSet.from_mm("A", {"waist_girth": 700.0}))
    assert caught.value.facts["keys"] == ("hip_girth", "hip_depth")


def test_measures_that_no_body_has_are_not_drafted() -> None:
    with refused("hip-too-small"):
        draft(
            "skirt", MeasureSet.from_mm("A", {"waist_girth": 1000.0, "hip_girth": 650.0, "hip_depth": 200.0})
        )


def test_the_ease_table_is_body_plus_ease() -> None:
    run = draft("skirt", demo_form(), {"hip_ease": "6 cm"})
    rows = {row.measure: row for row in ease_table(run)}
    assert rows["waist_girth"].pattern == pytest.approx(705.0 + 15.0, abs=0.01)
    assert rows["hip_girth"].pattern == pytest.approx(970.0 + 60.0, abs=0.01)
    assert rows["hip_girth"].ease == pytest.approx(60.0)


def test_what_a_style_has_taken_away_is_gone_from_the_table() -> None:
    """The waist of a block is no promise any more once its edge was cut away: then it says so."""
    run = draft("skirt", demo_form())
    girth = ease_table(run)[0]
    assert girth.pattern is not None
    bare = replace(run.pattern, pieces={}, seams={}, groups={})
    assert promised_length(bare, run.expectations[0]) is None


def test_settings_take_the_unit_of_the_person() -> None:
    read = read_settings("skirt", ["length=58", "hip_ease = 1/20 hip + 1 cm", "back_darts=2"], "cm")
    assert read == {"length": "58 cm", "hip_ease": "1/20 hip + 1 cm", "back_darts": 2}
    assert read_settings("skirt", ["length=23 1/2", "front_darts=auto"], "in") == {
        "length": "23 1/2 in",
        "front_darts": "auto",
    }


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("length", "setting-malformed"),
        ("=5", "setting-malformed"),
        ("a=", "setting-malformed"),
        ("lenght=5", "setting-unknown"),
    ],
)
def test_settings_that_set_nothing_are_refused(text: str, code: str) -> None:
    with refused(code):
        read_settings("skirt", [text], "cm")


def test_the_demonstration_has_nothing_to_check() -> None:
    for body in (demo_form(), demo_client()):
        run = completed(replay(demo_recipe(demo_form()), body))
        report = examine(run)
        assert not report.stops
        assert not report.broken
    form = completed(replay(demo_recipe(demo_form()), demo_form()))
    assert [f.code for f in examine(form).findings if f.severity is not Severity.NOTE] == []


def test_without_cut_only_the_checks_of_cut_pieces_are_left_out() -> None:
    run = draft("skirt", demo_form())
    whole, quick = set(examine(run).passed), set(examine(run, cut=False).passed)
    assert quick < whole
    assert "cut-ready" in whole - quick
    assert "seam-walks" in quick


def test_a_run_that_stopped_says_where() -> None:
    form = demo_form()
    run = replay(remove_step(demo_recipe(form), "vent-1"), form)
    with pytest.raises(NotchbookError) as caught:
        completed(run)
    assert caught.value.__notes__ == ["The pattern steps stopped at zip_opening-1; waistband-1 must wait."]
    with pytest.raises(NotchbookError):
        completed(run)
    assert len(caught.value.__notes__) == 1


def test_a_style_on_another_body_needs_the_measures_of_its_blocks() -> None:
    form = demo_form()
    style = StyleFile(demo_recipe(form), form, None)
    assert run_style(style).measures is form
    assert run_style(style, demo_client()).measures.name == "Marta V."
    with pytest.raises(InputError) as caught:
        run_style(style, MeasureSet.from_mm("A", {"waist_girth": 700.0}))
    assert caught.value.facts["keys"] == ("hip_girth", "hip_depth")
    with refused("hip-too-small"):
        run_style(
            style, MeasureSet.from_mm("A", {"waist_girth": 1e3, "hip_girth": 650.0, "hip_depth": 200.0})
        )


def test_a_changed_step_changes_the_pattern_and_nothing_else_in_the_recipe() -> None:
    form = demo_form()
    recipe = demo_recipe(form)
    longer = change_step(recipe, "skirt-1", {"length": "70 cm"}, base=form)
    before, after = (
        completed(replay(r, form)).pattern.pieces["skirt.front"].bounds for r in (recipe, longer)
    )
    assert after.height - before.height == pytest.approx(80.0, abs=0.01)
