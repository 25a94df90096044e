"""Single sets: estimates accuse nobody, sides stand on their own, several slips are told apart."""

from dataclasses import replace
from itertools import combinations

import pytest

from notchbook.body import LookedOver, Measure, MeasureSet, check_consistent, look_over
from notchbook.body.population import population
from notchbook.body.population.evidence import Frame
from notchbook.body.population.system import make_system
from notchbook.units import LengthStyle

KEYS = (
    "height", "bust_girth", "waist_girth", "hip_girth", "shoulder_length", "across_back",
    "back_waist_length", "arm_length", "upper_arm_girth", "hip_depth", "outside_leg", "inside_leg",
)  # fmt: skip
CM = LengthStyle("cm")


def middle(name: str = "women", *, survey: bool = False, keys: tuple[str, ...] = KEYS) -> MeasureSet:
    """The middle of the population: a body that agrees with itself."""
    people = population("women" if name == "women" else "men")
    frame = Frame("survey", "navel", False) if survey else Frame("book", "natural", False)
    values = [round(value) for value in make_system(people.model, frame, keys).mean.tolist()]
    bare = replace(
        MeasureSet.from_mm("Invented", dict(zip(keys, values, strict=True))), population=people.name
    )
    return replace(bare, taken_as="survey", waist_level="navel") if survey else bare


BASE = middle()


def changed(**values: float) -> MeasureSet:
    body = BASE
    for key, value in values.items():
        body = body.with_value(key, value)
    return body


def named(looked: LookedOver) -> list[str]:
    """Every value that a population accuses, as often as it does; contradictions accuse more than one."""
    return [
        one.key
        for doubt in looked.doubts
        for one in doubt.suspects
        if doubt.keys == tuple(suspect.key for suspect in doubt.suspects)
    ]


def offered(looked: LookedOver) -> list[dict[str, float]]:
    return [
        {key: round(value) for key, value in one.values} for doubt in looked.doubts for one in doubt.repairs
    ]


@pytest.mark.parametrize(
    ("stale", "measured"),
    [
        ({"inside_leg": 1000.0}, {"outside_leg": 980.0}),
        ({"standing_rise": 300.0, "inside_leg": 780.0}, {"outside_leg": 980.0}),
        ({"front_waist_length": 520.0}, {"back_waist_length": 400.0}),
        ({"front_bust_arc": 300.0}, {"bust_girth": 920.0}),
        ({"hip_girth": 600.0}, {"waist_girth": 900.0}),
    ],
)
def test_an_estimate_contradicts_nothing_that_was_taken(
    stale: dict[str, float], measured: dict[str, float]
) -> None:
    taken = MeasureSet.from_mm("A", {**stale, **measured})
    assert check_consistent(taken) != ()
    guessed = {key: Measure(value, "estimated", 10.0) for key, value in stale.items()}
    rest = {key: Measure(value) for key, value in measured.items()}
    assert check_consistent(MeasureSet("A", {**guessed, **rest})) == ()


def test_a_side_that_was_taken_is_judged_beside_an_estimate_for_both() -> None:
    legs = MeasureSet("A", {"outside_leg": Measure(1000), "inside_leg": Measure(780, "estimated", 20.0)})
    assert check_consistent(legs.with_value("inside_leg", 1010, "left"))[0].keys == (
        "inside_leg@left",
        "outside_leg@left",
    )


@pytest.mark.parametrize("how", ["alone", "beside the right", "beside the plain one"])
def test_a_side_is_judged_as_harshly_whatever_stands_beside_it(how: str) -> None:
    value = BASE.value("arm_length")
    body = BASE if how == "beside the plain one" else BASE.without("arm_length")
    if how == "beside the right":
        body = body.with_value("arm_length", value, "right")
    looked = look_over(body.with_value("arm_length", value + 100, "left"), CM)
    assert looked.level == "stop"
    assert named(looked) == ["arm_length@left"]
    assert {"arm_length@left": value} in offered(looked)
    assert all("arm_length@right" not in one and "arm_length" not in one for one in offered(looked))


def test_a_sound_body_with_sides_that_differ_a_little_is_fine() -> None:
    body = BASE.with_value("arm_length", BASE.value("arm_length") + 8, "left")
    assert look_over(body, CM).level == "fine"


def test_two_slips_are_both_named_and_each_once() -> None:
    for one, other in combinations(KEYS, 2):
        body = changed(**{one: BASE.value(one) / 2.54, other: BASE.value(other) * 2.54})
        found = [key.partition("@")[0] for key in named(look_over(body, CM))]
        assert {one, other} <= set(found), (one, other, found)
        assert len(found) == len(set(found)), (one, other, found)


def test_both_legs_in_inches_or_ten_off_are_named_and_the_height_is_not() -> None:
    inside, outside = BASE.value("inside_leg"), BASE.value("outside_leg")
    for body in (
        changed(inside_leg=inside / 2.54, outside_leg=outside / 2.54),
        changed(inside_leg=inside + 100, outside_leg=outside + 100),
    ):
        looked = look_over(body, CM)
        assert sorted(named(looked)) == ["inside_leg", "outside_leg"]
        meant = {key: value for one in offered(looked) for key, value in one.items() if key == "outside_leg"}
        assert meant == {"outside_leg": round(outside)}


def test_inside_and_outside_leg_in_each_others_line_are_exchanged() -> None:
    inside, outside = BASE.value("inside_leg"), BASE.value("outside_leg")
    looked = look_over(changed(inside_leg=outside, outside_leg=inside), CM)
    assert [doubt.code for doubt in looked.doubts] == ["measures-exchanged"]
    assert offered(looked) == [{"inside_leg": inside, "outside_leg": outside}]


def test_two_values_that_would_not_fit_each_others_line_are_not_exchanged() -> None:
    # Each nearer to what is expected of the other than of itself, and wrong there too.
    inside, outside = BASE.value("inside_leg"), BASE.value("outside_leg")
    looked = look_over(changed(inside_leg=outside - 110, outside_leg=inside + 110), CM)
    assert looked.level == "stop"
    assert all(len(one) == 1 for one in offered(looked))
    assert "measures-exchanged" not in {doubt.code for doubt in looked.doubts}


def test_a_small_value_in_inches_is_offered_as_such_before_ten_off() -> None:
    body = middle(survey=True).with_value("hip_depth", 49.0)
    first = offered(look_over(body, CM))[0]
    assert first == {"hip_depth": round(49 * 2.54)}


def test_five_centimeters_off_are_no_tape_read_ten_off() -> None:
    for key in ("arm_length", "outside_leg", "inside_leg", "back_waist_length"):
        for by in (-50, 50):
            looked = look_over(changed(**{key: BASE.value(key) + by}), CM)
            slips = {one.slip for doubt in looked.doubts for one in doubt.repairs}
            assert "tape-by-ten" not in slips, (key, by)


def test_a_value_that_is_only_looked_at_again_gets_no_offer_that_is_not_sure() -> None:
    looked = look_over(BASE.with_value("arm_length", BASE.value("arm_length") + 58), CM)
    assert looked.level == "check"
    assert all(one.share >= 0.8 for doubt in looked.doubts for one in doubt.repairs)
    assert offered(look_over(BASE.with_value("arm_length", BASE.value("arm_length") + 100), CM))


def test_a_waist_over_the_hip_is_asked_about_only_where_the_rest_does_not_expect_it() -> None:
    large = replace(
        MeasureSet.from_mm("A", {"waist_girth": 1060.0, "hip_girth": 1050.0, "bust_girth": 1120.0}),
        population="men",
    )
    waists = [doubt.code for doubt in look_over(large, CM).doubts]
    assert "waist-over-hip" not in waists
    assert "waist-over-hip" in {doubt.code for doubt in check_consistent(large)}
    assert "waist-over-hip" in {doubt.code for doubt in look_over(replace(large, population=None), CM).doubts}


def test_a_value_that_no_body_has_stays_a_stop_beside_a_mere_question() -> None:
    wild = replace(MeasureSet.from_mm("A", {"height": 1630.0, "upper_bust_girth": 343.0}), population="women")
    assert look_over(wild, CM).level == "stop"
