"""Free room inside a piece, on a grid: for the grain line and the label."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy
from numpy.typing import NDArray

from notchbook.geometry import Box, Path, Point

Cells = NDArray[numpy.bool_]
"""True where something is in the way; rows upward, columns to the right."""

_MOST_CELLS = 40_000
"""Cells of one piece; finer than 5 mm nothing is gained, and a long piece must not be slow."""

_FINEST = 4.0
"""mm."""


@dataclass(frozen=True, slots=True)
class Grid:
    """Square cells over a box; ``size`` mm each."""

    box: Box
    size: float
    columns: int
    rows: int

    def column_of(self, x: float) -> int:
        """The column in which x lies."""
        return min(max(int((x - self.box.min_x) / self.size), 0), self.columns - 1)

    def row_of(self, y: float) -> int:
        """The row in which y lies."""
        return min(max(int((y - self.box.min_y) / self.size), 0), self.rows - 1)

    def corner(self, row: int, column: int) -> Point:
        """The lower left corner of a cell."""
        return Point(self.box.min_x + column * self.size, self.box.min_y + row * self.size)


def grid_over(box: Box) -> Grid:
    """A grid fine enough for labels and coarse enough to be quick."""
    size = max(_FINEST, math.sqrt(box.width * box.height / _MOST_CELLS))
    return Grid(box, size, max(1, math.ceil(box.width / size)), max(1, math.ceil(box.height / size)))


def outside_cells(grid: Grid, outline: Path, margin: float) -> Cells:
    """The cells outside the outline or nearer to it than about ``margin`` mm."""
    blocked = ~filled_cells(grid, outline.flattened(grid.size / 8.0))
    return grown(blocked, margin / grid.size)


def filled_cells(grid: Grid, polygon: Sequence[Point]) -> Cells:
    """The cells whose middle lies inside the polygon (even-odd, row by row)."""
    cells = numpy.zeros((grid.rows, grid.columns), dtype=bool)
    middles = grid.box.min_x + (numpy.arange(grid.columns) + 0.5) * grid.size
    xs = numpy.array([point.x for point in polygon])
    ys = numpy.array([point.y for point in polygon])
    next_xs, next_ys = numpy.roll(xs, -1), numpy.roll(ys, -1)
    for row in range(grid.rows):
        y = grid.box.min_y + (row + 0.5) * grid.size
        crossing = (ys > y) != (next_ys > y)
        if not crossing.any():
            continue
        share = (y - ys[crossing]) / (next_ys[crossing] - ys[crossing])
        at = xs[crossing] + share * (next_xs[crossing] - xs[crossing])
        cells[row] = (numpy.sum(at[:, None] < middles[None, :], axis=0) % 2).astype(bool)
    return cells


def line_cells(grid: Grid, lines: Iterable[Path]) -> Cells:
    """The cells that the lines run through."""
    cells = numpy.zeros((grid.rows, grid.columns), dtype=bool)
    for line in lines:
        steps = max(2, math.ceil(line.length / (grid.size / 2.0)))
        for index in range(steps + 1):
            point = line.point_at(line.length * index / steps)
            cells[grid.row_of(point.y), grid.column_of(point.x)] = True
    return cells


def grown(cells: Cells, by: float) -> Cells:
    """The cells, and all within ``by`` cells of them (square neighborhood, beyond the grid counts as
    blocked)."""
    reach = max(0, math.ceil(by - 0.5))
    if reach == 0:
        return cells
    padded = numpy.pad(cells, reach, constant_values=True)
    return windows(padded, 2 * reach + 1, 2 * reach + 1) > 0


def windows(cells: Cells, rows: int, columns: int) -> NDArray[numpy.int64]:
    """How many blocked cells each window of this size holds, by its lower left cell; empty when the
    window is larger than the grid."""
    sums = numpy.zeros((cells.shape[0] + 1, cells.shape[1] + 1), dtype=numpy.int64)
    sums[1:, 1:] = cells.astype(numpy.int64).cumsum(axis=0).cumsum(axis=1)
    if rows > cells.shape[0] or columns > cells.shape[1]:
        return numpy.zeros((0, 0), dtype=numpy.int64)
    return sums[rows:, columns:] - sums[:-rows, columns:] - sums[rows:, :-columns] + sums[:-rows, :-columns]


def longest_run(column: NDArray[numpy.bool_]) -> tuple[int, int]:
    """The start and the length of the longest free run of a column; (0, 0) when nothing is free."""
    best = start = length = best_length = 0
    for index, blocked in enumerate(column):
        if blocked:
            length = 0
            continue
        if length == 0:
            start = index
        length += 1
        if length > best_length:
            best, best_length = start, length
    return best, best_length
