"""Where a pocket lies on a piece: the corner of its opening, found from two edges."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from notchbook.errors import NameLost, StepRefused
from notchbook.geometry import Line, Path, Point, direction
from notchbook.pattern import Pattern, Piece, spoken
from notchbook.pattern.resolve import expand, require
from notchbook.recipe import AmountText, StepContext, StepParameters
from notchbook.recipe.parameters import LevelName
from notchbook.units import TOLERANCES

_FAR = 5000.0
"""mm; farther than any piece is wide."""

_LED_ON = 150.0
"""mm by which an edge is led straight on from its ends: beside a waist the hip is wider. Own judgment."""

_TURNS = 60
"""How often the two distances are met in turn; each time what is off shrinks by as much as the edges lean."""


class PlacedParameters(StepParameters):
    """Where the opening begins: so far ``down`` from one edge or level, so far ``inward`` from another edge.

    Both are measured upright and level on the piece, as a ruler is laid along the grain and across it; beyond
    its ends an edge is led straight on.
    """

    below: LevelName
    """The edge or the level (the waist, the bust line) from which the opening is measured down."""
    down: AmountText = "8 cm"
    """How far below it the near end of the opening lies; with a minus above a level."""
    beside: LevelName
    """The edge from which the opening is measured inward, the side for example; or the center of a front with
    a button stand."""
    inward: AmountText = "7 cm"
    """How far from it the near end of the opening lies."""
    angle: Annotated[float, Field(ge=-60.0, le=60.0)] = 0.0
    """Degrees by which the opening rises from its near end; with a minus it falls."""


@dataclass(frozen=True, slots=True)
class Placed:
    """An opening on its piece: its near end, the unit directions along it, and down from it.

    ``runs_left``: whether the far end lies left of the near one.
    """

    piece: Piece
    near: Point
    along: Point
    down: Point
    runs_left: bool

    def at(self, along: float, down: float) -> Point:
        """The place so far along the opening and so far below it, mm."""
        return self.near + self.along * along + self.down * down


def placed(pattern: Pattern, context: StepContext, parameters: PlacedParameters) -> Placed:
    """The near end of the opening on the one piece that has both edges.

    StepRefused ``pocket-edges-apart`` where no piece, or more than one, has both; ``pocket-nowhere`` where no
    place of the piece has both distances.
    """
    piece = _piece(pattern, parameters)
    down, inward = context.mm(parameters.down), context.positive(parameters.inward, "inward")
    below = _line(pattern, piece, parameters.below)
    beside = _beside(pattern, piece, parameters.beside)
    near, is_leftward = _met(piece, (below, beside), (down, inward), parameters)
    turn = -parameters.angle if is_leftward else parameters.angle
    along = direction(180.0 if is_leftward else 0.0).rotated(turn)
    square = along.perpendicular()
    return Placed(piece, near, along, square if is_leftward else -square, is_leftward)


def _piece(pattern: Pattern, parameters: PlacedParameters) -> Piece:
    for name in (parameters.below, parameters.beside):
        if not expand(pattern, name)[0]:
            require(pattern, name)  # refuses in words, with what became of it
    carriers = [
        {pattern.carriers[member] for member in expand(pattern, name)[0]}
        for name in (parameters.below, parameters.beside)
    ]
    both = carriers[0] & carriers[1]
    if len(both) != 1:
        raise StepRefused(
            "pocket-edges-apart", below=spoken(parameters.below), beside=spoken(parameters.beside)
        )
    return pattern.pieces[both.pop()]


def _members(pattern: Pattern, piece: Piece, name: str) -> list[str]:
    """The edges of the piece behind a name; NameLost where it names none."""
    found = [member for member in expand(pattern, name)[0] if piece.has_edge(member)]
    if not found:
        raise NameLost(
            "name-lost", name=name, candidates=(), by="no step", reason="it names no edge", wanted="edge"
        )
    return found


def _line(pattern: Pattern, piece: Piece, name: str) -> Path:
    """The edge or the level, led on to both sides."""
    levels = {line.name: line.path for line in piece.lines}
    found = [levels[member] for member in expand(pattern, name)[0] if member in levels]
    if not found:
        return _led_on(_run([piece.edge(member).path for member in _members(pattern, piece, name)]), _LED_ON)
    return _led_on(_run(sorted(found, key=lambda path: path.bounds().center.x)), _FAR)


def _led_on(run: Path, distance: float) -> Path:
    """The line led straight on from both its ends."""
    start = run.start - run.tangent_at(0.0) * distance
    end = run.end + run.tangent_at(run.length) * distance
    return Path((Line(start, run.start), *run.segments, Line(run.end, end)))


def _beside(pattern: Pattern, piece: Piece, name: str) -> Path:
    """The edge as the outline runs, or a line inside the piece with the larger part of it at its left."""
    inner = {line.name for line in piece.lines}
    if not any(member in inner for member in expand(pattern, name)[0]):
        return _line(pattern, piece, name)
    line, middle = _line(pattern, piece, name), piece.sew_line.bounds().center
    nearest = line.nearest(middle)
    left = line.tangent_at(nearest.distance_along).perpendicular()
    return line if left.dot(middle - nearest.point) > 0.0 else line.reversed()


def _run(paths: Sequence[Path]) -> Path:
    """The paths as one, straight across the mouths of darts between them."""
    run = paths[0]
    for path in paths[1:]:
        run = Path((*run.segments, Line(run.end, path.start), *path.segments))
    return run


def _met(
    piece: Piece, lines: tuple[Path, Path], distances: tuple[float, float], parameters: PlacedParameters
) -> tuple[Point, bool]:
    """The place with both distances, and whether inward is to the left there."""
    below, beside = lines
    down, inward = distances
    place, is_leftward = below.bounds().center - Point(0.0, down), False
    for _ in range(_TURNS):
        crossed = _crossed(beside, Point(-_FAR, place.y), Point(_FAR, place.y))
        if crossed is None:
            break
        edge, travel = crossed
        is_leftward = travel.perpendicular().x < 0.0
        across = edge.x - inward if is_leftward else edge.x + inward
        over = _crossed(below, Point(across, _FAR), Point(across, -_FAR))
        if over is None:
            break
        found = Point(across, over[0].y - down)
        if found.distance_to(place) <= TOLERANCES.join:
            return found, is_leftward
        place = found
    raise StepRefused(
        "pocket-nowhere",
        piece=spoken(piece.name),
        below=spoken(parameters.below),
        beside=spoken(parameters.beside),
        down=down,
        inward=inward,
    )


def _crossed(path: Path, start: Point, end: Point) -> tuple[Point, Point] | None:
    """Where a straight line first meets the path, and the direction of the path there."""
    met = Path.line(start, end).intersections(path)
    if not met:
        return None
    return met[0].point, path.tangent_at(met[0].at_other)
