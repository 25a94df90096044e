"""Into which dart the gape of an opening goes, and to which point it runs out."""

from notchbook.errors import StepRefused
from notchbook.geometry import Point
from notchbook.pattern import Finding, Intake, Measured, Pattern, Piece, Severity, require_one, spoken, worded
from notchbook.style.darts.found import bust_point_of, darts_named


def gape_goes(
    pattern: Pattern, piece: Piece, dart: str | None, point: str | None
) -> tuple[Intake, Point] | None:
    """The dart that takes the gape of this piece and the point it turns about; None where the named dart is
    on another piece, or none is named.

    Without a named point it is the bust point of the piece. NameLost where a name is gone; StepRefused
    ``intake-no-dart`` for gathers, ease or a fold, ``gape-no-point``, ``gape-point-elsewhere``.
    """
    if dart is None:
        return None
    owner, (intake,) = darts_named(pattern, (dart,))
    if owner.name != piece.name:
        return None
    if point is None:
        pivot = bust_point_of(piece)
        if pivot is None:
            raise StepRefused("gape-no-point", intake=spoken(dart))
        return intake, pivot
    living = require_one(pattern, point, "point")
    if living not in piece.points:
        raise StepRefused("gape-point-elsewhere", point=spoken(point), piece=spoken(piece.name))
    return intake, piece.points[living]


def gape_left(check: str, code: str, piece: Piece, edge: str, amount: float) -> Finding:
    """Said of an opening that gapes by ``amount`` mm, where nothing was closed."""
    return worded(
        check,
        code,
        Severity.LOOK,
        Measured(amount, 0.0),
        piece=piece.name,
        where=edge,
        names=(edge,),
        edge=spoken(edge),
        amount=amount,
    )


def gape_closed(check: str, code: str, piece: Piece, dart: Intake, amount: float) -> Finding:
    """Said of a gape of ``amount`` mm that went into a dart."""
    return worded(
        check,
        code,
        Severity.NOTE,
        Measured(amount),
        piece=piece.name,
        names=(dart.name,),
        amount=amount,
        intake=spoken(dart.name),
    )
