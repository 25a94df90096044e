"""The slash engine on shapes made by hand: parts, motions, what closes and opens, and what is refused."""

from math import asin, degrees, hypot, pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, union_all

from notchbook.errors import HouseFault, StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Pattern, Piece, frozen_map
from notchbook.pattern.slashing import (
    Assembled,
    Bridge,
    Closing,
    Cut,
    DartNames,
    Fold,
    Keep,
    Legs,
    Opening,
    Shut,
    Wedge,
    applied,
    assemble,
    chained,
    dart_angle,
    dart_cut,
    divide,
    located_on,
    pivot,
    slash_across,
    slash_to,
)
from support.dart_shapes import SHEET, sheet

NEW = DartNames.of("moved.front/dart", counted_from_start=True)


def polygon(path: Path) -> Polygon:
    return Polygon([(point.x, point.y) for point in path.flattened(0.001)])


def edge_lengths(piece: Piece) -> dict[str, float]:
    return {edge.name: edge.length for edge in piece.outline}


def moved(piece: Piece, edge: str = "right", share: float = 0.5, still: str = "left") -> Assembled:
    """The dart of the sheet moved to a share of another edge."""
    dart = piece.intake(f"{SHEET}/dart")
    angle = dart_angle(piece, dart)
    place = located_on(piece, f"{SHEET}/{edge}", piece.edge(f"{SHEET}/{edge}").length * share)
    about = piece.points[dart.point]
    opening = Opening(place, angle, Legs(NEW))
    return pivot(piece, about, (Closing(dart, angle, removed=True),), (opening,), f"{SHEET}/{still}")


def test_the_angle_of_a_dart_is_that_of_the_triangle() -> None:
    piece = sheet(mouth=60.0, depth=250.0)
    expected = 2.0 * degrees(asin(30.0 / hypot(30.0, 250.0)))
    assert dart_angle(piece, piece.intakes[0]) == pytest.approx(expected, abs=1e-9)


@settings(max_examples=40, deadline=None)
@given(
    st.sampled_from(["right", "top"]), st.floats(0.05, 0.95), st.floats(0.0, 90.0), st.floats(100.0, 350.0)
)
def test_a_moved_dart_keeps_angle_lengths_and_area(
    edge: str, share: float, mouth: float, depth: float
) -> None:
    piece = sheet(mouth=mouth, depth=depth)
    after = moved(piece, edge, share)
    angle = dart_angle(piece, piece.intakes[0])
    assert dart_angle(after.piece, after.piece.intake(NEW.intake)) == pytest.approx(angle, abs=1e-9)
    lengths, before = edge_lengths(after.piece), edge_lengths(piece)
    for name, length in before.items():
        if name in lengths:
            assert lengths[name] == pytest.approx(length, abs=1e-6)
    parts = after.splits[f"{SHEET}/{edge}"]
    assert sum(lengths[part] for part in parts) == pytest.approx(before[f"{SHEET}/{edge}"], abs=1e-6)
    # The area is that of the piece: the two sides of the dart are cloth that was not there and is not now.
    assert after.piece.sew_line.area() == pytest.approx(piece.sew_line.area(), rel=1e-9)
    assert polygon(after.piece.sew_line).buffer(-0.001).is_valid


@settings(max_examples=25, deadline=None)
@given(st.sampled_from(["right", "top"]), st.floats(0.1, 0.9), st.floats(5.0, 90.0))
def test_a_dart_moved_away_and_back_is_where_it_was(edge: str, share: float, mouth: float) -> None:
    """Standards: a dart closed and opened again returns the original polygon within 1e-6 (geometry)."""
    piece = sheet(mouth=mouth)
    away = moved(piece, edge, share).piece
    dart = away.intake(NEW.intake)
    angle = dart_angle(away, dart)
    # It opens again at the point where it was closed, between the two edges that met there.
    first = away.edge(f"{SHEET}/bottom/first")
    names = DartNames.of("back.front/dart", counted_from_start=True)
    closing = Closing(dart, angle, removed=True)
    opening = Opening(located_on(away, first.name, first.length), angle, Legs(names, mouth=f"{SHEET}/bottom"))
    again = pivot(away, away.points[dart.point], (closing,), (opening,), f"{SHEET}/left")
    assert again.splits == {first.end: (names.first_mouth, names.second_mouth)}
    for found in again.piece.outline:
        old = {names.first_leg: f"{SHEET}/dart/first_leg", names.second_leg: f"{SHEET}/dart/second_leg"}
        base = old.get(found.name, found.name)
        if piece.has_edge(base):
            was = piece.edge(base).path
            assert found.path.start.distance_to(was.start) < 1e-6
            assert found.path.end.distance_to(was.end) < 1e-6
    assert polygon(again.piece.sew_line).symmetric_difference(polygon(piece.sew_line)).area < 1e-3


def test_a_share_of_a_dart_leaves_the_rest_where_it_was() -> None:
    piece = sheet()
    dart = piece.intakes[0]
    angle = dart_angle(piece, dart)
    place = located_on(piece, f"{SHEET}/top", 100.0)
    opening = Opening(place, 0.25 * angle, Legs(NEW))
    about = piece.points[dart.point]
    after = pivot(piece, about, (Closing(dart, 0.25 * angle, removed=False),), (opening,), f"{SHEET}/left")
    assert dart_angle(after.piece, after.piece.intake(dart.name)) == pytest.approx(0.75 * angle, abs=1e-9)
    assert dart_angle(after.piece, after.piece.intake(NEW.intake)) == pytest.approx(0.25 * angle, abs=1e-9)
    assert after.merges == {}
    assert after.removals == {}


def test_what_is_drawn_inside_goes_with_its_part() -> None:
    piece = sheet()
    after = moved(piece, "top", 0.5)
    assert after.splits[f"{SHEET}/level"] == (f"{SHEET}/level/far", f"{SHEET}/level/near")
    lengths = [after.piece.line(name).path.length for name in after.splits[f"{SHEET}/level"]]
    assert sum(lengths) == pytest.approx(300.0, abs=1e-6)
    assert after.piece.points[f"{SHEET}/bust_point"] == piece.points[f"{SHEET}/bust_point"]
    # Held at the right the left part turns, and the mark in its corner with it.
    turned = moved(piece, "top", 0.5, still="right").piece
    corner = f"{SHEET}/corner"
    far = piece.points[corner].distance_to(piece.points[f"{SHEET}/top_left"])
    assert turned.points[corner].distance_to(turned.points[f"{SHEET}/top_left"]) == pytest.approx(far)
    assert turned.points[corner] != piece.points[corner]


def test_a_dart_that_takes_up_nothing_moves_without_moving_anything() -> None:
    piece = sheet(mouth=0.0)
    after = moved(piece, "top", 0.3)
    assert dart_angle(after.piece, after.piece.intake(NEW.intake)) == 0.0
    assert after.piece.edge(f"{SHEET}/right").path == piece.edge(f"{SHEET}/right").path


def test_a_dart_that_takes_up_nothing_is_led_on_to_a_pivot_beyond_its_point() -> None:
    piece = sheet(mouth=0.0)
    dart = piece.intakes[0]
    about = piece.points[dart.point] + Point(0.0, 30.0)
    opening = Opening(located_on(piece, f"{SHEET}/top", 100.0), 0.0, Legs(NEW))
    after = pivot(piece, about, (Closing(dart, 0.0, removed=True),), (opening,), f"{SHEET}/left").piece
    assert after.sew_line.area() == pytest.approx(piece.sew_line.area())
    assert {intake.name for intake in after.intakes} == {NEW.intake}


SPREAD = 12.0


def spread(piece: Piece, count: int, hinged: bool) -> Assembled:
    """The sheet slashed from bottom to top ``count`` times and spread at the top, by 12 mm each."""
    cuts = []
    openings = {}
    top, foot = piece.edge(f"{SHEET}/top"), piece.edge(f"{SHEET}/bottom/first")
    for number in range(1, count + 1):
        x = foot.length * number / (count + 1)
        end = located_on(piece, top.name, top.length - x)
        cut = slash_across(f"cut{number}", located_on(piece, foot.name, x), end)
        cuts.append(cut)
        turn = 2.0 * degrees(asin(SPREAD / 2.0 / cut.path.length))
        openings[cut.label] = (
            Transform.rotation(-turn, cut.path.start) if hinged else Transform.translation(SPREAD, 0.0)
        )
    division = divide(piece, tuple(cuts))
    motions = chained(division, f"{SHEET}/left", openings)
    return assemble(division, motions, {cut.label: Bridge() for cut in cuts})


@pytest.mark.parametrize("count", [1, 2, 5])
@pytest.mark.parametrize("hinged", [True, False])
def test_slash_and_spread_adds_n_times_d_at_the_open_edge(count: int, hinged: bool) -> None:
    """n equal slits by d add n d at the open edge and 0 at the hinge (plane geometry)."""
    piece = sheet(mouth=0.0)
    after = spread(piece, count, hinged)
    top = after.piece.edge(f"{SHEET}/top").length - piece.edge(f"{SHEET}/top").length
    foot = after.piece.edge(f"{SHEET}/bottom/first").length - piece.edge(f"{SHEET}/bottom/first").length
    assert top == pytest.approx(count * SPREAD, abs=1e-6)
    assert foot == pytest.approx(0.0 if hinged else count * SPREAD, abs=1e-6)
    for name in ("left", "right", "bottom/second"):
        assert after.piece.edge(f"{SHEET}/{name}").length == pytest.approx(
            piece.edge(f"{SHEET}/{name}").length, abs=1e-6
        )
    assert not after.splits
    assert not after.merges
    assert not after.removals


@pytest.mark.parametrize("hinged", [True, False])
def test_an_old_place_is_found_on_the_spread_edge(hinged: bool) -> None:
    piece = sheet(mouth=0.0)
    after = spread(piece, 2, hinged)
    assert after.place_now(f"{SHEET}/top", 10.0) == pytest.approx(10.0)
    assert after.place_now(f"{SHEET}/top", 299.0) == pytest.approx(299.0 + 2 * SPREAD)


def test_the_parts_cover_the_piece() -> None:
    piece = sheet()
    cuts = (
        dart_cut(piece, piece.intakes[0]),
        slash_to("a", located_on(piece, f"{SHEET}/top", 80.0), piece.points[f"{SHEET}/bust_point"]),
        slash_to("b", located_on(piece, f"{SHEET}/right", 300.0), piece.points[f"{SHEET}/bust_point"]),
    )
    division = divide(piece, cuts)
    regions = [polygon(region) for region in division.regions]
    assert len(regions) == 3
    assert sum(region.area for region in regions) == pytest.approx(piece.sew_line.area(), abs=0.01)
    assert union_all(regions).symmetric_difference(polygon(piece.sew_line)).area < 0.01


def test_a_wedge_that_is_closed_shortens_its_edge_alone() -> None:
    """A neckline wedge: its mouth at the edge goes, the dart opens by the same angle."""
    piece = sheet()
    dart, top = piece.intakes[0], f"{SHEET}/top"
    about = piece.points[dart.point]
    first, second = located_on(piece, top, 140.0), located_on(piece, top, 152.0)
    away = first.position - about
    angle = Point(away.dot(second.position - about), away.cross(second.position - about)).direction()
    wedge = Wedge("gape", first, second, about)
    division = divide(piece, (wedge, dart_cut(piece, dart)))
    before, after = division.beside("gape")
    motions = {before: Transform.identity(), after: Transform.rotation(-angle, about)}
    closed = assemble(division, motions, {"gape": Shut(2.0), dart.name: Keep()})
    assert closed.piece.edge(top).length == pytest.approx(288.0, abs=2.0)
    assert dart_angle(closed.piece, closed.piece.intake(dart.name)) == pytest.approx(
        dart_angle(piece, dart) + angle, abs=1e-9
    )


def test_a_fold_puts_two_edges_across_the_gap() -> None:
    piece = sheet(mouth=0.0)
    cut = slash_across(
        "pleat", located_on(piece, f"{SHEET}/bottom/first", 75.0), located_on(piece, f"{SHEET}/top", 225.0)
    )
    division = divide(piece, (cut,))
    motions = chained(division, f"{SHEET}/left", {"pleat": Transform.translation(60.0, 0.0)})
    names = DartNames.of("pleats.front/pleat", counted_from_start=True)
    after = assemble(division, motions, {"pleat": (Bridge(), Fold(names))})
    assert after.piece.edge(names.first_leg).length == pytest.approx(30.0)
    assert after.piece.edge(names.second_leg).length == pytest.approx(30.0)
    assert after.piece.edge(f"{SHEET}/bottom/first").length == pytest.approx(150.0 + 60.0)
    assert after.splits == {f"{SHEET}/top": (f"{SHEET}/top/near", f"{SHEET}/top/far")}
    # The level line runs on over the fold.
    assert after.piece.line(f"{SHEET}/level").path.length == pytest.approx(360.0, abs=1e-6)


def test_what_hung_on_a_closed_dart_is_forgotten() -> None:
    piece = sheet()
    pattern = Pattern(pieces=frozen_map({SHEET: piece})).with_corners(
        {f"{SHEET}/dart/first_mouth": "square", f"{SHEET}/dart/second_mouth": "mitre"}
    )
    after, removals = applied(pattern, moved(piece))
    assert set(after.corners) == {f"{SHEET}/dart/first_mouth"}
    assert set(removals) == {
        f"{SHEET}/dart",
        *(f"{SHEET}/dart/{word}" for word in ("first_leg", "second_leg", "point")),
    }


def test_refusals() -> None:
    piece = sheet()
    about = piece.points[f"{SHEET}/bust_point"]
    top, right = f"{SHEET}/top", f"{SHEET}/right"
    dart = piece.intakes[0]

    def code(*cuts: Cut) -> str:
        with pytest.raises(StepRefused) as refused:
            divide(piece, cuts)
        return refused.value.code

    through = slash_across(
        "a", located_on(piece, f"{SHEET}/bottom/first", 100.0), located_on(piece, right, 50.0)
    )
    assert code(through) == "slash-leaves-piece"
    crossing = (
        slash_across("a", located_on(piece, f"{SHEET}/left", 100.0), located_on(piece, right, 300.0)),
        slash_across("b", located_on(piece, top, 100.0), located_on(piece, right, 380.0)),
        slash_across("c", located_on(piece, top, 120.0), located_on(piece, f"{SHEET}/left", 150.0)),
    )
    assert code(*crossing) == "slashes-cross"
    twice = (
        slash_to("a", located_on(piece, top, 100.0), about),
        slash_to("b", located_on(piece, top, 100.0), about),
    )
    assert code(*twice) == "slashes-cross"
    with pytest.raises(StepRefused) as refused:
        moved(piece, "right", 0.5, still="right")
    assert refused.value.code == "still-edge-cut"
    with pytest.raises(HouseFault) as unbalanced:
        pivot(piece, about, (Closing(dart, 5.0, removed=False),), (), f"{SHEET}/left")
    assert unbalanced.value.code == "pivot-unbalanced"
    division = divide(piece, (dart_cut(piece, dart), slash_to("a", located_on(piece, top, 100.0), about)))
    with pytest.raises(StepRefused) as open_gap:
        assemble(division, {}, {dart.name: Shut(), "a": Bridge()})
    assert open_gap.value.code == "gap-stays-open"


def test_the_sum_of_angles_is_the_full_turn_of_the_dart() -> None:
    """Closed form: a chord of 2 L sin(angle / 2) at leg L."""
    piece = sheet(mouth=60.0, depth=250.0)
    after = moved(piece, "top", 0.5)
    legs = [after.piece.edge(name) for name in (NEW.first_leg, NEW.second_leg)]
    width = legs[0].path.start.distance_to(legs[1].path.end)
    angle = dart_angle(piece, piece.intakes[0])
    assert width == pytest.approx(2.0 * legs[0].length * sin(angle * pi / 360.0), abs=1e-9)
