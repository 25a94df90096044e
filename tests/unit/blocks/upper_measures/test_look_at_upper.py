"""The look at the measures of an upper body: planted errors are named, and clean bodies are left alone.

The body is invented, near the middle of women of 168 cm in docs/survey/upper-measures.md.
"""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.blocks.upper_measures import (
    UPPER_KEYS,
    Disagreement,
    Estimate,
    Substitute,
    Trusted,
    UpperMeasures,
    bust_dart_angle,
    contradiction_notes,
    look_at_upper,
)
from notchbook.blocks.upper_measures.agreement_table import Limit, judge, limits, pairs
from notchbook.blocks.upper_measures.limits import FIGURES, is_within
from notchbook.body import PopulationName, WaistLevel, measure_table
from notchbook.pattern import Finding, Severity

TAKEN = {
    "height": 1680.0,
    "neck_base_girth": 370.0,
    "upper_bust_girth": 890.0,
    "bust_girth": 920.0,
    "waist_girth": 740.0,
    "back_waist_length": 402.0,
    "scye_depth": 200.0,
    "shoulder_width_back": 400.0,
    "across_back": 350.0,
    "center_front_length": 350.0,
    "neck_to_bust_point": 270.0,
    "front_waist_length": 440.0,
    "bust_point_width": 184.0,
    "across_chest": 335.0,
    "shoulder_length": 124.0,
    "shoulder_slope": 23.0,
    "upper_arm_girth": 285.0,
}

CLEAN = UpperMeasures(TAKEN, population="women")


def taken(**more: float) -> UpperMeasures:
    return UpperMeasures(TAKEN | more, population="women")


def named(measures: UpperMeasures) -> Disagreement:
    """The only disagreement."""
    (found,) = look_at_upper(measures).disagreements
    return found


def notes(measures: UpperMeasures) -> tuple[Finding, ...]:
    return contradiction_notes("bodice.front", look_at_upper(measures))


def test_of_a_clean_body_nothing_is_said() -> None:
    looked = look_at_upper(CLEAN)
    assert not looked.disagreements
    assert not looked.substitutes
    assert looked.measures == CLEAN
    assert not contradiction_notes("bodice.front", looked)
    assert looked.dart is not None
    assert looked.dart.angle == pytest.approx(looked.dart.expected, abs=3.0)


@pytest.mark.parametrize("key", ["back_waist_length", "front_waist_length", "center_front_length"])
def test_one_length_to_the_navel_is_named_with_its_pair_and_the_question(key: str) -> None:
    """On women the navel lies 46 mm below the natural waist on average (computed from ANSUR II)."""
    one = named(taken(**{key: TAKEN[key] + 46.0}))
    assert (one.kind, one.key, one.keys) == ("two-waists", key, (key,))
    assert key in one.pair
    assert one.pair.other(key).endswith("_length")
    assert one.lower
    assert one.explaining == pytest.approx(TAKEN[key], abs=12.0)
    assert one.amount == pytest.approx(46.0, abs=12.0)
    (note,) = notes(taken(**{key: TAKEN[key] + 46.0}))
    assert note.code == "lengths-to-two-waists"
    assert note.contradiction is not None
    assert note.contradiction.question == "measure-to-which-waist"
    assert note.contradiction.read_again == key
    assert (note.measured, note.wanted) == (one.given, one.explaining)


def test_the_back_at_the_navel_says_that_the_dart_is_lost() -> None:
    measures = taken(back_waist_length=448.0)
    outlook = look_at_upper(measures).dart
    assert outlook is not None
    assert outlook.is_lost
    (note,) = notes(measures)
    assert "no bust dart is left" in note.message
    assert note.piece == "bodice.front"


def test_both_front_lengths_to_the_navel_are_one_question() -> None:
    one = named(taken(front_waist_length=492.0, center_front_length=402.0))
    assert one.kind == "two-waists"
    assert set(one.keys) == {"front_waist_length", "center_front_length"}
    assert one.pair == pairs()[0]


def test_all_lengths_to_the_navel_are_asked_about_against_the_rest_of_the_body() -> None:
    off = {
        key: TAKEN[key] + 50.0 for key in ("back_waist_length", "front_waist_length", "center_front_length")
    }
    one = named(taken(**off))
    assert one.kind == "other-waist"
    assert set(one.keys) == set(off)
    (note,) = notes(taken(**off))
    assert note.code == "lengths-to-other-waist"
    assert note.message.startswith(
        "Back waist length, front waist length and center front length are all longer"
    )
    assert not look_at_upper(replace(taken(**off), waist_level="navel")).disagreements


def test_lengths_of_a_known_drop_are_judged_at_it() -> None:
    off = {
        key: TAKEN[key] + 30.0 for key in ("back_waist_length", "front_waist_length", "center_front_length")
    }
    lower = replace(taken(**off), waist_level="lower", waist_drop=30.0)
    assert not look_at_upper(lower).disagreements
    one = named(replace(lower, taken={**lower.taken, "back_waist_length": TAKEN["back_waist_length"] - 20.0}))
    assert one.key == "back_waist_length"
    assert (one.kind, one.lower) == ("two-waists", False)
    assert (
        "shorter"
        in contradiction_notes(
            "bodice.front",
            look_at_upper(
                replace(lower, taken={**lower.taken, "back_waist_length": TAKEN["back_waist_length"] - 20.0})
            ),
        )[0].message
    )


@pytest.mark.parametrize(
    ("key", "off"),
    [
        ("shoulder_length", -45.0),
        ("across_back", 110.0),
        ("across_chest", -80.0),
        ("neck_base_girth", 70.0),
        ("scye_depth", 75.0),
        ("neck_to_bust_point", -80.0),
        ("bust_point_width", 60.0),
        ("shoulder_slope", 18.0),
        ("shoulder_width_back", 85.0),
        ("upper_arm_girth", 90.0),
        ("bust_girth", -110.0),
    ],
)
def test_one_wrong_value_is_named_in_a_pair(key: str, off: float) -> None:
    looked = look_at_upper(taken(**{key: TAKEN[key] + off}))
    one = looked.disagreements[0]
    assert one.key == key
    assert one.kind == "pair"
    assert one.amount * off > 0.0
    assert one.deviations is not None
    assert one.deviations > 2.0
    note = contradiction_notes("bodice.front", looked)[0]
    assert note.severity is Severity.LOOK
    assert note.contradiction is not None
    assert key in (note.contradiction.first, note.contradiction.second)
    assert note.contradiction.by == pytest.approx(one.amount)
    assert note.unit == ("deg" if key == "shoulder_slope" else "mm")


def test_a_value_read_twice_is_asked_about_less() -> None:
    measures = taken(scye_depth=272.0)
    assert named(measures).key == "scye_depth"
    assert not look_at_upper(replace(measures, sure=frozenset({"scye_depth"}))).disagreements
    far = replace(taken(shoulder_length=60.0), sure=frozenset({"shoulder_length"}))
    assert named(far).read_again != "shoulder_length", "a third reading decides nothing"


def test_two_readings_to_another_waist_are_still_asked_about() -> None:
    sure = replace(taken(back_waist_length=448.0), sure=frozenset({"back_waist_length"}))
    assert named(sure).kind == "two-waists"


def test_a_dart_that_is_lost_little_by_little_is_named() -> None:
    measures = taken(front_waist_length=421.0, back_waist_length=422.0, center_front_length=338.0)
    one = named(measures)
    assert one.kind == "lost-dart"
    assert {one.pair.first, one.pair.second} == {"front_waist_length", "back_waist_length"}
    (note,) = notes(measures)
    assert note.code == "bust-dart-lost"
    assert note.contradiction is not None
    assert note.contradiction.question == "measure-to-which-waist"
    assert not look_at_upper(replace(measures, population="men")).disagreements


def test_a_measured_value_is_replaced_only_where_no_draft_stands() -> None:
    looked = look_at_upper(taken(front_waist_length=560.0))
    (one,) = looked.substitutes
    assert one.was_taken
    assert (one.key, one.given) == ("front_waist_length", 560.0)
    assert one.used == pytest.approx(440.0, abs=15.0)
    assert looked.value("front_waist_length", 560.0) == one.used
    assert looked.value("back_waist_length", 402.0) == 402.0
    codes = [note.code for note in contradiction_notes("bodice.front", looked)]
    assert codes == ["measures-contradict", "measured-value-replaced"]
    assert not look_at_upper(taken(back_waist_length=448.0)).substitutes


def test_an_estimate_yields_to_what_was_measured() -> None:
    without = {key: value for key, value in TAKEN.items() if key != "front_waist_length"}
    kept = UpperMeasures(without, {"front_waist_length": Estimate(432.0, 20.0)}, population="women")
    assert not look_at_upper(kept).substitutes
    stale = UpperMeasures(
        without | {"back_waist_length": 430.0},
        {"front_waist_length": Estimate(415.0, 16.0)},
        population="women",
    )
    looked = look_at_upper(stale)
    (one,) = looked.substitutes
    assert (one.key, one.was_taken) == ("front_waist_length", False)
    assert one.used > 430.0, "a front goes with its back"
    (note,) = contradiction_notes("bodice.front", looked)
    assert (note.code, note.severity) == ("estimate-yields", Severity.NOTE)


def test_an_arm_that_no_line_is_drawn_from_is_not_spoken_of() -> None:
    yields = Substitute("upper_arm_girth", 474.0, 440.0, was_taken=False)
    scye = Substitute("scye_depth", 260.0, 212.0, was_taken=False)
    (note,) = contradiction_notes("bodice.front", Trusted(UpperMeasures({}), (), (yields, scye)))
    assert "cye depth" in note.message


def test_estimates_contradict_nothing() -> None:
    estimated = {key: Estimate(value, 500.0) for key, value in TAKEN.items()}
    estimated["shoulder_length"] = Estimate(170.0, 500.0)
    assert not look_at_upper(UpperMeasures({}, estimated, population="women")).disagreements


def test_without_a_population_arithmetic_alone_judges() -> None:
    for whose in (replace(CLEAN, population=None), replace(CLEAN, is_child=True)):
        assert not look_at_upper(whose).disagreements
        looked = look_at_upper(replace(whose, taken={**TAKEN, "back_waist_length": 520.0}))
        one = looked.disagreements[0]
        assert one.deviations is None
        assert not looked.substitutes, "nothing is known that could stand in its place"
        note = contradiction_notes("bodice.front", looked)[0]
        assert note.code == "measures-rule-each-other-out"
        mended = looked.measures.with_value(one.key, one.explaining)
        assert not look_at_upper(mended).disagreements


def test_a_child_is_judged_by_arithmetic() -> None:
    """A child of 104 cm: proportions from memory, invented."""
    child = UpperMeasures(
        {
            "height": 1040.0,
            "neck_base_girth": 270.0,
            "bust_girth": 570.0,
            "waist_girth": 540.0,
            "back_waist_length": 252.0,
            "scye_depth": 140.0,
            "across_back": 235.0,
            "across_chest": 225.0,
            "shoulder_length": 82.0,
            "shoulder_slope": 23.0,
            "front_waist_length": 258.0,
        },
        population="women",
        is_child=True,
    )
    assert not look_at_upper(child).disagreements
    halved = replace(child, taken={**child.taken, "scye_depth": 230.0})
    assert named(halved).pair.second == "back_waist_length"


@pytest.mark.parametrize("limit", limits(), ids=lambda limit: limit.name)
def test_every_limit_can_be_passed_and_is_named(limit: Limit) -> None:
    far = {
        "bust_dart": {"front_waist_length": 350.0},
        "front_over_back": {"front_waist_length": 560.0},
        "neck_depth": {"center_front_length": 470.0},
        "shoulder_past_back": {"across_back": 560.0},
        "shoulder_past_chest": {"across_chest": 560.0},
        "arm_room": {"bust_girth": 700.0},
        "side_share": {"scye_depth": 360.0},
        "bust_point_share": {"neck_to_bust_point": 420.0},
        "upper_bust_share": {"upper_bust_girth": 600.0},
        "diagonal": {"shoulder_point_to_center_waist": 500.0},
    }
    wrong = replace(taken(**far[limit.name]), population=None)
    assert is_within(limit, CLEAN)
    assert not is_within(limit, wrong)
    assert any(one.key in limit.keys for one in look_at_upper(wrong).disagreements)


def test_the_diagonal_is_held_against_its_parts() -> None:
    measures = taken(shoulder_point_to_center_waist=500.0)
    one = named(measures)
    assert one.key == "shoulder_point_to_center_waist"
    # Half the width across, and the back length less how far the shoulder point lies below the nape.
    assert one.explaining == pytest.approx((200.0**2 + (402.0 - 28.5) ** 2) ** 0.5, abs=1.0)


def test_men_have_no_bust_dart_to_lose() -> None:
    """Near the middle of surveyed men (docs/survey/upper-measures.md)."""
    man = UpperMeasures(
        {
            "height": 1755.0,
            "neck_base_girth": 436.0,
            "bust_girth": 1060.0,
            "waist_girth": 930.0,
            "back_waist_length": 443.0,
            "scye_depth": 247.0,
            "across_back": 415.0,
            "center_front_length": 373.0,
            "shoulder_length": 140.0,
            "shoulder_width_back": 441.0,
        },
        population="men",
    )
    looked = look_at_upper(man)
    assert not looked.disagreements
    assert looked.dart is None
    assert named(replace(man, taken={**man.taken, "shoulder_length": 85.0})).key == "shoulder_length"


def test_the_table_speaks_of_known_measures_and_computed_figures() -> None:
    known = measure_table()
    assert {limit.name for limit in limits()} == set(FIGURES)
    assert all(key in known for pair in pairs() for key in (pair.first, pair.second))
    assert all(key in known for limit in limits() for key in limit.keys)
    assert all(limit.least < limit.most for limit in limits())
    assert judge("women").asks_from > 0.0 < judge("men").asks_from
    assert list(UPPER_KEYS) == sorted(UPPER_KEYS, key=list(known).index)


_VALUES = st.dictionaries(
    st.sampled_from([*UPPER_KEYS]), st.floats(0.0, 3000.0, allow_subnormal=False), max_size=len(UPPER_KEYS)
)

_WHOSE: list[PopulationName | None] = ["women", "men", None]
_LEVELS: list[tuple[WaistLevel, float]] = [("natural", 0.0), ("navel", 0.0), ("navel", 40.0), ("lower", 30.0)]


@settings(max_examples=200, deadline=None)
@given(
    values=_VALUES,
    estimated=_VALUES,
    population=st.sampled_from(_WHOSE),
    level=st.sampled_from(_LEVELS),
)
def test_any_values_come_to_words_and_never_to_a_traceback(
    values: dict[str, float],
    estimated: dict[str, float],
    population: PopulationName | None,
    level: tuple[WaistLevel, float],
) -> None:
    measures = UpperMeasures(
        values,
        {key: Estimate(value, 10.0) for key, value in estimated.items() if key not in values},
        population=population,
        waist_level=level[0],
        waist_drop=level[1],
    )
    looked = look_at_upper(measures)
    assert isinstance(looked, Trusted)
    for one in looked.substitutes:
        assert looked.measures.find(one.key) == one.used
    for note in contradiction_notes("bodice.front", looked):
        assert "{" not in note.message + note.suggestion


@settings(max_examples=60, deadline=None)
@given(st.floats(-4.0, 4.0), st.floats(-4.0, 4.0))
def test_the_dart_grows_with_the_front_and_shrinks_with_the_back(front: float, back: float) -> None:
    """5 mm of front length are 2.1 degrees, 5 mm of back length 1.9 (whole drafts of a size 92, own run)."""
    longer = taken(front_waist_length=440.0 + front, back_waist_length=402.0 + back)
    angle, usual = bust_dart_angle(longer.find), bust_dart_angle(CLEAN.find)
    assert angle is not None
    assert usual is not None
    assert angle - usual == pytest.approx(0.4 * front - 0.38 * back, abs=0.25)
