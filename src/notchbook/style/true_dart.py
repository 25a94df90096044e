"""True a dart: its shorter leg is lengthened on its own line, the edge drawn anew with the dart closed."""

from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.pattern import Finding, Intake, Measured, Pattern, Piece, Severity, require_one, spoken, worded
from notchbook.pattern.slashing import true_mouth
from notchbook.recipe import Change, IntakeName, StepContext, StepDefinition, StepParameters
from notchbook.style.edges.carried import carried_on
from notchbook.style.edges.mate_walks import seams_put_out
from notchbook.style.edges.redrawn import redrawn
from notchbook.units import TOLERANCES

_STEP = "true-dart"


class TrueDartParameters(StepParameters):
    """The ``dart`` that is trued."""

    dart: IntakeName
    """The dart; its longer leg stays."""


def run(pattern: Pattern, context: StepContext, parameters: TrueDartParameters) -> Change:
    """Make the legs equal and the edge smooth across them; nothing where both are so."""
    piece = _piece_of(pattern, parameters.dart)
    dart = piece.intake(parameters.dart)
    if not dart.has_legs or dart.is_folded:
        raise StepRefused("true-dart-no-dart", dart=spoken(dart.name))
    drawn, grown = _with_equal_legs(piece, dart)
    drawn = true_mouth(drawn, dart)
    after = pattern.with_pieces(drawn)
    notes = seams_put_out(pattern, after, _STEP)
    return Change(after, notes=(*_told(piece, dart, grown), *notes))


def _piece_of(pattern: Pattern, dart: str) -> Piece:
    for piece in pattern.pieces.values():
        if any(one.name == dart for one in piece.intakes):
            return piece
    require_one(pattern, dart)
    raise StepRefused("true-dart-no-dart", dart=spoken(dart))


def _with_equal_legs(piece: Piece, dart: Intake) -> tuple[Piece, float]:
    """The piece with its shorter leg carried on, and by how much, mm."""
    first, second = piece.edge(dart.first_leg), piece.edge(dart.second_leg)
    missing = first.length - second.length
    if abs(missing) <= TOLERANCES.join:
        return piece, 0.0
    if missing > 0.0:
        paths = {second.name: carried_on(second.path, missing)}
    else:
        paths = {first.name: carried_on(first.path.reversed(), -missing).reversed()}
    return redrawn(piece, paths), abs(missing)


def _told(piece: Piece, dart: Intake, grown: float) -> tuple[Finding, ...]:
    if grown <= 0.0:
        return ()
    told = worded(
        _STEP,
        "dart-legs-trued",
        Severity.NOTE,
        Measured(grown),
        piece=piece.name,
        dart=spoken(dart.name),
        grown=grown,
    )
    return (replace(told, where=dart.name),)


STEP = StepDefinition(
    operation="true_dart",
    version=1,
    kind="style",
    title="True a dart",
    sentence="{dart} trued",
    parameters=TrueDartParameters,
    run=run,
)
