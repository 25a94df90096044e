"""Blocks that are drafted with others: parameters of either, needs that depend on body and choice."""

from dataclasses import replace

import pytest

from notchbook.app import drafting, settings
from notchbook.app.bodies.filling_estimates import fill_for_draft
from notchbook.app.bodies.next_measures import measure_next_for_block
from notchbook.app.needs import garment_parameters
from notchbook.app.needs import of_steps as needs
from notchbook.app.needs.of_garment import estimates_for, garment_named
from notchbook.app.style_edits import AddStep
from notchbook.app.style_file import StyleFile, run_style
from notchbook.body import measure_table
from notchbook.errors import DraftRefused, InputError, NotchbookError, catalogue
from notchbook.recipe import Recipe, StepContext, add_step, change_step
from support.odd_steps import NoParameters, register
from support.paired_blocks import LID, TRAY, LidParameters, TrayParameters, tray_body


@pytest.fixture(autouse=True)
def paired(monkeypatch: pytest.MonkeyPatch) -> None:
    """The tray and the lid are blocks until the test is over."""
    register(monkeypatch, TRAY, LID)


def refused(code: str) -> "pytest.RaisesExc[NotchbookError]":
    """A refusal with this code."""
    return pytest.RaisesExc(NotchbookError, check=lambda error: error.code == code)


def test_a_block_brings_the_one_that_it_is_drafted_with() -> None:
    run = drafting.draft("lid", tray_body(), {"cloth": "knit"})
    assert [record.id for record in run.recipe.steps] == ["tray-1", "lid-1"]
    assert run.recipe.step("lid-1").parameters["tray"] == "tray"
    assert set(run.pattern.pieces) == {"tray.front", "lid.lid"}
    assert run.recipe.name == "Tray and lid"


def test_a_plain_name_is_the_block_s_own_else_that_of_the_block_before_it() -> None:
    recipe = drafting.draft_recipe("lid", tray_body(), {"cloth": "woven", "bust_ease": "80 mm"})
    assert recipe.step("tray-1").parameters["bust_ease"] == "80 mm"
    assert recipe.step("lid-1").parameters["cloth"] == "woven"


def test_a_dotted_name_says_which_block_is_meant() -> None:
    recipe = drafting.draft_recipe("lid", tray_body(), {"lid.cloth": "knit", "tray.lowered": "30 mm"})
    assert recipe.step("tray-1").parameters["lowered"] == "30 mm"
    for name in ("tray.cloth", "skirt.length", "nothing", "tray."):
        with refused("setting-unknown"):
            drafting.draft_recipe("lid", tray_body(), {name: "1"})


def test_a_name_that_several_blocks_before_it_have_must_be_dotted(monkeypatch: pytest.MonkeyPatch) -> None:
    second = replace(TRAY, operation="chest")
    both = replace(TRAY, operation="trunk", parameters=NoParameters, drafted_with=("tray", "chest"))
    register(monkeypatch, TRAY, second, both)
    with pytest.raises(InputError) as caught:
        garment_parameters.parameter_named("trunk", "lowered")
    assert caught.value.code == "setting-ambiguous"
    assert caught.value.facts["known"] == ("tray.lowered", "chest.lowered")
    assert garment_parameters.parameter_named("trunk", "chest.lowered") == ("chest", "lowered")


def test_a_block_that_stands_for_another_is_drafted_in_its_stead(monkeypatch: pytest.MonkeyPatch) -> None:
    crate = replace(TRAY, operation="crate", title="Draft crate", stands_for=("tray",))
    register(monkeypatch, TRAY, LID, crate)
    chosen = {"cloth": "knit", "tray": "crate", "crate.lowered": "10 mm"}
    assert (
        settings.read_settings("lid", [f"{name}={value}" for name, value in chosen.items()], "mm") == chosen
    )
    run = drafting.draft("lid", tray_body(), chosen)
    assert [record.id for record in run.recipe.steps] == ["crate-1", "lid-1"]
    assert set(run.pattern.pieces) == {"crate.front", "lid.lid"}
    added = AddStep("lid", {"cloth": "knit"}).apply(drafting.draft_recipe("crate", tray_body()), tray_body())
    assert added.step("lid-1").parameters["tray"] == "crate"
    # A word that is no block that stands for it is a slug, and is judged by the draft.
    named = drafting.draft_recipe("lid", tray_body(), {"cloth": "knit", "tray": "skirt"})
    assert [record.id for record in named.steps] == ["tray-1", "lid-1"]


def test_settings_are_read_in_the_form_of_their_own_block() -> None:
    texts = ["tray.lowered=3", "cloth=knit", "bust_ease=8", "play=1/2"]
    read = settings.read_settings("lid", texts, "cm")
    assert read == {"tray.lowered": "3 cm", "cloth": "knit", "tray.bust_ease": "8 cm", "play": "0.5 cm"}


def test_all_that_is_missing_for_both_blocks_is_named_at_once() -> None:
    with pytest.raises(InputError) as caught:
        drafting.draft("lid", tray_body().without("upper_arm_girth").without("bust_girth"), {"cloth": "knit"})
    assert caught.value.facts["keys"] == ("bust_girth", "upper_arm_girth")


def test_what_is_needed_depends_on_the_choice_and_on_the_body() -> None:
    body = tray_body().without("waist_girth")
    assert needs.needs_of_block("tray", body).needed == ("bust_girth", "waist_girth")
    assert needs.needs_of_block("tray", body, {"shaping": "none"}).needed == ("bust_girth",)
    assert needs.needs_of_block("tray").needed == ("bust_girth", "waist_girth")
    with refused("measure-missing"):
        drafting.draft("tray", body)
    plain = drafting.draft("tray", body, {"shaping": "none"})
    assert run_style(StyleFile(plain.recipe, body, None)).suspended is None
    shaped = change_step(plain.recipe, "tray-1", {"shaping": "dart"}, base=body)
    with refused("measure-missing"):
        run_style(StyleFile(shaped, body, None))


def test_needs_of_a_recipe_hold_a_key_where_it_weighs_most() -> None:
    recipe = drafting.draft_recipe("lid", tray_body(), {"cloth": "knit"})
    told = needs.needs_of_recipe(recipe, tray_body())
    assert told.needed == ("bust_girth", "waist_girth", "upper_arm_girth")
    assert (told.estimated, told.helpful) == (("hip_girth",), ("height",))
    assert needs.needs_of_recipe(recipe).keys == told.keys


def test_parameters_that_cannot_be_read_are_refused_before_measures_are_asked_for() -> None:
    with refused("parameter-refused"):
        needs.needs_of_block("tray", tray_body(), {"shaping": "round"})


def test_estimates_fill_what_this_draft_needs_and_no_more() -> None:
    body = tray_body(hip_girth=960.0, height=1680.0).without("waist_girth")
    assert fill_for_draft(body, "tray").keys == ("waist_girth",)
    assert fill_for_draft(body, "tray", {"shaping": "none"}).keys == ()


def test_a_choice_that_must_be_made_does_not_stop_estimates_nor_what_to_measure_next() -> None:
    body = tray_body(hip_girth=960.0, height=1680.0).without("upper_arm_girth")
    with pytest.raises(InputError) as caught:
        drafting.draft("lid", tray_body())
    assert drafting.asks(caught.value) == ("knit", "woven")
    assert drafting.trial_recipe("lid", tray_body()).step("lid-1").parameters["cloth"] == "knit"
    chosen = drafting.trial_recipe("lid", tray_body(), {"cloth": "woven"})
    assert chosen.step("lid-1").parameters["cloth"] == "woven"
    garment = garment_named("lid")
    assert estimates_for(garment, body).can_be_drafted
    assert measure_next_for_block("lid", body)[0].key == "upper_arm_girth"


def test_a_body_that_a_block_refuses_before_it_is_drawn_still_gets_its_list(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def settle(context: StepContext, parameters: TrayParameters) -> TrayParameters:
        raise DraftRefused("count-not-settled", step=context.step)

    register(monkeypatch, replace(TRAY, settle=settle))
    body = tray_body(height=1680.0).without("waist_girth")
    assert [one.key for one in measure_next_for_block("tray", body)] == ["waist_girth"]
    assert not estimates_for(garment_named("tray"), body).can_be_drafted


def test_what_blocks_refuse_has_words() -> None:
    """A declared refusal without words would break every list of blocks."""
    wordless = {
        block.operation: [code for code in block.refuses if code not in catalogue()]
        for block in garment_parameters.blocks()
    }
    assert not {block: codes for block, codes in wordless.items() if codes}


def test_blocks_state_their_measures_once_and_eases_with_sources() -> None:
    for block in garment_parameters.blocks():
        keys = (
            *block.needs.needed,
            *dict.fromkeys(key for one in block.needs.sometimes for key in one.keys),
            *block.needs.estimated,
            *block.needs.helpful,
        )
        assert len(keys) == len(set(keys)), block.operation
        assert all(key in measure_table() for key in keys)
        for row in () if block.eases is None else block.eases():
            assert row.source, (block.operation, row.parameter)
            assert row.parameter in block.parameters.model_fields
            assert row.least is None or row.most is None or row.least <= row.most


def test_a_refusal_that_asks_for_nothing_is_raised_by_a_trial_too() -> None:
    with refused("measure-missing"):
        drafting.trial_recipe("lid", tray_body().without("bust_girth"))


def test_a_step_added_to_a_style_goes_into_the_block_that_is_there() -> None:
    base = add_step(Recipe("Box"), "tray", base=tray_body(), slug="box")
    added = AddStep("lid", {"cloth": "knit"}).apply(base, tray_body())
    assert [record.id for record in added.steps] == ["tray-1", "lid-1"]
    assert added.step("lid-1").parameters["tray"] == "box"


def test_a_step_added_to_an_empty_style_brings_its_block_in_one_edit() -> None:
    added = AddStep("lid", {"cloth": "knit"}).apply(Recipe("Box"), tray_body())
    assert [record.id for record in added.steps] == ["tray-1", "lid-1"]


def test_a_block_without_needs_for_needs_what_it_declares() -> None:
    assert LID.needs_of(LidParameters(), tray_body()) == LID.needs
