"""Where the name of a line can be written without standing on anything."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from shapely import prepare
from shapely.geometry import Polygon

from notchbook.finish import CutPiece
from notchbook.geometry import Path, Point
from notchbook.output.pen import MM_PER_POINT
from notchbook.output.typeset import CAP_HEIGHT, text_width

_STEPS = (0.5, 0.4, 0.6, 0.3, 0.7, 0.25, 0.75, 0.2, 0.8, 0.15, 0.85, 0.1, 0.9)
"""Shares of the line that are tried, from its middle outward."""

_ABOVE = 1.9
"""mm between a line and its name."""

_BESIDE = 4.0
"""mm between a marked point and its name."""

_AWAY = (4.0, 7.0, 10.0, 14.0, 18.0)
"""mm from the sew line at which words at a notch may begin."""

DRILL_RING = 2.5
"""Radius of the ring round a drill hole, mm: found at once, whatever the drill."""

BUTTON_RING = 4.0
"""Radius of the ring that stands for a button, mm, whatever its size."""

Standing = Literal["free", "on a line", "on words"]
"""How words stand where they would be written: on nothing, on a line, or on other words or off the cloth."""

_ON_WORDS = 1_000_000
"""Counts for more than all lines that can be in the way: words stand rather on a line than on other words or
outside the piece."""

_LIFTS = (0.0, 1.6, -1.6, 2.6, -2.6)
"""Heights of the words by which they may stand above or below their notch."""


@dataclass(frozen=True, slots=True)
class Spot:
    """The middle of the base line of some words, and their direction in degrees."""

    base: Point
    degrees: float


def readable(degrees: float, base_degrees: float = 90.0) -> float:
    """The direction, or its opposite, in which words on a line read from the left or upward when the piece
    lies with its grain up; ``base_degrees`` is the grain in the frame of the piece."""
    on_sheet = (degrees - base_degrees + 90.0 + 180.0) % 360.0 - 180.0
    turned = on_sheet > 90.0 + 1e-6 or on_sheet <= -90.0 + 1e-6
    return (degrees + 180.0 if turned else degrees) % 360.0


class FreePlaces:
    """The things of a piece that words must keep clear of, as points two or three millimeters apart; other
    words apart from lines."""

    def __init__(self, piece: CutPiece, label: tuple[float, float]) -> None:
        """``label``: the length and height that the label's words take in the middle of their box, mm."""
        self._points: list[Point] = []
        self._words: list[Point] = []
        self._cloth = Polygon([(place.x, place.y) for place in piece.cut_line.flattened(0.2)]).buffer(0.0)
        prepare(self._cloth)
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
        for hole in piece.drills:
            self._add_ring(hole.position, DRILL_RING)
        for mark in piece.marks:
            if mark.kind == "button":
                self._add_ring(mark.position, BUTTON_RING)
        for notch in piece.notches:
            for cut in notch.cut_positions:
                self._add(Path.line(cut, cut + notch.direction * max(notch.depth, 3.0)))
        length, height = label
        along = Point(1.0, 0.0).rotated(piece.label.degrees)
        across = along.perpendicular()
        for row in range(-4, 5):
            middle = piece.label.center + across * (height * row / 8.0)
            half = along * (length / 2.0)
            self._words.extend(_dotted(Path.line(middle - half, middle + half)))

    def _add_ring(self, middle: Point, radius: float) -> None:
        turns = (Point(radius, 0.0).rotated(degrees) for degrees in range(0, 360, 30))
        self._points.extend(middle + turn for turn in turns)

    def _add(self, path: Path) -> None:
        self._points.extend(_dotted(path))

    def along(self, line: Path, words: str, size: float, base_degrees: float) -> tuple[Spot, Standing]:
        """The spot of words above a line, else below it, and how they stand there.

        They read from the left or upward when the piece lies with its grain up. Where nothing is free, it is
        the spot that is crowded least.
        """
        width, height = text_width(words, size), CAP_HEIGHT * size * MM_PER_POINT
        spots = []
        for lift in (_ABOVE, -_ABOVE - height):
            for share in _STEPS:
                along = line.tangent_at(line.length * share)
                degrees = readable(along.direction(), base_degrees)
                base = line.point_at(line.length * share) + Point(0.0, lift).rotated(degrees)
                if self._is_free(base, width, height, degrees):
                    self._take(base, width, degrees)
                    return Spot(base, degrees), "free"
                spots.append(Spot(base, degrees))
        found = [(self._crowd(one.base, width, height, one.degrees), one) for one in spots]
        crowd, spot = min(found, key=lambda one: one[0])
        self._take(spot.base, width, spot.degrees)
        return spot, "on words" if crowd >= _ON_WORDS else "on a line"

    def around(self, place: Point, words: str, size: float, base_degrees: float) -> tuple[Spot, bool]:
        """A spot beside a marked point, and whether nothing is in the way there; the words read along the
        level when the piece lies with its grain up."""
        width, height = text_width(words, size), CAP_HEIGHT * size * MM_PER_POINT
        degrees = base_degrees - 90.0
        along = Point(1.0, 0.0).rotated(degrees)
        up = along.perpendicular()
        bases = [
            place + along * (way * (_BESIDE + width / 2.0)) + up * lift
            for away in (_ABOVE, 3.0 * _ABOVE)
            for lift in (away, -away - height)
            for way in (1.0, -1.0)
        ]
        free = next((base for base in bases if self._is_free(base, width, height, degrees)), None)
        base = free or min(bases, key=lambda base: self._crowd(base, width, height, degrees))
        self._take(base, width, degrees)
        return Spot(base, degrees), free is not None

    def inside(self, edge: Path, words: str, size: float, base_degrees: float) -> Spot | None:
        """A free spot along an edge of a piece, on the inner side of its sew line; None when there is none.

        ``base_degrees`` is the direction that the grain has in the frame of the piece.
        """
        width, height = text_width(words, size), CAP_HEIGHT * size * MM_PER_POINT
        for share in _STEPS:
            place = edge.point_at(edge.length * share)
            along = edge.tangent_at(edge.length * share)
            degrees = readable(along.direction(), base_degrees)
            inward = along.perpendicular()
            up = Point(0.0, 1.0).rotated(degrees)
            lift = 0.0 if inward.dot(up) > 0.0 else -height
            for away in (_ABOVE, 2.0 * _ABOVE, 3.0 * _ABOVE):
                base = place + inward * away + up * lift
                if self._is_free(base, width, height, degrees):
                    self._take(base, width, degrees)
                    return Spot(base, degrees)
        return None

    def beside(
        self, place: Point, inward: Point, words: str, size: float, base_degrees: float
    ) -> Spot | None:
        """A free spot for words that run from a place of the sew line into the piece; None when there is
        none near it."""
        width, height = text_width(words, size), CAP_HEIGHT * size * MM_PER_POINT
        degrees = readable(inward.direction(), base_degrees)
        up = Point(0.0, 1.0).rotated(degrees)
        for away in _AWAY:
            for lift in _LIFTS:
                base = place + inward * (away + width / 2.0) + up * (lift - 0.5) * height
                if self._is_free(base, width, height, degrees):
                    self._take(base, width, degrees)
                    return Spot(base, degrees)
        return self._across(place, inward, (width, height), base_degrees)

    def _across(
        self, place: Point, inward: Point, size: tuple[float, float], base_degrees: float
    ) -> Spot | None:
        """A spot along the edge, in the middle before the place: for pieces too narrow for words that run
        inward."""
        width, height = size
        degrees = readable(inward.direction() - 90.0, base_degrees)
        up = Point(0.0, 1.0).rotated(degrees)
        lift = 0.0 if inward.dot(up) > 0.0 else -height
        for away in (_ABOVE, 2.0 * _ABOVE, 3.0 * _ABOVE):
            base = place + inward * away + up * lift
            if self._is_free(base, width, height, degrees):
                self._take(base, width, degrees)
                return Spot(base, degrees)
        return None

    def _is_free(self, base: Point, width: float, height: float, degrees: float) -> bool:
        return self._crowd(base, width, height, degrees, most=0) == 0

    def _crowd(
        self, base: Point, width: float, height: float, degrees: float, most: int | None = None
    ) -> int:
        """How much is in the way; counted no further than beyond ``most``."""
        along = Point(1.0, 0.0).rotated(degrees)
        up = along.perpendicular()
        count = 0
        for points, weight in ((self._points, 1), (self._words, _ON_WORDS)):
            for point in points:
                away = point - base
                if abs(away.dot(along)) <= width / 2.0 + 3.0 and -1.2 <= away.dot(up) <= height + 1.5:
                    count += weight
                    if most is not None and count > most:
                        return count
        half = along * (width / 2.0)
        box = [base - half, base + half, base + half + up * height, base - half + up * height]
        is_on_cloth = self._cloth.contains(Polygon([(corner.x, corner.y) for corner in box]))
        return count if is_on_cloth else count + _ON_WORDS

    def _take(self, base: Point, width: float, degrees: float) -> None:
        half = Point(1.0, 0.0).rotated(degrees) * (width / 2.0)
        raised = base + Point(0.0, 1.0).rotated(degrees)
        self._words.extend(_dotted(Path.line(raised - half, raised + half)))


def _dotted(path: Path) -> Iterator[Point]:
    """Places of a path about two millimeters apart."""
    steps = max(1, math.ceil(path.length / 2.0))
    return (path.point_at(path.length * index / steps) for index in range(steps + 1))
