"""Darts shortened, folded and trued, and darts with two points drawn and reshaped."""

from typing import Any

import pytest

from notchbook.app.examining import examine
from notchbook.checks.legs import leg_pairs
from notchbook.checks.mouths import angle_across
from notchbook.finish import finish, production_table
from notchbook.pattern import Pattern, inner_dart_width, sewn_length
from notchbook.pattern.slashing import middle_of_mouth
from support.dart_shapes import BACK, FRONT, at, done, stopped_by, styled, transfer
from support.style_lines import bodice_with
from upper_sheets import bodies

BUST = f"{FRONT}/bust_dart"
PLAIN = done()


def length(pattern: Pattern, dart: str = BUST) -> float:
    """From the middle of the mouth as it was drafted to the point as it is."""
    piece = PLAIN.piece_of(dart)
    middle = middle_of_mouth(piece, piece.intake(dart))
    return middle.distance_to(pattern.piece_of(dart).points[piece.intake(dart).point])


def shorten(**parameters: Any) -> tuple[str, dict[str, Any]]:
    return "shorten_dart", {"darts": [BUST], **parameters}


def test_a_dart_is_shortened_along_its_middle() -> None:
    pattern = done(shorten(amount="20 mm"))
    assert length(pattern) == pytest.approx(length(PLAIN) - 20.0, abs=1e-6)
    assert (
        done(shorten(amount="-10 mm")).edges[f"{BUST}/upper_leg"].length
        > PLAIN.edges[f"{BUST}/upper_leg"].length
    )
    assert length(done(shorten(amount="90 mm", measured="length"))) == pytest.approx(90.0, abs=1e-6)


def test_a_dart_is_kept_away_from_the_bust_point() -> None:
    bust = PLAIN.pieces[FRONT].points[f"{FRONT}/bust_point"]
    for amount, expected in (("40 mm", 40.0), (None, 32.0)):
        pattern = done(shorten(amount=amount, measured="from_point", point=f"{FRONT}/bust_point"))
        assert pattern.pieces[FRONT].points[f"{BUST}/point"].distance_to(bust) == pytest.approx(
            expected, abs=1e-6
        )


@pytest.mark.parametrize("amount", ["10 mm", "40 mm"])
def test_legs_stay_equal_and_the_edge_runs_on(amount: str) -> None:
    pattern = done(shorten(amount=amount))
    for pair in leg_pairs(pattern):
        assert pair.lengths[0] == pytest.approx(pair.lengths[1], abs=0.01)
    piece = pattern.pieces[FRONT]
    assert angle_across(piece, piece.intake(BUST)) == pytest.approx(180.0, abs=0.3)
    assert sewn_length(pattern, f"{FRONT}/side_seam") == pytest.approx(
        sewn_length(PLAIN, f"{FRONT}/side_seam"), abs=0.1
    )


@pytest.mark.parametrize(
    ("parameters", "code"),
    [
        ({}, "dart-amount-missing"),
        ({"amount": "1 cm", "measured": "from_point"}, "dart-from-which-point"),
        (
            {"amount": "1 cm", "measured": "from_point", "point": f"{BACK}/shoulder_dart/point"},
            "pivot-elsewhere",
        ),
        ({"measured": "from_point", "point": f"{FRONT}/waist_dart/point"}, "dart-points-elsewhere"),
        ({"amount": "125 mm"}, "dart-too-short"),
        ({"darts": [f"{FRONT}/neck"], "amount": "1 cm"}, "name-lost"),
    ],
)
def test_shortening_is_refused_in_words(parameters: dict[str, Any], code: str) -> None:
    assert stopped_by(shorten(**parameters)) == code


def fold(**parameters: Any) -> tuple[str, dict[str, Any]]:
    return "fold_dart", {"darts": [BUST], **parameters}


def test_a_dart_is_pressed_toward_the_side_that_is_asked() -> None:
    as_drafted = PLAIN.intakes[BUST].fold_toward
    other = {"first_leg": "second_leg", "second_leg": "first_leg"}
    assert done(fold()).intakes[BUST].fold_toward == as_drafted
    assert done(fold(toward="other_way")).intakes[BUST].fold_toward == other[as_drafted]
    for leg in ("first_leg", "second_leg"):
        assert done(fold(toward=leg)).intakes[BUST].fold_toward == leg


def test_the_cap_follows_the_side_that_the_dart_is_pressed_to() -> None:
    caps = []
    for leg in ("first_leg", "second_leg"):
        cut = finish(done(fold(toward=leg)), production_table())
        front = next(piece for piece in cut if piece.name == FRONT)
        caps.append(front.cut_line)
    assert caps[0] != caps[1]


def test_a_mouth_that_does_not_run_on_is_trued() -> None:
    # Twice as wide an angle at the point: the edge dips where the legs meet, until it is trued.
    raw = done(transfer("shoulder"))
    name = "transfer_dart.front/bust_dart"
    piece = raw.pieces[FRONT]
    found = styled(transfer("shoulder"), ("fold_dart", {"darts": [name]}))
    note = next(one for one in found.notes if one.code == "dart-trued")
    assert note.measured is not None
    assert note.measured < 0.3  # the transfer left nothing to be trued
    assert angle_across(piece, piece.intake(name)) == pytest.approx(180.0, abs=0.3)


def double(**parameters: Any) -> tuple[str, dict[str, Any]]:
    place = at("center_back", "nape", piece=BACK, distance="380 mm")
    return "double_ended_dart", {"at": place, "inside": "90 mm", **parameters}


def test_a_dart_with_two_points_is_drawn_inside() -> None:
    pattern = done(double(width="3 cm", above="120 mm", below="110 mm"), length="hip")
    piece = pattern.pieces[BACK]
    (dart,) = (one for one in piece.inner_darts if one.name == "double_ended_dart.back/waist_dart")
    assert inner_dart_width(piece, dart) == pytest.approx(30.0)
    upper, lower = piece.points[dart.upper_point], piece.points[dart.lower_point]
    assert upper.distance_to(lower) == pytest.approx(230.0)
    assert piece.line(dart.center_leg).path.bounds().min_x < piece.line(dart.side_leg).path.bounds().max_x
    for pair in leg_pairs(pattern):
        assert pair.lengths[0] == pytest.approx(pair.lengths[1], abs=0.01)


def test_a_dart_with_two_points_is_reshaped() -> None:
    name = "double_ended_dart.back/waist_dart"
    step = ("reshape_double_dart", {"darts": [name], "width": "2 cm", "above": "100 mm"})
    before, after = done(double(), length="hip"), done(double(), step, length="hip")
    piece = after.pieces[BACK]
    (dart,) = (one for one in piece.inner_darts if one.name == name)
    assert inner_dart_width(piece, dart) == pytest.approx(20.0)
    lower = before.pieces[BACK].points[dart.lower_point]
    assert piece.points[dart.lower_point] == lower
    assert piece.points[dart.upper_point].distance_to(lower) == pytest.approx(220.0)
    assert set(after.index) == set(before.index)


def test_darts_with_two_points_stay_inside() -> None:
    assert stopped_by(double(below="500 mm"), length="hip") == "double-dart-outside"
    assert stopped_by(double(inside="5 mm"), length="hip") == "double-dart-outside"
    assert stopped_by(double(width="0 mm"), length="hip") == "amount-not-positive"
    name = "double_ended_dart.back/waist_dart"
    wide = ("reshape_double_dart", {"darts": [name], "above": "600 mm"})
    assert stopped_by(double(), wide, length="hip") == "double-dart-outside"


def test_what_was_folded_is_told_and_stops_nothing() -> None:
    findings = examine(styled(fold()), cut=False).findings
    assert [found.code for found in findings if found.code == "dart-trued"] == ["dart-trued"]


def test_a_dart_trued_once_more_leaves_no_part_too_short_to_draw() -> None:
    # A tenth of a millimeter is what can be drawn (the check of the outline); this body showed 0.06 mm.
    small = next(made for name, _, made in bodies() if name == "small-80")
    moved = {"darts": [BUST], "places": [{"at": at("shoulder", "side_neck_point", fraction=0.5)}]}
    neck = {"edge": f"{FRONT}/neck", "center": f"{FRONT}/neck_pit", "depth": "3 cm"}
    run = bodice_with(
        ("change_neckline", "neckline", {"width": "2 cm", "necks": [neck], "gape_dart": BUST}),
        ("transfer_dart", "moved", moved),
        ("shorten_dart", "shortened", {"darts": ["moved.front/bust_dart"], "amount": "1 cm"}),
        measures=small,
    )
    assert run.suspended is None
    for edge in run.pattern.pieces[FRONT].outline:
        assert min(segment.length for segment in edge.path.segments) > 0.5, edge.name
