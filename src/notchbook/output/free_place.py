"""Where the name of a line can be written without standing on anything."""

import math

from notchbook.finish import CutPiece
from notchbook.geometry import Path, Point
from notchbook.output.pen import MM_PER_POINT
from notchbook.output.typeset import CAP_HEIGHT, text_width

_STEPS = (0.5, 0.4, 0.6, 0.3, 0.7, 0.25, 0.75, 0.2, 0.8, 0.15, 0.85, 0.1, 0.9)
"""Shares of the line that are tried, from its middle outward."""

_ABOVE = 1.9
"""mm between a line and its name."""


class FreePlaces:
    """The things of a piece that words must keep clear of, as points a few millimeters apart."""

    def __init__(self, piece: CutPiece) -> None:
        self._points: list[Point] = []
        self._add(Path.line(piece.grain.start, piece.grain.end))
        self._add(piece.cut_line)
        for edge in piece.edges:
            self._add(edge.sew)
        for dart in piece.darts:
            for path in (dart.first_leg, dart.second_leg, dart.fold):
                self._add(path)
        for line in piece.lines:
            self._add(line.path)
        if piece.fold is not None:
            self._add(piece.fold.path)
        self._points.extend(hole.position for hole in piece.drills)
        label = piece.label
        along = Point(1.0, 0.0).rotated(label.degrees)
        across = along.perpendicular()
        for row in range(-4, 5):
            middle = label.center + across * (label.height * row / 8.0)
            half = along * (label.length / 2.0)
            self._add(Path.line(middle - half, middle + half))

    def _add(self, path: Path) -> None:
        steps = max(1, math.ceil(path.length / 2.0))
        self._points.extend(path.point_at(path.length * index / steps) for index in range(steps + 1))

    def along(self, line: Path, words: str, size: float, degrees: float) -> tuple[Point, bool]:
        """The middle of the base line of the words above the line, and whether nothing is in the way."""
        width, height = text_width(words, size), CAP_HEIGHT * size * MM_PER_POINT
        up = Point(0.0, 1.0).rotated(degrees)
        for share in _STEPS:
            base = line.point_at(line.length * share) + up * _ABOVE
            if self._is_free(base, width, height, degrees):
                self._take(base, width, degrees)
                return base, True
        return line.point_at(line.length / 2.0) + up * _ABOVE, False

    def _is_free(self, base: Point, width: float, height: float, degrees: float) -> bool:
        along = Point(1.0, 0.0).rotated(degrees)
        up = along.perpendicular()
        for point in self._points:
            away = point - base
            if abs(away.dot(along)) <= width / 2.0 + 3.0 and -1.2 <= away.dot(up) <= height + 1.5:
                return False
        return True

    def _take(self, base: Point, width: float, degrees: float) -> None:
        half = Point(1.0, 0.0).rotated(degrees) * (width / 2.0)
        raised = base + Point(0.0, 1.0).rotated(degrees)
        self._add(Path.line(raised - half, raised + half))
