"""Solving then running gives what was wished on any body; out of reach, the range is true at its ends."""

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from notchbook.errors import InputError, catalogue
from notchbook.pattern import pattern_to_data
from notchbook.recipe import Recipe, recipe_from_json, recipe_to_json, replay
from notchbook.recipe.targets import (
    Order,
    Trials,
    make_it_measure,
    measured,
    number_named,
    read_quantity,
    solve_again,
)
from notchbook.recipe.targets.wish import Wish
from notchbook.units import Amount
from support.skirt_judge import Judge
from support.yoke_skirt import body, skirt_recipe

SKIRT: Recipe = skirt_recipe()
PAIRS = (
    ("around hem", "flare"),
    ("around hem", "hem_girth"),
    ("finished waist", "waist_ease"),
    ("finished hip", "hip_ease"),
    ("length skirt.front/side_seam", "length"),
    ("level hip_line below 60 mm", "flare"),
)
mm = st.floats


@settings(max_examples=15)
@given(
    waist=mm(560.0, 1000.0),
    more=mm(120.0, 260.0),
    depth=mm(170.0, 240.0),
    pair=st.sampled_from(PAIRS),
    by=mm(-120.0, 300.0),
)
def test_a_wish_comes_true_on_a_fresh_run_or_its_range_is_true(
    waist: float, more: float, depth: float, pair: tuple[str, str], by: float
) -> None:
    run = replay(SKIRT, body(waist, waist + more, depth))
    assume(run.suspended is None)
    quantity = read_quantity(pair[0], run)
    wanted = round(measured(run, quantity) + by, 3)
    order = Order(Wish(quantity, Amount.plain(wanted).text), number_named(SKIRT, pair[1]))
    try:
        done = make_it_measure(run, (order,))
    except InputError as refused:
        assert refused.code in catalogue() and refused.code.startswith("wish-")
        if refused.code == "wish-out-of-reach":
            _range_is_true(Trials(run, (order.number,), (quantity,)), refused.facts)
            least, most = refused.facts["least"], refused.facts["most"]
            assert isinstance(least, float) and isinstance(most, float)
            assert not least <= wanted <= most
        return
    fresh = replay(recipe_from_json(recipe_to_json(done.recipe)), run.measures)
    assert abs(measured(fresh, quantity) - wanted) <= 0.05
    if pair[0] == "around hem":  # and by other code than the solver's
        halves = Judge(pattern_to_data(fresh.pattern)).length("skirt.front/hem", "skirt.back/hem")
        assert abs(2.0 * halves - wanted) <= 0.05
    # Solved already: solving again moves nothing.
    assert solve_again(done.after).recipe == done.recipe


def _range_is_true(trials: Trials, facts: dict[str, object]) -> None:
    for end in ("least", "most"):
        number, told = facts[f"{end}_number"], facts[end]
        assert isinstance(number, float) and isinstance(told, float)
        assert abs(trials.at((number,)).values[0] - told) <= 0.01


@settings(max_examples=5)
@given(flare=mm(0.5, 9.0), length=mm(450.0, 800.0), hip=mm(10.0, 90.0))
def test_wishes_that_a_skirt_once_fulfilled_are_found_together(
    flare: float, length: float, hip: float
) -> None:
    """What a skirt with known numbers measures is wished of another: the known numbers must come out."""
    form = body(700.0, 960.0, 200.0)
    known = replay(skirt_recipe(flare=flare, length=f"{length:.2f} mm", hip_ease=f"{hip:.2f} mm"), form)
    assume(known.suspended is None)
    run = replay(SKIRT, form)
    pairs = (("around hem", "flare"), ("length skirt.back/side_seam", "length"), ("finished hip", "hip_ease"))
    orders = [
        Order(Wish(quantity, f"{measured(known, quantity):.6f} mm"), number_named(SKIRT, f"skirt-1.{number}"))
        for text, number in pairs
        for quantity in (read_quantity(text, run),)
    ]
    solved = [number.value for number in make_it_measure(run, orders).numbers]
    assert abs(solved[0] - flare) <= 0.01 and abs(solved[1] - length) <= 0.1 and abs(solved[2] - hip) <= 0.1
