"""The outlines of pockets, flaps and bags: an upper edge, two sides and a lower end of one of four shapes."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, curve_between
from notchbook.style._outlined import Side
from notchbook.style.pockets.placing import Placed

_NONE: Final = Point(0.0, 0.0)

Bottom = Literal["square", "round", "pointed", "cut"]
"""How the lower end is shaped: with square corners, rounded, with a point in the middle, corners cut off."""


@dataclass(frozen=True, slots=True)
class Sizes:
    """A pocket as finished, mm: ``width`` along the opening and ``lower_width`` at its lower end, ``depth``
    to where it is deepest, and ``corner``: the rounding, the part of the corner that is cut off, or how much
    higher the sides of a point end."""

    width: float
    depth: float
    bottom: Bottom = "square"
    corner: float = 0.0
    lower_width: float | None = None


def sides_of(placed: Placed, sizes: Sizes, offset: Point = _NONE) -> tuple[Side, ...]:
    """The sides from the near end of the opening round the lower end and back along the opening.

    ``offset``: how far along the opening and below it the shape begins. StepRefused ``pocket-corner-large``
    where the corners leave nothing of a side.
    """
    _require_corner(sizes)
    lower_width = sizes.width if sizes.lower_width is None else sizes.lower_width
    spread = (lower_width - sizes.width) / 2.0

    def at(along: float, down: float) -> Point:
        return placed.at(along + offset.x, down + offset.y)

    near, far = at(0.0, 0.0), at(sizes.width, 0.0)
    low_near, low_far = at(-spread, sizes.depth), at(sizes.width + spread, sizes.depth)
    lower = _lower(sizes, near, far, (low_near, low_far))
    ends = lower[0].path.start, lower[-1].path.end
    return (
        Side("near", "near_upper", Path.line(near, ends[0])),
        *lower,
        Side("far", "far_lower" if sizes.bottom == "square" else "far_end", Path.line(ends[1], far)),
        Side("opening", "far_upper", Path.line(far, near)),
    )


def _require_corner(sizes: Sizes) -> None:
    if sizes.bottom == "square":
        return
    narrow = min(sizes.width, sizes.lower_width or sizes.width)
    most = sizes.depth if sizes.bottom == "pointed" else min(narrow / 2.0, sizes.depth)
    if not 0.0 < sizes.corner < most:
        raise StepRefused("pocket-corner-large", corner=sizes.corner, most=most)


def _lower(sizes: Sizes, near: Point, far: Point, low: tuple[Point, Point]) -> list[Side]:
    """The lower end from the near side to the far one."""
    low_near, low_far = low
    if sizes.bottom == "square":
        return [Side("lower", "near_lower", Path.line(low_near, low_far))]
    if sizes.bottom == "pointed":
        length = near.distance_to(low_near)
        share = 1.0 - sizes.corner / length
        begin, end = near.lerp(low_near, share), far.lerp(low_far, share)
        point = low_near.lerp(low_far, 0.5)
        return [
            Side("near_lower", "near_end", Path.line(begin, point)),
            Side("far_lower", "point", Path.line(point, end)),
        ]
    begin, end = (_before(low_near, near, sizes.corner), _before(low_far, far, sizes.corner))
    turn_near, turn_far = _before(low_near, low_far, sizes.corner), _before(low_far, low_near, sizes.corner)
    first, last = Path.line(begin, turn_near), Path.line(turn_far, end)
    if sizes.bottom == "round":
        across = (low_far - low_near).direction()
        first = Path.of(curve_between(begin, (low_near - near).direction(), turn_near, across))
        last = Path.of(curve_between(turn_far, across, end, (far - low_far).direction()))
    return [
        Side("near_lower", "near_end", first),
        Side("lower", "near_corner", Path.line(turn_near, turn_far)),
        Side("far_lower", "far_corner", last),
    ]


def _before(corner: Point, toward: Point, distance: float) -> Point:
    """The place so far from a corner toward another one."""
    return corner + (toward - corner).unit() * distance


def whole_line(sides: Sequence[Side]) -> Path:
    """The sides as one line, closed where they are all there."""
    return Path(tuple(segment for side in sides for segment in side.path.segments))


def corners_inside(sides: Sequence[Side], inside: float) -> list[tuple[str, Point]]:
    """Each corner of the outline, moved inward by so much from both sides that meet there; the words for
    them. Where a rounding begins it is moved square to its side."""
    found: list[tuple[str, Point]] = []
    around = whole_line(sides).area()
    for before, after in zip((sides[-1], *sides[:-1]), sides, strict=True):
        arriving = before.path.tangent_at(before.path.length)
        leaving = after.path.tangent_at(0.0)
        turn = 1.0 if around > 0.0 else -1.0
        first, second = arriving.perpendicular() * turn, leaving.perpendicular() * turn
        bisector = (first + second) / (1.0 + first.dot(second))
        found.append((after.begins, after.path.start + bisector * inside))
    return found
