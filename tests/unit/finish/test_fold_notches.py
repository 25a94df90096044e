"""Fold lines are notched where they run out over an edge, and a hem is spoken of once."""

from dataclasses import replace

import pytest

from notchbook.finish import finish, production_table
from notchbook.geometry import Path, Point
from notchbook.output.pen import circle
from notchbook.pattern import Edge, InternalLine, Pattern, Piece, frozen_map
from notchbook.pattern.piece import LineKind
from notchbook.recipe import replay
from support.cut_shapes import cut_one, square
from support.yoke_skirt import FORM_A, VENT, WAISTBAND, skirt_recipe, with_steps, yoke_recipe


def with_line(piece: Piece, start: Point, end: Point, kind: LineKind = "fold_line") -> Piece:
    return replace(piece, lines=(InternalLine("test.shape/fold_line", Path.line(start, end), kind),))


def folds(piece: Piece) -> list[Point]:
    return [notch.sew_position for notch in cut_one(piece).notches if notch.purpose == "fold"]


def test_a_fold_line_is_notched_at_both_edges() -> None:
    # Place notches: hem fold and facing fold (factory marking rules).
    start, end = Point(0.0, 40.0), Point(100.0, 40.0)
    assert folds(with_line(square(), start, end)) == [start, end]


@pytest.mark.parametrize(
    ("start", "end", "kind"),
    [
        (Point(0.0, 40.0), Point(100.0, 40.0), "level"),  # no fold
        (Point(20.0, 40.0), Point(80.0, 40.0), "fold_line"),  # ends inside the piece
        (Point(0.0, 0.0), Point(100.0, 100.0), "fold_line"),  # ends in corners
    ],
)
def test_other_lines_are_not_notched(start: Point, end: Point, kind: LineKind) -> None:
    assert folds(with_line(square(), start, end, kind)) == []


def test_band_and_vent_are_notched_where_they_fold() -> None:
    recipe = with_steps(skirt_recipe(), VENT, WAISTBAND)
    cut = {piece.title: piece for piece in finish(replay(recipe, FORM_A).pattern, production_table())}
    band = [notch for notch in cut["Waistband"].notches if notch.purpose == "fold"]
    # Folded in half, a straight band is half as high.
    sew = cut["Waistband"].sew_line.bounds()
    assert [notch.sew_position.y for notch in band] == pytest.approx([sew.center.y] * 2)
    assert all(notch.depth > 0.0 for notch in band)
    (vent,) = [notch for notch in cut["Back"].notches if notch.purpose == "fold"]
    # The vent folds on the center back line, x = 0 in the frame of the block, and hangs at the hem.
    assert vent.sew_position.x == pytest.approx(0.0)
    assert vent.direction == Point(0.0, 1.0)


def test_a_band_with_an_underlap_is_cut_right_side_up() -> None:
    # Cut face down it would be its mirror picture, with the underlap at the other end.
    recipe = with_steps(skirt_recipe(), WAISTBAND)
    band = finish(replay(recipe, FORM_A).pattern, production_table())[-1]
    assert [told.text for told in band.quantities] == ["cut 1, right side up"] * 2
    plain = cut_one(with_line(square(), Point(0.0, 50.0), Point(100.0, 50.0)))
    assert [told.text for told in plain.quantities] == ["cut 1"]


def test_a_hem_on_the_fold_is_spoken_of_once() -> None:
    pieces = finish(replay(yoke_recipe(), FORM_A).pattern, production_table())
    hems = [finding for piece in pieces for finding in piece.findings if finding.code == "hem-excess"]
    assert [finding.where for finding in hems] == ["skirt.front/hem"]


def test_two_hems_of_a_piece_are_both_spoken_of() -> None:
    # A disk whose two halves are hems, 51 mm deep round a radius of 100: 51 % longer at the raw edge.
    disk = circle(Point(0.0, 0.0), 100.0)
    halves = (Path(disk.segments[:2]), Path(disk.segments[2:]))
    outline = tuple(
        Edge(f"test.shape/e{index}", half, f"test.shape/p{index}", f"test.shape/p{1 - index}", "hem")
        for index, half in enumerate(halves)
    )
    pattern = Pattern(pieces=frozen_map({"test.shape": Piece("test.shape", "Disk", outline)}))
    (cut,) = finish(pattern, production_table())
    found = [finding for finding in cut.findings if finding.code == "hem-excess"]
    assert [finding.where for finding in found] == ["test.shape/e0", "test.shape/e1"]
    assert [finding.measured for finding in found] == pytest.approx([51.0, 51.0], abs=0.1)
