"""Where the grain line and the label stand on a piece: clear of darts, holes and each other."""

from collections.abc import Iterable

import numpy

from notchbook.finish.cut_piece import DartLines, DrillHole, GrainLine, LabelBox
from notchbook.finish.free_room import longest_run, summed
from notchbook.finish.piece_room import EDGE_MARGIN, LABEL_SIZES, Room, nearest_window, room_of
from notchbook.geometry import Path, Point
from notchbook.pattern import Grain

_GRAIN_INSET = 20.0
"""mm between the sew line and the heads of the grain line, where the piece is long enough."""

_LEAST = 1e-6
"""A direction this close to level or upright runs through the whole piece."""

_MOST_PLACES = 20
"""Places across the piece that are tried for the grain line."""


def mark_piece(
    sew_line: Path,
    grain: Grain,
    darts: tuple[DartLines, ...],
    drills: tuple[DrillHole, ...],
    lines: Iterable[Path],
    one_way: bool,
) -> tuple[GrainLine, LabelBox]:
    """The grain line and the label box of a piece; ``lines`` are its inner lines and center line.

    Both run along the grain, the label beside the line; where the piece is too narrow for that, or has more
    room so, the label runs across. It goes over an internal line only when the piece has no other room, and
    over anything else only when it has no room at all (``is_clear`` False).
    """
    room = room_of(sew_line, grain, (darts, drills), tuple(lines))
    best: tuple[float, GrainLine, LabelBox] | None = None
    for start, end, free_share in _grain_candidates(room):
        label, score = _label(room, start, end, grain)
        aside = abs(start.x - room.grid.box.center.x) / room.grid.box.width
        worth = score + 0.5 * free_share - 0.2 * aside
        if best is None or worth > best[0] + 1e-9:
            line = GrainLine(room.back.apply(start), room.back.apply(end), one_way)
            best = (worth, line, label)
    cramped = _cramped(sew_line, grain, one_way)
    if best is None or (_fills_its_box(sew_line) and _length(best[1]) < _TOO_SHORT * _length(cramped[0])):
        return cramped
    return best[1], best[2]


_ROOMY = 2000.0
"""mm² from which the room along the grain is taken; a smaller one only where there is none larger across it:
there a label is read with effort."""

_TOO_SHORT = 0.5
"""Share of the line through the middle below which what free room there is, as in a narrow strip on the
bias, is no room. Own judgment."""


def _fills_its_box(sew_line: Path) -> bool:
    """Whether the piece is a straight strip, so that a line through the middle of its box lies in it."""
    box = sew_line.bounds()
    return abs(sew_line.area()) > 0.95 * box.width * box.height


def _length(line: GrainLine) -> float:
    return line.start.distance_to(line.end)


def _grain_candidates(room: Room) -> list[tuple[Point, Point, float]]:
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
        inset = min(_GRAIN_INSET - EDGE_MARGIN, 0.1 * (high.y - low.y))
        found.append((Point(x, low.y + inset), Point(x, high.y - inset), length / longest))
    return found


def _label(room: Room, start: Point, end: Point, grain: Grain) -> tuple[LabelBox, float]:
    """The best label box beside a grain line, and its worth: 1 and more for one along the grain, 0 and more
    for one across it, as on a strip that is cut across the grain, less for one that crosses lines."""
    grid = room.grid
    line = numpy.zeros_like(room.solid)
    column = grid.column_of(start.x)
    line[grid.row_of(start.y) : grid.row_of(end.y) + 1, max(column - 1, 0) : column + 2] = True
    middle = start.lerp(end, 0.55)
    lined, solid = room.lined | line, room.solid | line
    found: list[tuple[LabelBox, float]] = []
    for cells, turn, bonus in ((lined, 0.0, 1.0), (lined, -90.0, 0.0), (solid, 0.0, -1.0)):
        if found and (found[0][0].length * found[0][0].height >= _ROOMY or bonus < 0.0):
            break
        sums = summed(cells)
        for rank, (length, height) in enumerate(LABEL_SIZES):
            size = (length, height) if turn == 0.0 else (height, length)
            center = nearest_window(grid, sums, *size, middle)
            if center is None:
                continue
            worth = bonus + 1.0 - rank / len(LABEL_SIZES)
            distance = abs(center.x - middle.x) + abs(center.y - middle.y)
            degrees = grain.degrees + turn
            box = LabelBox(room.back.apply(center), length, height, degrees, bonus >= 0.0)
            found.append((box, worth - 0.0002 * distance))
            break
    if found:
        return max(found, key=lambda one: one[0].length * one[0].height)
    length, height = LABEL_SIZES[-1]
    return LabelBox(room.back.apply(middle), length, height, grain.degrees, False), -2.0


def _cramped(sew_line: Path, grain: Grain, one_way: bool) -> tuple[GrainLine, LabelBox]:
    """For a piece with no free room at all, such as a narrow strip: both through its middle."""
    box = sew_line.bounds()
    along = Point(1.0, 0.0).rotated(grain.degrees)
    share = 0.45 if _fills_its_box(sew_line) else 0.3
    half = along * (
        share * min(box.width / max(abs(along.x), _LEAST), box.height / max(abs(along.y), _LEAST))
    )
    length, height = LABEL_SIZES[-1]
    line = GrainLine(box.center - half, box.center + half, one_way)
    return line, LabelBox(box.center, length, height, grain.degrees, False)
