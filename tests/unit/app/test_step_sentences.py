"""A step is said as a written order: piece, edge and amount, and nothing of what it leaves as it is."""

import json
from pathlib import Path
from string import Formatter

import pytest

from notchbook.app.step_sentence import sentence
from notchbook.recipe import all_definitions, definition

STYLES = Path(__file__).parents[2] / "integration" / "four_styles"


def said(operation: str, **values: object) -> str:
    return sentence(definition(operation).sentence, values)


def test_a_neckline_says_each_neck_with_its_amount_and_its_way() -> None:
    necks = [
        {"edge": "bodice.front/neck", "shape": "v", "depth": "8 cm"},
        {"edge": "bodice.back/neck", "shape": "round", "depth": "-5 mm"},
    ]
    assert said("change_neckline", necks=necks, width="0 cm") == (
        "front, neck V, 8 cm lower; back, neck round, 5 mm higher"
    )
    assert said("change_neckline", necks=necks[:1], width='3/4"') == 'front, neck V, 8 cm lower, 3/4" wider'


def test_hems_say_their_amounts() -> None:
    hem = {"edge": "skirt.front/hem", "from_point": "skirt.front/hem_center", "start": "0 cm", "end": "-4 cm"}
    assert said("curve_hem", hems=[hem]) == "front, hem, 4 cm higher at the other end"
    assert said("set_hem", hems=["skirt.front/hem"], hem_class="hem", depth="4 cm") == (
        "4 cm hem at front, hem"
    )
    assert said("unfold", pieces=["bodice.front"]) == "front drawn whole"


def test_a_place_says_how_far_from_which_end() -> None:
    at = {"edge": "skirt.front/side_seam", "from_point": "skirt.front/waist_side", "distance": "11 cm"}
    end = {"edge": "skirt.front/center_front", "from_point": "skirt.front/waist_center", "fraction": 0.25}
    line = {"start": at, "end": end, "darts": [{"intake": "skirt.front/waist_dart"}]}
    assert said("cut_style_line", lines=[line]) == (
        "front, side seam 11 cm from waist side to front, center front 25 % from waist center, "
        "closing front, waist dart"
    )


def test_a_cut_all_round_says_the_edges_in_order() -> None:
    crosses = [{"edge": "skirt.front/side_seam", "distance": "11 cm"}, {"edge": "skirt.back/center_back"}]
    assert said("cut_all_round", crosses=crosses, shape="curve", darts=[]) == (
        "across front, side seam 11 cm; back, center back, curve"
    )


def test_amounts_of_nothing_are_left_out_and_less_is_said_the_other_way() -> None:
    told = {"armholes": [{"edge": "bodice.front/armhole", "hollow": "0 cm"}], "lower": "0 cm"}
    assert said("change_armhole", **told, shoulder="-1 cm") == ("front, armhole: 1 cm longer at the shoulder")


@pytest.mark.parametrize("style", sorted(STYLES.glob("*.json")), ids=lambda path: path.stem)
def test_every_step_of_the_four_styles_names_something_and_leaves_no_gap(style: Path) -> None:
    for step in json.loads(style.read_text(encoding="utf-8"))["steps"]:
        words = sentence(definition(step["operation"]).sentence, step["parameters"])
        assert words, step["id"]
        assert not {"{", "}", "None", "|"} & set(words.split()), words
        assert "; ;" not in words
        assert ", ," not in words


def test_every_template_speaks_of_parameters_that_the_step_has() -> None:
    for one in all_definitions():
        for _, name, _, _ in Formatter().parse(one.sentence):
            if name is not None:
                assert name.split("|")[0] in one.parameters.model_fields, (one.operation, name)
