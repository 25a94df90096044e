"""The front of stretch tops over a full bust: the tape, but for what the cloth gives and what is told."""

from typing import Any

import pytest

from notchbook.body import MeasureSet
from notchbook.pattern import Finding, Piece, locate
from notchbook.recipe import Replay
from support.stretch_bodies import BODIES, codes, spoken_of, stretch_run, whole

BASE = {"neck": "base", "back": "base"}
"""A neck at the neck base, where the tape begins."""

GIVES = 0.04
"""What a knit that stretches 50 % along may give over the bust: a patternmaker's review (own judgment)."""

EASES = 0.15
"""Stretch cloth eases in 10 to 15 hundredths of a seam. Common practice, no source."""


def full(**more: float) -> MeasureSet:
    """The body with the full bust, its tape over the bust 485 mm where its back has 415."""
    return whole("plus", **{"front_waist_length": 485.0, "back_waist_length": 415.0, **more})


def told(run: Replay, code: str) -> Finding | None:
    return next((one for one in run.notes if one.code == code), None)


def height(piece: Piece, top: str, bottom: str) -> float:
    return piece.points[f"{piece.name}/{top}"].y - piece.points[f"{piece.name}/{bottom}"].y


def panels(run: Replay, block: str) -> tuple[Piece, Piece]:
    return run.pattern.pieces[f"{block}.front"], run.pattern.pieces[f"{block}.back"]


def center(run: Replay, block: str, end: str) -> float:
    """How much lower the center front ends than the center back, mm."""
    front, back = panels(run, block)
    return back.points[f"{back.name}/{end}"].y - front.points[f"{front.name}/{end}"].y


@pytest.mark.parametrize("bust", [430.0, 450.0, 465.0, 485.0, 510.0])
def test_the_front_has_the_tape_but_for_what_the_cloth_gives_and_what_is_told(bust: float) -> None:
    run = stretch_run("stretch_torso", full(front_waist_length=bust), **BASE)
    front, _ = panels(run, "stretch_torso")
    missing = bust - height(front, "side_neck_point", "waist_center")
    short, lowered = told(run, "stretch-front-short"), told(run, "stretch-front-lowered")
    said = 0.0
    if lowered is not None:
        assert lowered.measured is not None
        said += lowered.measured
    if short is not None:
        assert lowered is not None and short.measured is not None and short.wanted is not None
        said += short.wanted - short.measured
    assert missing <= GIVES * bust + said + 3.0, "less than 3 mm are not worth two notches"
    if said:
        assert missing == pytest.approx(GIVES * bust + said, abs=0.01)


@pytest.mark.parametrize(("block", "edge"), [("stretch_torso", "hem"), ("bodysuit", "crotch")])
def test_what_the_side_does_not_ease_in_is_let_out_at_the_center_front(block: str, edge: str) -> None:
    """A hand lowers the front hem at its center for a full bust and runs it out to the side, in a suit the
    front crotch, by a centimeter or two: common practice, no source."""
    run, level = (stretch_run(block, full(front_waist_length=tape)) for tape in (485.0, 415.0))
    lowered, eased = told(run, "stretch-front-lowered"), told(run, "stretch-front-lengthened")
    assert told(level, "stretch-front-lowered") is None
    assert lowered is not None and lowered.where == f"{block}.front/{edge}"
    assert lowered.measured is not None and eased is not None and eased.measured is not None
    assert 3.0 <= lowered.measured <= 20.0
    deeper = center(run, block, f"{edge}_center") - center(level, block, f"{edge}_center")
    assert deeper == pytest.approx(eased.measured + lowered.measured, abs=1e-6)
    waist = center(run, block, "waist_center") - center(level, block, "waist_center")
    assert waist == pytest.approx(eased.measured, abs=1e-6), "the waist stays where the side seam has it"
    assert "stretch-front-short" not in codes(run)
    assert not {one.code for one in spoken_of(run)} - {"does-not-pass", "stretch-shoulder-changed"}


def test_a_hem_let_out_at_the_center_is_square_to_center_and_side() -> None:
    run = stretch_run("stretch_torso", full(front_waist_length=510.0))
    hem = run.pattern.edges["stretch_torso.front/hem"].path
    for place in (0.0, hem.length):
        assert abs(hem.tangent_at(place).y) < 1e-6
    assert abs(hem.start.y - hem.end.y) == pytest.approx(20.0, abs=1e-6), "no tail"
    assert "stretch-front-short" in codes(run), "and what more there is, is told"


def test_a_front_as_long_as_the_back_is_told_with_what_it_lacks() -> None:
    run = stretch_run("stretch_torso", full(), own_front_longer="0 mm", **BASE)
    front, back = panels(run, "stretch_torso")
    assert height(front, "side_neck_point", "waist_center") == pytest.approx(
        height(back, "side_neck_point", "waist_center"), abs=5.0
    )
    short = told(run, "stretch-front-short")
    assert short is not None and short.wanted is not None
    assert short.wanted == pytest.approx(
        (1.0 - GIVES) * 485.0 - height(front, "side_neck_point", "waist_center"), abs=0.01
    )
    assert short in spoken_of(run)


@pytest.mark.parametrize("block", ["stretch_torso", "bodysuit"])
def test_the_longer_front_is_eased_in_between_two_notches_alone(block: str) -> None:
    run = stretch_run(block, full())
    assert not {one.code for one in spoken_of(run)} & {"seam-lengths", "seam-notches", "ease-taken"}
    seam = next(one for one in run.pattern.seams.values() if one.name.endswith("/side_seam"))
    lengths, notches = {}, {}
    for which in ("front", "back"):
        edge = f"{block}.{which}/side_seam"
        lengths[which] = run.pattern.edges[edge].length
        notches[which] = [
            run.pattern.notches[f"{block}.{which}/{word}"].place.amount
            for word in ("upper_ease_notch", "lower_ease_notch", "waist_notch")
        ]
    longer = lengths["front"] - lengths["back"]
    assert longer > 10.0 and seam.ease == pytest.approx(-longer, abs=1e-6)
    assert seam.ease_between == ("upper_ease_notch", "lower_ease_notch")
    apart = [front - back for front, back in zip(notches["front"], notches["back"], strict=True)]
    assert apart == pytest.approx([0.0, longer, longer], abs=1e-6)
    assert longer <= EASES * (notches["back"][1] - notches["back"][0])


@pytest.mark.parametrize(("block", "end"), [("stretch_torso", "hem_center"), ("bodysuit", "crotch_center")])
def test_all_below_the_waist_goes_down_with_it(block: str, end: str) -> None:
    level, longer = (
        stretch_run(block, full(), own_front_longer=text, own_leg_opening="600 mm")
        if block == "bodysuit"
        else stretch_run(block, full(), own_front_longer=text)
        for text in ("0 mm", "14 mm")
    )
    for word in ("waist_center", end):
        assert center(longer, block, word) - center(level, block, word) == pytest.approx(14.0, abs=1e-6)
    for edge in ("hem",) if block == "stretch_torso" else ("leg_opening", "crotch"):
        name = f"{block}.front/{edge}"
        assert longer.pattern.edges[name].length == pytest.approx(level.pattern.edges[name].length)
    for edge in ("armhole", "shoulder", "neck"):
        name = f"{block}.front/{edge}"
        assert longer.pattern.edges[name].length == pytest.approx(level.pattern.edges[name].length)


def test_the_trunk_loop_runs_over_the_longer_front() -> None:
    loop = full(trunk_loop=2100.0)
    level, longer = (stretch_run("bodysuit", loop, own_front_longer=text) for text in ("0 mm", "14 mm"))
    found = [told(run, "trunk-too-short") for run in (level, longer)]
    lengths = [one.measured for one in found if one is not None and one.measured is not None]
    assert len(lengths) == 2 and lengths[1] - lengths[0] == pytest.approx(14.0)


@pytest.mark.parametrize(("text", "is_told"), [("14 mm", False), ("45 mm", True)])
def test_more_ease_than_stretch_cloth_takes_is_told(text: str, is_told: bool) -> None:
    run = stretch_run("stretch_torso", full(), own_front_longer=text)
    assert ("stretch-front-eased-much" in codes(run)) is is_told


def test_a_cloth_that_gives_more_along_needs_a_shorter_front() -> None:
    """8 hundredths of the stretch along: own judgment."""
    runs = [
        stretch_run("stretch_torso", full(front_waist_length=465.0), along=f"{along} %") for along in (40, 50)
    ]
    found = [told(run, "stretch-front-lengthened") for run in runs]
    firm, soft = (one.measured for one in found if one is not None)
    assert firm is not None and soft is not None
    assert firm - soft == pytest.approx(0.08 * 0.10 * 465.0)
    untested, quarter = (
        told(stretch_run("stretch_torso", full(), along=along), "stretch-front-lowered")
        for along in (None, "25 %")
    )
    assert untested is not None and untested == quarter, (
        "one that was not tested is taken for an ordinary knit"
    )


@pytest.mark.parametrize("block", ["stretch_torso", "bodysuit"])
def test_both_of_the_wearers_sides_are_lengthened_alike(block: str) -> None:
    """Front lengths, backs and underarms that differ ask for different fronts: they meet at the center."""
    base = full()
    apart = base.with_value("front_waist_length", 475.0, "left")
    apart = apart.with_value("scye_depth", base.value("scye_depth") + 14.0, "left")
    run = stretch_run(block, apart)
    assert run.suspended is None and run.left is not None
    right, left = (
        track.states[-1].pattern.pieces[f"{block}.front"].points for track in (run.right, run.left)
    )
    for word in ("neck_pit", "waist_center", "crotch_center" if block == "bodysuit" else "hem_center"):
        name = f"{block}.front/{word}"
        assert left[name].y == pytest.approx(right[name].y, abs=1e-6), word
    sides = [track.states[-1].pattern.seams[f"{block}/side_seam"].ease for track in (run.right, run.left)]
    assert max(sides) < -5.0


@pytest.mark.parametrize(("name", "is_told"), [("plus", True), ("man", False)])
def test_a_bust_that_was_not_measured_is_told(name: str, is_told: bool) -> None:
    values, population = BODIES[name]
    less = {key: value for key, value in values.items() if key != "front_waist_length"}
    run = stretch_run("stretch_torso", MeasureSet.from_mm("Less", less, population=population))
    assert ("stretch-front-not-measured" in codes(run)) is is_told
    assert "stretch-front-not-measured" not in codes(stretch_run("stretch_torso", whole(name)))
    assert "stretch-front-lengthened" not in codes(run)


@pytest.mark.parametrize("parameters", [{}, {"sleeve": "none"}, {"length": "waist"}], ids=str)
def test_a_longer_front_closes_at_every_length(parameters: dict[str, Any]) -> None:
    run = stretch_run("stretch_torso", full(), **parameters)
    assert "stretch-front-lengthened" in codes(run)
    notch = run.pattern.notches["stretch_torso.front/lower_ease_notch"]
    assert locate(run.pattern, notch.place).position.y < 60.0
    assert {one.code for one in spoken_of(run)} <= {
        "stretch-front-short",
        "stretch-shoulder-changed",
        "stretch-across-changed",
        "stretch-armhole-deep",
        "does-not-pass",
    }
