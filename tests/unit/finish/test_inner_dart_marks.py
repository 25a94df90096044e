"""Double-ended darts on the paper: stitching lines, drill holes, nothing else written.

Where the holes stand is common practice of the cutting room: 1/2 in before each point (from memory), 1/8 in
inside the stitching at the widest place (from memory).
"""

import pytest
from shapely import Point as Place
from shapely import Polygon

from notchbook.finish import CutPiece, finish, production_table
from notchbook.geometry import Point
from notchbook.pattern import Allowance, Pattern
from support.hand_upper import INNER_DART, hand_upper, upper_front, with_inner_dart


def cut_front(pattern: Pattern) -> CutPiece:
    classes = {name: Allowance("plain") for name in pattern.edges}
    return finish(pattern.with_allowances(classes), production_table())[0]


def test_the_whole_front_has_the_dart_on_both_sides() -> None:
    piece = cut_front(hand_upper())
    assert [dart.name for dart in piece.darts] == [f"{INNER_DART}@right", f"{INNER_DART}@left"]
    assert {line.kind for line in piece.lines} == {"level"}
    assert [mark.name for mark in piece.marks] == []


def test_four_holes_lie_inside_the_stitches() -> None:
    piece = cut_front(hand_upper())
    dart = piece.darts[0]
    legs = [*dart.first_leg.flattened(0.1), *dart.second_leg.flattened(0.1)]
    body = Polygon([(p.x, p.y) for p in legs])
    holes = [hole for hole in piece.drills if hole.name.endswith("@right")]
    assert len(holes) == 4
    assert all(body.contains(Place(hole.position.x, hole.position.y)) for hole in holes)


@pytest.mark.parametrize(
    ("word", "place"),
    [
        ("upper_point", Point(-100.0, 130.0 - 13.0)),
        ("lower_point", Point(-100.0, -110.0 + 13.0)),
        ("center_mouth", Point(-88.0 - 3.0, 0.0)),
        ("side_mouth", Point(-112.0 + 3.0, 0.0)),
    ],
)
def test_each_hole_stands_where_the_cutter_looks_for_it(word: str, place: Point) -> None:
    piece = cut_front(hand_upper())
    (hole,) = [hole for hole in piece.drills if hole.name == f"{INNER_DART}/{word}@right"]
    assert hole.position.distance_to(place) < 1e-6


def test_in_a_narrow_dart_the_holes_beside_the_mouths_do_not_pass_each_other() -> None:
    narrow = hand_upper().with_pieces(with_inner_dart(upper_front(), 4.0))
    holes = {hole.name: hole.position for hole in cut_front(narrow).drills}
    assert holes[f"{INNER_DART}/center_mouth@right"].x == pytest.approx(-99.0)
    assert holes[f"{INNER_DART}/side_mouth@right"].x == pytest.approx(-101.0)


def test_a_dart_of_nothing_is_neither_drawn_nor_drilled() -> None:
    piece = cut_front(hand_upper().with_pieces(with_inner_dart(upper_front(), 0.0)))
    assert (piece.darts, piece.drills) == ((), ())


def test_a_house_drills_where_it_will() -> None:
    classes = {name: Allowance("plain") for name in hand_upper().edges}
    house = production_table().with_changes({"drill_inside_mouth": 6.0})
    piece = finish(hand_upper().with_allowances(classes), house)[0]
    holes = {hole.name: hole.position for hole in piece.drills}
    assert holes[f"{INNER_DART}/center_mouth@right"].x == pytest.approx(-94.0)
