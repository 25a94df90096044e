"""Laying pieces out to save sheets: strips may lie, pieces move on to the next tile."""

import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from notchbook.finish import CutPiece, finish, production_table
from notchbook.output.layout import GAP, MARGIN, Raster, candidate_sheets
from notchbook.output.tiling import FORMATS, OVERLAP, Tiling, best_tiling, tiled
from support.cut_shapes import cut_one, polygon_piece
from support.yoke_skirt import VENT, WAISTBAND, ZIP, run, skirt_recipe, with_steps

A4 = FORMATS["a4"]
RASTER = Raster(A4.frame_width - OVERLAP, A4.frame_height - OVERLAP, A4.frame_width, A4.frame_height)


def block(width: float, height: float) -> CutPiece:
    return cut_one(polygon_piece([(0, 0), (width, 0), (width, height), (0, height)]), 0.0)


def printed_area(tiling: Tiling) -> BaseGeometry:
    frames = [tile.frame for tile in tiling.printed]
    return unary_union([shapely.box(f.min_x, f.min_y, f.max_x, f.max_y) for f in frames])


def test_a_long_band_lies_beside_what_leaves_room_above_it() -> None:
    # On A4 (190 x 277 printable, overlap 10) a block of 900 x 700 takes 5 x 3 sheets, whose 811 mm leave
    # room for a band of 800 x 80 lying, but not standing.
    tiling = best_tiling((block(900.0, 700.0), block(80.0, 800.0)), A4)
    assert len(tiling.printed) == 15
    band = next(placement for placement in tiling.sheet.placements if placement.piece.bounds.width == 80.0)
    assert band.box.width > band.box.height
    assert not band.motion.is_reflection


def test_only_strips_lie() -> None:
    pieces = (block(900.0, 700.0), block(300.0, 800.0))
    for sheet in candidate_sheets(pieces, [2000.0], RASTER):
        for placement in sheet.placements:
            grain = placement.piece.grain
            way = placement.motion.apply(grain.end) - placement.motion.apply(grain.start)
            assert way.direction() == pytest.approx(90.0)


def test_moving_on_to_the_next_tile_saves_sheets() -> None:
    # Packed tightly, these three lie across one more row or column of tiles than they need.
    pieces = (block(350.0, 750.0), block(550.0, 450.0), block(400.0, 400.0))
    widths = [RASTER.step_x * count + OVERLAP for count in range(1, 8)]
    counts = [len(tiled(sheet, A4).printed) for sheet in candidate_sheets(pieces, widths, RASTER)]
    # Plain candidates and those that heed the tiles come in turn.
    plain, heeding = min(counts[0::2]), min(counts[1::2])
    assert heeding < plain
    assert len(best_tiling(pieces, A4).printed) <= heeding


def test_a_skirt_on_a4_wastes_no_sheet() -> None:
    pieces = finish(run(with_steps(skirt_recipe(), VENT, ZIP, WAISTBAND)).pattern, production_table())
    area = sum(piece.bounds.width * piece.bounds.height for piece in pieces)
    # What the boxes of the pieces need at least, were every sheet filled to its edge.
    least = math.ceil(area / (RASTER.step_x * RASTER.step_y))
    assert len(best_tiling(pieces, A4).printed) <= least + 3


sizes = st.lists(st.tuples(st.floats(20, 900), st.floats(20, 900)), min_size=1, max_size=6)


@given(sizes)
@settings(max_examples=25, deadline=None)
def test_every_candidate_keeps_pieces_apart_and_prints_them_whole(
    given_sizes: list[tuple[float, float]],
) -> None:
    pieces = tuple(block(width, height) for width, height in given_sizes)
    for sheet in candidate_sheets(pieces, [550.0, 1090.0], RASTER):
        boxes = [shapely.box(p.box.min_x, p.box.min_y, p.box.max_x, p.box.max_y) for p in sheet.placements]
        for index, one in enumerate(boxes):
            assert all(one.distance(other) >= GAP - 1e-6 for other in boxes[index + 1 :])
        whole = shapely.box(MARGIN, MARGIN, sheet.width - MARGIN, sheet.height - MARGIN).buffer(1e-6)
        assert all(whole.covers(box) for box in boxes)
        assert printed_area(tiled(sheet, A4)).buffer(0.01).covers(unary_union(boxes))
