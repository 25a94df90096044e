"""Dart caps: folded in paper, the edge must be cut straight through."""

import pytest
import shapely

from notchbook.finish import CutPiece, finish, production_table
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Intake, Pattern, Piece, closing_motion, frozen_map
from support.cut_shapes import cut_one, darted_square, polygon
from support.hand_skirt import hand_skirt

WIDTH = 12.0


def folded_layers(cut_line: Path, piece: Piece, intake: Intake) -> tuple[list[Point], list[Point]]:
    """The cut line of the two layers of dart cloth as they lie when the dart is closed and pressed.

    Written for the test by folding paper in thought, not with the code under test: everything between
    the legs is carried to where it lies on the closed piece, the first leg held still.
    """
    first, second = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
    point = first.end
    middle = first.start.lerp(second.end, 0.5)
    over_first = Transform.reflection(point, first.start)
    over_middle = Transform.reflection(point, middle)
    near_first: list[Point] = []
    near_second: list[Point] = []
    for step in range(4001):
        place = cut_line.point_at(cut_line.length * step / 4000.0)
        from_first = (first.start - point).cross(place - point)
        from_middle = (middle - point).cross(place - point)
        from_second = (second.end - point).cross(place - point)
        if (place - point).dot(middle - point) < 0.0 or from_first < -1e-6 or from_second > 1e-6:
            continue
        if from_middle <= 1e-6:
            near_first.append(place)
        if from_middle >= -1e-6:
            near_second.append(over_middle.apply(place))
    if intake.fold_toward == "first_leg":
        near_first = [over_first.apply(place) for place in near_first]
        near_second = [over_first.apply(place) for place in near_second]
    return near_first, near_second


def closed_cut(cut: CutPiece, piece: Piece, intake: Intake) -> Path:
    """The cut line of the edge under which the folded dart lies, with the dart closed."""
    names = {edge.end: edge.name for edge in piece.outline}
    if intake.fold_toward == "first_leg":
        before = names[piece.edge(intake.first_leg).start]
        found = cut.edge(before).cut
        assert found is not None
        return found
    after = next(e.name for e in piece.outline if e.start == piece.edge(intake.second_leg).end)
    found = cut.edge(after).cut
    assert found is not None
    return found.transformed(closing_motion(piece, intake))


def worst_gap(cut: CutPiece, piece: Piece, intake: Intake) -> float:
    """The largest distance of the folded layers' cut line from the cut line that they lie under, mm."""
    edge = closed_cut(cut, piece, intake)
    layers = folded_layers(cut.cut_line, piece, intake)
    assert all(len(layer) >= 2 for layer in layers)
    return max(edge.nearest(place).gap for layer in layers for place in layer)


@pytest.mark.parametrize("toward", ["first_leg", "second_leg"])
@pytest.mark.parametrize("intake", [6.0, 20.0, 45.0])
def test_folded_dart_ends_at_the_cut_line(toward: str, intake: float) -> None:
    piece = darted_square(intake, toward)
    cut = cut_one(piece, WIDTH)
    assert worst_gap(cut, piece, piece.intakes[0]) < 0.01


def test_an_uncapped_dart_fails_the_same_test() -> None:
    piece = darted_square(45.0)
    cut = cut_one(piece, WIDTH)
    flat = Path.polyline([p for p in cut.cut_line.flattened(0.5) if not _is_cap(p, piece)], closed=True)
    edge = closed_cut(cut, piece, piece.intakes[0])
    mouth = piece.edge("test.dart/first_leg").path.start.lerp(
        piece.edge("test.dart/second_leg").path.end, 0.5
    )
    top = flat.nearest(mouth + Point(0.0, WIDTH)).point
    assert edge.nearest(top).gap > 0.5


def _is_cap(place: Point, piece: Piece) -> bool:
    first = piece.edge("test.dart/first_leg").path.start
    second = piece.edge("test.dart/second_leg").path.end
    return second.x + 1.0 < place.x < first.x - 1.0 and place.y > 150.0


def test_darts_of_the_hand_skirt() -> None:
    pattern = hand_skirt()
    for cut in finish(pattern, production_table().with_changes({"supply": "fold"})):
        piece = pattern.pieces[cut.name]
        assert piece.intakes
        for intake in piece.intakes:
            assert worst_gap(cut, piece, intake) < 0.1


def test_the_two_ways_to_press_are_reflections_of_each_other() -> None:
    one = polygon(cut_one(darted_square(30.0, "first_leg"), WIDTH).cut_line)
    other = polygon(cut_one(darted_square(30.0, "second_leg"), WIDTH).cut_line)
    turned = shapely.affinity.scale(other, -1.0, 1.0, origin=(100.0, 0.0))
    assert one.symmetric_difference(turned).area < 0.01


def test_a_dart_of_nothing_has_no_cap_no_hole_and_no_notches() -> None:
    piece = darted_square(0.0)
    cut = cut_one(piece, WIDTH)
    assert not cut.drills
    assert not cut.darts
    assert not [notch for notch in cut.notches if notch.purpose == "dart leg"]
    assert cut.bounds.max_y == pytest.approx(piece.bounds.max_y + WIDTH)
    assert len(cut.cut_line.segments) <= 6


def test_drill_hole_lies_13_mm_before_the_point_on_the_fold() -> None:
    piece = darted_square(24.0)
    (hole,) = cut_one(piece, WIDTH).drills
    point = piece.edge("test.dart/first_leg").path.end
    # 1/2 in before the point (factory marking rule, from memory), on the center line of the dart.
    assert hole.position.distance_to(point) == pytest.approx(13.0)
    assert hole.position.x == pytest.approx(100.0)
    assert hole.position.y > point.y


def test_legs_are_notched_where_they_meet_the_cut_line() -> None:
    piece = darted_square(24.0)
    cut = cut_one(piece, WIDTH)
    notches = [notch for notch in cut.notches if notch.purpose == "dart leg"]
    assert len(notches) == 2
    for notch in notches:
        (place,) = notch.cut_positions
        assert cut.cut_line.nearest(place).gap < 1e-6
        leg = min(
            (piece.edge(f"test.dart/{word}_leg").path for word in ("first", "second")),
            key=lambda path: path.nearest(notch.sew_position).gap,
        )
        along = (leg.end - leg.start).unit()
        assert abs(along.cross((place - notch.sew_position).unit())) < 1e-9


def test_a_pattern_keeps_its_caps_on_both_halves_of_a_whole_piece() -> None:
    pattern = hand_skirt()
    front = finish(pattern, production_table())[0]
    halves = polygon(front.cut_line)
    turned = shapely.affinity.scale(halves, -1.0, 1.0, origin=(0.0, 0.0))
    assert halves.symmetric_difference(turned).area < 0.05
    only = Pattern(pieces=frozen_map({"skirt.front": pattern.pieces["skirt.front"]}))
    assert len(finish(only, production_table())[0].darts) == 2
