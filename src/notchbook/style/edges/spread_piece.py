"""A piece cut square to its grain and spread: outline, darts, lines and marks."""

from dataclasses import dataclass, replace

from notchbook.errors import NameLost, StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Edge, InternalLine, Piece, spoken
from notchbook.style.edges.dart_points import darts_of, middled_darts
from notchbook.style.edges.level_lines import followed_lines
from notchbook.style.edges.redrawn import require_plain
from notchbook.style.edges.spread_path import Spread, crossings_of, spread_path
from notchbook.style.edges.trued_mouths import trued_mouths


@dataclass(frozen=True, slots=True)
class LevelCut:
    """Where a piece is cut: through a place of it, and the two edges that the level crosses."""

    place: Point
    edges: frozenset[str]


def upright(piece: Piece) -> Transform:
    """The turn that brings the grain to +y; nothing where it lies so."""
    if piece.grain.degrees == 90.0:
        return Transform.identity()
    return Transform.rotation(90.0 - piece.grain.degrees)


def is_below(piece: Piece, cut: LevelCut, point: Point) -> bool:
    """Whether a place of the piece lies below the level of the cut, looking up along the grain."""
    turn = upright(piece)
    return turn.apply(point).y < turn.apply(cut.place).y


def spread_piece(piece: Piece, cut: LevelCut, amount: float) -> Piece:
    """The piece with everything below the cut moved down along the grain by ``amount`` (mm; up if negative).

    NameLost ``length-level-crosses`` when the level runs across other edges than the two; StepRefused
    ``length-band-corner`` when a corner lies in what would be taken out, ``length-dart-half`` when the level
    goes through one leg of a dart only.
    """
    turn = upright(piece)
    standing = piece if turn == Transform.identity() else piece.transformed(turn)
    spread = Spread(turn.apply(cut.place).y, amount)
    _require_darts(standing, spread)
    outline = tuple(_spread_edge(standing, edge, cut, spread) for edge in standing.outline)
    done = replace(
        standing,
        outline=middled_darts(standing, outline),
        lines=tuple(_spread_line(line, spread) for line in standing.lines),
        marks=tuple(replace(mark, position=spread.moved_point(mark.position)) for mark in standing.marks),
    )
    cut_darts = [dart for dart in darts_of(standing) if _is_cut(standing.edge(dart.first_leg).path, spread)]
    done = trued_mouths(standing, done, cut_darts)
    done = replace(done, lines=followed_lines(standing, done))
    require_plain(done)
    return done if turn == Transform.identity() else done.transformed(turn.inverse())


def _spread_edge(piece: Piece, edge: Edge, cut: LevelCut, spread: Spread) -> Edge:
    if spread.is_above(edge.path):
        return edge
    if spread.is_below(edge.path):
        return edge.transformed(spread.drop)
    if not crossings_of(edge.path, spread.height):
        raise StepRefused("length-band-corner", edge=spoken(edge.name), amount=-spread.amount)
    if edge.name not in cut.edges and edge.kind != "leg":
        raise NameLost(
            "length-level-crosses",
            name=edge.name,
            crossed=spoken(edge.name),
            piece=spoken(piece.name),
            edges=tuple(spoken(name) for name in sorted(cut.edges)),
            candidates=(edge.name,),
            by="",
        )
    return replace(edge, path=spread_path(edge.path, spread, spoken(edge.name)))


def _require_darts(piece: Piece, spread: Spread) -> None:
    """A level goes through both legs of a dart, or through none."""
    for intake in darts_of(piece):
        legs = [piece.edge(leg).path for leg in (intake.first_leg, intake.second_leg)]
        if len({bool(_is_cut(leg, spread)) for leg in legs}) > 1:
            raise StepRefused("length-dart-half", intake=spoken(intake.name), piece=spoken(piece.name))
    for dart in piece.inner_darts:
        lines = [piece.line(leg).path for leg in (dart.center_leg, dart.side_leg)]
        if len({bool(_is_cut(line, spread)) for line in lines}) > 1:
            raise StepRefused("length-dart-half", intake=spoken(dart.name), piece=spoken(piece.name))


def _is_cut(path: Path, spread: Spread) -> bool:
    return not spread.is_above(path) and not spread.is_below(path)


def _spread_line(line: InternalLine, spread: Spread) -> InternalLine:
    """The line spread like an edge; a level that the cut goes through goes whole to where its middle lies."""
    path = line.path
    if spread.is_above(path):
        return line
    if spread.is_below(path):
        return replace(line, path=path.transformed(spread.drop))
    crosses = [len(crossings_of(path, height)) for height in (spread.height, spread.lower)]
    if line.kind != "level" and crosses == [1, 1]:
        return replace(line, path=spread_path(path, spread, spoken(line.name)))
    middle = path.point_at(path.length / 2.0)
    moved = spread.moved_point(middle) - middle
    return replace(line, path=path.transformed(Transform.translation(moved.x, moved.y)))
