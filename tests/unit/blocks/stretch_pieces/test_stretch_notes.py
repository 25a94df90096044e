"""What the stretch blocks say of cloth, body and shape, and what would heal it."""

from typing import Any

import pytest

from notchbook.app.curing import offered_cures
from notchbook.blocks.stretch_pieces.crotch_measures import front_share
from notchbook.pattern import Finding
from notchbook.recipe import Replay, change_step, replay
from support.asked_of_stretch import asked_of_stretch
from support.stretch_bodies import codes, stretch_run, whole


def said(run: Replay, code: str) -> Finding:
    """The one finding of a step with this code."""
    (found,) = [finding for finding in run.notes if finding.code == code]
    return found


def changed(run: Replay, **parameters: Any) -> Replay:
    """The same body, the step with other parameters."""
    step = run.recipe.steps[0]
    recipe = change_step(run.recipe, step.id, {**step.parameters, **parameters}, base=run.measures)
    return replay(recipe, run.measures)


@pytest.mark.parametrize(
    ("text", "is_told"),
    [("10 cm to 15 cm back to 10.8 cm", True), ("10 cm to 15 cm back to 10.4 cm", False), ("50 %", False)],
)
def test_a_cloth_that_does_not_come_back_is_told(text: str, is_told: bool) -> None:
    """Good cloth gives back 90 to 95 % (common practice): 4.2 of 5 cm are 84 %, 4.6 are 92."""
    run = stretch_run("leggings", across=text)
    assert ("recovery-low" in codes(run)) == is_told
    if is_told:
        assert "84 %" in said(run, "recovery-low").message


def test_a_direction_that_was_not_tested_is_told() -> None:
    assert "stretch-along-not-tested" in codes(stretch_run("stretch_torso", along=None))
    assert "stretch-along-not-tested" not in codes(stretch_run("stretch_torso"))


def test_a_firm_cloth_holds_the_reduction_back_and_says_so() -> None:
    """12 % of stretch lets a pattern be 1.1 / 1.12 of the body: 1.8 % smaller and not 2.4."""
    run = stretch_run("leggings", across="12 %")
    told = said(run, "stretch-holds-back")
    assert told.measured is not None and told.wanted is not None
    assert told.measured / told.wanted == pytest.approx((1.1 / 1.12) / (1.0 - 0.2 * 0.12))
    assert "stretch-holds-back" not in codes(stretch_run("leggings"))


def test_an_ease_that_asks_more_than_the_cloth_gives_is_told() -> None:
    run = stretch_run("bodysuit", hip_ease="-1/3 hip")
    told = said(run, "stretch-asked-too-much")
    # 1.1 x body over 2/3 of it: 65 percent.
    assert "needs a cloth that stretches 65 %" in told.message
    assert told.wanted == pytest.approx(1.1 * 980.0 / 1.5)


def test_the_hip_that_does_not_pass_the_waist_is_told_in_percent() -> None:
    run = stretch_run("bodysuit", whole(waist_girth=640.0), across="25 %", waist_ease="-32 mm")
    told = next(one for one in run.notes if one.code == "does-not-pass" and "the waist" in one.message)
    needed = 100.0 * (980.0 / (640.0 * 0.95) - 1.0)
    assert told.message == (f"the hip does not pass the waist: needs {needed:.0f} %, the cloth gives 25 %.")
    assert told.measured == pytest.approx(640.0 * 0.95)
    assert told.wanted == pytest.approx(980.0 / 1.25)
    assert [cure.parameter for cure in told.cures] == ["put_on"]
    healed = changed(run, put_on="opening")
    assert "does-not-pass" not in codes(healed)


def test_a_neck_too_narrow_for_the_head_is_cured_by_a_wider_one() -> None:
    run = stretch_run("stretch_torso", whole(head_girth=570.0), across="25 %", neck="base", back="base")
    told = said(run, "does-not-pass")
    assert "the head does not pass the neck" in told.message
    wider = told.cures[0]
    assert (wider.parameter, wider.value) == ("neck", "crew")
    assert "does-not-pass" not in codes(changed(run, neck=wider.value))
    offered = {cure.order for cure in offered_cures(run) if cure.code == "does-not-pass"}
    assert offered == {"cut a crew neck", "give it an opening"}


@pytest.mark.parametrize(
    ("block", "parameters", "key", "value", "code", "ease"),
    [
        ("leggings", {}, "heel_girth", 345.0, "leggings-hem-widened", "ankle_ease"),
        (
            "stretch_torso",
            {"fit": "fitted", "sleeve": "long", "across": "25 %"},
            "hand_girth",
            220.0,
            "sleeve-hem-widened-for-hand",
            "wrist_ease",
        ),
    ],
    ids=["heel", "hand"],
)
def test_a_hem_is_widened_for_what_must_pass_it(
    block: str, parameters: dict[str, Any], key: str, value: float, code: str, ease: str
) -> None:
    run = stretch_run(block, whole("woman", **{key: value}), **parameters)
    assert code in codes(run)
    word = "ankle_girth" if block == "leggings" else "hem_girth"
    hem = next(one.wanted for one in run.expectations if one.name.endswith(word))
    stretch = 0.25 if parameters else 0.5
    assert hem * (1.0 + stretch) == pytest.approx(value)
    assert code not in codes(stretch_run(block, **parameters))
    assert code not in codes(changed(run, **{ease: "0 mm"}))


def test_a_crotch_length_that_was_not_taken_is_estimated_and_said() -> None:
    base = whole()
    less = {key: base.value(key) for key in base.values if key != "crotch_length"}
    run = stretch_run("leggings", type(base).from_mm("Less", less, population="women"))
    assert run.suspended is None
    told = said(run, "crotch-length-assumed")
    # 1.105 rise + .383 hip + .063 waist (least squares on surveyed women, as for trousers).
    assert told.measured == pytest.approx(1.105 * 265.0 + 0.383 * 980.0 + 0.063 * 760.0)
    assert "crotch-length-assumed" not in codes(stretch_run("leggings"))


@pytest.mark.parametrize(
    ("front", "back", "share"),
    [
        (None, None, 0.46),
        (300.0, None, 0.46),
        (310.0, 390.0, 310.0 / 700.0),
        (200.0, 500.0, 0.42),
        (400.0, 300.0, 0.5),
    ],
)
def test_the_crotch_is_shared_as_measured_within_limits(
    front: float | None, back: float | None, share: float
) -> None:
    assert front_share(front, back, 0.46) == pytest.approx(share)


@pytest.mark.parametrize(("block", "longer"), [("bodysuit", 25.0), ("leggings", 15.0)])
def test_a_mans_front_is_longer_than_his_tape_and_it_is_told(block: str, longer: float) -> None:
    """20 to 30 mm for a suit; common practice, no source."""
    run = stretch_run(block, whole("man"))
    assert said(run, "stretch-front-room").measured == pytest.approx(longer)
    promised = next(one for one in run.expectations if one.name.endswith("/crotch_length"))
    assert promised.wanted == pytest.approx(asked_of_stretch(run)["crotch_length"] + longer)
    assert "stretch-front-room" not in codes(stretch_run(block, whole("woman")))


def test_a_leg_opening_out_of_reach_is_told_and_one_in_reach_is_kept() -> None:
    run = stretch_run("bodysuit", own_leg_opening="80 cm")
    told = said(run, "leg-opening-not-reached")
    assert told.wanted == pytest.approx(800.0)
    assert not [one for one in run.expectations if "leg_opening" in one.name]
    kept = stretch_run("bodysuit", own_leg_opening="56 cm")
    assert "leg-opening-not-reached" not in codes(kept)
    assert next(one.wanted for one in kept.expectations if "leg_opening" in one.name) == 560.0


def test_the_elastic_lies_flat_in_front_and_is_stretched_behind() -> None:
    run = stretch_run("bodysuit")
    pattern = run.pattern
    front, back = (pattern.edges[f"bodysuit.{which}/leg_opening"].length for which in ("front", "back"))
    told = said(run, "leg-elastic")
    assert told.measured == pytest.approx(0.9 * (front + back))
    facts = dict(told.facts)
    assert facts["front"] == pytest.approx(front)
    assert facts["back"] == pytest.approx(0.9 * (front + back) - front)


def test_neck_and_armhole_of_a_suit_have_their_elastics() -> None:
    edges = stretch_run("bodysuit").pattern.edges
    told = {
        str(dict(one.facts)["edge"]): one.measured
        for one in stretch_run("bodysuit").notes
        if one.code == "edge-elastic"
    }
    both = {
        word: sum(edges[f"bodysuit.{which}/{word}"].length for which in ("front", "back"))
        for word in ("neck", "armhole")
    }
    assert told["neck"] == pytest.approx(0.95 * 2.0 * both["neck"])
    assert told["armhole"] == pytest.approx(0.95 * both["armhole"])
    sleeved = stretch_run("bodysuit", sleeve="long")
    assert [dict(one.facts)["edge"] for one in sleeved.notes if one.code == "edge-elastic"] == ["neck"]


def test_a_suit_too_short_for_the_trunk_is_told() -> None:
    assert "trunk-too-short" not in codes(stretch_run("bodysuit", whole(trunk_loop=1560.0)))
    told = said(stretch_run("bodysuit", whole(trunk_loop=2300.0)), "trunk-too-short")
    assert told.measured is not None and told.wanted is not None and told.measured < told.wanted


@pytest.mark.parametrize("place", ["80 mm", "100 mm"])
def test_a_strap_keeps_its_width_wherever_it_lies(place: str) -> None:
    run = stretch_run("bodysuit", strap_place=place, strap_width="50 mm")
    edges = run.pattern.edges
    assert edges["bodysuit.front/shoulder"].length == pytest.approx(50.0)
    assert edges["bodysuit.back/shoulder"].length == pytest.approx(50.0)


def test_a_missing_slope_is_assumed_and_said() -> None:
    base = whole()
    less = {key: base.value(key) for key in base.values if key != "shoulder_slope"}
    run = stretch_run("stretch_torso", type(base).from_mm("Less", less, population="women"))
    assert said(run, "shoulder-slope-assumed").message.startswith("The shoulder slope was not measured")


def test_leggings_that_need_a_side_seam_offer_it() -> None:
    base = whole(waist_girth=1200.0, hip_girth=1080.0)
    run = stretch_run("leggings", base)
    assert run.suspended is not None
    assert run.suspended.error.code == "leggings-waist-unreachable"
    cures: Any = run.suspended.error.facts["cures"]
    assert [(cure.parameter, cure.value) for cure in cures] == [("side_seam", True)]
    assert changed(run, side_seam=True).suspended is None


@pytest.mark.parametrize("block", ["bodysuit", "leggings"])
def test_a_crotch_against_its_rise_is_named_with_the_value_that_explains_both(block: str) -> None:
    """A woman's crotch is about 72 + .97 rise + .414 hip - .078 waist, give or take 46 (two standard
    deviations of surveyed women)."""
    run = stretch_run(block, whole(crotch_length=815.0))
    told = said(run, "crotch-length-contradicts")
    assert told.contradiction is not None
    pair = {told.contradiction.first, told.contradiction.second}
    assert pair == {"crotch_length", "standing_rise"}
    assert told.contradiction.explains == "crotch_length"
    assert told.contradiction.value == pytest.approx(
        72.0 + 0.97 * 265.0 + 0.414 * 980.0 - 0.078 * 760.0, abs=46.0
    )
    assert "crotch-length-contradicts" not in codes(stretch_run(block))


EASED = {"leggings-thigh-narrowed", "leggings-knee-widened", "leggings-calf-narrowed"}


@pytest.mark.parametrize(
    ("parameters", "told"),
    [
        ({}, EASED),
        ({"thigh_ease": "-70 mm", "calf_ease": "-30 mm"}, {"leggings-knee-widened"}),
        ({"knee_ease": "-20 mm"}, EASED - {"leggings-knee-widened"}),
    ],
    ids=["usual", "two eases", "knee ease"],
)
def test_leggings_tell_what_gave_way_for_an_even_inseam(parameters: dict[str, str], told: set[str]) -> None:
    """An ease of her own is left as it is."""
    run = stretch_run("leggings", whole("plus", thigh_girth=760.0), **parameters)
    assert codes(run) & EASED == told
    assert not codes(stretch_run("leggings")) & EASED, "a leg that runs in gently"


def test_a_bust_that_gives_way_to_the_back_is_told_and_promised() -> None:
    """A fitted knit is 0 to 5 % smaller than the body (reductions.toml)."""
    fitted = {"fit": "fitted", "sleeve": "short"}
    run = stretch_run("stretch_torso", whole(across_back=410.0), **fitted)
    told = said(run, "stretch-bust-changed")
    assert told.severity == "note" and told.measured is not None and told.measured > 5.0
    bust = next(one for one in run.expectations if one.name.endswith("/bust_girth"))
    assert bust.wanted == pytest.approx(asked_of_stretch(run)["bust_girth"] + told.measured)
    assert bust.wanted <= run.measures.value("bust_girth") + 0.01
    assert "stretch-bust-changed" not in codes(changed(run, bust_ease="-20 mm")), "an ease of her own"
    narrow = stretch_run("stretch_torso", whole("plus", across_back=330.0), **fitted)
    drawn_in = said(narrow, "stretch-bust-changed").measured
    assert drawn_in is not None and drawn_in < 0.0
    assert "narrower" in said(narrow, "stretch-bust-changed").message


@pytest.mark.parametrize(("name", "edge"), [("stretch_torso", "hem"), ("bodysuit", "crotch")])
def test_a_front_let_out_at_its_end_says_where(name: str, edge: str) -> None:
    run = stretch_run(name, whole("plus", front_waist_length=485.0, back_waist_length=415.0))
    assert f"at the {edge}" in said(run, "stretch-front-lowered").message
