"""The torso: bodice and hip in one piece, judged from its plain data by other code than drew it."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notchbook.app.examining import examine
from notchbook.blocks.joined.parameters import TorsoParameters
from notchbook.blocks.torso import REFUSES, STEP
from notchbook.body import MeasureSet
from notchbook.errors import entry
from notchbook.pattern import Severity, pattern_from_data, pattern_to_data
from notchbook.recipe import Recipe, add_step, replay
from support.bodice_bodies import CHILD, FULL_BUST, MAN, WOMAN, body
from support.joined_blocks import closes_or_refuses, drafted, still_open, stopped
from support.joined_judge import open_closures, renamed
from support.skirt_judge import Judge

PEAR = WOMAN | {"bust_girth": 880.0, "waist_girth": 700.0, "hip_girth": 1080.0}
BODIES = {
    "ordinary": body(),
    "full bust": body(FULL_BUST),
    "small above": body(PEAR),
    "waist larger": body(waist_girth=1000.0, hip_girth=960.0),
    "man": body(MAN, "men"),
    "child": body(CHILD, None),
}


@pytest.mark.parametrize("length", ["hip", "knee"])
@pytest.mark.parametrize("measures", BODIES.values(), ids=BODIES.keys())
def test_closes(measures: MeasureSet, length: str) -> None:
    assert still_open(drafted("torso", measures, length=length)) == []


@pytest.mark.parametrize("place", ["underarm", "shoulder", "armhole", "french", "center_front"])
def test_closes_wherever_the_bust_dart_opens(place: str) -> None:
    assert still_open(drafted("torso", body(), bust_dart=place)) == []


def test_no_check_has_a_word_to_say_on_an_ordinary_body() -> None:
    found = examine(drafted("torso", body(knee_depth=580.0), length="knee")).findings
    assert [one.code for one in found if one.severity is not Severity.NOTE] == []


def test_ends_where_it_is_asked_to() -> None:
    done = drafted("torso", body(), own_length="72 cm")
    judge = Judge(renamed(pattern_to_data(done.pattern), "torso"))
    back = judge.edges["bodice.back/center_back"]
    assert abs(back[-1, 1] - back[0, 1]) == pytest.approx(400.0 + 720.0, abs=0.1)


def test_a_hem_above_the_hip_is_refused() -> None:
    assert stopped("torso", body(), own_length="12 cm") == "hem-above-hip"


def test_a_bust_dart_at_the_waist_needs_a_seam_there() -> None:
    assert stopped("torso", body(), bust_dart="waist") == "bust-dart-needs-a-waist-seam"


def test_the_darts_give_the_hip_a_fair_side() -> None:
    """Bust and hip far apart: a bodice shares by the chest alone; here the darts see to the hip as well."""
    done = drafted("torso", body(PEAR))
    pieces = done.pattern.pieces
    line = {word: pieces["torso.back"].line(f"torso.back/{word}").path for word in ("hip_line",)}
    side = pieces["torso.back"].points["torso.back/underarm"]
    # Most of what the hip is larger than the chest must be taken by the side; the limit is the skirt's 48.
    assert line["hip_line"].length - side.x < 60.0


def test_men_and_children_have_straight_sides() -> None:
    for values, population in ((MAN, "men"), (CHILD, None)):
        done = drafted("torso", body(values, population))  # type: ignore[arg-type]  # one of the names
        assert not any(piece.inner_darts for piece in done.pattern.pieces.values())
        assert not {"side-takes-in-much", "bodice-side-leans"} & {note.code for note in done.notes}


def test_the_hem_below_the_hip_is_said_to_be_assumed() -> None:
    assumed = {note.code for note in drafted("torso", body(), length="knee").notes}
    measured = {note.code for note in drafted("torso", body(knee_depth=580.0), length="knee").notes}
    assert "hem-level-assumed" in assumed - measured


def test_needs_the_hip_always_and_the_knee_for_a_word() -> None:
    needs = STEP.needs_of(TorsoParameters(length="knee"), body())
    assert {"hip_girth", "hip_depth"} <= set(needs.needed)
    assert "knee_depth" in needs.estimated
    assert "knee_depth" not in STEP.needs_of(TorsoParameters(length="hip"), body()).keys


def test_names_are_the_same_on_another_body() -> None:
    base = body()
    recipe = add_step(Recipe("Garment"), "torso", {}, base=base)
    names = [
        {name for piece in replay(recipe, one).pattern.pieces.values() for name in piece.points}
        for one in (base, body(FULL_BUST), body(waist_girth=900.0))
    ]
    assert names[0] == names[1] == names[2]


def test_goes_through_its_data_unchanged() -> None:
    pattern = drafted("torso", body(), length="knee").pattern
    assert pattern_from_data(pattern_to_data(pattern)) == pattern


def test_every_refusal_has_its_words() -> None:
    for code in REFUSES:
        assert entry(code).message
        assert entry(code).why


def test_a_planted_fault_is_seen() -> None:
    done = drafted("torso", body())
    data = pattern_to_data(done.pattern)
    line = next(one for p in data["pieces"] for one in p["lines"] if one["name"] == "torso.back/hip_line")
    line["path"][-1][1] += 0.2
    wanted = {promise.measure: promise.wanted for promise in done.expectations}
    assert any("hip_girth" in miss for miss in open_closures(data, "torso", wanted))


@given(
    bust=st.floats(780.0, 1180.0),
    waist=st.floats(600.0, 1050.0),
    hip=st.floats(820.0, 1250.0),
    depth=st.floats(160.0, 240.0),
)
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_closes_or_refuses_on_plausible_women(bust: float, waist: float, hip: float, depth: float) -> None:
    measures = body(bust_girth=bust, waist_girth=waist, hip_girth=hip, hip_depth=depth)
    closes_or_refuses("torso", measures)
