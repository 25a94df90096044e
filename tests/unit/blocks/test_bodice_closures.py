"""The bodice closes wherever its bust dart opens: judged from the plain data by other code than drew it."""

from typing import Any

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notchbook.body import MeasureSet
from notchbook.pattern import pattern_from_data, pattern_to_data
from notchbook.recipe import replay
from support.asked_of_upper import asked_of
from support.bodice_bodies import (
    CHILD,
    FULL_BUST,
    MAN,
    WOMAN,
    bodice,
    bodice_recipe,
    bodice_run,
    body,
)
from support.bodice_judge import UpperJudge, misses
from support.skirt_judge import angle_between

PLACES = ("side", "underarm", "shoulder", "armhole", "french", "center_front", "waist")


def wanted(done: Any) -> dict[str, float]:
    """What the draft promises, by measure."""
    return {promise.measure: promise.wanted for promise in done.expectations}


def drafted(measures: MeasureSet, **parameters: Any) -> tuple[dict[str, Any], dict[str, float]]:
    """The pattern, and what was asked by measures, ease tables and findings: not what the draft promises."""
    done = bodice_run(measures, **parameters)
    return pattern_to_data(done.pattern), asked_of(done)


def bust_angle(judge: UpperJudge, legs: tuple[str, str] = ("upper", "lower")) -> float:
    """The angle of the bust dart seen from the bust point to both ends of its mouth, degrees."""
    bust = judge.mark("bodice.front/bust_point")
    first, second = (judge.point("bodice.front", f"bust_dart/{leg}_mouth") for leg in legs)
    return angle_between(first - bust, second - bust)


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("values", [WOMAN, FULL_BUST], ids=["ordinary", "full"])
def test_closes_at_every_place(values: dict[str, float], place: str) -> None:
    data, promised = drafted(body(values), bust_dart=place)
    if place == "center_front":  # The upper part of the front is turned: its center is judged in two chains.
        promised.pop("center_front_length")
        found = [miss for miss in misses(data, promised) if "square" not in miss]
    else:
        found = misses(data, promised)
    assert found == []


def test_eases_and_measures_come_out_as_asked() -> None:
    promised = wanted(bodice_run(body(), bust_ease="7 cm", scye_ease="1 cm", armhole_lowered="8 mm"))
    assert promised["bust_girth"] == pytest.approx(990.0)
    assert promised["scye_depth"] == pytest.approx(208.0)
    assert promised["waist_girth"] == pytest.approx(790.0)


def test_the_angle_is_the_same_wherever_the_dart_opens() -> None:
    angles = [
        bust_angle(UpperJudge(drafted(body(), bust_dart=place)[0]), legs)
        for place, legs in (
            ("side", ("upper", "lower")),
            ("underarm", ("upper", "lower")),
            ("french", ("upper", "lower")),
            ("armhole", ("upper", "lower")),
            ("shoulder", ("center", "side")),
            ("center_front", ("upper", "lower")),
        )
    ]
    # Truing across the dart moves its mouth along its own line only, so that the angle stays.
    assert max(angles) - min(angles) < 0.05
    assert 12.0 < angles[0] < 22.0


def test_moving_the_dart_changes_no_length_but_its_own_edge() -> None:
    judges = {place: UpperJudge(drafted(body(), bust_dart=place)[0]) for place in PLACES}
    for word in ("neck", "shoulder", "armhole", "side_seam", "waist"):
        lengths = [judge.sewn("front", word) for judge in judges.values()]
        assert max(lengths) - min(lengths) < 0.05, word


def test_the_contour_dart_takes_its_share_of_the_bust_dart() -> None:
    deep = body(FULL_BUST, front_waist_length=500.0)
    plain, _ = drafted(deep, contour="none")
    data, promised = drafted(deep, contour="dart")
    assert misses(data, promised) == []
    judge = UpperJudge(data)
    bust = judge.mark("bodice.front/bust_point")
    mouths = [judge.point("bodice.front", f"contour_dart/{leg}_mouth") for leg in ("center", "side")]
    share = angle_between(mouths[0] - bust, mouths[1] - bust)
    assert float(np.linalg.norm(mouths[0] - mouths[1])) > 1.0
    assert share + bust_angle(judge) == pytest.approx(bust_angle(UpperJudge(plain)), abs=0.05)


@pytest.mark.parametrize(
    "measures", [body(MAN, "men"), body(CHILD, None), body(MAN, "men", waist_girth=1150.0)], ids=str
)
def test_closes_without_bust_shaping(measures: MeasureSet) -> None:
    data, promised = drafted(measures)
    assert misses(data, promised) == []


def test_a_waist_that_is_left_as_it_falls_is_declared_as_ease() -> None:
    done = bodice_run(body(MAN, "men"))
    (waist,) = [promise for promise in done.expectations if promise.measure == "waist_girth"]
    data = UpperJudge(pattern_to_data(done.pattern))
    drawn = 2.0 * (data.sewn("front", "waist") + data.sewn("back", "waist"))
    assert waist.wanted == pytest.approx(drawn, abs=0.05)
    (said,) = [note for note in done.notes if note.code == "waist-left-as-it-falls"]
    assert said.measured == pytest.approx(drawn - 880.0, abs=0.05)


WOMEN = st.fixed_dictionaries(
    {
        "bust_girth": st.floats(820.0, 1150.0),
        "drop": st.floats(90.0, 220.0),
        "front_longer": st.floats(20.0, 60.0),
        "shoulder_slope": st.floats(17.0, 32.0),
        "under": st.floats(100.0, 260.0),
    }
)


@given(
    case=WOMEN,
    place=st.sampled_from(PLACES[:5]),
    silhouette=st.sampled_from(["close", "fitted", "semi_fitted"]),
)
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_closes_on_plausible_women(case: dict[str, float], place: str, silhouette: str) -> None:
    bust = case["bust_girth"]
    larger = (bust - 920.0) / 40.0  # Sizes of 4 cm: widths and lengths grow as grading tables have them.
    measures = body(
        bust_girth=bust,
        waist_girth=bust - case["drop"],
        under_bust_girth=bust - case["under"],
        front_waist_length=400.0 + case["front_longer"] + 3.0 * larger,
        neck_to_bust_point=265.0 + 6.0 * larger,
        bust_point_width=190.0 + 7.0 * larger,
        center_front_length=350.0 + 1.0 * larger,
        neck_base_girth=370.0 + 8.0 * larger,
        across_back=350.0 + 9.0 * larger,
        across_chest=330.0 + 10.0 * larger,
        scye_depth=190.0 + 4.0 * larger,
        shoulder_slope=case["shoulder_slope"],
    )
    data, promised = drafted(measures, bust_dart=place, silhouette=silhouette)
    assert misses(data, promised) == []


@pytest.mark.parametrize("place", PLACES)
def test_the_pattern_goes_through_its_data_unchanged(place: str) -> None:
    pattern = bodice(body(FULL_BUST), bust_dart=place, contour="dart")
    assert pattern_from_data(pattern_to_data(pattern)) == pattern


def test_a_body_that_differs_left_and_right_meets_at_the_centers() -> None:
    uneven = body(FULL_BUST)
    for key, value in (
        ("shoulder_slope", 29.0),
        ("front_waist_length", 486.0),
        ("neck_to_bust_point", 322.0),
    ):
        uneven = uneven.with_value(key, value, "left")
    done = replay(bodice_recipe(uneven), uneven)
    assert done.suspended is None
    assert "front-neck-with-dart" in {note.code for note in done.notes}
    front = done.pattern.pieces["bodice.front"]
    assert front.cut == "single"  # One whole piece: both halves met at the fold.
    points = front.points
    assert points["bodice.front/side_neck_point@left"].x == pytest.approx(
        -points["bodice.front/side_neck_point@right"].x, abs=6.0
    )
    assert points["bodice.front/bust_point@left"].y != pytest.approx(
        points["bodice.front/bust_point@right"].y
    )


def moved(data: dict[str, Any], edge: str, by: float) -> dict[str, Any]:
    """The pattern with one curve bent outward by mm."""
    for piece in data["pieces"]:
        for one in piece["outline"]:
            if one["name"] == edge:
                row = next(row for row in one["path"] if row[0] == "C")
                row[1] += by
    return data


def test_a_fault_of_half_a_millimeter_in_the_neck_is_seen() -> None:
    data, promised = drafted(body())
    assert misses(moved(data, "bodice.front/neck", 2.0), promised) != []
