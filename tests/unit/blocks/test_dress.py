"""The dress: skirt and bodice agree along the waist, judged from the plain data by other code."""

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notchbook.app.drafting import add_block
from notchbook.app.examining import examine, subject_of
from notchbook.blocks.dress import REFUSES, STEP
from notchbook.blocks.joined.parameters import DressParameters
from notchbook.body import MeasureSet
from notchbook.checks import closures
from notchbook.errors import entry
from notchbook.pattern import Severity, pattern_from_data, pattern_to_data, sewn_length
from notchbook.recipe import Recipe, replay
from support.bodice_bodies import CHILD, FULL_BUST, MAN, body
from support.joined_blocks import closes_or_refuses, drafted, still_open, stopped
from support.joined_judge import open_closures

BODIES = {
    "ordinary": body(),
    "full bust": body(FULL_BUST),
    "small above": body(bust_girth=880.0, waist_girth=700.0, hip_girth=1080.0),
    "hardly a waist": body(bust_girth=900.0, waist_girth=880.0, hip_girth=900.0),
    "waist larger": body(waist_girth=1000.0, hip_girth=960.0),
    "man": body(MAN, "men"),
    "child": body(CHILD, None),
}


@pytest.mark.parametrize("seam", ["seam", "none"])
@pytest.mark.parametrize("measures", BODIES.values(), ids=BODIES.keys())
def test_closes(measures: MeasureSet, seam: str) -> None:
    assert still_open(drafted("dress", measures, waist_seam=seam)) == []


@pytest.mark.parametrize("place", ["waist", "shoulder", "french", "center_front"])
def test_closes_wherever_the_bust_dart_opens(place: str) -> None:
    found = still_open(drafted("dress", body(), bust_dart=place))
    # A front with a dart at the center is turned there: its center is no one line to measure or square.
    assert [
        miss
        for miss in found
        if place != "center_front" or ("center_front" not in miss and "neck sq" not in miss)
    ] == []


def test_no_check_has_a_word_to_say_on_an_ordinary_body() -> None:
    for seam in ("seam", "none"):
        found = examine(drafted("dress", body(knee_depth=580.0), waist_seam=seam)).findings
        assert [one.code for one in found if one.severity is not Severity.NOTE] == []


@pytest.mark.parametrize("seam", ["seam", "none"])
def test_the_closures_stored_with_the_draft_agree(seam: str) -> None:
    for measures in BODIES.values():
        found = closures(subject_of(drafted("dress", measures, waist_seam=seam)))
        assert [one.name for one in found if not one.agrees] == []


def test_pieces_and_seams_have_their_names() -> None:
    pattern = drafted("dress", body()).pattern
    assert set(pattern.pieces) == {
        f"dress.{part}_{which}" for part in ("bodice", "skirt") for which in ("front", "back")
    }
    assert {
        f"dress/{word}" for word in ("front_waist", "back_waist", "bodice_side_seam", "skirt_side_seam")
    } <= set(pattern.seams)
    assert set(drafted("dress", body(), waist_seam="none").pattern.pieces) == {"dress.front", "dress.back"}


def test_bodice_and_skirt_have_the_same_darts() -> None:
    for measures in BODIES.values():
        pieces = drafted("dress", measures).pattern.pieces
        for which in ("front", "back"):
            above = [d for d in pieces[f"dress.bodice_{which}"].intakes if d.mouth.endswith("/waist")]
            assert len(above) == len(pieces[f"dress.skirt_{which}"].intakes)


def test_darts_are_added_where_only_the_skirt_needs_them() -> None:
    """Chest and waist nearly equal, the hip larger: the skirt asks for darts, and the bodice has them too."""
    done = drafted("dress", body(bust_girth=900.0, waist_girth=880.0, hip_girth=1060.0))
    assert len(done.pattern.pieces["dress.skirt_back"].intakes) >= 1
    assert still_open(done) == []


def test_length_runs_down_the_center_back() -> None:
    pattern = drafted("dress", body(), own_length="64 cm").pattern
    assert sewn_length(pattern, "dress.skirt_back/center_back") == pytest.approx(640.0, abs=0.05)
    assert stopped("dress", body(), own_length="10 cm") == "hem-above-hip"
    assert stopped("dress", body(), own_length="10 cm", waist_seam="none") == "hem-above-hip"


def test_sides_that_differ_meet_at_the_centers() -> None:
    measures = body()
    for side, depth in (("left", 196.0), ("right", 206.0)):
        measures = measures.with_value("hip_depth", depth, side)  # type: ignore[arg-type]  # one of the sides
    done = drafted("dress", measures.without("hip_depth"))
    heights = [
        piece.points[
            f"{name.split('@')[0]}/waist_center" + (f"@{name.split('@')[1]}" if "@" in name else "")
        ].y
        - piece.points[
            f"{name.split('@')[0]}/hem_center" + (f"@{name.split('@')[1]}" if "@" in name else "")
        ].y
        for name, piece in done.pattern.pieces.items()
        if "skirt_back" in name
    ]
    assert np.ptp(heights) < 0.01


def test_a_sleeve_goes_into_a_dress_and_into_a_torso() -> None:
    measures = body(upper_arm_girth=290.0, wrist_girth=165.0, arm_length=590.0)
    for block in ("dress", "torso"):
        recipe = add_block(Recipe("Garment"), block, {}, base=measures)
        recipe = add_block(recipe, "sleeve", {"fabric": "shirting"}, base=measures)
        assert [record.operation for record in recipe.steps] == [block, "sleeve"]
        done = replay(recipe, measures)
        assert done.suspended is None, str(done.suspended)
        assert "sleeve/front_armhole" in done.pattern.seams
        stops = [one for one in examine(done, cut=False).findings if one.severity is Severity.STOP]
        assert stops == []


def test_a_sleeve_alone_still_brings_a_bodice() -> None:
    measures = body(upper_arm_girth=290.0, wrist_girth=165.0, arm_length=590.0)
    recipe = add_block(Recipe("Garment"), "sleeve", {"fabric": "shirting"}, base=measures)
    assert [record.operation for record in recipe.steps] == ["bodice", "sleeve"]


def test_needs() -> None:
    needs = STEP.needs_of(DressParameters(), body())
    assert {"hip_girth", "hip_depth", "bust_girth"} <= set(needs.needed)
    assert "knee_depth" in needs.estimated
    assert "knee_depth" not in STEP.needs_of(DressParameters(own_length="60 cm"), body()).keys


def test_every_refusal_has_its_words() -> None:
    assert all(entry(code).message and entry(code).why for code in REFUSES)


def test_goes_through_its_data_unchanged() -> None:
    pattern = drafted("dress", body()).pattern
    assert pattern_from_data(pattern_to_data(pattern)) == pattern


def test_a_planted_fault_is_seen() -> None:
    done = drafted("dress", body())
    data = pattern_to_data(done.pattern)
    piece = next(one for one in data["pieces"] if one["name"] == "dress.skirt_back")
    edge = next(one for one in piece["outline"] if one["name"] == "dress.skirt_back/waist/side")
    edge["path"][0][1] += 0.2
    wanted = {promise.measure: promise.wanted for promise in done.expectations}
    assert any("back waist" in miss for miss in open_closures(data, "dress", wanted))


@given(
    bust=st.floats(780.0, 1180.0),
    waist=st.floats(600.0, 1050.0),
    hip=st.floats(820.0, 1250.0),
    depth=st.floats(160.0, 240.0),
)
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_closes_or_refuses_on_plausible_women(bust: float, waist: float, hip: float, depth: float) -> None:
    measures = body(bust_girth=bust, waist_girth=waist, hip_girth=hip, hip_depth=depth)
    closes_or_refuses("dress", measures)


@given(chest=st.floats(800.0, 1250.0), waist=st.floats(650.0, 1250.0), hip=st.floats(820.0, 1200.0))
@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_closes_or_refuses_on_plausible_men(chest: float, waist: float, hip: float) -> None:
    measures = body(MAN, "men", bust_girth=chest, waist_girth=waist, hip_girth=hip)
    closes_or_refuses("dress", measures, waist_seam="none")
