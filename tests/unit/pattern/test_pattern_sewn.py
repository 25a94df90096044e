"""Lengths and places as sewn, with the darts closed; and walking seams."""

from dataclasses import replace
from functools import partial
from math import asin, degrees

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.errors import InputError, NameLost, StepRefused
from notchbook.geometry import Point
from notchbook.pattern import (
    EdgeUse,
    Group,
    Notch,
    Pattern,
    Place,
    Side,
    closed_motions,
    closed_path,
    closing_motion,
    directed,
    frozen_map,
    locate,
    run_length,
    run_of,
    seam_misfit,
    sewn_length,
    walk_seam,
    with_side,
)
from support.bent import point_moved
from support.hand_skirt import FRONT_DART, HALF_WAIST, hand_skirt

WAIST = "skirt.front/waist"
CENTER, SIDE = "skirt.front/center_waist", "skirt.front/side_waist"


def test_the_waist_as_sewn_leaves_the_darts_out() -> None:
    pattern = hand_skirt()
    whole = sewn_length(pattern, WAIST) + sewn_length(pattern, "skirt.back/waist")
    assert whole == pytest.approx(HALF_WAIST, abs=1e-6)
    assert run_length(pattern, (EdgeUse(WAIST, CENTER),)) == sewn_length(pattern, WAIST)


def test_a_run_is_walked_from_either_end() -> None:
    pattern = hand_skirt()
    forward, backward = directed(pattern, WAIST, CENTER), directed(pattern, WAIST, SIDE)
    assert [step.edge.name for step in backward] == [step.edge.name for step in forward][::-1]
    assert forward[0].start == CENTER and backward[0].start == SIDE
    assert backward[0].path.start == pattern.pieces["skirt.front"].points[SIDE]
    assert (
        len(run_of(pattern, (EdgeUse(WAIST, CENTER), EdgeUse("skirt.back/waist", "skirt.back/side_waist"))))
        == 5
    )
    with pytest.raises(NameLost) as refused:
        directed(pattern, WAIST, "skirt.front/hem_side")
    assert refused.value.code == "end-lost"
    assert CENTER in refused.value.next_step()


@settings(max_examples=40, deadline=None)
@given(st.floats(0.0, 1.0))
def test_a_place_from_one_end_is_the_rest_from_the_other(share: float) -> None:
    pattern = hand_skirt()
    total = sewn_length(pattern, WAIST)
    one = locate(pattern, Place(WAIST, CENTER, share * total))
    other = locate(pattern, Place(WAIST, SIDE, (1 - share) * total))
    by_share = locate(pattern, Place(WAIST, CENTER, share, "fraction"))
    mouth_to_mouth = 20.0  # at the dart both ends of its mouth are the same place as sewn
    assert one.position.distance_to(other.position) < 1e-3 or one.position.distance_to(
        other.position
    ) == pytest.approx(mouth_to_mouth, abs=0.1)
    assert one.position.distance_to(by_share.position) < 1e-6


def test_a_place_at_a_joint_lies_on_the_earlier_edge() -> None:
    pattern = hand_skirt()
    first = pattern.edges[f"{WAIST}/center_side"]
    found = locate(pattern, Place(WAIST, CENTER, first.length))
    assert (found.edge.name, found.piece) == (first.name, "skirt.front")
    assert found.position.distance_to(FRONT_DART.first_mouth) < 1e-6


@pytest.mark.parametrize("amount", [-0.02, 700.0, 614.58])
def test_a_place_beyond_the_edge_is_refused(amount: float) -> None:
    with pytest.raises(InputError) as refused:
        locate(hand_skirt(), Place("skirt.front/side_seam", SIDE, amount))
    assert refused.value.code == "place-beyond-edge"
    assert "614.6 mm" in refused.value.text()


def notched(*notches: Notch) -> Pattern:
    return hand_skirt().with_notches(*notches)


SEAM = "skirt.front/side_seam"
SIDES: tuple[Side, Side] = ("left", "right")


def test_a_place_counted_from_a_notch() -> None:
    pattern = notched()
    hip = locate(pattern, Place(SEAM, SIDE, 0.0, notch=f"{SEAM}/hip")).position
    assert hip.distance_to(Point(-240, 0)) < 1e-6
    below = locate(pattern, Place(SEAM, SIDE, 30.0, notch=f"{SEAM}/hip")).position
    above = locate(pattern, Place(SEAM, "skirt.front/hem_side", 30.0, notch=f"{SEAM}/hip"))
    assert below.distance_to(Point(-240, -30)) < 1e-6
    assert above.distance == pytest.approx(214.5542 - 30.0, abs=1e-3)


def test_notches_that_count_from_each_other_are_refused() -> None:
    one = Notch("skirt.front/one", Place(SEAM, SIDE, 10.0, notch="skirt.front/two"))
    two = Notch("skirt.front/two", Place(SEAM, SIDE, 10.0, notch="skirt.front/one"))
    with pytest.raises(InputError) as refused:
        locate(notched(one, two), one.place)
    assert refused.value.code == "notch-from-itself"


def test_a_notch_that_is_gone_or_elsewhere_is_refused() -> None:
    with pytest.raises(NameLost, match="name-lost"):
        locate(hand_skirt(), Place(SEAM, SIDE, 1.0, notch="skirt.front/knee"))
    with pytest.raises(InputError, match="notch-on-other-edge"):
        locate(hand_skirt(), Place(SEAM, SIDE, 1.0, notch="skirt.back/side_seam/hip"))


def test_closing_a_dart_turns_it_by_its_angle() -> None:
    """Angle of a dart: 2 asin(intake / 2 / leg). Handbook fact: it is invariant in a transfer."""
    front = hand_skirt().pieces["skirt.front"]
    dart = front.intake("skirt.front/waist_dart")
    motion = closing_motion(front, dart)
    assert motion.apply(FRONT_DART.second_mouth).distance_to(FRONT_DART.first_mouth) < 1e-9
    assert motion.apply(FRONT_DART.point).distance_to(FRONT_DART.point) < 1e-9
    turned = (motion.apply(Point(1, 0)) - motion.apply(Point(0, 0))).direction()
    assert abs(turned) == pytest.approx(2 * degrees(asin(20 / 2 / 96)), abs=1e-9)


def test_the_closed_waist_is_one_smooth_line() -> None:
    pattern = hand_skirt()
    for piece, darts in (("skirt.front", 1), ("skirt.back", 2)):
        name = f"{piece}/waist"
        closed = closed_path(pattern, name)
        assert closed.length == pytest.approx(sewn_length(pattern, name), abs=1e-6)
        assert closed.corners(0.01) == ()
        assert len(pattern.pieces[piece].intakes) == darts
        first = pattern.edges[pattern.groups[name].members[0]]
        assert closed.start == first.path.start


def test_an_empty_dart_closes_without_moving_anything() -> None:
    points = hand_skirt().pieces["skirt.front"].points
    shift = points["skirt.front/waist_dart/center_mouth"] - points["skirt.front/waist_dart/side_mouth"]
    pattern = point_moved(hand_skirt(), "skirt.front/waist_dart/side_mouth", shift.x, shift.y)
    front = pattern.pieces["skirt.front"]
    motions = closed_motions(front, f"{WAIST}/center_side", f"{WAIST}/side_side")
    moved = motions[f"{WAIST}/side_side"]
    assert moved.apply(Point(-200, 210)).distance_to(Point(-200, 210)) < 1e-6
    assert closed_path(pattern, WAIST).length == pytest.approx(sewn_length(pattern, WAIST), abs=1e-9)


def test_a_run_across_pieces_has_a_length_but_no_one_shape() -> None:
    pattern = hand_skirt()
    across = Group(("skirt.front/hem", "skirt.back/hem"), "join_1")
    pattern = replace(pattern, groups=frozen_map({**pattern.groups, "skirt.front/round": across}))
    assert sewn_length(pattern, "skirt.front/round") == pytest.approx(490.0)
    with pytest.raises(StepRefused) as refused:
        closed_path(pattern, "skirt.front/round")
    assert refused.value.code == "run-across-pieces"
    assert "front, back" in refused.value.text()


# ------------------------------------------------------------------ walking


def test_a_seam_is_walked_with_its_notches() -> None:
    pattern = hand_skirt()
    walk = walk_seam(pattern, pattern.seams["skirt/side_seam"])
    assert walk.misfit == pytest.approx(0.0, abs=1e-9)
    (hip,) = walk.stations
    assert hip.notch == "hip"
    assert hip.first == pytest.approx(214.5542, abs=1e-3)
    assert hip.second == pytest.approx(hip.first)


def test_declared_ease_is_no_misfit() -> None:
    pattern = point_moved(hand_skirt(), "skirt.back/hem_side", 0.0, -6.0)
    seam = pattern.seams["skirt/side_seam"]
    assert walk_seam(pattern, seam).misfit == pytest.approx(6.0)
    assert walk_seam(pattern, replace(seam, ease=6.0)).misfit == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("ease", [0.0, 2.5])
def test_the_misfit_of_a_seam_is_that_of_its_walk(ease: float) -> None:
    pattern = point_moved(hand_skirt(), "skirt.back/hem_side", 0.0, -6.0)
    seam = replace(pattern.seams["skirt/side_seam"], ease=ease)
    assert seam_misfit(pattern, seam) == pytest.approx(6.0 - ease)
    assert seam_misfit(pattern, seam) == walk_seam(pattern, seam).misfit


def test_a_seam_to_its_own_reflection_meets_each_notch_twice() -> None:
    pattern = hand_skirt()
    (station,) = walk_seam(pattern, pattern.seams["skirt/center_back"]).stations
    assert (station.first, station.second) == (180.0, 180.0)


def test_notches_of_left_and_right_are_mates() -> None:
    """``hip@left`` and ``hip@right`` are one notch on the two sides of a seam."""
    pattern = hand_skirt()
    seam = replace(
        pattern.seams["skirt/center_back"],
        first=(EdgeUse("skirt.back/center_back@left", "skirt.back/center_waist@left", "left"),),
        second=(EdgeUse("skirt.back/center_back@right", "skirt.back/center_waist@right", "right"),),
    )
    back, stop = pattern.pieces["skirt.back"], pattern.notches["skirt.back/center_back/zip_stop"]
    pieces = [back.renamed(partial(with_side, side=side)) for side in SIDES]
    notches = [
        replace(
            stop,
            name=f"{stop.name}@{side}",
            place=Place(f"{stop.place.edge}@{side}", f"{stop.place.from_point}@{side}", 180.0),
        )
        for side in ("left", "right")
    ]
    sided = pattern.with_pieces(*pieces, without=("skirt.back",)).with_notches(*notches, without=(stop.name,))
    (station,) = walk_seam(sided, seam).stations
    assert (station.notch, station.first, station.second) == ("zip_stop", 180.0, 180.0)


def test_stations_stand_in_walking_order_also_where_a_mate_is_missing() -> None:
    late = Notch("skirt.back/side_seam/knee", Place("skirt.back/side_seam", "skirt.back/side_waist", 500.0))
    early = Notch("skirt.back/side_seam/top", Place("skirt.back/side_seam", "skirt.back/side_waist", 50.0))
    pattern = hand_skirt().with_notches(
        replace(late, seam="skirt/side_seam"), replace(early, seam="skirt/side_seam")
    )
    walk = walk_seam(pattern, pattern.seams["skirt/side_seam"])
    assert [(s.notch, s.first is None) for s in walk.stations] == [
        ("top", True),
        ("hip", False),
        ("knee", True),
    ]
