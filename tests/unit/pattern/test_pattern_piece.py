"""A piece holds together: closed, counter-clockwise, also when it is moved and reflected."""

from collections import Counter
from dataclasses import replace
from operator import setitem

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.errors import HouseFault
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Edge, Grain, Intake, Mark, Pattern, Piece, frozen_map, title_of, with_side
from support.hand_skirt import BACK_CENTER_DART, FRONT_DART, hand_skirt

angles = st.floats(-180.0, 180.0)
shifts = st.floats(-2000.0, 2000.0)


def square(name: str = "box.top") -> Piece:
    """A square of 100 mm with a mark in it."""
    corners = [Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100)]
    words = ("bottom", "right", "top", "left")
    points = [f"{name}/{word}_start" for word in words]
    outline = tuple(
        Edge(
            f"{name}/{word}",
            Path.line(corners[index], corners[(index + 1) % 4]),
            points[index],
            points[(index + 1) % 4],
        )
        for index, word in enumerate(words)
    )
    return Piece(name, "Top", outline, marks=(Mark(f"{name}/center", Point(50, 50)),))


def test_a_piece_without_edges_is_refused() -> None:
    with pytest.raises(HouseFault, match="outline-empty"):
        Piece("box.top", "Top", ())


def test_an_open_outline_is_refused() -> None:
    piece = square()
    first, *rest = piece.outline
    moved = replace(first, path=first.path.with_end(Point(100.01, 0)))
    with pytest.raises(HouseFault, match="outline-open"):
        replace(piece, outline=(moved, *rest))


def test_neighbors_must_share_the_name_of_their_point() -> None:
    piece = square()
    first, *rest = piece.outline
    with pytest.raises(HouseFault, match="outline-open"):
        replace(piece, outline=(replace(first, end="box.top/elsewhere"), *rest))


def test_edges_points_and_names_are_found() -> None:
    piece = square()
    assert piece.edge("box.top/right").length == 100.0
    assert piece.has_edge("box.top/right") and not piece.has_edge("box.top/hem")
    assert piece.points["box.top/top_start"] == Point(100, 100)
    assert piece.points["box.top/center"] == Point(50, 50)
    assert piece.sew_line.area() == pytest.approx(10_000.0)
    assert piece.bounds.width == 100.0
    assert len(list(piece.names())) == 1 + 4 + 4 + 1
    kinds = Counter(kind for _, kind in piece.named)
    assert kinds == {"piece": 1, "edge": 4, "point": 4, "mark": 1}
    assert dict(piece.named) == dict(Pattern(frozen_map({piece.name: piece})).index)
    with pytest.raises(KeyError):
        piece.edge("box.top/hem")
    with pytest.raises(KeyError):
        piece.intake("box.top/dart")


@settings(max_examples=40, deadline=None)
@given(angles, shifts, shifts, st.booleans())
def test_motions_keep_lengths_area_names_and_direction(
    angle: float, dx: float, dy: float, reflected: bool
) -> None:
    front = hand_skirt().pieces["skirt.front"]
    motion = Transform.rotation(angle, Point(10, 20)).then(Transform.translation(dx, dy))
    if reflected:
        motion = Transform.reflection(Point(1, 2), Point(3, 7)).then(motion)
    moved = front.transformed(motion)
    assert moved.sew_line.area() == pytest.approx(front.sew_line.area(), rel=1e-9)
    assert sorted(moved.names()) == sorted(front.names())
    for edge in front.outline:
        twin = moved.edge(edge.name)
        assert twin.length == pytest.approx(edge.length, abs=1e-6)
        ends = {edge.start: edge.path.start, edge.end: edge.path.end}
        assert moved.points[twin.start].distance_to(motion.apply(ends[twin.start])) < 1e-9
    back = moved.transformed(motion.inverse())
    assert back.points["skirt.front/center_waist"].distance_to(Point(0, 200)) < 1e-6


def test_a_reflection_turns_the_legs_of_a_dart_round() -> None:
    front = hand_skirt().pieces["skirt.front"]
    dart = front.intake("skirt.front/waist_dart")
    mirrored = front.transformed(Transform.reflection(Point(0, 0), Point(0, 1)))
    twin = mirrored.intake("skirt.front/waist_dart")
    assert (twin.first_leg, twin.second_leg) == (dart.second_leg, dart.first_leg)
    # The dart is still pressed toward the same leg, the one nearer to the center.
    assert getattr(twin, twin.fold_toward) == getattr(dart, dart.fold_toward)
    first, second = mirrored.edge(twin.first_leg), mirrored.edge(twin.second_leg)
    assert first.end == second.start == twin.point
    assert first.path.end.distance_to(Point(-FRONT_DART.point.x, FRONT_DART.point.y)) < 1e-9


@pytest.mark.parametrize(("turn", "grain"), [(0.0, 90.0), (30.0, 120.0), (-90.0, 0.0), (180.0, -90.0)])
def test_the_grain_turns_with_the_piece(turn: float, grain: float) -> None:
    turned = square().transformed(Transform.rotation(turn, Point(0, 0)))
    assert turned.grain.degrees == pytest.approx(grain)


def test_the_grain_is_reflected_with_the_piece() -> None:
    piece = replace(square(), grain=Grain(45.0, one_way=True))
    mirrored = piece.transformed(Transform.reflection(Point(0, 0), Point(0, 1)))
    assert mirrored.grain.degrees == pytest.approx(135.0)
    assert mirrored.grain.one_way


def test_renaming_reaches_every_name() -> None:
    back = hand_skirt().pieces["skirt.back"]
    left = back.renamed(lambda name: with_side(name, "left"))
    assert all(name.endswith("@left") for name in left.names())
    for intake in left.intakes:
        assert {intake.first_leg, intake.second_leg} <= {edge.name for edge in left.outline}
        assert left.points[intake.point] is not None
        assert intake.mouth == "skirt.back/waist@left"
    assert left.points["skirt.back/center_dart/point@left"] == BACK_CENTER_DART.point


def test_titles_say_the_side() -> None:
    piece = square()
    assert title_of(piece) == "Top"
    assert title_of(replace(piece, side="left")) == "Left top"


def test_a_name_that_stands_twice_is_our_fault() -> None:
    first, second = square(), replace(square(), name="box.other")
    pattern = Pattern(pieces=frozen_map({first.name: first, second.name: second}))
    with pytest.raises(HouseFault, match="name-twice"):
        _ = pattern.edges


def test_a_pattern_is_changed_by_making_another() -> None:
    pattern = hand_skirt()
    changed = pattern.with_pieces(square(), without=("skirt.back",)).with_seams(without=("skirt/side_seam",))
    assert tuple(changed.pieces) == ("skirt.front", "box.top")
    assert tuple(changed.seams) == ("skirt/center_back",)
    assert tuple(pattern.pieces) == ("skirt.front", "skirt.back")
    assert changed.carriers["box.top/right"] == "box.top"
    assert changed.piece_of("box.top/right_start").name == "box.top"
    with pytest.raises(TypeError):
        setitem(pattern.pieces, "skirt.back", square())  # type: ignore[call-overload]  # frozen: must refuse


def test_the_index_knows_what_every_name_is() -> None:
    index = hand_skirt().index
    kinds = {
        "skirt.front": "piece",
        "skirt.front/hem": "edge",
        "skirt.front/hem_side": "point",
        "skirt.front/waist_dart": "intake",
        "skirt.front/hip_line": "line",
        "skirt.front/waist": "group",
        "skirt/side_seam": "seam",
        "skirt.back/center_back/zip_stop": "notch",
    }
    assert {name: index[name] for name in kinds} == kinds


def test_an_intake_without_width_keeps_its_names() -> None:
    dart = Intake("a.b/dart", "a.b/waist", "a.b/dart/one", "a.b/dart/two", "a.b/dart/point")
    assert dart.kind == "dart" and dart.fold_toward == "second_leg"


def test_neighbors_are_found_round_the_outline() -> None:
    piece = square()
    assert piece.edge_before("box.top/bottom").name == "box.top/left"
    assert piece.edge_after("box.top/left").name == "box.top/bottom"
    assert piece.edge_after("box.top/bottom") is piece.edge("box.top/right")


def test_edges_and_intakes_are_put_in_place_of_their_namesakes() -> None:
    piece = hand_skirt().pieces["skirt.front"]
    (dart,) = piece.darts
    turned = piece.with_intake(replace(dart, kind="tuck"))
    assert [(one.name, one.kind) for one in turned.intakes] == [(dart.name, "tuck")]
    edge = piece.outline[0]
    hemmed = piece.with_edges(replace(edge, kind="hem"))
    assert hemmed.outline == (replace(edge, kind="hem"), *piece.outline[1:])
    assert piece.with_edges() == piece
