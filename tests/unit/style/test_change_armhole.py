"""New armholes: lowered, raised, cut away; the gape; the sleeve that follows or goes."""

import pytest

from notchbook.app.examining import examine
from notchbook.pattern import Severity, sewn_length, walk_seam
from notchbook.pattern.slashing import dart_angle
from support.edge_steps import (
    BACK,
    FRONT,
    GAPE,
    applied,
    area,
    armholes,
    bodice,
    changed,
    misfits,
    names_of,
    notes,
    refusal,
)
from support.upper_patterns import drafted


@pytest.mark.parametrize(("lower", "grown"), [("3 cm", -30.0), ("-1.2 cm", 12.0)])
def test_the_side_seam_gives_or_gets_the_amount_on_both_pieces(lower: str, grown: float) -> None:
    after = changed(bodice(), "change_armhole", armholes=armholes(), lower=lower)
    for piece in (FRONT, BACK):
        before = sewn_length(bodice().pattern, f"{piece}/side_seam")
        assert sewn_length(after, f"{piece}/side_seam") - before == pytest.approx(grown, abs=1e-6)
    assert max(abs(off) for off in misfits(after).values()) < 0.01


def test_the_directions_at_both_ends_stay() -> None:
    after = changed(
        bodice(), "change_armhole", armholes=armholes("1 cm", "1 cm"), lower="2 cm", shoulder="2 cm"
    )
    for piece in (FRONT, BACK):
        old, new = (pattern.edges[f"{piece}/armhole"].path for pattern in (bodice().pattern, after))
        for first, second in (
            (old.tangent_at(0.0), new.tangent_at(0.0)),
            (old.tangent_at(old.length), new.tangent_at(new.length)),
        ):
            assert first.cross(second) == pytest.approx(0.0, abs=1e-6)


def test_a_hollow_takes_cloth_from_the_middle_only() -> None:
    after = changed(bodice(), "change_armhole", armholes=armholes("1 cm"))
    before = bodice().pattern
    assert area(after.pieces[FRONT]) < area(before.pieces[FRONT]) - 500.0
    old, new = (pattern.edges[f"{FRONT}/armhole"].path for pattern in (before, after))
    assert max(new.start.distance_to(old.start), new.end.distance_to(old.end)) < 1e-9
    assert after.pieces[BACK] == before.pieces[BACK]


@pytest.mark.parametrize(
    "asked",
    [{"lower": "-1 cm", "shoulder": "1 cm"}, {"lower": "-1 cm", "shoulder": "5 cm"}],
    ids=["sleeveless", "cutaway"],
)
def test_the_checks_find_nothing_to_look_at(asked: dict[str, str]) -> None:
    run = applied(bodice(), "change_armhole", armholes=armholes("5 mm", "2 mm"), **asked, **GAPE)
    found = [one for one in examine(run, cut=True).findings if one.severity is not Severity.NOTE]
    assert not found, [one.message for one in found]


@pytest.mark.parametrize(("shoulder", "inches"), [("1 cm", 0.25), ("5 cm", 0.5)])
def test_the_gape_is_that_of_the_table(shoulder: str, inches: float) -> None:
    # A handbook of drafting theory: 1/4 in at the armhole, 1/2 in where it is cut away.
    flat = changed(bodice(), "change_armhole", armholes=armholes(), shoulder=shoulder)
    closed = changed(bodice(), "change_armhole", armholes=armholes(), shoulder=shoulder, **GAPE)
    shorter = flat.edges[f"{FRONT}/armhole"].length - closed.edges[f"{FRONT}/armhole"].length
    assert shorter == pytest.approx(25.4 * inches, abs=0.7)
    dart = closed.intakes[f"{FRONT}/bust_dart"]
    assert dart_angle(closed.pieces[FRONT], dart) > dart_angle(flat.pieces[FRONT], dart) + 1.0
    assert max(abs(off) for off in misfits(closed).values()) < 0.01


def test_a_sleeve_that_stays_is_told_and_one_that_is_named_goes() -> None:
    suit = drafted("medium-92", "sleeve")
    assert notes(suit, "change_armhole", armholes=armholes(), lower="2 cm") == {"seam-put-out"}
    run = applied(suit, "change_armhole", armholes=armholes(), lower="2 cm", sleeve="sleeve.sleeve", **GAPE)
    assert set(run.pattern.pieces) == {FRONT, BACK}
    assert not [name for name in run.pattern.index if name.startswith("sleeve")]
    assert run.pattern.fates["sleeve.sleeve"].reason == "the sleeve was taken away"
    assert {note.code for note in run.states[-1].notes} == {"armhole-gape-closed"}


@pytest.mark.parametrize("lower", ["2 cm", "-1 cm"])
def test_a_sleeve_that_follows_fits_as_before(lower: str) -> None:
    suit = drafted("medium-92", "sleeve")
    run = applied(suit, "change_armhole", armholes=armholes(), lower=lower, following="sleeve.sleeve")
    before, after = misfits(suit.pattern), misfits(run.pattern)
    assert all(after[seam] == pytest.approx(before[seam], abs=1e-3) for seam in before)
    for seam in ("sleeve/front_armhole", "sleeve/back_armhole"):
        for station in walk_seam(run.pattern, run.pattern.seams[seam]).stations:
            if station.notch == "balance_notch":
                assert station.first == pytest.approx(station.second, abs=0.05)
    biceps = run.pattern.pieces["sleeve.sleeve"].line("sleeve.sleeve/biceps_line").path
    points = run.pattern.pieces["sleeve.sleeve"].points
    corners = {points["sleeve.sleeve/underarm_front"], points["sleeve.sleeve/underarm_back"]}
    assert {biceps.start, biceps.end} == corners
    assert not run.states[-1].notes
    found = [one for one in examine(run, cut=True).findings if one.severity is Severity.STOP]
    assert not found, [one.message for one in found]


def test_a_sleeve_that_cannot_follow_is_refused() -> None:
    suit = drafted("medium-92", "sleeve")
    deep = {"armholes": armholes("10 cm"), "following": "sleeve.sleeve"}
    assert refusal(suit, "change_armhole", **deep) == "armhole-sleeve-cannot-follow"
    other = {"armholes": armholes(), "lower": "1 cm", "following": FRONT}
    assert refusal(suit, "change_armhole", **other) == "armhole-sleeve-elsewhere"


def test_a_gape_that_is_left_is_told() -> None:
    assert notes(bodice(), "change_armhole", armholes=armholes(), lower="1 cm") == {"armhole-gape-left"}


def test_the_gape_runs_to_the_bust_point_where_no_other_is_named() -> None:
    named = changed(bodice(), "change_armhole", armholes=armholes(), **GAPE)
    unnamed = changed(bodice(), "change_armhole", armholes=armholes(), gape_dart=GAPE["gape_dart"])
    assert named.pieces == unnamed.pieces


def test_nothing_by_nothing() -> None:
    after = changed(bodice(), "change_armhole", armholes=armholes())
    assert after.pieces == bodice().pattern.pieces
    assert names_of(after) == names_of(bodice().pattern)


def test_refusals() -> None:
    # The bust dart opens 54 mm below the underarm.
    assert refusal(bodice(), "change_armhole", armholes=armholes(), lower="6 cm") == "armhole-past-edge"
    assert refusal(bodice(), "change_armhole", armholes=armholes(), shoulder="13 cm") == "armhole-past-edge"
    # Only the front has a bust point.
    no_point = {"gape_dart": f"{BACK}/waist_dart_side"}
    assert refusal(bodice(), "change_armhole", armholes=armholes(), **no_point) == "gape-no-point"
    no_sleeve = refusal(bodice(), "change_armhole", armholes=armholes(), sleeve="sleeve.sleeve")
    assert no_sleeve == "name-lost"


def test_the_part_that_lies_still_is_said_by_an_edge() -> None:
    """Without a word it is the part on the fold; the other one may be held instead, and its grain with it."""
    before = bodice().pattern.pieces[FRONT]
    asked = {"armholes": armholes()[:1], "gape": "6 mm", **GAPE}
    usual = changed(bodice(), "change_armhole", **asked).pieces[FRONT]
    held = changed(bodice(), "change_armhole", **asked, still=f"{FRONT}/side_seam/above").pieces[FRONT]
    center, side = f"{FRONT}/center_front", f"{FRONT}/underarm"
    assert usual.edge(center) == before.edge(center)
    assert usual.points[side].distance_to(before.points[side]) > 1.0
    assert held.points[side] == before.points[side]
    assert held.edge(center).path.start.distance_to(before.edge(center).path.start) > 1.0
    assert area(held) == pytest.approx(area(usual), abs=1.0)


def test_a_gape_goes_into_a_dart_and_about_a_point_that_are_there() -> None:
    asked = {"armholes": armholes()[:1], "gape": "6 mm", "gape_dart": f"{FRONT}/bust_dart"}
    gathered = applied(bodice(), "convert_dart", darts=[f"{FRONT}/bust_dart"], into="gather")
    assert refusal(gathered, "change_armhole", **asked) == "intake-no-dart"
    assert refusal(bodice(), "change_armhole", **asked, gape_point=f"{FRONT}/gone") == "name-lost"
    elsewhere = f"{BACK}/shoulder_dart/point"
    assert refusal(bodice(), "change_armhole", **asked, gape_point=elsewhere) == "gape-point-elsewhere"
