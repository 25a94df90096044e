"""Move the point of a dart along its middle: nearer to the mouth, or farther in.

The mouth stays, so what the dart takes up at its edge stays; its legs grow shorter or longer together, and
the angle at its point wider or narrower. The edge is trued with the dart closed.
"""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import InputError, StepRefused
from notchbook.pattern import Finding, Intake, Measured, Pattern, Piece, Severity, require, spoken, worded
from notchbook.pattern.slashing import dart_angle, middle_of_mouth, true_mouth
from notchbook.recipe import (
    AmountText,
    Change,
    IntakeName,
    PivotName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.darts.ends import dart_end
from notchbook.style.darts.finishing import drawn_back
from notchbook.style.darts.found import darts_named
from notchbook.units import TOLERANCES

_BESIDE = 3.0
"""mm beside the point from which a dart is drawn back within which its middle goes there. Own judgment."""


class ShortenDartParameters(StepParameters):
    """The ``darts`` and how far their points move: by an amount, or to so far from a named point."""

    darts: Annotated[tuple[IntakeName, ...], Field(min_length=1)]
    """The darts whose points move."""
    amount: AmountText | None = None
    """How far, measured as ``measured`` says; empty: as usual for the edge, from the named point."""
    measured: Literal["shorter_by", "length", "from_point"] = "shorter_by"
    """Shorter by the amount (with a minus longer); as long as the amount, along its middle; or so far from
    the named point."""
    point: PivotName | None = None
    """The point that it is kept away from, such as the bust point."""


def run(pattern: Pattern, context: StepContext, parameters: ShortenDartParameters) -> Change:
    """Move every point; all or nothing."""
    amount = None if parameters.amount is None else context.mm(parameters.amount)
    notes: list[Finding] = []
    for name in parameters.darts:
        piece, (dart,) = darts_named(pattern, (name,))
        redrawn = _redrawn(pattern, piece, dart, parameters, amount)
        redrawn = true_mouth(redrawn, redrawn.intake(dart.name))
        pattern = pattern.with_pieces(redrawn)
        notes.append(_note(piece, redrawn, dart))
    return Change(pattern, notes=tuple(notes))


def _redrawn(
    pattern: Pattern, piece: Piece, dart: Intake, parameters: ShortenDartParameters, amount: float | None
) -> Piece:
    own = piece.points[dart.point]
    if parameters.measured == "from_point":
        if parameters.point is None:
            raise InputError("dart-from-which-point", dart=spoken(dart.name))
        (goal,) = require(pattern, parameters.point, "point")
        apex = piece.points.get(goal)
        if apex is None:
            raise StepRefused("pivot-elsewhere", point=spoken(parameters.point), piece=spoken(piece.name))
        middle = middle_of_mouth(piece, dart)
        off = abs((own - middle).unit().cross(apex - middle)) if own.distance_to(middle) > 0.0 else 0.0
        if off > _BESIDE:
            raise StepRefused("dart-points-elsewhere", dart=spoken(dart.name), off=off)
        usual = dart_end(dart.mouth).short
        return drawn_back(piece, dart, apex, usual if amount is None else amount)
    if amount is None:
        raise InputError("dart-amount-missing", dart=spoken(dart.name))
    if parameters.measured == "length":
        amount = own.distance_to(middle_of_mouth(piece, dart)) - amount
    return drawn_back(piece, dart, own, amount)


def _note(before: Piece, after: Piece, dart: Intake) -> Finding:
    """How long the dart is now, and the angle at its point."""
    length = after.points[dart.point].distance_to(middle_of_mouth(after, dart))
    was = before.points[dart.point].distance_to(middle_of_mouth(before, dart))
    moved = abs(was - length) > TOLERANCES.sew_length
    return worded(
        "shorten-dart",
        "dart-shortened" if moved else "dart-as-long",
        Severity.NOTE,
        Measured(length, None, "mm"),
        piece=after.name,
        where=dart.name,
        dart=spoken(dart.name),
        length=length,
        was=was,
        angle=dart_angle(after, after.intake(dart.name)),
    )


STEP = StepDefinition(
    operation="shorten_dart",
    version=1,
    kind="style",
    title="Shorten dart",
    sentence="{darts}, {measured} {amount}",
    parameters=ShortenDartParameters,
    run=run,
)
