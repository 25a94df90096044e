"""The room inside a piece in which something can be written, and the sizes of labels."""

from dataclasses import dataclass

import numpy

from notchbook.finish.cut_piece import DartLines, DrillHole
from notchbook.finish.free_room import (
    Cells,
    Grid,
    Sums,
    filled_cells,
    grid_over,
    grown,
    line_cells,
    outside_cells,
    windows,
)
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Grain

EDGE_MARGIN = 6.0
"""mm between the sew line and a label or the end of a grain line; a notch does not reach that far in."""

_ROOM_BESIDE = 9.0
"""mm kept free beside darts, holes and lines."""

LABEL_SIZES = (
    (170.0, 70.0),
    (140.0, 62.0),
    (120.0, 54.0),
    (150.0, 40.0),
    (100.0, 46.0),
    (70.0, 64.0),
    (120.0, 32.0),
    (80.0, 38.0),
    (52.0, 72.0),
    (120.0, 24.0),
    (44.0, 64.0),
    (64.0, 30.0),
    (36.0, 60.0),
    (90.0, 18.0),
    (50.0, 24.0),
    (32.0, 44.0),
    (70.0, 14.0),
    (110.0, 12.0),
    (40.0, 18.0),
    (40.0, 12.0),
    (26.0, 12.0),
    (24.0, 8.0),
)
"""Length along the grain and height, mm, in the order of liking: all that a label says at 24 pt first."""


@dataclass(frozen=True, slots=True)
class Room:
    """The grid of a piece turned so that its grain runs up, and what is in the way on it.

    Nothing is written on ``solid``, only in need on what is ``lined`` besides. ``back`` turns the piece back.
    """

    grid: Grid
    solid: Cells
    lined: Cells
    back: Transform


def room_of(
    sew_line: Path,
    grain: Grain,
    taken: tuple[tuple[DartLines, ...], tuple[DrillHole, ...]],
    lines: tuple[Path, ...],
) -> Room:
    """The room of a piece with this sew line; ``taken`` are its darts and drill holes, ``lines`` its inner
    lines and center line."""
    upright = Transform.rotation(90.0 - grain.degrees)
    outline = sew_line.transformed(upright)
    grid = grid_over(outline.bounds())
    solid = outside_cells(grid, outline, EDGE_MARGIN)
    inner = numpy.zeros_like(solid)
    darts, drills = taken
    for dart in darts:
        legs = (*dart.first_leg.flattened(1.0), *dart.second_leg.flattened(1.0))
        inner |= filled_cells(grid, [upright.apply(point) for point in legs])
        inner |= line_cells(grid, (dart.first_leg.transformed(upright), dart.second_leg.transformed(upright)))
    for hole in drills:
        place = upright.apply(hole.position)
        inner[grid.row_of(place.y), grid.column_of(place.x)] = True
    turned = [line.transformed(upright) for line in lines]
    inner |= line_cells(grid, (line for line in turned if _runs_upright(line)))
    solid |= _grown_inside(inner, _ROOM_BESIDE / grid.size)
    lined = solid | _grown_inside(line_cells(grid, turned), _ROOM_BESIDE / 2.0 / grid.size)
    return Room(grid, solid, lined, upright.inverse())


def _runs_upright(line: Path) -> bool:
    """Whether a line runs along the grain, so that a grain line upon it would be mistaken for it."""
    chord = line.end - line.start
    return abs(chord.y) > 2.0 * abs(chord.x)


def _grown_inside(cells: Cells, by: float) -> Cells:
    """Grown, but the rim of the grid is not in the way by itself."""
    padded = numpy.pad(cells, 8, constant_values=False)
    return grown(padded, by)[8:-8, 8:-8]


def nearest_window(grid: Grid, sums: Sums, length: float, height: float, wanted: Point) -> Point | None:
    """The middle of the free window nearest to the wanted place; None when no window is free."""
    rows, columns = round(length / grid.size + 0.499), round(height / grid.size + 0.499)
    free = windows(sums, rows, columns)
    found_rows, found_columns = numpy.nonzero(free == 0)
    if free.size == 0 or len(found_rows) == 0:
        return None
    xs = grid.box.min_x + (found_columns + columns / 2.0) * grid.size
    ys = grid.box.min_y + (found_rows + rows / 2.0) * grid.size
    nearest = int(numpy.argmin(numpy.abs(xs - wanted.x) + numpy.abs(ys - wanted.y)))
    return Point(float(xs[nearest]), float(ys[nearest]))
