"""Fold a dart toward a side and true the edge across it, as it is done at the table before cutting.

Which way a dart is pressed decides the shape of its cap: the edge is cut through the folded cloth, and
unfolded again the allowance rises or falls over the dart so that it is caught in the seam. Trued means that
the edge runs on in one line when the dart is closed.
"""

from dataclasses import replace
from typing import Annotated, Literal

from pydantic import Field

from notchbook.pattern import (
    Finding,
    Intake,
    Measured,
    Pattern,
    Piece,
    Severity,
    closing_motion,
    spoken,
    worded,
)
from notchbook.pattern.slashing import true_mouth
from notchbook.recipe import Change, EdgeName, IntakeName, StepContext, StepDefinition, StepParameters
from notchbook.style.darts.finishing import pressed
from notchbook.style.darts.found import darts_named, still_edge

Toward = Literal["as_usual", "first_leg", "second_leg", "other_way"]


class FoldDartParameters(StepParameters):
    """The ``darts``, which way they are pressed, and whether the edge is ``trued`` across them."""

    darts: Annotated[tuple[IntakeName, ...], Field(min_length=1)]
    """The darts that are folded."""
    toward: Toward = "as_usual"
    """As usual: toward the center, or down where the dart lies across; else toward a leg, or the other way
    than now. Legs are counted round the piece counter-clockwise, right side up."""
    trued: bool = True
    """Whether the edge is drawn anew across the closed dart where it does not run on."""
    center: EdgeName | None = None
    """The edge at the center; empty: the one on the fold."""


def run(pattern: Pattern, context: StepContext, parameters: FoldDartParameters) -> Change:
    """Fold every dart; all or nothing."""
    notes: list[Finding] = []
    for name in parameters.darts:
        piece, (dart,) = darts_named(pattern, (name,))
        folded = _folded(pattern, piece, dart, parameters)
        if parameters.trued:
            turned = _turn(folded, dart)
            folded = true_mouth(folded, folded.intake(dart.name))
            notes.append(_note(folded, dart, turned))
        pattern = pattern.with_pieces(folded)
    return Change(pattern, notes=tuple(notes))


def _folded(pattern: Pattern, piece: Piece, dart: Intake, parameters: FoldDartParameters) -> Piece:
    toward: Literal["first_leg", "second_leg"]
    match parameters.toward:
        case "as_usual":
            return pressed(piece, dart, still_edge(pattern, piece, parameters.center))
        case "first_leg":
            toward = "first_leg"
        case "second_leg":
            toward = "second_leg"
        case "other_way":
            toward = "first_leg" if dart.fold_toward == "second_leg" else "second_leg"
    return piece.with_intake(replace(dart, fold_toward=toward))


def _turn(piece: Piece, dart: Intake) -> float:
    """The corner that the edge makes across the closed dart, degrees; 0 where it runs on."""
    before = piece.edge_before(dart.first_leg).path
    after = piece.edge_after(dart.second_leg).path
    arriving = before.tangent_at(before.length)
    leaving = after.transformed(closing_motion(piece, dart)).tangent_at(0.0)
    return abs((leaving.direction() - arriving.direction() + 180.0) % 360.0 - 180.0)


def _note(piece: Piece, dart: Intake, turned: float) -> Finding:
    return worded(
        "fold-dart",
        "dart-trued",
        Severity.NOTE,
        Measured(turned, 0.0, "deg"),
        piece=piece.name,
        where=dart.name,
        dart=spoken(dart.name),
        turned=turned,
        left=_turn(piece, dart),
    )


STEP = StepDefinition(
    operation="fold_dart",
    version=1,
    kind="style",
    title="Fold and true dart",
    sentence="{darts} {toward}",
    parameters=FoldDartParameters,
    run=run,
)
