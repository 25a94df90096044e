"""One rise and one crotch length for every garment with legs."""

from dataclasses import replace

import pytest

from notchbook.blocks.lower_measures import (
    known_rise_keys,
    needed_rise_keys,
    read_rise,
    rise_of_side,
    usual_crotch_length,
)
from notchbook.blocks.lower_measures.lower_measures import LowerMeasures
from notchbook.body import Measure, MeasureSet
from notchbook.errors import InputError
from notchbook.recipe import StepContext, definition
from support.trouser_bodies import WOMAN, lower_body, without

BARE = without(WOMAN, "standing_rise")
BOTH = WOMAN | {"sitting_rise": 295.0}
"""A sitting rise that does not go with the standing one: which is read can be seen."""


def rise(measures: MeasureSet) -> tuple[str, float] | None:
    found = rise_of_side(StepContext(measures, "trousers", "trousers-1"), "right")
    return None if found is None else (found.key, found.standing)


def test_what_the_set_says_comes_first() -> None:
    assert rise(lower_body(BOTH)) == ("sitting_rise", 285.0)
    assert rise(replace(lower_body(BOTH), rise_method="standing")) == ("standing_rise", 270.0)


def test_what_was_taken_comes_before_what_was_estimated() -> None:
    guessed = lower_body(WOMAN).with_value("sitting_rise", Measure(300.0, "estimated", error=20.0))
    assert rise(guessed) == ("standing_rise", 270.0)


def test_outside_less_inside_leg() -> None:
    assert rise(lower_body(BARE, outside_leg=1045.0)) == ("outside_leg", 265.0)


def test_without_a_way_it_is_missing() -> None:
    assert rise(lower_body(BARE)) is None
    assert known_rise_keys(lower_body(BARE)) is None
    assert needed_rise_keys(lower_body(BARE)) == ("standing_rise",)
    with pytest.raises(InputError) as refused:
        read_rise(LowerMeasures({}), None, "Nobody")
    assert refused.value.code == "measure-missing"


@pytest.mark.parametrize("block", ["trousers", "leggings"])
@pytest.mark.parametrize(
    ("more", "key"),
    [({"standing_rise": 270.0}, "standing_rise"), ({"sitting_rise": 280.0}, "sitting_rise")],
)
def test_trousers_and_leggings_need_the_same_rise(block: str, more: dict[str, float], key: str) -> None:
    step = definition(block)
    needs = step.needs_of(step.parameters(), lower_body(BARE | more))
    assert key in needs.needed


# Sizes of published tables at the natural waist, the rest foretold by the population: rise, hip, waist, and
# the crotch length that the population of the project foretells (body/population), mm.
SIZES = [
    ("women", 249.0, 985.0, 749.0, 704.0),
    ("women", 243.0, 940.0, 680.0, 676.0),
    ("women", 256.0, 1143.0, 876.0, 766.0),
    ("men", 230.0, 900.0, 780.0, 618.0),
    ("men", 279.0, 1280.0, 1220.0, 848.0),
]


@pytest.mark.parametrize(("of", "rise_mm", "hip", "waist", "crotch"), SIZES)
def test_the_crotch_length_is_what_the_population_foretells(
    of: str, rise_mm: float, hip: float, waist: float, crotch: float
) -> None:
    usual, error = usual_crotch_length("men" if of == "men" else "women", rise_mm, hip, waist, 0.0)
    assert usual == pytest.approx(crotch, abs=15.0)
    assert error > 15.0


def test_a_child_lies_between_women_and_men() -> None:
    values = (195.0, 640.0, 560.0, 0.0)
    women, men, child = (usual_crotch_length(of, *values)[0] for of in ("women", "men", "children"))
    assert child == pytest.approx((women + men) / 2.0, abs=1.0)
