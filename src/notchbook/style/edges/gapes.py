"""A gape closed: a wedge from an opening to a point inside is taken out, and a dart opens by its angle.

What is closed for the contour stays in the garment as shape: the total angle about the point is kept.
"""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform, run_on
from notchbook.pattern import Intake, Piece, spoken
from notchbook.pattern.slashing import (
    DartCut,
    Keep,
    Shut,
    Wedge,
    assemble,
    divide,
    located_on,
    middle_of_mouth,
    with_point,
)
from notchbook.style.edges.dart_points import middled

_WITHIN = 20.0
"""mm by which the two sides of the wedge may be of unequal length, as where a V runs toward the point: the
opening is drawn anew after it. Own judgment: more than any contour amount of the table."""

_MOST = 0.6
"""The share of the edge within which the wedge lies, so that both its ends keep their corners."""

_SMOOTHED = 15.0
"""mm to both sides of the wedge along which the opening is drawn over smooth. Own judgment."""


@dataclass(frozen=True, slots=True)
class Gape:
    """What is taken out of an edge: ``amount`` mm round the place that lies square to ``pivot``, to nothing
    there; ``dart`` opens by the same angle, and the part with the edge ``still`` does not move."""

    edge: str
    amount: float
    pivot: Point
    dart: Intake
    still: str


def closed_gape(piece: Piece, gape: Gape) -> Piece:
    """The piece with the gape closed into the dart, whose point stays as far from the pivot as it was.

    StepRefused ``gape-too-long`` where the edge is shorter than what is taken out, and as the slash engine
    refuses.
    """
    edge = piece.edge(gape.edge)
    if gape.amount >= edge.length * _MOST:
        raise StepRefused("gape-too-long", edge=spoken(gape.edge), amount=gape.amount, length=edge.length)
    margin = edge.length * (1.0 - _MOST) / 2.0 + gape.amount / 2.0
    square = edge.path.nearest(gape.pivot).distance_along
    middle = min(max(square, margin), edge.length - margin)
    first = located_on(piece, gape.edge, middle - gape.amount / 2.0)
    second = located_on(piece, gape.edge, middle + gape.amount / 2.0)
    division = divide(piece, (Wedge("gape", first, second, gape.pivot), DartCut(gape.dart, gape.pivot)))
    before, after = division.beside("gape")
    angle = (first.position - gape.pivot).direction() - (second.position - gape.pivot).direction()
    still = division.part_of(gape.still)
    motions = {
        (after if still == before else before): Transform.rotation(
            angle if still == before else -angle, gape.pivot
        )
    }
    done = assemble(division, motions, {"gape": Shut(_WITHIN), gape.dart.name: Keep()}).piece
    return _shortened(piece, done, gape)


def _shortened(before: Piece, after: Piece, gape: Gape) -> Piece:
    """The dart drawn to a point in the middle of its mouth, as far from the pivot as its point was."""
    point = before.edge(gape.dart.first_leg).path.end
    short = point.distance_to(gape.pivot)
    middle = middle_of_mouth(after, gape.dart)
    way = middle - gape.pivot
    goal = gape.pivot + way.unit() * min(short, way.norm() / 2.0)
    mouths = after.edge(gape.dart.first_leg).path.start, after.edge(gape.dart.second_leg).path.end
    return with_point(after, gape.dart, middled(*mouths, goal))


def smoothed(path: Path, place: float, reach: float = _SMOOTHED) -> Path:
    """The line drawn over smooth to both sides of a place, where a wedge was taken out."""
    start, end = max(place - reach, place / 2.0), min(place + reach, (place + path.length) / 2.0)
    bend = run_on(path, start, path, end)
    return path.between(0.0, start).joined(Path.of(bend)).joined(path.between(end, path.length))
