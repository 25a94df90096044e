"""The rack: its styles, found by number, run on a body, set step by step, and their pictures."""

import xml.etree.ElementTree as ET

import pytest

from notchbook.app.draft_order import DraftOrder, carry_out
from notchbook.app.needs.of_garment import garment_named
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.app.rack.named import recipe_named
from notchbook.app.rack.pictures import pictured_style
from notchbook.app.rack.styles import rack, rack_style
from notchbook.app.settings import read_step_settings
from notchbook.body import set_from_data
from notchbook.errors import InputError

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


@pytest.mark.parametrize("text", ["yoke.width=3", "length=70", "skirt.lenght=70"])
def test_what_no_step_has_is_refused(text: str) -> None:
    with pytest.raises(InputError) as refused:
        read_step_settings(rack_style("S-206").recipe, [text], "cm")
    assert refused.value.code == "setting-not-of-style"


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
