"""Hem allowances turned up: they must lie flat on the piece."""

import math
from dataclasses import replace

import pytest
import shapely
import shapely.affinity

from notchbook.finish import Cloth, CutPiece, finish, production_table
from notchbook.geometry import Cubic, Path, Point
from notchbook.pattern import Allowance, Edge, EdgeKind, Pattern, Piece, frozen_map
from support.cut_shapes import cut_one, polygon, polygon_piece
from support.hand_skirt import hand_skirt

SIDES = [-60.0, -15.0, 0.0, 15.0, 60.0]
"""How far a side of 300 mm leans out toward the hem, mm."""


def trapezoid(lean: float) -> Piece:
    corners = [(-lean, 0.0), (200.0 + lean, 0.0), (200.0, 300.0), (0.0, 300.0)]
    return polygon_piece(corners, {0: "hem"})


def worst_overhang(cut: CutPiece, depth: float, hem_y: float = 0.0) -> tuple[float, float]:
    """How far the turned-up hem reaches beyond the piece, and how much it lacks, mm."""
    shape = polygon(cut.cut_line)
    below = shape.intersection(shapely.box(-2000, hem_y - depth - 1, 2000, hem_y))
    above = shape.intersection(shapely.box(-2000, hem_y, 2000, hem_y + depth))
    turned = shapely.affinity.scale(below, 1.0, -1.0, origin=(0.0, hem_y))
    beyond = turned.difference(above.buffer(1e-9))
    lacking = above.difference(turned.buffer(1e-9))
    return thickness(beyond), thickness(lacking)


def thickness(shape: shapely.Geometry) -> float:
    """A bound on the width of slivers: area over half the boundary."""
    length = float(shapely.length(shape))
    return 2.0 * float(shapely.area(shape)) / length if length else 0.0


@pytest.mark.parametrize("lean", SIDES)
def test_turned_hem_lies_within_the_side_lines(lean: float) -> None:
    cut = cut_one(trapezoid(lean), {0: 51.0, 1: 12.0, 3: 12.0})
    beyond, lacking = worst_overhang(cut, 51.0)
    assert beyond < 0.1
    assert lacking < 0.1


@pytest.mark.parametrize("lean", [-60.0, -15.0, 15.0, 60.0])
def test_a_mitred_hem_would_fail_the_same_test(lean: float) -> None:
    cut = cut_one(trapezoid(lean), {0: 51.0, 1: 12.0, 3: 12.0}, {0: "mitre", 1: "mitre"})
    assert max(worst_overhang(cut, 51.0)) > 0.5


def test_the_hem_of_the_hand_skirt() -> None:
    for cut in finish(hand_skirt(), production_table()):
        assert max(worst_overhang(cut, 51.0, -400.0)) < 0.1


def test_the_fold_of_the_hem_is_notched_beside_it() -> None:
    cut = cut_one(trapezoid(20.0), {0: 51.0})
    folds = [notch for notch in cut.notches if notch.purpose == "hem fold"]
    assert {round(notch.cut_positions[0].y, 6) for notch in folds} == {0.0}
    assert len(folds) == 2
    for notch in folds:
        assert cut.cut_line.nearest(notch.cut_positions[0]).gap < 1e-6


def ring(radius: float, degrees: float = 90.0) -> Piece:
    """A quarter of a circle skirt: hem of this radius, waist 100 mm from the center."""
    handle = 4.0 / 3.0 * math.tan(math.radians(degrees) / 4.0)

    def arc(size: float) -> Cubic:
        start, end = Point(0.0, -size), Point(0.0, -size).rotated(degrees)
        along, back = Point(1.0, 0.0), Point(-1.0, 0.0).rotated(degrees)
        return Cubic(start, start + along * (handle * size), end + back * (handle * size), end)

    hem, waist = Path.of(arc(radius)), Path.of(arc(100.0)).reversed()
    paths = [hem, Path.line(hem.end, waist.start), waist, Path.line(waist.end, hem.start)]
    kinds: list[EdgeKind] = ["hem", "seam", "seam", "seam"]
    outline = tuple(
        Edge(f"test.ring/e{i}", path, f"test.ring/p{i}", f"test.ring/p{(i + 1) % 4}", kinds[i])
        for i, path in enumerate(paths)
    )
    return Piece("test.ring", "Ring", outline)


def hemmed(depth: float, radius: float = 500.0, cloth: Cloth | None = None) -> CutPiece:
    piece = ring(radius)
    pattern = Pattern(
        pieces=frozen_map({piece.name: piece}),
        allowances=frozen_map({"test.ring/e0": Allowance("hem_circle", depth)}),
    )
    (cut,) = finish(pattern, production_table(), cloth)
    return cut


def test_excess_of_a_curved_hem_is_depth_times_angle() -> None:
    # Excess = angle x depth (known geometry): 25 mm at a radius of 500 mm is 5 %.
    (said,) = [finding for finding in hemmed(25.0).findings if finding.code == "hem-excess"]
    assert said.measured == pytest.approx(5.0, abs=0.05)
    assert (said.wanted, said.severity.value) == (3.0, "look")
    assert "5.0 %" in said.message


def test_a_narrow_hem_or_soft_cloth_is_not_warned_of() -> None:
    assert not hemmed(10.0).findings
    assert not hemmed(25.0, cloth=Cloth("wool", surface="soft")).findings
    assert not hemmed(25.0, radius=2000.0).findings


def test_a_hem_without_allowance_is_mitred() -> None:
    flat = trapezoid(15.0)
    cut = cut_one(replace(flat), {0: 0.0, 1: 10.0, 3: 10.0})
    assert cut.bounds.min_y == pytest.approx(0.0)


def test_a_hem_whose_raw_edge_is_shorter_says_so() -> None:
    # The inner edge of the ring has a radius of 100, the raw edge 10 mm inside it one of 90: 10 % shorter.
    piece = ring(500.0)
    outline = tuple(
        replace(edge, kind="hem" if edge.name == "test.ring/e2" else "seam") for edge in piece.outline
    )
    allowances = frozen_map({"test.ring/e2": Allowance("hem_circle", 10.0)})
    pattern = Pattern(pieces=frozen_map({piece.name: replace(piece, outline=outline)}), allowances=allowances)
    (cut,) = finish(pattern, production_table())
    (said,) = [finding for finding in cut.findings if finding.code == "hem-excess"]
    assert said.measured == pytest.approx(-10.0, abs=0.05)
    assert "10.0 % shorter at its raw edge" in said.message
    assert "stretch" in said.suggestion and "longer" not in said.message
