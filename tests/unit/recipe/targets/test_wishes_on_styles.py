"""Make it measure on whole styles: caps in armholes, style lines, bands, bodies whose sides differ."""

import pytest

from notchbook.app.drafting import draft
from notchbook.body import Measure
from notchbook.pattern.resolve import expand
from notchbook.recipe import Replay, replay
from notchbook.recipe.targets import (
    Made,
    Order,
    kept_targets,
    make_it_measure,
    measured,
    number_named,
    read_quantity,
    read_wish,
)
from support.sleeve_bodies import woman
from support.upper_patterns import drafted
from support.yoke_skirt import FORM_A, yoke_recipe


def made(run: Replay, *pairs: tuple[str, str]) -> Made:
    orders = [Order(read_wish(wish, run), number_named(run.recipe, word)) for wish, word in pairs]
    return make_it_measure(run, orders)


@pytest.fixture(scope="module")
def yoke() -> Replay:
    return replay(yoke_recipe(FORM_A), FORM_A)


@pytest.mark.parametrize("name", ["medium-92", "small-80"])
def test_a_cap_gets_the_ease_that_is_wished_by_a_field_that_was_empty(name: str) -> None:
    run = drafted(name)
    assert run.recipe.step("sleeve-1").parameters["cap_ease"] is None
    done = made(run, ("ease front_armhole, back_armhole = 15 mm", "sleeve.cap_ease"))
    # By other sums than the walk of the seams: armhole edges and cap edges of the finished outline.
    after = replay(done.recipe, run.measures).pattern
    first, second = (
        sum(
            after.edges[edge].length
            for side in ("front", "back")
            for use in getattr(after.seams[f"sleeve/{side}_armhole"], run_of_seam)
            for edge in expand(after, use.edge)[0]
        )
        for run_of_seam in ("first", "second")
    )
    assert second - first == pytest.approx(15.0, abs=0.02)
    assert done.measured[0] == pytest.approx(15.0, abs=0.01)
    assert done.numbers[0].stored == "15 mm"


def test_three_wishes_of_a_bodice_and_its_sleeve_come_true_together() -> None:
    done = made(
        drafted(),
        ("finished bust = 100 cm", "bodice.bust_ease"),
        ("finished waist = 80 cm", "bodice.waist_ease"),
        ("finished upper_arm = 35 cm", "sleeve.upper_arm_ease"),
    )
    assert done.measured == pytest.approx((1000.0, 800.0, 350.0), abs=0.01)
    assert len(kept_targets(done.after)) == 3 and all(one.holds for one in kept_targets(done.after))


def test_a_place_deep_within_a_step_moves_and_its_share_of_a_measure_stays(yoke: Replay) -> None:
    done = made(yoke, ("length yoke.front_above/style_line = 26 cm", "lines.0.start.distance"))
    assert str(done.numbers[0].stored).startswith("0.8 hip_depth + ")
    (target,) = done.recipe.step("cut_style_line-1").targets
    assert target.parameter == "lines.0.start.distance"
    again = replay(done.recipe, yoke.measures)
    quantity = read_quantity("length yoke.front_above/style_line", again)
    assert measured(again, quantity) == pytest.approx(260.0, abs=0.01)


def test_a_number_before_many_steps_moves_what_the_last_of_them_made(yoke: Replay) -> None:
    wish = "length waist_facing.front/upper = 19 cm"
    done = made(yoke, (wish, "skirt.waist_ease"))
    assert done.measured[0] == pytest.approx(190.0, abs=0.01)
    assert done.after.suspended is None


def test_where_the_sides_differ_each_has_its_own_length_and_the_whole_its_sum() -> None:
    body = woman()
    for key in ("hip_girth", "waist_girth"):
        value = body.values[key].value
        body = body.with_value(key, Measure(value + 20.0), "left").with_value(key, Measure(value), "right")
    run = draft("skirt", body)
    assert run.left is not None
    done = made(run, ("length skirt.front/side_seam@left = 55 cm", "length"))
    assert done.measured[0] == pytest.approx(550.0, abs=0.01)
    around = made(run, ("around hem = 130 cm", "flare"))
    pattern = around.after.pattern
    hems = [edge for name, edge in pattern.edges.items() if "/hem" in name]
    # Whole pieces with named sides: every hem is drawn once.
    assert len(hems) == 4 and sum(edge.length for edge in hems) == pytest.approx(1300.0, abs=0.02)
