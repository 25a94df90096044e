"""The outline of a pocket bag: as wide as a hand, round below, its upper edge square to the opening."""

from dataclasses import dataclass

from notchbook.geometry import Path, Point, curve_between

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
    """The direction in which a bag hangs, by the chord of its opening: so much along it, so much inward."""

    along: float
    inward: float


def hang_of(opening: Path, inward: Point, down: Point) -> Hang:
    """How a bag hangs that hangs in the direction ``down``."""
    chord = (opening.end - opening.start).unit()
    return Hang(down.dot(chord), down.dot(inward))


def bag_shape(opening: Path, inward: Point, hang: Hang, size: tuple[float, float]) -> BagShape:
    """The bag behind an opening that is walked down; ``size``: how far it reaches below the top of the
    opening, and into the piece, mm."""
    depth, width = size
    chord = (opening.end - opening.start).unit()
    down = chord * hang.along + inward * hang.inward
    across = down.perpendicular()
    across = across if across.dot(inward) > 0.0 else -across
    square = opening.tangent_at(0.0).perpendicular()
    square = square if square.dot(inward) > 0.0 else -square
    top = opening.start
    lowest = top + down * depth + across * (width * _LOWEST)
    corner = top + square * (width * _ABOVE)
    bag = Path.of(
        curve_between(opening.end, down.direction(), lowest, across.direction()),
        curve_between(lowest, across.direction(), corner, (-down).direction()),
    )
    return BagShape(opening, bag, Path.line(corner, top))
