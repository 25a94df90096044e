"""Where the grain line and the label stand on a piece: clear of darts, holes and each other."""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy

from notchbook.finish.cut_piece import DartLines, DrillHole, GrainLine, LabelBox
from notchbook.finish.free_room import (
    Cells,
    Grid,
    filled_cells,
    grid_over,
    grown,
    line_cells,
    longest_run,
    outside_cells,
    windows,
)
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Grain

_EDGE_MARGIN = 6.0
"""mm between the sew line and a label or the end of a grain line; a notch does not reach that far in."""

_GRAIN_INSET = 20.0
"""mm between the sew line and the heads of the grain line, where the piece is long enough."""

_MOST_PLACES = 20
"""Places across the piece that are tried for the grain line."""

_ROOM_BESIDE = 9.0
"""mm kept free beside darts, holes and lines."""

_LABEL_SIZES = (
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
    (40.0, 18.0),
    (40.0, 12.0),
    (26.0, 12.0),
    (24.0, 8.0),
)
"""Length along the grain and height, mm, in the order of liking: all that a label says at 24 pt first."""


@dataclass(frozen=True, slots=True)
class _Room:
    """The grid of a piece turned so that its grain runs up, and what is in the way on it."""

    grid: Grid
    solid: Cells
    lined: Cells
    back: Transform


def mark_piece(
    sew_line: Path,
    grain: Grain,
    darts: tuple[DartLines, ...],
    drills: tuple[DrillHole, ...],
    lines: Iterable[Path],
    one_way: bool,
) -> tuple[GrainLine, LabelBox]:
    """The grain line and the label box of a piece; ``lines`` are its inner lines and center line.

    Both run along the grain, the label beside the line. A label goes over an internal line only when the
    piece has no other room, and over anything else only when it has no room at all (``is_clear`` False).
    """
    room = _room_of(sew_line, grain, (darts, drills), tuple(lines))
    best: tuple[float, GrainLine, LabelBox] | None = None
    for start, end, free_share in _grain_candidates(room):
        label, score = _label(room, start, end, grain)
        aside = abs(start.x - room.grid.box.center.x) / room.grid.box.width
        worth = score + 0.5 * free_share - 0.2 * aside
        if best is None or worth > best[0] + 1e-9:
            line = GrainLine(room.back.apply(start), room.back.apply(end), one_way)
            best = (worth, line, label)
    if best is not None:
        return best[1], best[2]
    return _cramped(sew_line, grain, one_way)


def _room_of(
    sew_line: Path,
    grain: Grain,
    taken: tuple[tuple[DartLines, ...], tuple[DrillHole, ...]],
    lines: tuple[Path, ...],
) -> _Room:
    upright = Transform.rotation(90.0 - grain.degrees)
    outline = sew_line.transformed(upright)
    grid = grid_over(outline.bounds())
    solid = outside_cells(grid, outline, _EDGE_MARGIN)
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
    return _Room(grid, solid, lined, upright.inverse())


def _runs_upright(line: Path) -> bool:
    """Whether a line runs along the grain, so that a grain line upon it would be mistaken for it."""
    chord = line.end - line.start
    return abs(chord.y) > 2.0 * abs(chord.x)


def _grown_inside(cells: Cells, by: float) -> Cells:
    """Grown, but the rim of the grid is not in the way by itself."""
    padded = numpy.pad(cells, 8, constant_values=False)
    return grown(padded, by)[8:-8, 8:-8]


def _grain_candidates(room: _Room) -> list[tuple[Point, Point, float]]:
    """Upright lines that run free of darts, the long ones: start, end, and share of the longest."""
    grid = room.grid
    runs = [(*longest_run(room.solid[:, column]), column) for column in range(grid.columns)]
    longest = max((length for _, length, _ in runs), default=0)
    if longest == 0:
        return []
    found = []
    stride = max(1, grid.columns // _MOST_PLACES)
    for start, length, column in runs[::stride]:
        if length < 0.5 * longest:
            continue
        low, high = grid.corner(start, column), grid.corner(start + length, column)
        x = low.x + grid.size / 2.0
        inset = min(_GRAIN_INSET - _EDGE_MARGIN, 0.1 * (high.y - low.y))
        found.append((Point(x, low.y + inset), Point(x, high.y - inset), length / longest))
    return found


def _label(room: _Room, start: Point, end: Point, grain: Grain) -> tuple[LabelBox, float]:
    """The best label box beside a grain line, and its worth: 1 and more for a large one, less for one
    that crosses lines."""
    grid = room.grid
    line = numpy.zeros_like(room.solid)
    column = grid.column_of(start.x)
    line[grid.row_of(start.y) : grid.row_of(end.y) + 1, max(column - 1, 0) : column + 2] = True
    middle = start.lerp(end, 0.55)
    for cells, bonus in ((room.lined | line, 1.0), (room.solid | line, 0.0)):
        for rank, (length, height) in enumerate(_LABEL_SIZES):
            center = _nearest_window(grid, cells, length, height, middle)
            if center is None:
                continue
            worth = bonus + 1.0 - rank / len(_LABEL_SIZES)
            distance = abs(center.x - middle.x) + abs(center.y - middle.y)
            box = LabelBox(room.back.apply(center), length, height, grain.degrees, bonus > 0.0)
            return box, worth - 0.0002 * distance
    length, height = _LABEL_SIZES[-1]
    return LabelBox(room.back.apply(middle), length, height, grain.degrees, False), -1.0


def _nearest_window(grid: Grid, cells: Cells, length: float, height: float, wanted: Point) -> Point | None:
    """The middle of the free window nearest to the wanted place; None when no window is free."""
    rows, columns = round(length / grid.size + 0.499), round(height / grid.size + 0.499)
    free = windows(cells, rows, columns)
    found_rows, found_columns = numpy.nonzero(free == 0)
    if free.size == 0 or len(found_rows) == 0:
        return None
    xs = grid.box.min_x + (found_columns + columns / 2.0) * grid.size
    ys = grid.box.min_y + (found_rows + rows / 2.0) * grid.size
    nearest = int(numpy.argmin(numpy.abs(xs - wanted.x) + numpy.abs(ys - wanted.y)))
    return Point(float(xs[nearest]), float(ys[nearest]))


def _cramped(sew_line: Path, grain: Grain, one_way: bool) -> tuple[GrainLine, LabelBox]:
    """For a piece with no free room at all: both through its middle."""
    box = sew_line.bounds()
    along = Point(1.0, 0.0).rotated(grain.degrees)
    half = along * (0.3 * min(box.width, box.height))
    length, height = _LABEL_SIZES[-1]
    line = GrainLine(box.center - half, box.center + half, one_way)
    return line, LabelBox(box.center, length, height, grain.degrees, False)
