"""Lengthened and shortened at levels, all pieces that cross there together."""

import pytest

from notchbook.checks.mouths import angle_across
from notchbook.errors import InputError
from notchbook.pattern import locate, sewn_length
from notchbook.pattern.slashing import dart_angle
from support.edge_steps import (
    BACK,
    BODICE_LEVELS,
    FRONT,
    applied,
    area,
    bodice,
    changed,
    lengths,
    levels,
    misfits,
    names_of,
    notes,
    refusal,
    skirt,
    trousers,
)

SKIRT_LEVELS = levels(
    "skirt", "side_seam", "waist_side", "35 cm", {"front": "center_front", "back": "center_back"}
)
KNEES = levels("trousers", "side_seam", "waist_side", "75 cm", {"front": "inseam", "back": "inseam"})


def test_what_lies_beside_the_level_grows_by_the_amount_and_nothing_else() -> None:
    before, after = (
        lengths(skirt().pattern),
        lengths(changed(skirt(), "change_length", amount="5 cm", levels=SKIRT_LEVELS)),
    )
    grown = {
        name.rsplit(".", 1)[1]: after[name] - before[name] for name in before if after[name] != before[name]
    }
    assert grown.keys() == {"front/side_seam", "front/center_front", "back/side_seam", "back/center_back"}
    assert all(more == pytest.approx(50.0, abs=1e-6) for more in grown.values())


def test_the_area_grows_by_the_amount_times_the_width_of_a_straight_skirt() -> None:
    # By another program: a parallel spread adds a rectangle.
    before, after = skirt().pattern, changed(skirt(), "change_length", amount="5 cm", levels=SKIRT_LEVELS)
    for name in ("skirt.front", "skirt.back"):
        wide = before.edges[f"{name}/hem"].length
        assert area(after.pieces[name]) - area(before.pieces[name]) == pytest.approx(50.0 * wide, abs=1.0)


@pytest.mark.parametrize("amount", ["3 cm", "-2 cm"])
def test_a_bodice_keeps_its_seams_and_its_notch_at_the_bust(amount: str) -> None:
    before, after = bodice().pattern, changed(bodice(), "change_length", amount=amount, levels=BODICE_LEVELS)
    assert max(abs(off) for off in misfits(after).values()) < 0.02
    for piece in (FRONT, BACK):
        old, new = (locate(one, one.notches[f"{piece}/side_notch"].place).position for one in (before, after))
        assert old.distance_to(new) < 0.5, "the notch lies above the level and stays on the cloth"
    grown = sewn_length(after, f"{FRONT}/side_seam") - sewn_length(before, f"{FRONT}/side_seam")
    assert grown == pytest.approx({"3 cm": 30.0, "-2 cm": -20.0}[amount], abs=0.1)


def test_a_notch_below_the_level_goes_with_the_cloth() -> None:
    above = levels(
        "skirt", "side_seam", "waist_side", "10 cm", {"front": "center_front", "back": "center_back"}
    )
    # Darts of the front end 9 cm below the waist, those of the back lie across the level.
    after = changed(skirt(), "change_length", amount="2 cm", levels=above)
    along = after.notches["skirt.front/hip_notch"].place.amount
    grown = (
        after.edges["skirt.front/side_seam"].length - skirt().pattern.edges["skirt.front/side_seam"].length
    )
    assert along == pytest.approx(200.0 + grown, abs=1e-6)
    assert grown == pytest.approx(20.0, abs=0.5), "the seam slants there"
    assert max(abs(off) for off in misfits(after).values()) < 0.1
    assert after.pieces["skirt.front"].line("skirt.front/hip_line").path.start.y == pytest.approx(-20.0)


def test_darts_across_the_level_keep_their_width_and_their_equal_legs() -> None:
    before, after = bodice().pattern, changed(bodice(), "change_length", amount="3 cm", levels=BODICE_LEVELS)
    for piece in (before.pieces[FRONT], before.pieces[BACK]):
        for intake in piece.darts:
            now = after.pieces[piece.name]
            first, second = now.edge(intake.first_leg), now.edge(intake.second_leg)
            assert first.length == pytest.approx(second.length, abs=1e-6), intake.name
            widths = [
                one.edge(intake.first_leg).path.start.distance_to(one.edge(intake.second_leg).path.end)
                for one in (piece, now)
            ]
            # Truing the waist over the mouth moves it along the legs by less than a pencil line.
            assert widths[0] == pytest.approx(widths[1], abs=0.05)
            if "waist_dart" in intake.name:
                assert dart_angle(now, intake) < dart_angle(piece, intake)


def test_trousers_below_the_knee() -> None:
    after = changed(trousers(), "change_length", amount="4 cm", levels=KNEES)
    assert max(abs(off) for off in misfits(after).values()) < 0.5
    assert notes(trousers(), "change_length", amount="4 cm", levels=KNEES) == set()


def test_a_seam_that_slants_unlike_its_mate_is_told() -> None:
    # Above the knee the back inseam slants more than the front one: spread alike, it grows less.
    thighs = levels("trousers", "side_seam", "waist_side", "40 cm", {"front": "inseam", "back": "inseam"})
    assert notes(trousers(), "change_length", amount="5 cm", levels=thighs) == {"seam-put-out"}


def test_nothing_by_nothing() -> None:
    after = changed(bodice(), "change_length", amount="0 cm", levels=BODICE_LEVELS)
    assert after.pieces == bodice().pattern.pieces
    assert after.notches == bodice().pattern.notches


def test_no_name_comes_or_goes() -> None:
    after = changed(bodice(), "change_length", amount="3 cm", levels=BODICE_LEVELS)
    assert set(names_of(after)) == set(names_of(bodice().pattern))


def test_there_and_back_is_as_before() -> None:
    there = applied(skirt(), "change_length", amount="5 cm", levels=SKIRT_LEVELS)
    back = changed(there, "change_length", amount="-5 cm", levels=SKIRT_LEVELS)
    for name, edge in skirt().pattern.edges.items():
        for share in (0.0, 0.3, 1.0):
            now = back.edges[name]
            gap = edge.path.point_at(share * edge.length).distance_to(now.path.point_at(share * now.length))
            assert gap < 1e-6, name


def test_refusals() -> None:
    front, back = SKIRT_LEVELS
    bodice_front = {**BODICE_LEVELS[0], "across": f"{FRONT}/side_seam/above"}
    with pytest.raises(InputError, match="where the length is changed"):
        applied(skirt(), "change_length", amount="1 cm")
    assert refusal(skirt(), "change_length", amount="1 cm", levels=[front]) == "length-mate-left"
    assert refusal(skirt(), "change_length", amount="1 cm", levels=[front, front]) == "length-piece-twice"
    crossed = {**front, "across": "skirt.back/center_back"}
    assert (
        refusal(skirt(), "change_length", amount="1 cm", levels=[crossed, back]) == "length-across-elsewhere"
    )
    assert (
        refusal(bodice(), "change_length", amount="1 cm", levels=[bodice_front, BODICE_LEVELS[1]])
        == "length-level-crosses"
    )
    assert refusal(skirt(), "change_length", amount="-50 cm", levels=SKIRT_LEVELS) in {
        "length-band-corner",
        "length-too-short",
        "length-crosses-twice",
    }
    at_bust = [
        {
            "place": {
                "edge": f"{FRONT}/center_front",
                "from_point": f"{FRONT}/waist_center",
                "distance": "14.5 cm",
            },
            "across": f"{FRONT}/side_seam",
        },
        {
            "place": {
                "edge": f"{BACK}/center_back",
                "from_point": f"{BACK}/waist_center",
                "distance": "14.5 cm",
            },
            "across": f"{BACK}/side_seam",
        },
    ]
    assert refusal(bodice(), "change_length", amount="1 cm", levels=at_bust) == "length-dart-half"


@pytest.mark.parametrize("amount", ["4 cm", "-1 cm"])
def test_a_waist_is_smooth_over_darts_that_a_level_made_longer(amount: str) -> None:
    """A longer dart of the same width takes a smaller angle, so that its legs lean less (plane geometry)."""
    places = {"front": "center_front", "back": "center_back"}
    through = levels("skirt", "side_seam", "waist_side", "6 cm", places)
    before, after = skirt().pattern, changed(skirt(), "change_length", amount=amount, levels=through)
    for panel in ("skirt.front", "skirt.back"):
        old, new = before.pieces[panel], after.pieces[panel]
        for dart in new.intakes:
            legs = [piece.edge(dart.first_leg).length for piece in (old, new)]
            assert abs(legs[1] - legs[0]) > 9.0, "the level goes through it"
            assert new.edge(dart.second_leg).length == pytest.approx(legs[1], abs=0.01)
            turned = angle_across(new, dart)
            assert turned is not None
            assert turned == pytest.approx(180.0, abs=0.2), "left as it was, 2 to 3 degrees off"
        waist = [sewn_length(pattern, f"{panel}/waist") for pattern in (before, after)]
        assert waist[1] == pytest.approx(waist[0], abs=0.02)
