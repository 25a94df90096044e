"""Cut pieces as a whole: widths, notches, halves, quantities, grain and label."""

from dataclasses import replace

import pytest
import shapely

from notchbook.errors import InputError, StepRefused
from notchbook.finish import Cloth, CutPiece, finish, production_table
from notchbook.geometry import Point
from notchbook.pattern import Allowance, CutAs, CutInstruction, Group, Notch, Pattern, Place, frozen_map
from support.cut_shapes import cut_one, polygon, polygon_piece, square
from support.hand_skirt import hand_skirt


def skirt(changes: dict[str, float | str] | None = None) -> tuple[CutPiece, ...]:
    return finish(hand_skirt(), production_table().with_changes(changes or {}))


def widest_error(cut: CutPiece) -> float:
    """How far any part of the cut line is from its edge's sew line, beside the allowance, mm."""
    worst = 0.0
    for edge in cut.edges:
        assert edge.cut is not None
        sew = shapely.LineString([(p.x, p.y) for p in edge.sew.flattened(0.001)])
        for share in range(1, 200):
            place = edge.cut.point_at(edge.cut.length * share / 200.0)
            beside = shapely.Point(place.x, place.y)
            if 0.01 < sew.project(beside) < sew.length - 0.01:
                worst = max(worst, abs(sew.distance(beside) - edge.width))
    return worst


def test_cut_line_is_sew_line_plus_allowance() -> None:
    for cut in skirt():
        assert widest_error(cut) < 0.05


def test_a_planted_error_of_the_width_is_seen() -> None:
    cut = skirt()[1]
    wrong = tuple(replace(edge, width=edge.width + 0.2) for edge in cut.edges)
    assert widest_error(replace(cut, edges=wrong)) > 0.1


def test_what_is_said_of_an_edge_goes_before_group_seam_and_kind() -> None:
    pattern = hand_skirt()
    bare = replace(pattern, allowances=frozen_map({}))
    widths = {edge.source: edge.width for cut in finish(bare, production_table()) for edge in cut.edges}
    assert widths["skirt.front/side_seam"] == 12.0  # its seam's class: side
    assert widths["skirt.back/center_back"] == 19.0
    assert widths["skirt.front/hem"] == 51.0  # its kind
    assert widths["skirt.front/waist/center_side"] == 10.0  # nothing speaks for it: plain
    said = bare.with_allowances(
        {
            "skirt.back/waist/middle": Allowance("plain", 7.0),
            "skirt.back/waist": Allowance("waist"),
            "skirt.back/side_seam": Allowance("let_out"),
        }
    )
    widths = {edge.source: edge.width for cut in finish(said, production_table()) for edge in cut.edges}
    assert widths["skirt.back/waist/middle"] == 7.0
    assert widths["skirt.back/waist/center_side"] == 12.0
    assert widths["skirt.back/side_seam"] == 25.0


def test_an_unknown_class_is_refused() -> None:
    pattern = hand_skirt().with_allowances({"skirt.back/side_seam": Allowance("sidee")})
    with pytest.raises(InputError) as refused:
        finish(pattern, production_table())
    assert refused.value.code == "allowance-class-unknown"


def test_an_allowance_of_a_name_that_is_gone_is_no_matter() -> None:
    pattern = hand_skirt().with_allowances({"skirt.back/gone": Allowance("side")})
    assert len(finish(pattern, production_table())) == 2


@pytest.mark.parametrize(
    ("allowance", "depth"),
    # Slits of 3 to 6 mm that end at least 3 mm short of the sew line (factory marking rules).
    [(25.0, 5.0), (12.0, 5.0), (8.0, 5.0), (7.0, 4.0), (6.0, 3.0), (5.0, 0.0), (0.0, 0.0)],
)
def test_notches_keep_clear_of_the_sew_line(allowance: float, depth: float) -> None:
    piece = square()
    place = Place("test.shape/e1", "test.shape/p1", 40.0)
    pattern = Pattern(
        pieces=frozen_map({piece.name: piece}),
        notches=frozen_map({"test.shape/e1/notch": Notch("test.shape/e1/notch", place)}),
        allowances=frozen_map({edge.name: Allowance("plain", allowance) for edge in piece.outline}),
    )
    (cut,) = finish(pattern, production_table())
    (notch,) = cut.notches
    assert notch.depth == pytest.approx(depth)
    assert notch.sew_position == Point(100.0, 40.0)
    assert notch.cut_positions[0].x == pytest.approx(100.0 + allowance)
    assert notch.direction.x == pytest.approx(-1.0)
    assert ("notch-marked" in [finding.code for finding in cut.findings]) == (depth == 0.0)


def test_double_notches_are_centered_on_their_place() -> None:
    back = skirt()[1]
    (double,) = [notch for notch in back.notches if notch.kind == "double"]
    first, second = double.cut_positions
    # Double notches 10 to 13 mm apart (common practice).
    assert 10.0 <= first.distance_to(second) <= 13.0
    assert first.lerp(second, 0.5).y == pytest.approx(double.sew_position.y)


def test_every_notch_starts_on_the_cut_line_and_points_inward() -> None:
    for cut in skirt():
        shape = polygon(cut.cut_line)
        for notch in cut.notches:
            for place in notch.cut_positions:
                assert cut.cut_line.nearest(place).gap < 1e-6
                end = place + notch.direction * notch.depth
                assert shape.buffer(1e-6).covers(shapely.Point(end.x, end.y))
                assert cut.sew_line.nearest(end).gap >= 3.0 - 1e-6


def test_whole_piece_is_twice_its_half() -> None:
    whole, half = skirt()[0], skirt({"supply": "fold"})[0]
    assert (whole.supplied, half.supplied) == ("whole", "on fold")
    assert whole.cut_line.area() == pytest.approx(2.0 * half.cut_line.area(), abs=0.5)
    assert whole.fold is not None
    assert half.fold is not None
    assert (whole.fold.on_fold, half.fold.on_fold) == (False, True)
    assert whole.edge("skirt.front/side_seam@left").source == "skirt.front/side_seam"
    hip = [line for line in whole.lines if line.name.startswith("skirt.front/hip_line")]
    assert len(hip) == 1
    assert hip[0].path.length == pytest.approx(480.0)
    centers = [notch for notch in whole.notches if notch.purpose == "center"]
    assert {round(notch.sew_position.x, 9) for notch in centers} == {0.0}
    assert len(centers) == 2


def test_a_notch_on_a_left_edge_that_is_no_reflection_stays_in_its_place() -> None:
    # A whole front drawn for a body whose sides differ has edges of its own for the left.
    piece = square().renamed(lambda name: f"{name}@left" if "/" in name else name)
    place = Place("test.shape/e1@left", "test.shape/p1@left", 20.0)
    notch = Notch("test.shape/e1_notch@left", place)
    pattern = Pattern(pieces=frozen_map({piece.name: piece}), notches=frozen_map({notch.name: notch}))
    (cut,) = finish(pattern, production_table())
    assert [found.sew_position for found in cut.notches] == [Point(100.0, 20.0)]


def test_notches_of_a_whole_piece_are_reflections_of_each_other() -> None:
    front = skirt()[0]
    hips = [notch for notch in front.notches if notch.purpose == "hip line"]
    assert sorted(notch.sew_position.x for notch in hips) == pytest.approx([-240.0, 240.0])
    assert [notch.sew_position.y for notch in hips] == pytest.approx([0.0, 0.0], abs=1e-9)


def test_a_fold_that_is_missing_or_bent_is_refused() -> None:
    folded = polygon_piece([(0, 0), (100, 0), (100, 100), (0, 100)], cut="fold")
    with pytest.raises(StepRefused) as refused:
        cut_one(folded)
    assert refused.value.code == "fold-missing"
    twice = polygon_piece([(0, 0), (100, 0), (100, 100), (0, 100)], {1: "fold", 3: "fold"}, cut="fold")
    with pytest.raises(StepRefused):
        cut_one(twice)


@pytest.mark.parametrize(
    ("cut", "times", "supply", "text", "panels"),
    [
        ("pair", 1, "whole", "cut 1 pair", 2),
        ("pair", 2, "whole", "cut 2 pairs", 4),
        ("single", 1, "whole", "cut 1", 1),
        ("single", 3, "whole", "cut 3", 3),
        ("fold", 1, "whole", "cut 1, whole", 1),
        ("fold", 1, "fold", "cut 1 on fold", 1),
    ],
)
def test_quantities(cut: CutAs, times: int, supply: str, text: str, panels: int) -> None:
    drawn = polygon_piece(
        [(0, 0), (100, 0), (100, 100), (0, 100)],
        {3: "fold"} if cut == "fold" else None,
        instructions=(CutInstruction("self", times), CutInstruction("fusible", 1)),
    )
    piece = replace(drawn, cut=cut)
    made = cut_one(piece, house=production_table().with_changes({"supply": supply}))
    first, second = made.quantities
    assert (first.text, first.panels, first.material) == (text, panels, "self")
    assert second.material == "fusible"
    assert made.panels == panels + second.panels


def test_a_single_piece_that_is_not_symmetric_says_right_side_up() -> None:
    leaning = polygon_piece([(0, 0), (100, 0), (140, 90), (0, 100)])
    assert cut_one(leaning).quantities[0].text == "cut 1, right side up"
    left = replace(square(), side="left")
    assert cut_one(left).quantities[0].text == "cut 1, right side up"
    assert cut_one(left).title == "Left shape"


def label_shape(cut: CutPiece) -> shapely.Polygon:
    label = cut.label
    along = Point(1.0, 0.0).rotated(label.degrees) * (label.length / 2.0)
    up = Point(0.0, 1.0).rotated(label.degrees) * (label.height / 2.0)
    corners = [label.center + along * a + up * b for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1))]
    return shapely.Polygon([(p.x, p.y) for p in corners])


def grain_shape(cut: CutPiece) -> shapely.LineString:
    return shapely.LineString([(p.x, p.y) for p in (cut.grain.start, cut.grain.end)])


SHAPES = [
    square(),
    polygon_piece([(0, 0), (700, 0), (700, 60), (0, 60)], grain=0.0),
    polygon_piece([(0, 0), (300, 0), (350, 700), (120, 760), (0, 600)]),
    polygon_piece([(0, 0), (200, 0), (200, 200), (0, 200)], grain=45.0),
    polygon_piece([(0, 0), (40, 0), (40, 40), (0, 40)]),
]


@pytest.mark.parametrize("cut", [*skirt(), *(cut_one(shape) for shape in SHAPES)])
def test_label_and_grain_are_clear(cut: CutPiece) -> None:
    inside = polygon(cut.sew_line)
    label, grain = label_shape(cut), grain_shape(cut)
    assert cut.label.is_clear
    assert inside.contains(label)
    assert inside.contains(grain)
    assert label.distance(grain) > 1.0
    for dart in cut.darts:
        points = (*dart.first_leg.flattened(0.1), *dart.second_leg.flattened(0.1))
        wedge = shapely.Polygon([(p.x, p.y) for p in points])
        assert wedge.distance(label) > 1.0
        assert wedge.distance(grain) > 1.0
    for line in cut.lines:
        drawn = shapely.LineString([(p.x, p.y) for p in line.path.flattened(0.1)])
        assert drawn.distance(label) > 0.5
    for hole in cut.drills:
        assert shapely.Point(hole.position.x, hole.position.y).distance(label) > 3.0


def test_the_grain_runs_along_the_warp_and_is_long() -> None:
    for shape, degrees in zip(SHAPES, (90.0, 0.0, 90.0, 45.0, 90.0), strict=True):
        cut = cut_one(shape)
        way = cut.grain.end - cut.grain.start
        assert way.direction() == pytest.approx(degrees)
        assert cut.label.degrees == pytest.approx(degrees)
    assert (skirt()[1].grain.end - skirt()[1].grain.start).norm() > 0.75 * 600.0


def test_nap_gives_one_arrow_head() -> None:
    assert not any(cut.grain.one_way for cut in skirt())
    napped = finish(hand_skirt(), production_table(), Cloth("velvet", one_way=True))
    assert all(cut.grain.one_way for cut in napped)


def test_light_cloth_may_be_drilled_nearer_to_the_point() -> None:
    usual, light = skirt()[1], finish(hand_skirt(), production_table(), Cloth(drill_before_point=10.0))[1]
    point = hand_skirt().pieces["skirt.back"].edge("skirt.back/center_dart/side_leg").path.end
    gaps = [min(hole.position.distance_to(point) for hole in cut.drills) for cut in (usual, light)]
    assert gaps == [pytest.approx(13.0), pytest.approx(10.0)]


def test_finishing_is_pure() -> None:
    one, other = skirt(), skirt()
    assert [cut.cut_line for cut in one] == [cut.cut_line for cut in other]
    assert [cut.label for cut in one] == [cut.label for cut in other]
    assert [(cut.number, cut.of) for cut in one] == [(1, 2), (2, 2)]


def test_a_group_inside_a_group_wins() -> None:
    pattern = hand_skirt()
    groups = {
        **pattern.groups,
        "skirt.back/outer": Group(("skirt.back/waist", "skirt.back/center_back"), "test"),
    }
    nested = replace(
        pattern,
        groups=frozen_map(groups),
        allowances=frozen_map(
            {"skirt.back/waist": Allowance("waist"), "skirt.back/outer": Allowance("plain", 30.0)}
        ),
    )
    widths = {edge.source: edge.width for edge in finish(nested, production_table())[1].edges}
    assert widths["skirt.back/waist/middle"] == 12.0
    assert widths["skirt.back/center_back"] == 30.0
