"""The outline of a pocket bag: as wide as a hand, round below, its upper edge square to the opening."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.geometry import Line, Path, Point, curve_between

_LOWEST = 0.32
"""Share of the width at which the bag is deepest. Own judgment."""

_ABOVE = 0.85
"""Share of the width along which its upper edge runs. Own judgment."""


@dataclass(frozen=True, slots=True)
class BagShape:
    """The three sides of a bag: down the opening, round the bag, and back to its top."""

    opening: Path
    bag: Path
    upper: Path


@dataclass(frozen=True, slots=True)
class Hang:
    """The directions in which a bag hangs and in which its upper edge runs, by the chord of its opening: each
    so much along it, so much inward. Two bags with one hang lie on each other, whatever their openings."""

    along: float
    inward: float
    upper_along: float
    upper_inward: float


def hang_of(openings: Sequence[tuple[Path, Point]], down: Point) -> Hang:
    """How bags hang that hang in the direction ``down`` behind the first of these openings, each with the
    direction into its piece; their upper edge is square to all openings, as nearly as one edge can be."""
    first, inward = openings[0]
    chord = (first.end - first.start).unit()
    squares = [_square(*opening) for opening in openings]
    upper = sum(squares[1:], squares[0]).unit()
    return Hang(down.dot(chord), down.dot(inward), upper.x, upper.y)


def _square(opening: Path, inward: Point) -> Point:
    """Square to an opening at its top, by its chord: so much along it, so much inward."""
    chord = (opening.end - opening.start).unit()
    square = opening.tangent_at(0.0).perpendicular()
    square = square if square.dot(inward) > 0.0 else -square
    return Point(square.dot(chord), square.dot(inward))


def bag_shape(opening: Path, inward: Point, hang: Hang, size: tuple[float, float]) -> BagShape:
    """The bag behind an opening that is walked down; ``size``: how far it reaches below the top of the
    opening, and into the piece, mm."""
    depth, width = size
    chord = (opening.end - opening.start).unit()
    down = chord * hang.along + inward * hang.inward
    across = down.perpendicular()
    across = across if across.dot(inward) > 0.0 else -across
    upper = chord * hang.upper_along + inward * hang.upper_inward
    top = opening.start
    lowest = top + down * depth + across * (width * _LOWEST)
    corner = top + upper * (width * _ABOVE)
    far = _rounded(corner, lowest, (down, -across)).reversed()
    bag = _rounded(opening.end, lowest, (down, across)).joined(far)
    return BagShape(opening, bag, Path.line(corner, top))


def _rounded(begin: Point, lowest: Point, directions: tuple[Point, Point]) -> Path:
    """Straight down from a side of the bag, and round to its lowest place; directions down and across."""
    down, across = directions
    aside = (lowest - begin).dot(across)
    straight = (lowest - begin).dot(down) - aside
    if aside <= 0.0 or straight <= 0.0:
        return Path.of(curve_between(begin, down.direction(), lowest, across.direction()))
    turn = begin + down * straight
    round_part = curve_between(turn, down.direction(), lowest, across.direction())
    return Path((Line(begin, turn), round_part))
