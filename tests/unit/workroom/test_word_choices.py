"""The words that a form offers: rows of the house's table with their widths, and materials."""

from notchbook.finish import production_table
from notchbook.workroom.answers.choices import name_choices
from notchbook.workroom.answers.word_choices import word_choices
from notchbook.workroom.reader import Reader
from support.hand_skirt import hand_skirt


def test_every_row_of_the_house_table_is_offered_with_its_width() -> None:
    house = production_table().with_changes({"side": 15.0})
    choices = word_choices(hand_skirt(), house, Reader("cm"))
    said = {one.name: one.said for one in choices.allowance_class}
    assert set(said) == set(house.allowances)
    assert said["side"] == "side seam, 1.5 cm"
    assert said["hem_trousers"].startswith("hem, trousers, ")


def test_materials_are_the_usual_ones_and_those_of_the_style_once_each() -> None:
    skirt = hand_skirt().with_materials({"self": "wool", "horsehair": "canvas"})
    names = [one.name for one in word_choices(skirt, production_table(), Reader("cm")).material]
    assert names[0] == "self"
    assert names[-1] == "horsehair"
    assert len(names) == len(set(names))


def test_levels_are_offered_for_what_is_measured_from_them() -> None:
    choices = name_choices(hand_skirt(), Reader("cm"))
    assert {"skirt.front/hip_line", "skirt.back/hip_line"} <= {one.name for one in choices.levels}
    assert not {one.name for one in choices.levels} & {one.name for one in choices.edges}
