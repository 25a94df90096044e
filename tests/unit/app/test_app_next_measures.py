"""What to measure next: needed first, then what takes most of this garment's uncertainty."""

from dataclasses import replace

import pytest

from notchbook.app.bodies.next_measure import line_words
from notchbook.app.bodies.next_measures import (
    LEAST_GAIN,
    measure_next,
    measure_next_for_block,
    measure_next_in_general,
)
from notchbook.app.drafting import draft_recipe
from notchbook.app.needs.of_garment import garment_named, next_for_garment
from notchbook.body import Measure, MeasureSet, measure_entry
from notchbook.body.estimating.estimating import with_estimates
from notchbook.body.population import population
from notchbook.errors import InputError
from notchbook.units import LengthStyle
from support.bodies import four_measures

CM = LengthStyle("cm")


def test_what_is_needed_and_missing_comes_first() -> None:
    first, *_ = measure_next_for_block("skirt", four_measures())
    assert (first.key, first.reason) == ("hip_depth", "needed")
    assert first.moves is not None
    assert first.moves.amount > 20.0
    assert first.words(CM).startswith("Take hip depth: it is needed, and it moves ")


def test_without_a_population_the_needed_are_named_all_the_same() -> None:
    bare = MeasureSet.from_mm("Invented", {"hip_girth": 980.0})
    told = measure_next_for_block("skirt", bare)
    assert [(one.key, one.reason) for one in told] == [("waist_girth", "needed"), ("hip_depth", "needed")]
    assert told[0].words(CM) == "Take waist girth: the pattern cannot be drafted without it."


def test_an_estimate_is_best_replaced_by_the_tape() -> None:
    filled = with_estimates(four_measures(), ["hip_depth"])
    first, *rest = measure_next(draft_recipe("skirt", filled), filled)
    assert (first.key, first.reason) == ("hip_depth", "moves")
    assert first.before is not None
    assert first.after is not None
    assert first.after < 0.4 * first.before
    # Once it is taken, little is left: nothing else is told of it but what can help by itself.
    assert all(one.reason == "helps" for one in rest)


def test_before_and_after_are_the_plus_minus_of_the_pattern() -> None:
    """Of one wanted measure: its ± times the movement for each mm; by the population's own figures."""
    filled = with_estimates(four_measures(), ["hip_depth"])
    first, *_ = measure_next(draft_recipe("skirt", filled), filled)
    expected = population("women").expect("hip_depth", filled)
    assert expected is not None
    assert first.before == pytest.approx(expected.half_width(0.9), rel=0.2)


def test_when_all_is_taken_nothing_is_asked() -> None:
    taken = four_measures(hip_depth=205.0, front_waist_arc=380.0, front_hip_arc=480.0, outside_leg=1050.0,
                          front_waist_to_floor=1052.0, back_waist_to_floor=1047.0, top_hip_girth=880.0,
                          belly_girth=900.0, belly_depth=110.0)  # fmt: skip
    assert measure_next(draft_recipe("skirt", taken), taken) == ()


def test_her_own_estimate_is_told_without_a_population() -> None:
    hers = four_measures(None, hip_depth=205.0).with_value("front_hip_arc", Measure(480.0, "estimated", 25.0))
    told = measure_next(draft_recipe("skirt", hers), hers)
    assert (told[0].key, told[0].reason) == ("front_hip_arc", "moves")
    assert "it moves" in told[0].words(CM)


def test_an_impossible_body_is_refused_not_passed_over() -> None:
    with pytest.raises(InputError):
        measure_next_for_block("skirt", four_measures(hip_depth=5.0))


def test_the_general_order_takes_more_first_and_names_what_is_not_taken() -> None:
    told = measure_next_in_general(four_measures(), most=5)
    assert len(told) == 5
    assert not {one.key for one in told} & {"height", "bust_girth", "waist_girth", "hip_girth"}
    gains = [(one.before or 0.0) - (one.after or 0.0) for one in told]
    assert gains == sorted(gains, reverse=True)
    assert min(gains) > LEAST_GAIN
    # Each begins where the one before has ended.
    assert [one.before for one in told[1:]] == pytest.approx([one.after for one in told[:-1]])
    # In words that rise nowhere: the first tells most, each after it most of what is left.
    assert [one.words(CM).partition(": ")[2] for one in told] == [
        "it tells most about the rest of this body.",
        *["it tells most of what is left."] * 4,
    ]


def test_height_comes_first_where_only_girths_were_taken() -> None:
    """A fact of the survey (body heights and leg lengths are foretold by stature, R2 .6 to .9, and hardly
    by girths): with girths alone the first to take is a height or a length that goes with it."""
    girths = four_measures().without("height")
    first = measure_next_in_general(girths, most=1)[0]
    assert first.key in {"height", "outside_leg", "inside_leg", "trunk_loop"}


def test_the_general_order_asks_whose_body_it_is() -> None:
    with pytest.raises(InputError) as caught:
        measure_next_in_general(replace(four_measures(), population=None))
    assert caught.value.code == "estimate-no-population"


def test_a_garment_is_a_block_or_a_style_file() -> None:
    assert next_for_garment(garment_named("skirt"), four_measures())[0].key == "hip_depth"
    assert next_for_garment(None, four_measures())[0].reason == "knows"
    with pytest.raises(InputError) as caught:
        garment_named("gown")
    assert caught.value.code == "block-unknown"


def test_a_line_is_called_as_a_patternmaker_sees_it() -> None:
    assert line_words("skirt.front/waist") == "the waist of the front"
    assert line_words("skirt.back/side_seam@left") == "the side seam of the left back"
    told = measure_next_for_block("skirt", four_measures())[0]
    assert " of the " in told.words(CM).partition("moves ")[2]


def test_a_usual_share_is_spoken_of_only_where_the_draft_takes_one() -> None:
    told = {one.key: one.words(CM) for one in measure_next_for_block("skirt", four_measures(), most=20)}
    assert "usual share" in told["front_hip_arc"]
    assert told["front_waist_to_floor"] == "Take front waist to floor: the pattern can use it."


def test_a_form_is_not_asked_for_legs() -> None:
    form = replace(four_measures().without("height"), kind="form")
    assert not {"outside_leg", "front_waist_to_floor"} & {
        one.key for one in measure_next_for_block("skirt", form, most=20)
    }
    general = {one.key for one in measure_next_in_general(form, most=12)}
    assert general
    assert all(measure_entry(key).on_form for key in general)


def test_men_are_asked_in_mens_words() -> None:
    man = replace(four_measures().without("hip_girth"), population="men")
    told = {one.key: one.words(CM) for one in measure_next_for_block("skirt", man)}
    assert told["hip_girth"].startswith("Take seat girth:")


def test_a_child_is_foretold_nothing() -> None:
    child = replace(
        MeasureSet.from_mm("Invented", {"height": 1220.0, "hip_girth": 680.0}), population="women"
    )
    with pytest.raises(InputError) as caught:
        measure_next_in_general(child)
    assert caught.value.code == "estimate-no-children"
    drafted = child.with_value("waist_girth", 560.0).with_value("hip_depth", 150.0)
    assert {one.reason for one in measure_next_for_block("skirt", drafted)} == {"helps"}
