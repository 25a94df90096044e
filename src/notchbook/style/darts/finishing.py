"""The last touches after darts were moved: points drawn back from the pivot, pressing, truing."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Point
from notchbook.pattern import Intake, Piece, spoken
from notchbook.pattern.slashing import middle_of_mouth, true_joint, true_mouth, with_point
from notchbook.style.darts.ends import dart_end
from notchbook.units import TOLERANCES

MOST_SHORTENED = 0.8
"""Share of its middle by which a dart may be drawn back at most: some of it must be left to sew.
Own judgment."""


def finished(piece: Piece, about: Point, short: Mapping[str, float], joints: Iterable[str]) -> Piece:
    """The piece with the points of these darts drawn back from the pivot by so many mm, each along its own
    middle, the edges trued across them, and smooth at the ``joints`` where darts were closed."""
    for joint in joints:
        piece = true_joint(piece, joint)
    for name, amount in short.items():
        piece = drawn_back(piece, piece.intake(name), about, amount)
        piece = true_mouth(piece, piece.intake(name))
    return piece


def drawn_back(piece: Piece, dart: Intake, apex: Point, amount: float) -> Piece:
    """The dart with its point so far (mm) from ``apex`` toward the middle of its mouth.

    StepRefused ``dart-too-short`` when hardly any dart would be left.
    """
    middle = middle_of_mouth(piece, dart)
    depth = apex.distance_to(middle)
    if amount > MOST_SHORTENED * depth:
        raise StepRefused("dart-too-short", dart=spoken(dart.name), length=depth, amount=amount)
    if depth <= TOLERANCES.join:
        return piece
    return with_point(piece, dart, apex.lerp(middle, amount / depth))


def pressed(piece: Piece, dart: Intake, still: str) -> Piece:
    """The dart pressed as is usual for its edge: toward the part that lies still, or down."""
    habit = dart_end(dart.mouth).press
    first = _first_is_lower(piece, dart) if habit == "down" else _first_is_nearer(piece, dart, still)
    return piece.with_intake(replace(dart, fold_toward="first_leg" if first else "second_leg"))


def _first_is_lower(piece: Piece, dart: Intake) -> bool:
    """Whether the mouth end of the first leg lies lower, down against the grain."""
    up = Point(1.0, 0.0).rotated(piece.grain.degrees)
    return (piece.edge(dart.first_leg).path.start - piece.edge(dart.second_leg).path.end).dot(up) < 0.0


def _first_is_nearer(piece: Piece, dart: Intake, still: str) -> bool:
    """Whether, going round the outline, the still edge is met before the first leg sooner than after the
    second: whether it lies on the side of the first leg."""
    count = len(piece.outline)
    place = piece.edge_index(still)
    back = (piece.edge_index(dart.first_leg) - place) % count
    on = (place - piece.edge_index(dart.second_leg)) % count
    return back < on
