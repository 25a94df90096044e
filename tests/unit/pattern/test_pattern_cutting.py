"""Cutting a piece in two and laying two pieces together."""

from dataclasses import dataclass, replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.errors import HouseFault, StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Edge, Located, Pattern, Piece, Place, locate
from notchbook.pattern.joining import gap_between, join_outlines, laying_motion
from notchbook.pattern.splitting import EdgeCut, EdgeNames, closed_by, cut_edge, cut_path, parted_outline
from support.hand_skirt import hand_skirt

FRONT = "skirt.front"


@dataclass(frozen=True)
class Halves:
    """The outlines left and right of a cut."""

    left: tuple[Edge, ...]
    right: tuple[Edge, ...]


def cut_outline(
    piece: Piece,
    line: Path,
    start: tuple[Located, EdgeNames],
    end: tuple[Located, EdgeNames],
    line_names: tuple[str, str],
) -> Halves:
    """The outline cut along a line, which becomes an edge of both halves."""
    runs = parted_outline(piece, EdgeCut(*start), EdgeCut(*end))
    return Halves(
        closed_by(runs.left, line_names[0], line), closed_by(runs.right, line_names[1], line.reversed())
    )


def yoke_cut(pattern: Pattern, side: float, center: float) -> tuple[Piece, Path, Halves]:
    """The front cut across from the side seam to the center front; places from the hem, mm."""
    piece = pattern.pieces[FRONT]
    start = locate(pattern, Place(f"{FRONT}/side_seam", f"{FRONT}/hem_side", side))
    end = locate(pattern, Place(f"{FRONT}/center_front", f"{FRONT}/hem_center", center))
    line = Path.line(start.position, end.position)
    halves = cut_outline(
        piece,
        line,
        (start, names("side_seam", "above", "below", "side")),
        (end, names("center_front", "below", "above", "center")),
        (f"{FRONT}/yoke/upper", f"{FRONT}/yoke/lower"),
    )
    return piece, line, halves


def names(edge: str, before: str, after: str, end: str) -> EdgeNames:
    return EdgeNames(
        f"{FRONT}/{edge}/{before}",
        f"{FRONT}/{edge}/{after}",
        f"{FRONT}/yoke/{end}_{before}",
        f"{FRONT}/yoke/{end}_{after}",
    )


def piece_of(outline: tuple[Edge, ...], name: str = "skirt.part") -> Piece:
    return Piece(name, "Part", outline)


@settings(max_examples=30, deadline=None)
@given(st.floats(20.0, 380.0), st.floats(20.0, 380.0))
def test_a_cut_makes_two_closed_halves_of_the_whole_area(side: float, center: float) -> None:
    piece, line, halves = yoke_cut(hand_skirt(), side, center)
    upper, lower = piece_of(halves.left), piece_of(halves.right)
    assert upper.sew_line.area() + lower.sew_line.area() == pytest.approx(piece.sew_line.area(), abs=1e-6)
    assert upper.sew_line.area() > 0 < lower.sew_line.area()
    assert upper.edge(f"{FRONT}/yoke/upper").length == pytest.approx(line.length)
    around = upper.sew_line.length + lower.sew_line.length
    assert around == pytest.approx(piece.sew_line.length + 2 * line.length, abs=1e-6)


def test_left_of_the_line_lies_the_left_half() -> None:
    """The line runs from the side seam to the center front, to the right: above it is left."""
    _, _, halves = yoke_cut(hand_skirt(), 300.0, 300.0)
    upper, lower = piece_of(halves.left), piece_of(halves.right)
    assert upper.has_edge(f"{FRONT}/waist/center_side")
    assert lower.has_edge(f"{FRONT}/hem")
    assert upper.edge(f"{FRONT}/yoke/upper").start == f"{FRONT}/yoke/side_above"
    assert lower.edge(f"{FRONT}/yoke/lower").end == f"{FRONT}/yoke/side_below"
    assert upper.edge(f"{FRONT}/center_front/above").kind == "fold"


@settings(max_examples=30, deadline=None)
@given(st.floats(20.0, 380.0), st.floats(20.0, 380.0))
def test_what_is_cut_and_joined_again_is_the_same_piece(side: float, center: float) -> None:
    piece, _, halves = yoke_cut(hand_skirt(), side, center)
    upper = piece_of(halves.left, "skirt.upper")
    lower = piece_of(halves.right, "skirt.lower")
    away = upper.transformed(Transform.rotation(35.0, Point(9, 9)).then(Transform.translation(500, -80)))
    joined, laid = join_outlines(lower, f"{FRONT}/yoke/lower", away, f"{FRONT}/yoke/upper")
    assert joined.sew_line.area() == pytest.approx(piece.sew_line.area(), abs=1e-3)
    assert laid.points[f"{FRONT}/center_waist"].distance_to(Point(0, 200)) < 1e-6
    assert not joined.has_edge(f"{FRONT}/yoke/lower") and not joined.has_edge(f"{FRONT}/yoke/upper")
    assert joined.name == "skirt.lower"
    assert f"{FRONT}/yoke/side_below" in joined.points
    assert f"{FRONT}/yoke/side_above" not in joined.points


def test_the_dart_goes_with_the_half_where_it_opens() -> None:
    """Its legs are taken in where the cut ends in it: each half has one leg's side of the mouth, no leg."""
    pattern = hand_skirt()
    piece = pattern.pieces[FRONT]
    (dart,) = piece.intakes
    start = locate(pattern, Place(f"{FRONT}/hem", f"{FRONT}/hem_center", 60.0))
    runs = parted_outline(piece, EdgeCut(start, names("hem", "center", "side", "low")), dart)
    left, right = ({edge.name for edge in run} for run in (runs.left, runs.right))
    assert not {dart.first_leg, dart.second_leg} & (left | right)
    assert {edge.name for edge in piece.outline} - {dart.first_leg, dart.second_leg, f"{FRONT}/hem"} == (
        left | right
    ) - {f"{FRONT}/hem/center", f"{FRONT}/hem/side"}


def test_a_level_that_is_cut_is_found_in_two_parts() -> None:
    plumb = Path.line(Point(-60, -390), Point(-60, 190))
    level = Path.line(Point(-300, 40), Point(0, 40))
    assert [part.length for part in cut_path(plumb, level)] == pytest.approx([430.0, 150.0])
    assert [part.length for part in cut_path(plumb, Path.line(Point(-50, 0), Point(0, 0)))] == [580.0]


def test_an_edge_is_cut_into_two_named_parts() -> None:
    edge = hand_skirt().edges[f"{FRONT}/side_seam"]
    before, after = cut_edge(edge, 100.0, names("side_seam", "above", "below", "side"))
    assert before.length == pytest.approx(100.0, abs=1e-6)
    assert before.length + after.length == pytest.approx(edge.length, abs=1e-6)
    assert (before.start, after.end) == (edge.start, edge.end)
    assert before.end != after.start


@pytest.mark.parametrize("distance", [0.0, 0.05, 614.5])
def test_a_cut_at_the_end_of_an_edge_is_refused(distance: float) -> None:
    edge = hand_skirt().edges[f"{FRONT}/side_seam"]
    with pytest.raises(StepRefused) as refused:
        cut_edge(edge, distance, names("side_seam", "above", "below", "side"))
    assert refused.value.code == "cut-at-end"
    assert refused.value.text()


def test_a_cut_back_to_the_same_edge_is_refused() -> None:
    pattern = hand_skirt()
    at = [locate(pattern, Place(f"{FRONT}/side_seam", f"{FRONT}/hem_side", d)) for d in (100.0, 200.0)]
    part = names("side_seam", "above", "below", "side")
    with pytest.raises(StepRefused) as refused:
        cut_outline(
            pattern.pieces[FRONT],
            Path.line(at[0].position, at[1].position),
            (at[0], part),
            (at[1], part),
            (f"{FRONT}/a", f"{FRONT}/b"),
        )
    assert refused.value.code == "cut-same-edge"
    assert "front, side seam" in refused.value.text()


def test_a_line_that_does_not_end_on_its_places_is_our_fault() -> None:
    pattern = hand_skirt()
    start = locate(pattern, Place(f"{FRONT}/side_seam", f"{FRONT}/hem_side", 100.0))
    end = locate(pattern, Place(f"{FRONT}/center_front", f"{FRONT}/hem_center", 100.0))
    with pytest.raises(HouseFault, match="cut-off-place"):
        cut_outline(
            pattern.pieces[FRONT],
            Path.line(start.position, end.position + Point(0.0, 0.2)),
            (start, names("side_seam", "above", "below", "side")),
            (end, names("center_front", "below", "above", "center")),
            (f"{FRONT}/a", f"{FRONT}/b"),
        )


def test_edges_that_are_not_the_same_line_are_not_joined() -> None:
    """A planted misfit of 0.2 mm in length, and one of shape alone."""
    _, _, halves = yoke_cut(hand_skirt(), 300.0, 300.0)
    upper, lower = piece_of(halves.left, "skirt.upper"), piece_of(halves.right, "skirt.lower")
    name = f"{FRONT}/yoke/upper"
    index, seat = upper.edge_index(name), upper.edge(name)
    middle = seat.path.start.lerp(seat.path.end, 0.5)
    bulged = replace(seat, path=Path.polyline([seat.path.start, middle + Point(0.0, 0.25), seat.path.end]))
    bent = replace(upper, outline=(*upper.outline[:index], bulged, *upper.outline[index + 1 :]))
    with pytest.raises(StepRefused) as refused:
        join_outlines(lower, f"{FRONT}/yoke/lower", bent, name)
    assert refused.value.code == "join-misfit"
    _, _, other = yoke_cut(hand_skirt(), 300.0, 290.0)
    longer = piece_of(other.left, "skirt.upper")
    with pytest.raises(StepRefused) as again:
        join_outlines(lower, f"{FRONT}/yoke/lower", longer, name)
    assert again.value.facts["first_length"] != again.value.facts["second_length"]


def test_laying_and_gaps() -> None:
    still, moved = Path.line(Point(0, 0), Point(100, 0)), Path.line(Point(5, 5), Point(5, 105))
    laid = moved.transformed(laying_motion(still, moved))
    assert gap_between(still, laid) == pytest.approx(0.0, abs=1e-9)
    assert gap_between(still, Path.line(Point(0, 0), Point(100.3, 0))) == pytest.approx(0.3)
