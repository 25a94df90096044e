"""The rack: its styles, found by number, run on a body, set step by step, and their pictures."""

import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest

from notchbook.app.draft_order import DraftOrder, carry_out
from notchbook.app.needs.of_garment import garment_named
from notchbook.app.needs.of_steps import needs_of_block, needs_of_recipe
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.app.rack.named import recipe_named
from notchbook.app.rack.pictures import pictured_style
from notchbook.app.rack.styles import rack, rack_style
from notchbook.app.settings import read_step_settings, settable
from notchbook.body import MeasureSet, set_from_data
from notchbook.errors import InputError
from notchbook.recipe import change_step, keys_read
from notchbook.units.style_number import is_style_number

NUMBERS = [f"S-{number}" for number in range(201, 213)]


def test_the_rack_has_its_twelve_styles_by_number() -> None:
    assert [style.recipe.number for style in rack()] == NUMBERS
    assert all(style.about.endswith(".") and style.title.startswith("S-2") for style in rack())


def test_a_style_is_found_in_small_letters_too_and_no_other() -> None:
    assert rack_style("s-205").stem == "tailored_trousers"
    with pytest.raises(InputError) as refused:
        rack_style("S-305")
    assert refused.value.code == "rack-style-unknown"
    assert "S-205" in refused.value.next_step()


def test_a_word_without_a_digit_is_a_block() -> None:
    assert recipe_named("skirt") is None
    assert garment_named("skirt").recipe is None
    assert garment_named("S-206").needs.needed == garment_named("skirt").needs.needed


def test_no_belt_is_wider_than_the_band_that_it_lies_on() -> None:
    """Common practice, no source: a loop ends at the upper edge of the band, and a wider belt stands off."""
    trousers = rack_style("S-205").recipe
    belt, band = (
        float(str(trousers.step(step).parameters[field]).removesuffix(" mm"))
        for step, field in (("belt_loops-1", "belt"), ("waistband-1", "depth"))
    )
    assert 0.0 < belt <= band


@pytest.mark.parametrize("number", NUMBERS)
def test_every_style_has_a_picture_of_front_and_back(number: str) -> None:
    drawn = ET.fromstring(pictured_style(number))
    paths = [one for one in drawn.iter() if one.tag.endswith("path")]
    assert len(paths) > 10


def test_a_step_of_a_style_is_set_by_its_name() -> None:
    body = set_from_data(BODY_OF_PICTURES)
    recipe = rack_style("S-206").recipe
    longer = read_step_settings(recipe, ["skirt.length=70"], "cm")
    plain = carry_out(DraftOrder("S-206", body, recipe=recipe)).run
    changed = carry_out(DraftOrder("S-206", body, longer, recipe=recipe)).run
    assert longer == {"skirt-1.length": "70 cm"}
    assert changed.recipe.step("skirt-1").parameters["length"] == "70 cm"
    assert changed.pattern != plain.pattern


@pytest.mark.parametrize(
    ("text", "near"),
    [
        ("sleeve.width=3", ""),
        ("length=70", "Did you mean skirt.length or zip.length? "),
        ("skrit.length=70", "Did you mean skirt? "),
    ],
)
def test_a_step_that_the_style_does_not_have_is_refused_with_those_it_has(text: str, near: str) -> None:
    recipe = rack_style("S-206").recipe
    with pytest.raises(InputError) as refused:
        read_step_settings(recipe, [text], "cm")
    assert refused.value.code == "setting-not-of-style"
    assert near in refused.value.next_step()
    assert all(record.slug in refused.value.next_step() for record in recipe.steps)


@pytest.mark.parametrize(
    ("number", "text", "near"),
    [
        ("S-206", "skirt.lenght=70", "Did you mean length? "),
        ("S-206", "skirt.depht=3", ""),  # the pocket has a depth, but the skirt was named
        ("S-205", "waistband.finished=3", ""),
    ],
)
def test_what_a_named_step_does_not_have_is_sought_in_that_step_alone(
    number: str, text: str, near: str
) -> None:
    recipe = rack_style(number).recipe
    with pytest.raises(InputError) as refused:
        read_step_settings(recipe, [text], "cm")
    assert refused.value.code == "setting-not-of-step"
    slug = text.partition(".")[0]
    assert f"step {slug} of" in refused.value.text()
    assert refused.value.facts["suggestion"] == near
    (record,) = (one for one in recipe.steps if one.slug == slug)
    assert refused.value.facts["known"] == tuple(settable(record))
    assert "edges" not in refused.value.next_step(), "a list is not set by one word"


def few_measures() -> MeasureSet:
    """What a stranger knows of herself (an invented woman)."""
    girths = {"bust_girth": 970.0, "waist_girth": 800.0, "hip_girth": 1050.0}
    return MeasureSet.from_mm("Invented", girths, population="women")


@pytest.mark.parametrize("number", ["S-204", "S-207"])
def test_measures_in_which_an_amount_is_written_are_needed_and_filled_in(number: str) -> None:
    """The sleeves are ``arm_length - 6 cm`` long and ``wrist_girth + 5 cm`` wide: no length of their own
    that does without the arm."""
    recipe, body = rack_style(number).recipe, few_measures()
    needed = needs_of_recipe(recipe, body).needed
    assert {"arm_length", "wrist_girth"} <= set(needed)
    with pytest.raises(InputError, match="measure-missing") as refused:
        carry_out(DraftOrder(number, body, recipe=recipe))
    missing = tuple(key for key in needed if key not in body.values)
    assert refused.value.facts["keys"] == missing, "all are named at once"
    done = carry_out(DraftOrder(number, body, estimate=True, recipe=recipe))
    assert done.filled is not None
    assert {"arm_length", "wrist_girth"} <= set(done.filled.keys)


@pytest.mark.parametrize("number", NUMBERS)
def test_on_the_measures_that_it_needs_and_no_others_a_style_is_drafted(number: str) -> None:
    whole, recipe = set_from_data(BODY_OF_PICTURES), rack_style(number).recipe
    needed = needs_of_recipe(recipe, whole).needed
    bare = replace(whole, values={key: whole.values[key] for key in needed})
    run = carry_out(DraftOrder(number, bare, recipe=recipe)).run
    assert run.suspended is None
    assert set(needed) <= set(keys_read(run)), "nothing is asked for that no line answers to"


def test_an_amount_within_a_list_names_its_measure_too() -> None:
    recipe, body = rack_style("S-201").recipe, set_from_data(BODY_OF_PICTURES)
    assert "hip_depth" not in needs_of_recipe(recipe, body).needed
    front, back = recipe.step("change_neckline-1").parameters["necks"]
    necks = [{**front, "depth": "1/8 hip_depth"}, back]
    deeper = change_step(recipe, "change_neckline-1", {"necks": necks}, base=body)
    assert "hip_depth" in needs_of_recipe(deeper, body).needed


def test_an_amount_that_is_set_names_its_measures_too() -> None:
    amounts = {"own_length": "arm_length - 6 cm", "own_hem": "wrist_girth + 5 cm"}
    asked = {"fabric": "shirting", "bust_shaping": "none"}
    needed = needs_of_block("sleeve", few_measures(), {**asked, **amounts}).needed
    plain = needs_of_block("sleeve", few_measures(), {**asked, "own_length": "54 cm", "own_hem": "21 cm"})
    assert set(needed) - set(plain.needed) == {"arm_length", "wrist_girth"}


def test_what_a_style_needs_is_filled_in_on_request() -> None:
    whole = set_from_data(BODY_OF_PICTURES)
    body = whole.without("hip_depth")
    recipe = rack_style("S-206").recipe
    longer = read_step_settings(recipe, ["skirt.length=70"], "cm")
    with pytest.raises(InputError, match="measure-missing"):
        carry_out(DraftOrder("S-206", body, recipe=recipe))
    done = carry_out(DraftOrder("S-206", body, longer, estimate=True, recipe=recipe))
    assert done.filled is not None
    assert "hip_depth" in done.filled.keys


@pytest.mark.parametrize(
    ("word", "number"), [("S-205", True), ("s-1", True), ("top2", False), ("half-circle", False)]
)
def test_a_number_is_told_from_the_name_of_a_block_even_with_a_digit(word: str, number: bool) -> None:
    assert is_style_number(word) is number
