"""Widths, lengths and eases of the legs: what a silhouette gives, and what the body asks for."""

from typing import Any

import pytest

from notchbook.blocks.lower_measures import usual_crotch_length
from notchbook.blocks.lower_measures.limits import SITTING_LONGER
from notchbook.blocks.trouser_pieces.eases import ease_row, usual_eases
from notchbook.blocks.trouser_pieces.leg_figures import SILHOUETTE_LENGTHS
from notchbook.blocks.trouser_pieces.leg_widths import LegWidths
from notchbook.blocks.trouser_pieces.parameters import TrousersParameters
from notchbook.blocks.trouser_pieces.trouser_measures import trouser_measures
from notchbook.body import MeasureSet
from notchbook.recipe import StepContext
from support.trouser_bodies import CHILD, MAN, WOMAN, lower_body, without


def legs(measures: MeasureSet | None = None, **parameters: Any) -> LegWidths:
    body = lower_body() if measures is None else measures
    context = StepContext(body, "trousers", "trousers-1")
    return trouser_measures(context, TrousersParameters(**parameters), "right").widths


def test_a_fitted_leg_narrows_and_a_straight_one_hardly_does() -> None:
    fitted, straight = legs(), legs(silhouette="straight")
    assert fitted.knee is not None and fitted.hem is not None
    assert straight.knee is not None and straight.hem is not None
    assert fitted.knee == WOMAN["knee_girth"] + 80.0
    assert fitted.hem < straight.hem < straight.knee
    # Handbook draft of tailored trousers for hip 94: knee about 48, hem 44 cm (from memory).
    assert straight.knee == pytest.approx(480.0, abs=15.0)
    assert straight.hem == pytest.approx(440.0, abs=15.0)


@pytest.mark.parametrize("silhouette", ["wide", "culottes", "shorts"])
def test_some_legs_have_no_knee(silhouette: str) -> None:
    assert legs(silhouette=silhouette).knee is None


def test_culottes_fall_straight() -> None:
    assert legs(silhouette="culottes").hem is None


def test_a_strong_thigh_keeps_the_knee_wide() -> None:
    """Own judgment: no narrower than 0.72 of the thigh with its ease."""
    assert legs(lower_body(thigh_girth=760.0)).knee == pytest.approx(0.72 * 800.0)


def test_a_hem_lets_the_heel_or_the_calf_pass() -> None:
    thin = lower_body(knee_girth=300.0, thigh_girth=480.0)
    big_foot = lower_body(knee_girth=300.0, thigh_girth=480.0, heel_girth=360.0)
    assert legs(big_foot).hem == 370.0
    assert legs(big_foot).passes == "heel"
    assert (legs(thin).hem or 0.0) < 370.0
    assert legs(lower_body(calf_girth=400.0), length="calf").passes == "calf"
    assert legs(silhouette="shorts").must_pass is None


def test_lengths_by_name_lie_above_one_another() -> None:
    names = ("full", "ankle", "calf", "knee", "short")
    found = [legs(length=name).length for name in names]
    assert found == sorted(found, reverse=True)
    assert legs().length == legs(length=SILHOUETTE_LENGTHS["fitted"]).length


def test_a_measured_outside_leg_gives_the_length() -> None:
    longer = legs(lower_body(outside_leg=1062.0)).length - legs().length
    assert longer == pytest.approx(1062.0 - WOMAN["standing_rise"] - WOMAN["inside_leg"])


def test_an_own_length_runs_down_the_side() -> None:
    assert legs(own_length="1/2 inside_leg + 30 cm").length == 690.0


def test_a_knee_that_was_not_measured_lies_above_the_middle_of_the_leg() -> None:
    """A handbook draft lays it 5 cm above the middle of the inside leg (from memory)."""
    found = legs(lower_body(without(WOMAN, "knee_depth"))).knee_depth
    assert found == WOMAN["standing_rise"] + WOMAN["inside_leg"] / 2.0 - 50.0


# ------------------------------------------------------------------ eases


def test_every_ease_lies_in_its_range() -> None:
    rows = usual_eases()
    assert len(rows) > 30
    for row in rows:
        assert row.least is not None and row.most is not None
        assert row.least <= row.drafted <= row.most, row
        assert row.source and row.grade


def test_a_wearer_without_a_row_has_that_of_everybody() -> None:
    assert ease_row("women", "fitted", "hip").drafted == 40.0
    assert ease_row("men", "fitted", "hip").drafted == 50.0
    assert ease_row("men", "fitted", "waist") == ease_row("children", "fitted", "waist")


def test_both_rises_come_to_one_fork() -> None:
    """Sitting is 10.5 mm more than standing (computed from a published sample), taken as a whole cm."""
    assert SITTING_LONGER == 10
    for silhouette in SILHOUETTE_LENGTHS:
        sitting, standing = (
            ease_row("women", silhouette, of).drafted for of in ("sitting_rise", "standing_rise")
        )
        assert standing - sitting == SITTING_LONGER


def test_the_fitted_eases_are_those_of_the_published_table() -> None:
    """Trousers: waist 3/4 to 1 in, seat 1 1/2 to 2 in, thigh at least 1 in (published ease table)."""
    inch = 25.4
    waist, hip, thigh = (ease_row("women", "fitted", of) for of in ("waist", "hip", "thigh"))
    assert 0.75 * inch - 0.5 <= waist.drafted <= inch
    assert 1.5 * inch <= hip.drafted <= 2.0 * inch
    assert thigh.least is not None and thigh.least + 0.5 >= inch


# ------------------------------------------------------------------ a crotch length that nobody took


@pytest.mark.parametrize(("wearer", "values"), [("women", WOMAN), ("men", MAN)])
def test_an_invented_body_near_the_middle_has_about_the_usual_crotch_length(
    wearer: Any, values: dict[str, float]
) -> None:
    usual, error = usual_crotch_length(
        wearer, values["standing_rise"], values["hip_girth"], values["waist_girth"], 0.0
    )
    assert abs(usual - values["crotch_length"]) < error


def test_a_lower_waist_makes_the_crotch_shorter_in_front_and_behind() -> None:
    natural = usual_crotch_length("women", 270.0, 960.0, 720.0, 0.0)[0]
    lower = usual_crotch_length("women", 230.0, 960.0, 720.0, 40.0)[0]
    assert natural - lower == pytest.approx(2.04 * 40.0)


def test_a_child_has_no_population_and_no_substitute() -> None:
    context = StepContext(lower_body(CHILD, None), "trousers", "trousers-1")
    found = trouser_measures(context, TrousersParameters(), "right")
    assert found.wearer == "children"
    assert found.crotch_falls
    assert "crotch_length" not in {one.key for one in found.substitutes}
