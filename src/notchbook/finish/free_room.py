"""Free room inside a piece, on a grid: for the grain line and the label."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy
from numpy.typing import NDArray

from notchbook.geometry import Box, Line, Path, Point

Cells = NDArray[numpy.bool_]
"""True where something is in the way; rows upward, columns to the right."""

Sums = NDArray[numpy.int32]
"""How many blocked cells lie below and left of each corner of the grid."""

Numbers = NDArray[numpy.float64]

Places = NDArray[numpy.intp]

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

    def columns_of(self, xs: Numbers) -> Places:
        """The columns in which many x lie."""
        return ((xs - self.box.min_x) / self.size).astype(numpy.intp).clip(0, self.columns - 1)

    def rows_of(self, ys: Numbers) -> Places:
        """The rows in which many y lie."""
        return ((ys - self.box.min_y) / self.size).astype(numpy.intp).clip(0, self.rows - 1)

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
    middles = grid.box.min_x + (numpy.arange(grid.columns) + 0.5) * grid.size
    xs = numpy.array([point.x for point in polygon])
    ys = numpy.array([point.y for point in polygon])
    next_xs, next_ys = numpy.roll(xs, -1), numpy.roll(ys, -1)
    levels = grid.box.min_y + (numpy.arange(grid.rows) + 0.5) * grid.size
    rows, sides = numpy.nonzero((ys > levels[:, None]) != (next_ys > levels[:, None]))
    share = (levels[rows] - ys[sides]) / (next_ys[sides] - ys[sides])
    at = xs[sides] + share * (next_xs[sides] - xs[sides])
    turns = numpy.zeros((grid.rows, grid.columns + 1), dtype=numpy.int32)
    numpy.add.at(turns, (rows, numpy.searchsorted(middles, at, side="right")), 1)
    inside: Cells = turns[:, :-1].cumsum(axis=1) % 2 == 1
    return inside


def line_cells(grid: Grid, lines: Iterable[Path]) -> Cells:
    """The cells that the lines run through."""
    cells = numpy.zeros((grid.rows, grid.columns), dtype=bool)
    for line in lines:
        steps = max(2, math.ceil(line.length / (grid.size / 2.0)))
        xs, ys = _spread(line, steps)
        cells[grid.rows_of(ys), grid.columns_of(xs)] = True
    return cells


def _spread(line: Path, steps: int) -> tuple[Numbers, Numbers]:
    """The x and y of places at even distances along a line, both ends included, mm."""
    distances = line.length * numpy.arange(steps + 1) / steps
    if len(line.segments) == 1 and isinstance(line.segments[0], Line) and line.length > 0.0:
        shares, start, end = distances / line.length, line.start, line.end
        return start.x + (end.x - start.x) * shares, start.y + (end.y - start.y) * shares
    points = [line.point_at(distance) for distance in distances.tolist()]
    return numpy.array([point.x for point in points]), numpy.array([point.y for point in points])


def grown(cells: Cells, by: float) -> Cells:
    """The cells, and all within ``by`` cells of them (square neighborhood, beyond the grid counts as
    blocked)."""
    reach = max(0, math.ceil(by - 0.5))
    if reach == 0:
        return cells
    padded = numpy.pad(cells, reach, constant_values=True)
    return windows(summed(padded), 2 * reach + 1, 2 * reach + 1) > 0


def summed(cells: Cells) -> Sums:
    """The sums from which the windows of any size are told."""
    sums = numpy.zeros((cells.shape[0] + 1, cells.shape[1] + 1), dtype=numpy.int32)
    numpy.cumsum(cells, axis=0, out=sums[1:, 1:])
    numpy.cumsum(sums[1:, 1:], axis=1, out=sums[1:, 1:])
    return sums


def windows(sums: Sums, rows: int, columns: int) -> Sums:
    """How many blocked cells each window of this size holds, by its lower left cell; empty when the
    window is larger than the grid."""
    if rows >= sums.shape[0] or columns >= sums.shape[1]:
        return numpy.zeros((0, 0), dtype=numpy.int32)
    return sums[rows:, columns:] - sums[:-rows, columns:] - sums[rows:, :-columns] + sums[:-rows, :-columns]


def longest_run(column: NDArray[numpy.bool_]) -> tuple[int, int]:
    """The start and the length of the longest free run of a column; (0, 0) when nothing is free."""
    cells = column.tobytes()
    length = max(map(len, cells.split(b"\1")))
    return (cells.find(bytes(length)), length) if length else (0, 0)
