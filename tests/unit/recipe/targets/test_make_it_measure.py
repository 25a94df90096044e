"""Make it measure: numbers that give what is wished, and refusals that say how far it goes."""

from dataclasses import replace
from fractions import Fraction

import pytest

from notchbook.app.demo import demo_form, demo_recipe
from notchbook.app.drafting import draft
from notchbook.body import Measure
from notchbook.errors import InputError, NotchbookError
from notchbook.pattern import sewn_length
from notchbook.recipe import Replay, Target, change_step, remove_step, replay
from notchbook.recipe.targets import (
    Made,
    Order,
    Trials,
    kept_targets,
    make_it_measure,
    measured,
    number_named,
    numbers_of,
    orders_with_kept,
    read_quantity,
    read_wish,
    solve_again,
    without_target,
)


@pytest.fixture(scope="module")
def skirt() -> Replay:
    return draft("skirt", demo_form())


def made(run: Replay, *pairs: tuple[str, str]) -> Made:
    orders = [Order(read_wish(wish, run), number_named(run.recipe, word)) for wish, word in pairs]
    return make_it_measure(run, orders)


def refused(code: str) -> "pytest.RaisesExc[NotchbookError]":
    return pytest.raises(NotchbookError, check=lambda error: error.code == code)


@pytest.mark.parametrize(
    ("wish", "number"),
    [
        ("length skirt.front/side_seam = 50 cm", "length"),
        ("around hem = 160 cm", "skirt.flare"),
        ("finished waist = 74 cm", "skirt-1.waist_ease"),
        ("level hip_line = 105 cm", "hip_ease"),
        ("level hip_line below 10 cm = 105 cm", "flare"),
        ("distance skirt.front/waist_side to skirt.front/hem_side down = 60 cm", "length"),
        ("around hem = hip + 20 cm", "hem_girth"),
    ],
)
def test_a_number_is_found_and_a_fresh_run_measures_what_was_wished(
    skirt: Replay, wish: str, number: str
) -> None:
    done = made(skirt, (wish, number))
    read = read_wish(wish, skirt)
    fresh = replay(done.recipe, skirt.measures)
    assert measured(fresh, read.quantity) == pytest.approx(read.wanted(skirt.measures), abs=0.01)
    assert measured(skirt, read.quantity) != pytest.approx(read.wanted(skirt.measures), abs=1.0)


def test_the_number_stands_as_plain_as_it_can(skirt: Replay) -> None:
    # 3.5 cm of ease more than nothing on a waist of 70.5 cm: a whole number of mm, in the unit it had.
    assert made(skirt, ("finished waist = 74 cm", "waist_ease")).numbers[0].stored == "35 mm"
    shorter = made(skirt, ("distance skirt.front/waist_side to skirt.front/hem_side down = 60 cm", "length"))
    assert str(shorter.numbers[0].stored).endswith(" cm")


def test_inches_stay_inches_on_the_ruler(skirt: Replay) -> None:
    inches = change_step(skirt.recipe, "skirt-1", {"waist_ease": "1/2 in"}, base=skirt.measures)
    run = replay(inches, skirt.measures, skirt)
    waist = measured(run, read_quantity("finished waist", run))
    done = made(run, (f"finished waist = {waist + 25.4 * 5 / 16:.4f} mm", "waist_ease"))
    # 1/2 + 5/16 = 13/16, by fractions and not by the house's own reading.
    assert done.numbers[0].stored == f"{Fraction(1, 2) + Fraction(5, 16)} in"


def test_shares_of_measures_stay_and_the_plain_part_moves(skirt: Replay) -> None:
    shared = change_step(skirt.recipe, "skirt-1", {"length": "1/4 hip + 35 cm"}, base=skirt.measures)
    run = replay(shared, skirt.measures, skirt)
    done = made(run, ("length skirt.front/center_front = 58 cm", "length"))
    assert str(done.numbers[0].stored).startswith("1/4 hip + ")


def test_the_wish_stands_beside_the_number_and_goes_with_another(skirt: Replay) -> None:
    done = made(skirt, ("around hem = 160 cm", "flare"))
    text = "around skirt.front/hem, skirt.back/hem = 160 cm"
    assert done.recipe.step("skirt-1").targets == (Target("flare", text, 1600.0),)
    longer = change_step(done.recipe, "skirt-1", {"length": "65 cm"}, base=skirt.measures)
    assert longer.step("skirt-1").targets
    same = change_step(done.recipe, "skirt-1", {"flare": done.numbers[0].stored}, base=skirt.measures)
    assert same.step("skirt-1").targets
    typed = change_step(done.recipe, "skirt-1", {"flare": 4.0}, base=skirt.measures)
    assert not typed.step("skirt-1").targets
    let_go = without_target(done.recipe, done.numbers[0])
    assert let_go.step("skirt-1") == replace(done.recipe.step("skirt-1"), targets=())


def test_running_a_recipe_solves_nothing(skirt: Replay) -> None:
    done = made(skirt, ("around hem = 160 cm", "flare"))
    wider = replace(demo_form(), name="Another")
    other = replay(done.recipe, wider.with_value("hip_girth", replace(_hip(), value=_hip().value + 40.0)))
    assert other.recipe.step("skirt-1").parameters["flare"] == done.numbers[0].stored
    (kept,) = kept_targets(other)
    assert kept.found is not None and abs(kept.found - 1600.0) > 10.0 and not kept.holds
    again = solve_again(other)
    assert measured(again.after, again.orders[0].wish.quantity) == pytest.approx(1600.0, abs=0.01)
    assert all(one.holds for one in kept_targets(again.after))


def _hip() -> Measure:
    return demo_form().values["hip_girth"]


def test_two_wishes_that_work_on_each_other_are_solved_together(skirt: Replay) -> None:
    pairs = (("around hem = 120 cm", "flare"), ("length skirt.back/side_seam = 55 cm", "length"))
    done = made(skirt, *pairs)
    assert done.measured == pytest.approx((1200.0, 550.0), abs=0.01)
    # One after the other does not do: the second spoils the first.
    first = made(skirt, pairs[0])
    second = made(first.after, pairs[1])
    assert abs(measured(second.after, first.orders[0].wish.quantity) - 1200.0) > 1.0


def test_kept_wishes_are_held_when_asked_for(skirt: Replay) -> None:
    first = made(skirt, ("around hem = 120 cm", "flare"))
    order = Order(
        read_wish("finished hip = 110 cm", first.after), number_named(first.recipe, "skirt-1.hip_ease")
    )
    alone = make_it_measure(first.after, (order,))
    assert not all(one.holds for one in kept_targets(alone.after))
    held = make_it_measure(first.after, orders_with_kept(first.after, (order,)))
    assert all(one.holds for one in kept_targets(held.after)) and len(kept_targets(held.after)) == 2


def test_out_of_reach_says_the_range_which_is_true_at_its_ends(skirt: Replay) -> None:
    order = Order(read_wish("around hem = 300 cm", skirt), number_named(skirt.recipe, "flare"))
    with refused("wish-out-of-reach") as caught:
        make_it_measure(skirt, (order,))
    facts = caught.value.facts
    trials = Trials(skirt, (order.number,), (order.wish.quantity,))
    for end in ("least", "most"):
        number = facts[f"{end}_number"]
        assert isinstance(number, float)
        assert trials.at((number,)).values[0] == pytest.approx(facts[end])
    assert facts["at_most"] == "35.0" and facts["above"] == "its field takes no more"
    assert trials.at((35.01,)).refusal is not None


def test_a_step_that_refuses_is_the_limit_and_named(skirt: Replay) -> None:
    with refused("wish-out-of-reach") as caught:
        made(skirt, ("finished hip = 200 cm", "hip_ease"))
    assert "darts" in str(caught.value.facts["above"])


@pytest.mark.parametrize(
    ("code", "pairs"),
    [
        ("wish-not-moved", [("around hem = 160 cm", "length")]),
        (
            "wishes-collide",
            [("around hem = 120 cm", "flare"), ("length skirt.back/hem = 40 cm", "hem_girth")],
        ),
        ("wish-number-twice", [("around hem = 120 cm", "flare"), ("finished hip = 100 cm", "flare")]),
        ("wish-not-understood", [("hem 120 cm", "flare")]),
        ("wish-not-understood", [("round hem = 120 cm", "flare")]),
        ("wish-name-unknown", [("around hum = 120 cm", "flare")]),
        ("wish-name-ambiguous", [("length hem = 40 cm", "flare")]),
        ("number-unknown", [("around hem = 120 cm", "flair")]),
        ("amount-not-understood", [("around hem = (120) cm", "flare")]),
    ],
)
def test_what_cannot_be_done_is_refused_in_words(
    skirt: Replay, code: str, pairs: list[tuple[str, str]]
) -> None:
    with pytest.raises(NotchbookError) as caught:
        made(skirt, *pairs)
    assert caught.value.code in (code, "wishes-not-together" if code == "wishes-collide" else code)
    assert "{" not in caught.value.text() and caught.value.next_step()


def test_nothing_is_solved_while_a_step_stops(skirt: Replay) -> None:
    broken = remove_step(demo_recipe(demo_form()), "vent-1")
    run = replay(broken, demo_form())
    assert run.suspended is not None
    with refused("wish-run-stopped"):
        made(run, ("around hem = 120 cm", "skirt-1.flare"))


def test_a_style_without_wishes_has_none_to_solve_again(skirt: Replay) -> None:
    with refused("no-targets"):
        solve_again(skirt)


def test_a_short_word_means_the_edges_of_the_pieces_themselves_and_is_kept_in_full() -> None:
    run = replay(demo_recipe(demo_form()), demo_form())
    quantity = read_quantity("around hem", run)
    assert quantity.names == ("skirt.front/hem", "skirt.back/hem")  # not that of the vent
    halves = sum(sewn_length(run.pattern, name) for name in quantity.names)
    assert measured(run, quantity) == pytest.approx(2.0 * halves)


def test_every_kind_of_number_is_found_and_counts_are_not(skirt: Replay) -> None:
    words = {number.word for number in numbers_of(skirt.recipe)}
    assert {"skirt-1.length", "skirt-1.flare", "skirt-1.hem_girth"} <= words
    assert not {"skirt-1.front_darts", "skirt-1.back_darts"} & words


def test_a_name_that_is_gone_is_told_of_a_kept_wish(skirt: Replay) -> None:
    lost = replace(skirt.recipe.steps[0], targets=(Target("flare", "length skirt.front/slit = 10 mm", 10.0),))
    run = replay(skirt.recipe.with_steps((lost,)), skirt.measures)
    (kept,) = kept_targets(run)
    assert kept.found is None and kept.trouble is not None and not kept.holds


def test_a_measure_that_the_wish_reads_and_the_body_lacks_is_refused(skirt: Replay) -> None:
    with pytest.raises(InputError):
        made(skirt, ("around hem = 2 bust", "flare"))
