"""What a piece is cut by: slashes, wedges that are taken out, and darts that open anew."""

from dataclasses import dataclass

from notchbook.geometry import Path, Point
from notchbook.pattern.piece import Intake, Piece
from notchbook.pattern.sewn import Located


@dataclass(frozen=True, slots=True)
class Slash:
    """A cut along ``path`` from a place on the outline to another place on it, or to a pivot inside.

    ``label`` is what the caller calls it.
    """

    label: str
    start: Located
    end: Located | Point
    path: Path


@dataclass(frozen=True, slots=True)
class Wedge:
    """Cloth taken out between two places of one edge, to nothing at the pivot ``point``.

    ``first`` comes before ``second`` in the direction of the outline.
    """

    label: str
    first: Located
    second: Located
    point: Point


@dataclass(frozen=True, slots=True)
class DartCut:
    """A dart of the piece as a cut that stands open already, its legs drawn straight to ``pivot``."""

    intake: Intake
    pivot: Point

    @property
    def label(self) -> str:
        """The name of the dart."""
        return self.intake.name


Cut = Slash | Wedge | DartCut


def slash_across(label: str, start: Located, end: Located) -> Slash:
    """A straight slash from one place on the outline to another."""
    return Slash(label, start, end, Path.line(start.position, end.position))


def slash_along(label: str, start: Located, end: Located, path: Path) -> Slash:
    """A slash along a line of any shape from one place on the outline to another."""
    return Slash(label, start, end, path)


def slash_to(label: str, start: Located, pivot: Point) -> Slash:
    """A straight slash from a place on the outline to a pivot inside."""
    return Slash(label, start, pivot, Path.line(start.position, pivot))


def dart_cut(piece: Piece, intake: Intake, pivot: Point | None = None) -> DartCut:
    """The dart as an open cut, its legs drawn to ``pivot``; None: to its own point."""
    return DartCut(intake, pivot or piece.edge(intake.first_leg).path.end)


def located_on(piece: Piece, edge: str, distance: float) -> Located:
    """The place at a distance (mm) from the start of an edge."""
    found = piece.edge(edge)
    return Located(found, piece.name, distance, found.path.point_at(distance))
